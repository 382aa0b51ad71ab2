/** In which order standard sizes are offered: ascending amperes within a family of NEMA WD 6 and of IEC 60309-2. */
import { expect, it } from 'vitest';
import { receptacles } from '../../../src/ratings/table-files.ts';
import { patternsFor } from '../../../src/repair/remedies/series.ts';

const from = (name: string, volts: number, phases: 1 | 3) => {
  const row = receptacles().rows.find((r) => r.names.includes(name))!;
  return patternsFor(row, { volts, phases });
};

it('of a family the smaller pattern comes first, and so of those of other families that two copies agree on', () => {
  const names = from('NEMA 6-20', 240, 1).map((r) => r.names[0]);
  expect(names.slice(0, 4)).toEqual(['NEMA 6-15', 'NEMA 6-20', 'NEMA 6-30', 'NEMA 6-50']);
  expect(names.indexOf('NEMA L14-30')).toBeLessThan(names.indexOf('NEMA 14-50'));
  const amps = from('IEC 60309 32 A red 3P+E', 400, 3).map((r) => r.amps);
  expect(amps).toEqual([...amps].sort((a, b) => a - b));
});
