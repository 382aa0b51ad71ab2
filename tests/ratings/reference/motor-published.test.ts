/**
 * Motors with printed answers, from open textbooks and public handbooks. What is printed is met to half a unit of its
 * last digit; W per horsepower is 746 where the publication counts so.
 */
import { describe, expect, test } from 'vitest';
import type { Emf } from '../../../src/electric/network.ts';
import { solveNetwork } from '../../../src/electric/solve.ts';
import { powerPlausible } from '../../../src/ratings/horsepower.ts';
import { codeLetterCurrent, motorCurrents } from '../../../src/ratings/motor.ts';
import { ac, motor, watts } from '../parts.ts';

/** An EMF, resistors in line from its plus, and a back EMF against it; the last node is the EMF's minus. */
function inLine(volts: number, ohms: readonly number[], back = 0): { amps: number; at: Float64Array } {
  const last = ohms.length;
  const emf = (a: number, b: number, re: number): Emf => ({ a, b, re, im: 0, ohms: 0 });
  const solved = solveNetwork({
    nodes: last + 2,
    branches: ohms.map((re, i) => ({ a: i, b: i + 1, re, im: 0 })),
    emfs: [emf(0, last + 1, volts), emf(last, last + 1, back)],
    valves: [],
  });
  expect([solved.settled, solved.conflict]).toEqual([true, undefined]);
  const zero = solved.re[last + 1]!;
  return { amps: solved.emfAmps[0]!.re, at: solved.re.map((v) => v - zero) };
}

describe('US Army Intelligence Center Subcourse IT0348, Edition A, December 1996, frames 20A and 22A', () => {
  test('1 hp from 960 W: 77.7 %, 22.3 % lost', () => {
    const p = powerPlausible(motor({ power: watts(746), volts: ac(96), amps: 10 }))!;
    expect(p.input).toBeCloseTo(960, 9);
    expect(100 * p.share).toBeCloseTo(77.7, 1);
    expect(100 * (1 - p.share)).toBeCloseTo(22.3, 1);
  });

  test('5 hp at 200 V and 20 A: 4000 W in, 93.25 %', () => {
    const p = powerPlausible(motor({ power: watts(5 * 746), volts: ac(200), amps: 20 }))!;
    expect(p.input).toBe(4000);
    expect(100 * p.share).toBeCloseTo(93.25, 9);
    expect(p.plausible).toBe(true);
  });
});

describe('National Electrical Code Handbook, example after 430.7(B)', () => {
  test('20 hp, 460 V, code letter G: 125.8 kVA, 158 A', () => {
    const found = codeLetterCurrent('G', 20, 460 * Math.sqrt(3))!;
    expect((found.amps * 460 * Math.sqrt(3)) / 1000).toBeCloseTo(125.8, 9);
    expect(Math.round(found.amps)).toBe(158);
    // the handbook takes the root of three as 1.73
    expect(codeLetterCurrent('G', 20, 460 * 1.73)!.amps).toBeCloseTo(158.08, 2);
  });
});

describe('College Physics 2e (OpenStax), 2nd edition, web source as of July 2026', () => {
  test('section 21.2, problem 23: 0.09 ohm at a corroded contact takes a starter from 200 A to 80 A', () => {
    const clean = inLine(12, [0.01, 0.05]);
    expect(clean.amps).toBeCloseTo(200, 9);
    expect(clean.at[1]!).toBeCloseTo(10, 9);
    expect((clean.at[1]! * clean.amps) / 1000).toBeCloseTo(2, 9);
    const corroded = inLine(12, [0.01, 0.09, 0.05]);
    expect(corroded.amps).toBeCloseTo(80, 9);
    expect(corroded.at[2]!).toBeCloseTo(4, 9);
    expect(corroded.at[2]! * corroded.amps).toBeCloseTo(320, 9);
  });

  test('section 23.6, problem 41: 20 A to start and 8 A running at 120 V is a back EMF of 72 V', () => {
    const ohms = 120 / 20;
    expect(inLine(120, [ohms]).amps).toBeCloseTo(20, 9);
    expect(inLine(120, [ohms], 72).amps).toBeCloseTo(8, 9);
  });

  test('section 23.6, problem 43: a toy motor of 0.1 ohm and 4.5 V back EMF takes 3 A from four cells', () => {
    expect(inLine(6, [4 * 0.1, 0.1], 4.5).amps).toBeCloseTo(3, 9);
  });

  test('section 20.4, problem 64: current of an electric car of 95 % efficiency', () => {
    // Output over volts and efficiency; at power factor 1 the same for alternating current.
    const amps = (output: number) =>
      motorCurrents(motor({ power: watts(output), volts: ac(12), efficiency: 0.95, powerFactor: 1 }), 'iec')
        .running!.amps;
    const speedUp = (0.5 * 750 * 25 ** 2) / 60;
    const drag = 500 * 25;
    const climb = (750 * 9.8 * 200) / 120;
    expect(Math.round(amps(speedUp))).toBe(343);
    expect(amps(climb + drag) / 1000).toBeCloseTo(2.17, 2);
    expect(amps(drag) / 1000).toBeCloseTo(1.1, 2);
  });
});

describe('University Physics, Volume 2 (OpenStax), web source as of June 2026', () => {
  test('section 9.5, Example 9.9: a winch of 115 V and 20 A', () => {
    const output = (4900 * 10) / 30;
    const p = powerPlausible(motor({ power: watts(output), volts: ac(115), amps: 20 }))!;
    expect(p.input).toBe(2300);
    expect(p.output).toBeCloseTo(1633.33, 2);
    const loss = p.input - p.output;
    expect(loss).toBeCloseTo(666.67, 2);
    const ohms = loss / 20 ** 2;
    expect(ohms).toBeCloseTo(1.67, 2);
    // the back EMF takes the work: 1633.33 W over 20 A
    expect(inLine(115, [ohms], output / 20).amps).toBeCloseTo(20, 9);
  });

  test('section 13.6, problem 61: a series-wound motor of 80 and 10 ohm, at the start and at full speed', () => {
    expect(inLine(120, [80, 10]).amps).toBeCloseTo(1.33, 2);
    const { amps } = inLine(120, [80, 10], 75);
    expect(amps).toBeCloseTo(0.5, 9);
    expect([120 * amps, 75 * amps, 90 * amps ** 2].map((w) => Number(w.toFixed(9)))).toEqual([
      60, 37.5, 22.5,
    ]);
  });
});
