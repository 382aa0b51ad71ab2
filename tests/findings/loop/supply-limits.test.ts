/** Limits of a supply, and the fuse next to a source. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { told, type Wired, wired } from '../wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

const one = (more: Partial<Wired>): Wired => ({
  parts: 'PS1 g K1',
  wires: LOOP,
  intent: ['K1: {runs-on: [g]}'],
  ...more,
});

/** The plain loop on another source. */
const on = (source: string, more: Partial<Wired> = {}): Wired =>
  one({ parts: 'g K1', more: [`PS1: {${source}}`], ...more });

const SUPPLY = /^supply-(over|not)/;

describe('limits of a supply', () => {
  const dc = (fields: string) =>
    on(
      `kind: supply, output: ${fields}`,
      / AC/.test(fields) ? { wires: LOOP.replace('+', '~1').replace('PS1.-', 'PS1.~2') } : {},
    );
  it.each<[string, Wired, readonly string[]]>([
    [
      '60 V DC',
      dc('60 V DC, limit: 1 A, regulation: regulated, class-2: true'),
      ['danger 1 supply-over-limits: PS1 | highest output 63 V, limit 60 V'],
    ],
    [
      '61 V DC',
      dc('61 V DC, limit: 1 A, regulation: regulated, class-2: true'),
      ['danger 1 supply-over-limits: PS1 | highest output 64.05 V, limit 60 V'],
    ],
    ['30 V AC', dc('30 V AC, limit: 30 VA, regulation: transformer, no-load: 30 V, class-2: true'), []],
    [
      '29 V AC that give 31 V with no load',
      dc('29 V AC, limit: 30 VA, regulation: transformer, no-load: 31 V, class-2: true'),
      ['danger 1 supply-over-limits: PS1 | highest output 31 V, limit 30 V'],
    ],
    [
      '24 V AC of 105 VA',
      dc('24 V AC, limit: 105 VA, regulation: transformer, no-load: 26 V, class-2: true'),
      ['caution 5 supply-not-limited: PS1 | stated 4.38 A, Class 2 4.17 A'],
    ],
    [
      '24 V AC of 90 VA',
      dc('24 V AC, limit: 90 VA, regulation: transformer, no-load: 26 V, class-2: true'),
      [],
    ],
    ['no mark', dc('12 V DC, limit: 1 A, regulation: regulated'), ['caution 5 supply-not-limited: PS1']],
    [
      'marked as not limited',
      dc('12 V DC, limit: 1 A, regulation: regulated, class-2: false'),
      ['caution 5 supply-not-limited: PS1'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), SUPPLY)).toEqual(expected);
  });
  it.each<[string, Wired, readonly string[]]>([
    [
      '50 V AC',
      dc('50 V AC, limit: 30 VA, regulation: transformer, no-load: 50 V, class-2: true'),
      ['danger 1 supply-over-limits: PS1 | highest output 50 V, limit 30 V'],
    ],
    [
      '120 V DC',
      dc('120 V DC, limit: 1 A, regulation: regulated, class-2: true'),
      ['danger 1 supply-over-limits: PS1 | highest output 126 V, limit 60 V'],
    ],
    ['a mark is taken as told', dc('24 V DC, limit: 90 A, regulation: regulated, class-2: true'), []],
  ])('iec: %s', (_, w, expected) => {
    expect(told(wired({ ...w, practice: 'iec' }), SUPPLY)).toEqual(expected);
  });
  // IEC 61140, from memory: above 50 V AC or 120 V DC it is extra-low voltage no more, so the gates stand in a mains circuit.
  it.each(
    [
      '51 V AC, limit: 30 VA, regulation: transformer, no-load: 51 V, class-2: true',
      '121 V DC, limit: 1 A, regulation: regulated, class-2: true',
    ].flatMap((fields) => ['nec', 'iec'].map((practice) => [fields, practice] as const)),
  )('%s is mains to whatever it feeds (%s)', (fields, practice) => {
    const text = wired({ ...dc(fields), practice });
    expect(told(text, /^(supply-(over|not)|mains-through-gate)/)).toEqual([
      'danger 1 mains-through-gate: g | g.COM g.NO',
    ]);
    expect(judge(Study.of(planOf(text))).verdict).toBe('fail');
  });
});

