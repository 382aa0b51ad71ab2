/** Figures added up: what is missing is counted, the weakest word wins, and only the largest motor is weighted. */
import { describe, expect, test } from 'vitest';
import { judgeCircuit } from '../../src/ratings/circuit.ts';
import { powerPlausible } from '../../src/ratings/horsepower.ts';
import { combineLoads, sumFigures } from '../../src/ratings/load.ts';
import type { Figure } from '../../src/ratings/motor.ts';
import { hp, load, motor, plug, watts } from './parts.ts';

const figure = (amps: number, more: Partial<Figure> = {}): Figure => ({
  amps,
  basis: `of ${amps}`,
  status: 'stated',
  ...more,
});

describe('sumFigures', () => {
  test('all known: nothing is said to be missing', () => {
    expect(sumFigures([figure(2), figure(3)])).toEqual({ amps: 5, basis: 'of 2 + of 3', status: 'stated' });
  });
  test('what is missing is counted and makes the sum a least', () => {
    expect(sumFigures([figure(2), undefined, figure(3), undefined])).toEqual({
      amps: 5,
      atLeast: true,
      basis: 'of 2 + of 3; 2 more not stated',
      status: 'stated',
    });
    expect(sumFigures([undefined, figure(2)])).toEqual({
      amps: 2,
      atLeast: true,
      basis: 'of 2; 1 more not stated',
      status: 'stated',
    });
  });
  test('one alone keeps its words, none gives none', () => {
    const one = figure(2, { rough: true, least: 1 });
    expect(sumFigures([one])).toBe(one);
    expect(sumFigures([])).toBeUndefined();
    expect(sumFigures([undefined])).toBeUndefined();
  });
  test('the sum is as weak as its weakest member, wherever that stands', () => {
    const weak = figure(1, { status: 'estimate', rough: true, least: 0.5 });
    for (const list of [
      [weak, figure(4)],
      [figure(4), weak],
    ])
      expect(sumFigures(list)).toMatchObject({ amps: 5, least: 4.5, rough: true, status: 'estimate' });
    const sum = sumFigures([figure(1, { atLeast: true, status: 'memory' }), figure(4)])!;
    expect(sum).toMatchObject({ amps: 5, atLeast: true, status: 'memory' });
    expect(sum).not.toHaveProperty('least');
    expect(sum).not.toHaveProperty('rough');
  });
});

describe('loads on one contact', () => {
  test('horsepower adds up only where every motor states its power', () => {
    const two = combineLoads([motor({ power: hp(1) }), motor({ power: hp(0.5) })], 'nec');
    expect(two.horsepower).toBe(1.5);
    const one = combineLoads([motor({ power: hp(1) }), motor({ amps: 4 })], 'nec');
    expect(one).not.toHaveProperty('horsepower');
    expect(combineLoads([load({ amps: 2 })], 'nec')).not.toHaveProperty('horsepower');
  });
  test('the hardest nature and the most phases count', () => {
    const heater = load({ type: 'heater', amps: 2 });
    const lamp = load({ name: 'lamp', type: 'lamp', amps: 1 });
    expect(combineLoads([heater, lamp], 'nec')).toMatchObject({ nature: 'lamp', phases: 1 });
    expect(combineLoads([heater, motor({ feed: 'three-phase', amps: 3 })], 'iec')).toMatchObject({
      nature: 'motor',
      phases: 3,
    });
  });
  test('names of loads without figures; a table figure is one of motors only', () => {
    const found = combineLoads([motor({ power: hp(1) }), load({ name: 'lights' })], 'nec');
    expect(found).toMatchObject({ runningUnknown: ['lights'], startingUnknown: ['lights'] });
    // NEC Table 430.248, 1 hp at 115 V
    expect(found.currents.tableRunning?.amps).toBe(16);
    expect(found.currents.running).toMatchObject({ amps: 16, atLeast: true });
    expect(combineLoads([load({ amps: 1 })], 'nec').currents).not.toHaveProperty('tableRunning');
  });
});

// NEC 430.24 weights the largest for the conductors; 430.52 and 430.53 have no lower bound for the breaker
describe('several motors behind one breaker', () => {
  const judged = (breaker: number | undefined, ...loads: Parameters<typeof judgeCircuit>[0]['loads']) =>
    judgeCircuit({
      plug: plug({ pattern: 'fixed', ...(breaker !== undefined && { breaker }) }),
      loads,
      practice: 'nec',
    });
  // NEC Table 430.248 at 115 V: 1 hp takes 16 A, 1/2 hp 9.8 A
  const one = motor({ name: 'one', power: hp(1) });
  const half = motor({ name: 'half', power: hp(0.5) });
  const heater = load({ name: 'heater', type: 'heater', amps: 20 });

  test('what they draw together, in any order', () => {
    for (const loads of [
      [one, half],
      [half, one],
    ]) {
      expect(judged(30, ...loads)).toMatchObject({ verdict: 'pass', found: 30 });
      expect(judged(30, ...loads).needed).toBeCloseTo(16 + 9.8, 9);
      expect(judged(25, ...loads).verdict).toBe('fail');
    }
  });
  test('a heater counts by what it draws', () => {
    expect(judged(50, heater, half).needed).toBeCloseTo(20 + 9.8, 9);
    expect(judged(50, heater).needed).toBe(20);
  });
  test('without a breaker the plain sum is shown and the breaker asked for', () => {
    const found = judged(undefined, one);
    expect(found).toMatchObject({ verdict: 'cannot-tell', missing: 'breaker', needed: 16, found: undefined });
    expect(found.basis).not.toContain('undefined');
    expect(found.basis).not.toContain('125 %');
  });
  test('more than the plain sum allows is told of the plain sum', () => {
    const found = judgeCircuit({
      plug: plug({ pattern: 'NEMA 5-20', breaker: 20 }),
      loads: [one, half],
      practice: 'nec',
    });
    expect(found).toMatchObject({ verdict: 'fail', needed: 25.8, found: 16 });
    expect(found.basis).not.toContain('125 %');
  });
  test('what is not stated is asked for by name, with and without a table figure beside it', () => {
    const untold = motor({ name: 'untold' });
    for (const loads of [[one, untold], [untold]])
      expect(judged(40, ...loads)).toMatchObject({ verdict: 'cannot-tell', missing: 'untold.amps' });
    expect(judged(40, load({ power: watts(1000) }))).toMatchObject({
      verdict: 'cannot-tell',
      missing: 'amps',
    });
  });
  test('nothing behind it needs nothing', () => {
    expect(judged(20)).toMatchObject({ verdict: 'pass', needed: 0 });
  });
});

describe('power from the nameplate', () => {
  test('all of volts times amperes is just possible', () => {
    const at = (amps: number) => powerPlausible(motor({ power: watts(1200), amps }))!;
    expect(at(10)).toMatchObject({ plausible: true, share: 1, input: 1200, output: 1200 });
    expect(at(9.99).plausible).toBe(false);
    expect(powerPlausible(motor({ power: watts(1200), amps: 0 }))).toBeUndefined();
  });
});
