/** What is proposed where wire or fuse of the loop is too small. */
import { describe, expect, it } from 'vitest';
import { checkedReportOf } from '../contact-plans.ts';
import { told, type Wired, wired } from '../wired-plans.ts';

const fixes = (text: string, ids: RegExp) =>
  checkedReportOf(text)
    .findings.filter((f) => ids.test(f.id))
    .map((f) => f.fix);

const cable = (gauge: string, metres: number, cores: string) =>
  `{cable: {gauge: ${gauge}, cores: 2, insulation: 300 V, strands: solid}, length: ${metres} m, cores: {${cores}}}`;

const K = (ohms: number, more = '') =>
  `K1: {kind: relay, coil: {rated: 12 V DC, resistance: ${ohms} ohm, pull-in: 50 %, tolerance: 0 %, hot-rise: 0 K, most: 200 %, suppressor: diode${more}}, contact: {ratings: [5 A 30 V DC]}}`;

describe('a tenth of the supply lost in the wire', () => {
  const far = (gauge: string, metres: number, more: Partial<Wired> = {}): Wired => ({
    parts: 'PS1 g',
    more: [K(120)],
    wires: 'K1.A2 PS1.-',
    runs: [cable(gauge, metres, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]')],
    intent: ['K1: {runs-on: [g]}'],
    ...more,
  });
  const joints = ['p: {kind: joint}', 'q: {kind: joint}'];
  // A ninth of the coil's 120 ohm in the wire takes a tenth of the volts; 20 AWG has 33.3 ohm/km, ASTM B258.
  it.each<[string, Wired, readonly string[], readonly string[]]>([
    ['195 m of 20 AWG', far('20 AWG', 195), [], []],
    [
      '205 m of 20 AWG',
      far('20 AWG', 205),
      ['caution 5 drop-large: g K1 | lost 10.3 %, most 10 %'],
      ['Use 18 AWG for run 2.'],
    ],
    [
      '400 m of 20 AWG',
      far('20 AWG', 400),
      ['caution 5 drop-large: g K1 | lost 18.2 %, most 10 %'],
      ['Use 16 AWG for run 2.'],
    ],
    [
      '205 m of 0.5 mm2',
      far('0.5 mm2', 205),
      ['caution 5 drop-large: g K1 | lost 11 %, most 10 %'],
      ['Use 0.75 mm2 for run 2.'],
    ],
    [
      '3000 m of 20 AWG',
      far('20 AWG', 3000, { more: [K(1200)] }),
      ['caution 5 drop-large: g K1 | lost 14.3 %, most 10 %'],
      ['Use 18 AWG for run 2.'],
    ],
    [
      'thick wire behind thin',
      far('20 AWG', 1, {
        more: [K(120), ...joints],
        runs: [
          cable('20 AWG', 200, 'red: [PS1.+, p], black: [K1.A1, q]'),
          cable('14 AWG', 200, 'red: [p, g.COM], black: [q, g.NO]'),
        ],
      }),
      ['caution 5 drop-large: g K1 | lost 12.2 %, most 10 %'],
      ['Use 18 AWG for run 2.'],
    ],
    [
      'thin wire behind thick',
      far('20 AWG', 1, {
        more: [K(120), ...joints],
        runs: [
          cable('14 AWG', 200, 'red: [PS1.+, p], black: [K1.A1, q]'),
          cable('20 AWG', 200, 'red: [p, g.COM], black: [q, g.NO]'),
        ],
      }),
      ['caution 5 drop-large: g K1 | lost 12.2 %, most 10 %'],
      ['Use 18 AWG for run 3.'],
    ],
    [
      'the farther of two gates',
      far('20 AWG', 1, {
        parts: 'PS1 g h',
        runs: [
          cable('20 AWG', 100, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]'),
          cable('20 AWG', 150, 'red: [g.COM, h.COM], black: [g.NO, h.NO]'),
        ],
        intent: ['K1: {runs-on: [g, h]}'],
      }),
      ['caution 5 drop-large: h K1 | lost 12.2 %, most 10 %'],
      ['Use 18 AWG for run 3.'],
    ],
    [
      'the nearer of two gates is told first',
      far('20 AWG', 1, {
        parts: 'PS1 g h',
        runs: [
          cable('20 AWG', 250, 'red: [PS1.+, h.COM], black: [K1.A1, h.NO]'),
          cable('20 AWG', 150, 'red: [PS1.+, g.COM], black: [K1.A1, g.NO]'),
        ],
        intent: ['K1: {runs-on: [g, h]}'],
      }),
      ['caution 5 drop-large: h K1 | lost 12.2 %, most 10 %'],
      ['Use 18 AWG for run 2.'],
    ],
    [
      'a resistor of 20 ohm in line, and no wire',
      far('20 AWG', 1, {
        more: [K(120), 'R: {kind: resistor, resistance: 20 ohm}'],
        wires: 'K1.A2 PS1.-, PS1.+ g.COM, g.NO R.1, R.2 K1.A1',
        runs: [],
      }),
      [],
      [],
    ],
    [
      'an AC coil',
      far('20 AWG', 115, {
        parts: 'g',
        more: [
          'PS1: {kind: supply, output: 24 V AC, limit: 100 VA, regulation: transformer, no-load: 25 V, class-2: true}',
          'K1: {kind: relay, coil: {rated: 24 V AC, power: 5 VA, inrush: 9 VA, most: 130 %}, contact: {ratings: [5 A 30 V DC]}}',
        ],
        wires: 'K1.A2 PS1.~2',
        runs: [cable('20 AWG', 115, 'red: [PS1.~1, g.COM], black: [K1.A1, g.NO]')],
      }),
      ['caution 5 drop-large: g K1 | lost 10.7 %, most 10 %'],
      ['Use 18 AWG for run 2.'],
    ],
  ])('%s', (_, w, expected, fix) => {
    const text = wired(w);
    expect(told(text, /^drop-/)).toEqual(expected);
    expect(fixes(text, /^drop-/)).toEqual(fix);
  });
});

describe('wire that a fuse or a supply can overload', () => {
  const at = (limit: string, gauge: string, fuse?: string, ohms = 120): Wired => ({
    parts: 'g',
    more: [
      `PS1: {kind: supply, output: 12 V DC, regulation: regulated, tolerance: 2 %, ${limit}}`,
      K(ohms),
      ...(fuse ? [`F: {kind: fuse, rating: ${fuse}}`] : []),
    ],
    wires: `${fuse ? 'PS1.+ F.2, ' : ''}g.NO K1.A1, K1.A2 PS1.-`,
    runs: [cable(gauge, 1, `red: [${fuse ? 'F.1' : 'PS1.+'}, g.COM]`)],
    intent: ['K1: {runs-on: [g]}'],
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      '1.2 A through 24 AWG',
      at('limit: 5 A, class-2: true', '24 AWG', undefined, 10),
      ['Use 22 AWG for run 3 in place of 24 AWG.'],
    ],
    ['5 A into 24 AWG', at('limit: 5 A', '24 AWG'), ['Put a slow fuse of 1 A next to PS1.+.']],
    ['3 A into 0.3 mm2', at('limit: 3 A', '0.3 mm2'), ['Put a slow fuse of 1 A next to PS1.+.']],
    [
      'a fuse of 2 A before 24 AWG',
      at('limit: 5 A', '24 AWG', '2 A'),
      ['Fit a slow fuse of 1 A as F; or use 22 AWG for run 4 in place of 24 AWG.'],
    ],
    // 12 AWG carries 20 A by the 60 °C column of NEC Table 310.16
    [
      'a fuse of 20 A before 24 AWG',
      at('limit: 50 A', '24 AWG', '20 A'),
      ['Fit a slow fuse of 1 A as F; or use 12 AWG for run 4 in place of 24 AWG.'],
    ],
    ['a fuse of 0.06 A for 0.1 A', at('limit: 5 A', '24 AWG', '0.06 A'), ['Fit a slow fuse of 100 mA as F.']],
    ['100 A into 24 AWG', at('limit: 100 A', '24 AWG'), ['Put a slow fuse of 1 A next to PS1.+.']],
  ])('%s', (_, w, expected) => {
    expect(fixes(wired(w), /^(wire-|fuse-)/)).toEqual(expected);
  });
  it('of two fuses side by side the larger one counts', () => {
    const two = (a: string, b: string): Wired => ({
      ...at('limit: 9 A', '24 AWG', a),
      more: [...at('limit: 9 A', '24 AWG', a).more!, `E: {kind: fuse, rating: ${b}}`],
      wires: 'PS1.+ F.2, PS1.+ E.1, E.2 F.1, g.NO K1.A1, K1.A2 PS1.-',
    });
    expect(told(wired(two('1 A', '3 A')), /^wire-/)).toEqual([
      'fault 5 wire-overloaded: E F g | current 3 A, wire 1 A | < supply-not-limited',
    ]);
    expect(told(wired(two('3 A', '1 A')), /^wire-/)).toEqual([
      'fault 5 wire-overloaded: F g | current 3 A, wire 1 A | < supply-not-limited',
    ]);
    expect(told(wired(two('1 A', '1 A')), /^wire-/)).toEqual([]);
  });
});

