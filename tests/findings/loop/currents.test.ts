/** What flows in thin wire, in a fuse and from a supply with several coils in. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired, words } from '../wired-plans.ts';

const BARE = 'kind: supply, output: 12 V DC, limit: 5 A, regulation: regulated, tolerance: 2 %';

const coil = (name: string, ohms: number) =>
  `${name}: {kind: relay, coil: {rated: 12 V DC, resistance: ${ohms} ohm, tolerance: 0 %, hot-rise: 0 K, most: 200 %, suppressor: diode}, contact: {ratings: [5 A 30 V DC]}}`;

const cable = (gauge: string, cores: string) =>
  `{cable: {gauge: ${gauge}, cores: 2, insulation: 300 V}, length: 1 m, cores: {${cores}}}`;

describe('wire', () => {
  const WIRE = /^(wire-|fuse-|supply-not)/;
  const at = (source: string, gauge: string, ohms: number, more: Partial<Wired> = {}): Wired => ({
    parts: 'g',
    more: [`PS1: {${source}}`, coil('K1', ohms)],
    wires: 'g.NO K1.A1, K1.A2 PS1.-',
    runs: [cable(gauge, 'red: [PS1.+, g.COM]')],
    intent: ['K1: {runs-on: [g]}'],
    ...more,
  });
  const CLASS2 = `${BARE}, class-2: true`;
  const fused = (amps: number, gauge: string, source = BARE, ohms = 120): Wired =>
    at(source, gauge, ohms, {
      more: [`PS1: {${source}}`, coil('K1', ohms), `F: {kind: fuse, rating: ${amps} A}`],
      wires: 'PS1.+ F.1, g.NO K1.A1, K1.A2 PS1.-',
      runs: [cable(gauge, 'red: [F.2, g.COM]')],
    });
  it.each<[string, Wired, readonly string[]]>([
    ['24 AWG and 0.1 A from a limited supply', at(CLASS2, '24 AWG', 120), []],
    [
      '24 AWG and 1.2 A from a limited supply',
      at(CLASS2, '24 AWG', 10),
      ['fault 5 wire-overloaded: PS1 g | current 1.12 A, wire 1 A'],
    ],
    [
      '24 AWG on a supply of 5 A',
      at(BARE, '24 AWG', 120),
      ['fault 5 wire-overloaded: PS1 g | current 5 A, wire 1 A | < supply-not-limited'],
    ],
    ['18 AWG on a supply of 5 A', at(BARE, '18 AWG', 120), ['caution 5 supply-not-limited: PS1']],
    ['a fuse of 1 A before 24 AWG', fused(1, '24 AWG'), []],
    [
      'a fuse of 3 A before 24 AWG',
      fused(3, '24 AWG'),
      ['fault 5 wire-overloaded: F g | current 3 A, wire 1 A | < supply-not-limited'],
    ],
    [
      'a fuse of 10 A on a supply of 5 A',
      fused(10, '24 AWG'),
      ['fault 5 wire-overloaded: PS1 F g | current 5 A, wire 1 A | < supply-not-limited'],
    ],
    [
      'a fuse of 0.05 A for 0.1 A',
      fused(0.05, '24 AWG'),
      ['fault 5 fuse-too-small: F PS1 | current 0.0945 A, fuse 0.05 A'],
    ],
    [
      'a fuse of 3 A on a battery',
      fused(3, '24 AWG', 'kind: battery, output: 12 V DC, internal-resistance: 0.03 ohm'),
      ['fault 5 wire-overloaded: F g | current 3 A, wire 1 A'],
    ],
    [
      'two gauges on one supply',
      at(BARE, '24 AWG', 120, {
        wires: 'K1.A2 PS1.-',
        runs: [cable('24 AWG', 'red: [PS1.+, g.COM]'), cable('22 AWG', 'red: [g.NO, K1.A1]')],
      }),
      [
        'fault 5 wire-overloaded: PS1 g | current 5 A, wire 1 A | < supply-not-limited',
        'fault 5 wire-overloaded: PS1 g K1 | current 5 A, wire 2 A',
      ],
    ],
    [
      'two runs of one gauge',
      at(BARE, '24 AWG', 120, {
        wires: 'K1.A2 PS1.-',
        runs: [cable('24 AWG', 'red: [PS1.+, g.COM]'), cable('24 AWG', 'red: [g.NO, K1.A1]')],
      }),
      ['fault 5 wire-overloaded: PS1 g K1 | current 5 A, wire 1 A | < supply-not-limited'],
    ],
    [
      'before and behind a fuse',
      at(BARE, '24 AWG', 120, {
        more: [`PS1: {${BARE}}`, coil('K1', 120), 'F: {kind: fuse, rating: 3 A}'],
        wires: 'g.NO K1.A1, K1.A2 PS1.-',
        runs: [cable('24 AWG', 'red: [PS1.+, F.1]'), cable('24 AWG', 'red: [F.2, g.COM]')],
      }),
      [
        'fault 5 wire-overloaded: F g | current 3 A, wire 1 A',
        'fault 5 wire-overloaded: PS1 F | current 5 A, wire 1 A | < supply-not-limited',
      ],
    ],
    [
      'two coils that gates of their own feed',
      at(CLASS2, '24 AWG', 20, {
        parts: 'g h',
        more: [`PS1: {${CLASS2}}`, coil('K1', 20), coil('K2', 20)],
        wires: 'g.NO K1.A1, K1.A2 PS1.-, g.COM h.COM, h.NO K2.A1, K2.A2 PS1.-',
      }),
      ['fault 5 wire-overloaded: PS1 g | current 1.13 A, wire 1 A'],
    ],
    [
      'two coils on the two tabs of one gate',
      at(CLASS2, '24 AWG', 20, {
        more: [`PS1: {${CLASS2}}`, coil('K1', 20), coil('K2', 20)],
        wires: 'g.NO K1.A1, K1.A2 PS1.-, g.NC K2.A1, K2.A2 PS1.-',
      }),
      [],
    ],
    [
      'a coil that a stop at rest feeds',
      at(CLASS2, '24 AWG', 10, {
        parts: 'g c',
        wires: 'g.NO c.COM, c.NC K1.A1, K1.A2 PS1.-',
        intent: ['K1: {runs-on: [g], blocked-by: [c]}'],
      }),
      ['fault 5 wire-overloaded: PS1 g | current 1.12 A, wire 1 A'],
    ],
    [
      'a coil behind a master switch',
      at(CLASS2, '24 AWG', 10, {
        parts: 'g s',
        wires: 'g.NO s.COM, s.NO K1.A1, K1.A2 PS1.-',
        intent: ['K1: {runs-on: [g], blocked-by: [s]}'],
      }),
      ['fault 5 wire-overloaded: PS1 g | current 1.12 A, wire 1 A'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), WIRE)).toEqual(expected);
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      'by its load',
      at(CLASS2, '24 AWG', 10),
      [
        '24 AWG wire carries 1.12 A; it is good for 1 A. With every coil in that can be in together, from PS1.',
      ],
    ],
    [
      'by the supply',
      at(BARE, '24 AWG', 120),
      [
        'PS1 can push 5 A through a pinched 24 AWG wire, which is good for 1 A. The wire gets hot before anything stops the current.',
      ],
    ],
    [
      'by a fuse',
      fused(3, '24 AWG'),
      [
        'fuse F of 3 A lets a pinched 24 AWG wire carry more than its 1 A. The wire gets hot before anything stops the current.',
      ],
    ],
  ])('is overloaded %s: the words', (_, w, expected) => {
    expect(words(wired(w), /^wire-/)).toEqual(expected);
  });
});

describe('a supply with several coils', () => {
  const SUPPLY = /^supply-over/;
  const two = (limit: string, wires: string, intent: readonly string[], ohms = [24, 40] as const): Wired => ({
    parts: 'g h',
    more: [
      `PS1: {kind: supply, output: 12 V DC, limit: ${limit}, regulation: regulated, tolerance: 2 %, class-2: true}`,
      coil('K1', ohms[0]),
      coil('K2', ohms[1]),
    ],
    wires,
    intent,
  });
  const apart = 'PS1.+ g.COM, PS1.+ h.COM, g.NO K1.A1, h.NO K2.A1, K1.A2 PS1.-, K2.A2 PS1.-';
  const never = 'PS1.+ g.COM, g.NO K1.A1, g.NC K2.A1, K1.A2 PS1.-, K2.A2 PS1.-, h.COM PS1.+';
  const both = ['K1: {runs-on: [g]}', 'K2: {runs-on: [h]}'];
  it.each<[string, Wired, readonly string[]]>([
    [
      '0.8 A together on 0.9 A',
      two('0.9 A', apart, both),
      ['caution 5 supply-overloaded: PS1 K1 K2 | draw 0.8 A, limit 0.9 A'],
    ],
    [
      '0.8 A together on 0.7 A',
      two('0.7 A', apart, both),
      ['fault 5 supply-overloaded: PS1 K1 K2 | draw 0.8 A, limit 0.7 A'],
    ],
    ['0.8 A together on 1.1 A', two('1.1 A', apart, both), []],
    ['never together, 0.5 A on 0.7 A', two('0.7 A', never, ['K1: {runs-on: [g]}']), []],
    [
      'never together, 0.5 A on 0.55 A',
      two('0.55 A', never, ['K1: {runs-on: [g]}']),
      ['caution 5 supply-overloaded: PS1 K1 | draw 0.5 A, limit 0.55 A'],
    ],
    [
      'never together, 0.5 A on 0.4 A',
      two('0.4 A', never, ['K1: {runs-on: [g]}']),
      ['fault 5 supply-overloaded: PS1 K1 | draw 0.5 A, limit 0.4 A'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), SUPPLY)).toEqual(expected);
  });
  it('says with what they are in', () => {
    expect(words(wired(two('0.7 A', apart, both)), SUPPLY)).toEqual([
      'PS1 gives 700 mA; K1 and K2 can draw 800 mA. The supply sags, cuts out or overheats when everything is in at once.',
    ]);
    expect(words(wired(two('0.4 A', never, ['K1: {runs-on: [g]}'])), SUPPLY)).toEqual([
      'PS1 gives 400 mA; K1 can draw 500 mA. The supply sags, cuts out or overheats when everything is in at once.',
    ]);
  });
  it.each<[number, readonly string[]]>([
    [10, []],
    [12, ['fault 5 supply-overloaded: PS1 K0 K1 K2 K3 K4 K5 K6 K7 K8 K9 K10 K11 | draw 1.2 A, limit 0.7 A']],
  ])('%i coils on a supply', (count, expected) => {
    const names = Array.from({ length: count }, (_, i) => `K${i}`);
    const text = wired({
      parts: `g ${names.join(' ')}`,
      more: [
        'PS1: {kind: supply, output: 12 V DC, limit: 0.7 A, regulation: regulated, tolerance: 2 %, class-2: true}',
      ],
      wires: names
        .map((k, i) => `PS1.- ${k}.A2, g.${i % 2 ? 'NC' : 'NO'} ${k}.A1`)
        .join(', ')
        .concat(', PS1.+ g.COM'),
      intent: ['K0: {runs-on: [g]}'],
    });
    expect(told(text, SUPPLY)).toEqual(expected);
  });
});
