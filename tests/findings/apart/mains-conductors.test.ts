/** Question 1 on the mains conductors, in pairs of plans one core apart. */
import { describe, expect, it } from 'vitest';
import {
  base,
  lacks,
  legs,
  link,
  PRACTICES,
  pair,
  phases,
  put,
  severityOf,
  withParts,
  withRuns,
} from '../apart-plans.ts';

const GATE = 'g2: {kind: gate, contact: {ratings: [5 A 250 V AC]}}';
const LAMP = 'H1: {kind: lamp, rated: 120 V AC 3 W}';
const COIL = 'K2: {kind: relay, contact: {ratings: [5 A 250 V AC]}, coil: {rated: 120 V AC, power: 3 VA}}';

describe('line-not-switched', () => {
  it.each(PRACTICES)('%s: the contact in the neutral, or in the line', (practice) => {
    const neutral = put(
      base(practice),
      ['black: [P1.L, K1.COM], white: [P1.N, X1.N]', 'black: [P1.L, X1.L], white: [P1.N, K1.COM]'],
      ['black: [K1.NO, X1.L]', 'white: [K1.NO, X1.N]'],
    );
    pair('line-not-switched', 'danger', neutral, base(practice));
  });

  it.each(PRACTICES)(
    '%s: one of two legs is a warning behind a plug, a danger where it is fixed',
    (practice) => {
      const one = put(legs(practice), ['[K1.4, X1.L2]', '[K1.3, X1.L2]']);
      pair('line-not-switched', 'warning', one, legs(practice));
      expect(severityOf(put(one, ['pattern: NEMA 5-20', 'pattern: fixed']), 'line-not-switched')).toBe(
        'danger',
      );
    },
  );

  it.each(PRACTICES)('%s: two of three phases', (practice) => {
    const two = put(phases(practice), ['[K1.6, X1.L3]', '[K1.5, X1.L3]']);
    pair('line-not-switched', 'danger', two, phases(practice));
  });
});

describe('phase-order', () => {
  it.each(PRACTICES)('%s: two phases exchanged; all three moved on by one keep the direction', (practice) => {
    const at = (x: number, y: number, z: number) =>
      put(
        phases(practice),
        ['[K1.2, X1.L1]', `[K1.2, X1.L${x}]`],
        ['[K1.4, X1.L2]', `[K1.4, X1.L${y}]`],
        ['[K1.6, X1.L3]', `[K1.6, X1.L${z}]`],
      );
    for (const [x, y, z] of [
      [2, 1, 3],
      [1, 3, 2],
      [3, 2, 1],
    ] as const)
      pair('phase-order', 'caution', at(x, y, z), at(1, 2, 3));
    lacks(at(2, 3, 1), 'phase-order');
    lacks(at(3, 1, 2), 'phase-order');
  });
});

describe('line-neutral-swapped', () => {
  it.each(PRACTICES)('%s: at the outlet or at the plug', (practice) => {
    const plan = base(practice);
    const outlet = put(plan, ['[P1.N, X1.N]', '[P1.N, X1.L]'], ['[K1.NO, X1.L]', '[K1.NO, X1.N]']);
    const plug = put(plan, ['[P1.N, X1.N]', '[P1.L, X1.N]'], ['[P1.L, K1.COM]', '[P1.N, K1.COM]']);
    for (const wrong of [outlet, plug]) pair('line-neutral-swapped', 'danger', wrong, plan);
  });

  it.each(PRACTICES)('%s: two hot legs have no order', (practice) => {
    lacks(
      put(legs(practice), ['[K1.2, X1.L1]', '[K1.2, X1.L2]'], ['[K1.4, X1.L2]', '[K1.4, X1.L1]']),
      'line-neutral-swapped',
    );
  });
});

describe('mains-shorted', () => {
  it.each(PRACTICES)(
    '%s: one core that ends on neutral, earth, the other leg or another phase',
    (practice) => {
      const plan = base(practice);
      for (const end of ['X1.N', 'X1.PE'])
        pair('mains-shorted', 'danger', put(plan, ['[K1.NO, X1.L]', `[K1.NO, ${end}]`]), plan);
      pair(
        'mains-shorted',
        'danger',
        put(legs(practice), ['[K1.4, X1.L2]', '[K1.4, X1.L1]']),
        legs(practice),
      );
      pair(
        'mains-shorted',
        'danger',
        put(phases(practice), ['[K1.6, X1.L3]', '[K1.6, X1.L2]']),
        phases(practice),
      );
    },
  );
});

describe('mains-through-gate and mains-meets-low-voltage', () => {
  it.each(PRACTICES)('%s: a second gate in the line, or in the loop', (practice) => {
    const plan = withParts(base(practice), GATE);
    const line = put(plan, ['[P1.L, K1.COM]', '[P1.L, g2.COM], grey: [g2.NO, K1.COM]']);
    const loop = withRuns(plan, link('g.COM', 'g2.COM'), link('g.NO', 'g2.NO'));
    pair('mains-through-gate', 'danger', line, loop);
  });

  it.each(PRACTICES)('%s: a gate between a lamp and a coil of the mains, or in the loop', (practice) => {
    const plan = withRuns(
      withParts(base(practice), GATE, LAMP, COIL),
      link('P1.L', 'H1.1'),
      link('K2.A2', 'P1.N'),
    );
    const gate = withRuns(plan, link('H1.2', 'g2.COM'), link('g2.NO', 'K2.A1'));
    const loop = withRuns(plan, link('H1.2', 'K2.A1'), link('g.COM', 'g2.COM'), link('g.NO', 'g2.NO'));
    pair('mains-through-gate', 'danger', gate, loop);
  });

  it.each(PRACTICES)('%s: the cable of the loop on mains, with 299 V and 300 V of insulation', (practice) => {
    const bell = (volts: number) =>
      put(
        base(practice),
        ['insulation: 150 V', `insulation: ${volts} V`],
        ['black: [K1.NO, X1.L], ', ''],
        ['intent:', '  - {cable: bell, length: 1 m, cores: {red: [K1.NO, X1.L]}}\nintent:'],
      );
    pair('mains-through-gate', 'danger', bell(299), bell(300));
  });

  it.each(PRACTICES)('%s: one core from the coil to the fed tab of the contact', (practice) => {
    const plan = base(practice);
    pair('mains-meets-low-voltage', 'danger', withRuns(plan, link('K1.COM', 'K1.A1')), plan);
  });
});