describe('a fuse next to a source', () => {
  const BARE = 'kind: supply, output: 12 V DC, limit: 5 A, regulation: regulated';
  const F = 'F: {kind: fuse, rating: 1 A}';
  const at = (wires: string, source = BARE, more: readonly string[] = [F]) =>
    on(source, { wires, more: [`PS1: {${source}}`, ...more] });
  it.each<[string, Wired, readonly string[]]>([
    ['in the + side', at('PS1.+ F.1, F.2 g.COM, g.NO K1.A1, K1.A2 PS1.-'), []],
    ['in the - side', at('PS1.+ g.COM, g.NO K1.A1, K1.A2 F.1, F.2 PS1.-'), []],
    [
      'behind the gate',
      at('PS1.+ g.COM, g.NO F.1, F.2 K1.A1, K1.A2 PS1.-'),
      ['caution 5 supply-not-limited: PS1'],
    ],
    [
      'beside a gate that has none',
      { ...at('PS1.+ F.1, F.2 g.COM, g.NO K1.A1, K1.A2 PS1.-, PS1.+ h.COM, h.NO K1.A1'), parts: 'g h K1' },
      ['caution 5 supply-not-limited: PS1'],
    ],
    [
      'behind a lamp',
      at('PS1.+ F.1, F.2 g.COM, g.NO K1.A1, K1.A2 PS1.-, PS1.+ X.1, X.2 PS1.-', BARE, [
        F,
        'X: {kind: lamp, rated: 12 V DC 1 W}',
      ]),
      ['caution 5 supply-not-limited: PS1'],
    ],
    [
      'two side by side',
      at('PS1.+ F.1, F.2 g.COM, PS1.+ E.1, E.2 g.COM, g.NO K1.A1, K1.A2 PS1.-', BARE, [
        F,
        'E: {kind: fuse, rating: 2 A}',
      ]),
      [],
    ],
    [
      'on a battery',
      at(
        'PS1.+ F.1, F.2 g.COM, g.NO K1.A1, K1.A2 PS1.-',
        'kind: battery, output: 12 V DC, internal-resistance: 0.03 ohm',
      ),
      [],
    ],
    [
      'none on a battery',
      at(LOOP, 'kind: battery, output: 12 V DC, internal-resistance: 0.03 ohm', []),
      ['caution 5 supply-not-limited: PS1'],
    ],
    [
      'on an AC supply',
      {
        ...at(
          'PS1.~1 F.1, F.2 g.COM, g.NO K2.A1, K2.A2 PS1.~2',
          'kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, no-load: 26 V',
          [
            F,
            'K2: {kind: relay, coil: {rated: 24 V AC, power: 3 VA, inrush: 5 VA, most: 150 %}, contact: {ratings: [5 A 30 V DC]}}',
          ],
        ),
        parts: 'g',
        intent: ['K2: {runs-on: [g]}'],
      },
      [],
    ],
    [
      'none on an AC supply',
      {
        ...at(
          'PS1.~1 g.COM, g.NO K2.A1, K2.A2 PS1.~2',
          'kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, no-load: 26 V',
          [
            'K2: {kind: relay, coil: {rated: 24 V AC, power: 3 VA, inrush: 5 VA, most: 150 %}, contact: {ratings: [5 A 30 V DC]}}',
          ],
        ),
        parts: 'g',
        intent: ['K2: {runs-on: [g]}'],
      },
      ['caution 5 supply-not-limited: PS1'],
    ],
  ])('%s', (_, w, expected) => {
    expect(told(wired(w), /^supply-not/)).toEqual(expected);
  });
});

describe('a transformer while armatures close', () => {
  // It gives twice its rating for that moment, but no more than its rating for long: common practice, no source.
  const ac = (holding: number, inrush: number) =>
    on('kind: supply, output: 24 V AC, limit: 20 VA, regulation: transformer, no-load: 25 V, class-2: true', {
      parts: 'g',
      more: [
        'PS1: {kind: supply, output: 24 V AC, limit: 20 VA, regulation: transformer, no-load: 25 V, class-2: true}',
        `K1: {kind: relay, coil: {rated: 24 V AC, power: ${holding} VA, inrush: ${inrush} VA, pull-in: 50 %, most: 150 %}, contact: {ratings: [5 A 30 V DC]}}`,
      ],
      wires: 'PS1.~1 g.COM, g.NO K1.A1, K1.A2 PS1.~2',
    });
  it.each([
    ['twice its rating', 6, 39, 'caution'],
    ['more than twice', 6, 41, 'fault'],
    ['more than its rating for long', 21, 39, 'fault'],
  ])('%s', (_, holding, inrush, severity) => {
    const said = told(wired(ac(holding, inrush)), /^supply-overloaded/);
    expect(said.map((line) => line.split(' ')[0])).toEqual([severity]);
  });
});
