import { expect, it } from 'vitest';
import { readMeter } from '../../src/machine/read-meter.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

/** A relay board on 5 V, with or without its coil stated. */
const board = (coil: string) =>
  planOf(
    `format: 1
parts:
  PS1: {kind: supply, output: 5 V DC, limit: 1 A, regulation: regulated}
  U1: {kind: board, supply: 5 V DC, input: low, ${coil} contact: {ratings: [10 A 250 V AC]}}
  lathe: {kind: gate, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {cable: {gauge: 18 AWG, cores: 2}, length: 1 m, cores: {red: [PS1.+, U1.VCC], black: [PS1.-, U1.GND]}}
  - {cable: {gauge: 18 AWG, cores: 2}, length: 1 m, cores: {white: [U1.IN, lathe.COM], blue: [lathe.NO, PS1.-]}}
`,
    'board.yaml',
  );

const drawn = (coil: string) =>
  readMeter(Study.of(board(coil)), { moved: [0], dead: false }).cores.find((c) => c.to === 'U1.VCC')!.amps!;

it('a board that states no coil is taken to draw about 80 mA with its relay in; common practice, no source', () => {
  expect(drawn('')).toBeGreaterThan(0.07);
  expect(drawn('')).toBeLessThan(0.09);
});

it('a board that states its coil draws what the coil does', () => {
  // 5 V across 250 ohm are 20 mA by Ohm's law; the input adds a few.
  expect(drawn('coil: {rated: 5 V DC, resistance: 250 ohm},')).toBeGreaterThan(0.0195);
  expect(drawn('coil: {rated: 5 V DC, resistance: 250 ohm},')).toBeLessThan(0.03);
});