describe('a zone without the fuse that another zone has', () => {
  it('is told of the fuses of zones, and not of one ahead of wire that belongs to none', () => {
    // What 24 AWG carries is far below what the fuse of the whole loop lets through; X and F2 are no zone's.
    const thin = (cores: string) => cable('24 AWG', 2, cores);
    const text = wired({
      parts: 'g1 h1 g2 h2 K1 K2 K3',
      more: [
        'PS1: {kind: supply, output: 12 V DC, limit: 8 A, regulation: regulated, tolerance: 2 %}',
        ...[6, 1, 1].map((amps, n) => `F${n}: {kind: fuse, rating: ${amps} A}`),
        'X: {kind: lamp, rated: 12 V DC 1 W}',
      ],
      wires: [
        ...['PS1.+ F0.1', 'F0.2 F1.1', 'F0.2 F2.1', 'K1.A2 PS1.-', 'K2.A2 PS1.-', 'K3.A2 PS1.-', 'X.2 PS1.-'],
        ...['F0.2 K1.COM', 'F0.2 K2.COM', 'K1.NO K3.A1', 'K2.NO K3.A1'],
      ].join(', '),
      runs: [
        thin('red: [F0.2, g1.COM], black: [K1.A1, g1.NO]'),
        thin('red: [g1.COM, h1.COM], black: [g1.NO, h1.NO]'),
        thin('red: [F1.2, g2.COM], black: [K2.A1, g2.NO]'),
        thin('red: [g2.COM, h2.COM], black: [g2.NO, h2.NO]'),
        thin('red: [F2.2, X.1]'),
      ],
      intent: ['K3: {runs-on: [g1, h1, g2, h2]}'],
    });
    const [found, ...more] = checkedReportOf(text).findings.filter((f) => f.id === 'wire-overloaded');
    expect(more).toEqual([]);
    expect(found!.message).toMatch(/^the zone of K1 has no fuse of its own: fuse F0 of 6 A /);
    expect(found!.fix).toMatch(/^Put a slow fuse of 1 A next to F0\.2, ahead of runs 12 and 13; or /);
    expect(found!.why).toContain('In the other zones F1 stands ahead of such wire.');
  });
});
