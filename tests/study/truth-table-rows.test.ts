/** The truth table: which states a person would list, what each input is called there, and what is expected. */
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { TooManyInputs } from '../../src/study/truth-table.ts';
import { type Wired, wired } from '../findings/wired-plans.ts';

const S = 'S: {kind: selector, positions: [off, auto, hand], rest: off, contact: {ratings: [5 A 30 V DC]}}';

function table(w: Wired, all = false) {
  const read = readPlan(wired(w), 'table.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return Study.of(read.plan).truthTable({ all });
}
/** Each row as `label: inputs / relays / loads / expected`. */
const rows = (w: Wired, all = false) =>
  table(w, all).rows.map((r) => {
    const say = (x: Readonly<Record<string, string>>) =>
      Object.entries(x)
        .map(([k, v]) => `${k} ${v}`)
        .join(' ');
    return `${r.label}: ${[r.inputs, r.relays, r.loads, r.expected].map(say).join(' / ')}`;
  });

const plan = (
  parts: string,
  wires: string,
  intent: readonly string[],
  more: readonly string[] = [],
): Wired => ({ parts: `PS1 ${parts}`, wires, intent, more });
const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';

describe('the rows', () => {
  it.each<[string, Wired, readonly string[]]>([
    [
      'a button and a cut-out',
      plan('g b c K1', 'PS1.+ c.COM, c.NC b.COM, b.NC g.COM, g.NO K1.A1, K1.A2 PS1.-', [
        'K1: {runs-on: [g], blocked-by: [b, c]}',
      ]),
      [
        'all shut: g shut b released c normal / K1 out /  / K1 out',
        'g alone: g open b released c normal / K1 in /  / K1 in',
        'all gates open, b pressed: g open b pressed c normal / K1 out /  / K1 out',
        'all gates open, c tripped: g open b released c tripped / K1 out /  / K1 out',
      ],
    ],
    [
      'a selector that has to be off its rest',
      plan(
        'g h K1',
        'PS1.+ S.COM, S.auto g.COM, S.hand K1.A1, g.NO K1.A1, K1.A2 PS1.-',
        ['K1: {runs-on: [[g, S.auto], S.hand], blocked-by: [S.off]}'],
        [S],
      ),
      [
        'all shut: g shut h shut S off / K1 out /  / K1 out',
        'all shut, nothing blocking: g shut h shut S hand / K1 in /  / K1 in',
        'g with auto alone: g open h shut S auto / K1 in /  / K1 in',
        'all gates open: g open h open S hand / K1 in /  / K1 in',
        'all gates open, S at off: g open h open S off / K1 out /  / K1 out',
      ],
    ],
    [
      'a selector one position of which blocks',
      plan(
        'g h K1',
        'PS1.+ S.COM, S.off g.COM, S.auto g.COM, g.NO K1.A1, K1.A2 PS1.-',
        ['K1: {runs-on: [g], blocked-by: [S.hand]}'],
        [S],
      ),
      [
        'all shut: g shut h shut S off / K1 out /  / K1 out',
        'g alone: g open h shut S off / K1 out /  / K1 in',
        'all gates open: g open h open S off / K1 out /  / K1 in',
        'all gates open, S at hand: g open h open S hand / K1 out /  / K1 out',
      ],
    ],
    [
      'two switches of which one blocks',
      plan('g s s2 K1', 'PS1.+ s.COM, s.NO g.COM, g.NO s2.COM, s2.NC K1.A1, K1.A2 PS1.-', [
        'K1: {runs-on: [g], blocked-by: [s]}',
      ]),
      [
        'all shut: g shut s off s2 off / K1 out /  / K1 out',
        'all shut, nothing blocking: g shut s on s2 off / K1 out /  / K1 out',
        'g alone: g open s on s2 off / K1 in /  / K1 in',
        'all gates open, s off: g open s off s2 off / K1 out /  / K1 out',
      ],
    ],
    [
      'two loads, one of them blocked',
      plan(
        'g h c K1 K2',
        'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, PS1.+ c.COM, c.NC h.COM, h.NO K2.A1, K2.A2 PS1.-',
        ['K1: {runs-on: [g]}', 'K2: {runs-on: [h], blocked-by: [c]}'],
      ),
      [
        'all shut: g shut h shut c normal / K1 out K2 out /  / K1 out K2 out',
        'g alone: g open h shut c normal / K1 in K2 out /  / K1 in K2 out',
        'h alone: g shut h open c normal / K1 out K2 in /  / K1 out K2 in',
        'all gates open: g open h open c normal / K1 in K2 in /  / K1 in K2 in',
        'all gates open, c tripped: g open h open c tripped / K1 in K2 out /  / K1 in K2 out',
      ],
    ],
    [
      'a relay that chatters',
      plan('g K1', 'PS1.+ g.COM, g.NO K1.COM, K1.NC K1.A1, K1.A2 PS1.-', ['K1: {runs-on: [g]}']),
      ['all shut: g shut / K1 out /  / K1 out', 'g alone: g open / K1 chatters /  / K1 in'],
    ],
    [
      'what is wired but not meant',
      plan('g h K1', `${LOOP}, PS1.+ h.COM, h.NO K1.A1`, ['K1: {runs-on: [g]}']),
      [
        'all shut: g shut h shut / K1 out /  / K1 out',
        'g alone: g open h shut / K1 in /  / K1 in',
        'all gates open: g open h open / K1 in /  / K1 in',
      ],
    ],
    [
      'a motor and an outlet behind the relay',
      plan(
        'g K1',
        `${LOOP}, P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE, K1.NO X1.L, P1.N X1.N, P1.PE X1.PE`,
        ['K1: {runs-on: [g]}'],
        [
          'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
          'X1: {kind: outlet, pattern: NEMA 5-15}',
          'M: {kind: motor, volts: 120 V AC, amps: 5 A}',
        ],
      ),
      ['all shut: g shut / K1 out / M off / K1 out M off', 'g alone: g open / K1 in / M runs / K1 in M runs'],
    ],
  ])('%s', (_, w, expected) => {
    expect(rows(w)).toEqual(expected);
  });

  it('all of them: every position of a selector with every other input', () => {
    const w = plan(
      'g K1',
      'PS1.+ S.COM, S.auto g.COM, S.hand K1.A1, g.NO K1.A1, K1.A2 PS1.-',
      ['K1: {runs-on: [[g, S.auto], S.hand], blocked-by: [S.off]}'],
      [S],
    );
    expect(rows(w, true)).toEqual([
      'everything at rest (all gates shut): g shut S off / K1 out /  / K1 out',
      'g open: g open S off / K1 out /  / K1 out',
      'S at auto: g shut S auto / K1 out /  / K1 out',
      'g open, S at auto: g open S auto / K1 in /  / K1 in',
      'S at hand: g shut S hand / K1 in /  / K1 in',
      'g open, S at hand: g open S hand / K1 in /  / K1 in',
    ]);
    expect(table(w).columns).toEqual(['g', 'S', 'K1']);
  });

  it('twelve inputs are listed, thirteen are too many to read', () => {
    const gates = (n: number) => {
      const names = Array.from({ length: n }, (_, i) => `g${i}`);
      return plan(
        `${names.join(' ')} K1`,
        names
          .map((n2) => `PS1.+ ${n2}.COM, ${n2}.NO K1.A1`)
          .join(', ')
          .concat(', K1.A2 PS1.-'),
        [`K1: {runs-on: [${names.join(', ')}]}`],
      );
    };
    expect(table(gates(12), true).rows).toHaveLength(4096);
    expect(() => table(gates(13), true)).toThrow(TooManyInputs);
    expect(() => table(gates(13), true)).toThrow(/at most 12 inputs; this plan has 13/);
  });
});
