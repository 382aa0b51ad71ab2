/** A wiring that breaks one more habit of its plan is the odder one, whichever habit it is. */
import { describe, expect, it } from 'vitest';
import { Oddness } from '../../src/repair/oddness.ts';
import { Places } from '../../src/repair/places.ts';
import { planOf } from '../helpers/plan-of.ts';

/** Three gates in a chain, a lamp, a coil with its diode, a motor; everything done as the rest of its kind. */
const NEAT = `practice: nec
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 300 V}
  cord: {kind: cable, gauge: 14 AWG, cores: 3, insulation: 600 V}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}
  g: {from: snap}
  h: {from: snap}
  i: {from: snap}
  k: {from: snap}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [10 A 250 V AC]}}
  D1: {kind: diode, current: 1 A, reverse: 400 V}
  X: {kind: lamp, rated: 12 V DC 1 W}
  J: {kind: joint}
  P1: {kind: plug, volts: 120 V AC, breaker: 15 A}
  M: {kind: motor, volts: 120 V AC, amps: 5 A}
runs:
  - {cable: bell, length: 1 m, cores: {red: [PS1.+, g.COM], white: [K1.A1, g.NO]}}
  - {cable: bell, length: 1 m, cores: {red: [g.COM, h.COM], white: [g.NO, h.NO]}}
  - {cable: bell, length: 1 m, cores: {red: [h.COM, i.COM], white: [h.NO, i.NO]}}
  - {cable: bell, length: 1 m, cores: {red: [i.COM, k.COM], white: [i.NO, k.NO]}}
  - {cable: bell, length: 1 m, cores: {red: [PS1.+, X.1], black: [PS1.-, X.2]}}
  - {link: [PS1.-, J]}
  - {link: [J, K1.A2]}
  - {link: [D1.K, K1.A1]}
  - {link: [D1.A, K1.A2]}
  - {cable: cord, length: 1 m, cores: {black: [P1.L, K1.COM], white: [P1.N, M.N], green: [P1.PE, M.PE]}}
  - {link: [K1.NO, M.L]}
`;

function oddness(changes: readonly (readonly [string, string])[], lacking = 0): number {
  const right = planOf(NEAT);
  const text = changes.reduce((t, [from, to]) => {
    expect(t.split(from).length - 1, from).toBe(1);
    return t.replace(from, () => to);
  }, NEAT);
  return new Oddness(right, new Places(right)).of(planOf(text), lacking);
}

/** Each breaks one habit; whatever else goes with it is a broken habit too. */
const BROKEN: readonly (readonly [string, ...(readonly [string, string])[]])[] = [
  ['a core that ends elsewhere than the others of its cable', ['white: [h.NO, i.NO]', 'white: [h.NO, k.NO]']],
  ['a tab that its twins leave bare', ['white: [i.NO, k.NO]', 'white: [i.NO, k.NC]']],
  ['another colour on one conductor', ['white: [h.NO, i.NO]', 'blue: [h.NO, i.NO]']],
  ['a lamp with both ends on one conductor', ['black: [PS1.-, X.2]', 'black: [PS1.+, X.2]']],
  ['a diode with both ends on one conductor', ['[D1.A, K1.A2]', '[D1.A, K1.A1]']],
  ['a joint that joins nothing', ['[J, K1.A2]', '[PS1.-, K1.A2]']],
  ['a core left out of a cable', [', white: [i.NO, k.NO]', '']],
  [
    'a core left unused in a cable beside a link that does its work',
    [', black: [PS1.-, X.2]', ''],
    ['[K1.NO, M.L]}', '[K1.NO, M.L]}\n  - {link: [PS1.-, X.2]}'],
  ],
  [
    'a gate with its ends changed over',
    ['{red: [i.COM, k.COM], white: [i.NO, k.NO]}', '{red: [i.COM, k.NO], white: [i.NO, k.COM]}'],
  ],
  [
    'the feed on the far side of a contact',
    ['[P1.L, K1.COM]', '[P1.L, K1.NO]'],
    ['[K1.NO, M.L]', '[K1.COM, M.L]'],
  ],
  ['red on the minus', ['red: [PS1.+, X.1], black: [PS1.-, X.2]', 'red: [PS1.-, X.1], black: [PS1.+, X.2]']],
  [
    'black on the neutral and white on the line',
    ['black: [P1.L, K1.COM], white: [P1.N, M.N]', 'white: [P1.L, K1.COM], black: [P1.N, M.N]'],
  ],
  ['a diode across no coil', ['[D1.A, K1.A2]', '[D1.A, PS1.+]']],
  ['a core that joins what another of its cable joins', ['white: [h.NO, i.NO]', 'white: [h.COM, i.COM]']],
  ['a link across a switch', ['[K1.NO, M.L]}', '[K1.NO, M.L]}\n  - {link: [k.COM, k.NO]}']],
  ['a contact that is spanned', ['[K1.NO, M.L]}', '[K1.NO, M.L]}\n  - {link: [K1.COM, K1.NO]}']],
];

describe('one habit broken', () => {
  it.each(BROKEN.map(([name, ...changes]) => ({ name, changes })))('$name', ({ changes }) => {
    expect(oddness(changes)).toBeGreaterThan(oddness([]));
  });
  it('a terminal that lacks its core', () => {
    expect(oddness([], 1)).toBeGreaterThan(oddness([]));
  });
});

describe('a neat wiring', () => {
  it('turned about its ends as written is as neat', () => {
    expect(oddness([['[g.COM, h.COM]', '[h.COM, g.COM]']])).toBe(oddness([]));
    expect(oddness([['[D1.K, K1.A1]', '[K1.A1, D1.K]']])).toBe(oddness([]));
  });
});

describe('two habits broken, in places that have nothing to do with each other', () => {
  const apart = [BROKEN[2]!, BROKEN[9]!, BROKEN[10]!].map(([, ...changes]) => changes);
  it('weigh as much as the two by themselves', () => {
    for (const x of apart)
      for (const y of apart)
        if (x !== y) expect(oddness([...x, ...y])).toBeCloseTo(oddness(x) + oddness(y) - oddness([]), 9);
  });
});
