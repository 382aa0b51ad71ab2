import type { Readings } from '../findings/cautions/facts.ts';
import type { MeterSheet } from './sheet/sheet-model.ts';

/** Whether a sheet puts probes on mains that is on, on the loop alone, or nowhere. */
export function readingsAsked({ steps }: Pick<MeterSheet, 'steps'>): Readings {
  const read = steps.filter((s) => s.kind === 'read');
  if (read.some((s) => s.stage === 3)) return 'mains';
  return read.length > 0 ? 'loop' : 'none';
}
