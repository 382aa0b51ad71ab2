/** Small builders of cables for these tests. */
import type { Cable } from '../../src/plan/plan.ts';

export type Strands = Cable['strands'];

/** m² by the gauge law of ASTM B258, written out apart from the source. */
export const gaugeArea = (awg: number) => (Math.PI / 4) * (0.000127 * 92 ** ((36 - awg) / 39)) ** 2;

export const awgCable = (awg: number, strands: Strands = 'solid'): Cable => ({
  gauge: `${awg} AWG`,
  area: gaugeArea(awg),
  awg,
  cores: 2,
  flexible: false,
  strands,
});
export const metric = (area: number, strands: Strands = 'stranded'): Cable => ({
  gauge: `${area} mm2`,
  area: area * 1e-6,
  cores: 2,
  flexible: false,
  strands,
});
