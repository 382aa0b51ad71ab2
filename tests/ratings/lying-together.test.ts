/**
 * Conductors that lie together in one cable. IEC: circuits bunched, BS 7671 Table 4C1 row 1 (IEC 60364-5-52 Table B.52.17), from memory; NEC
 * Table 310.15(C)(1), by public copies.
 */
import { expect, it } from 'vitest';
import { type Better, carriedIec, type Laid, wireNec } from '../../src/ratings/laid-conductor.ts';
import { awgCable, metric } from './cables.ts';

const worse: Better = { ambient: false, rated: false, class: false, laying: false, memory: false };
const laid = (practice: 'nec' | 'iec', loaded: number): Laid => ({
  ...{ practice, ambient: 30, terminal: 90, loaded, inBox: false },
});

it.each([
  [3, 1],
  [4, 0.8],
  [6, 0.8],
  [7, 0.7],
  [9, 0.7],
  [10, 0.65],
  [12, 0.65],
  [13, 0.6],
  [16, 0.57],
  [30, 0.57],
])('iec: %d loaded conductors, three a circuit, carry %f of what three do', (loaded, factor) => {
  const of = (n: number) => carriedIec({ ...metric(2.5), rated: 70 }, laid('iec', n), worse).amps;
  expect(of(loaded) / of(3)).toBeCloseTo(factor, 9);
});

// 12 AWG carries 30 A in the column of 90 °C, where more than three lie together less of it.
it.each([
  [2, 30],
  [3, 30],
  [4, 24],
  [6, 24],
  [7, 21],
  [9, 21],
  [10, 15],
  [20, 15],
  [21, 13.5],
  [31, 12],
  [41, 10.5],
])('nec: %d of 12 AWG carry %f A each', (loaded, amps) => {
  expect(wireNec({ ...awgCable(12), rated: 90 }, laid('nec', loaded), worse).amps).toBeCloseTo(amps, 9);
});

// Table 310.16 gives 130 A for 2 AWG in the column of 90 °C, the last row that two copies agree on; 1/0 AWG carries more.
it('nec: what is thicker than 2 AWG carries as much at least', () => {
  const carries = (better: Better) => wireNec({ ...awgCable(0), rated: 90 }, laid('nec', 3), better).amps;
  expect(carries(worse)).toBe(130);
  expect(carries({ ...worse, memory: true })).toBeGreaterThanOrEqual(170);
});
