import { rounded } from '../../text/numbers.ts';
import type { Figure } from '../report-model.ts';

/** A current (A) as a figure of a finding. */
export function ampsFigure(name: string, amps: number): Figure {
  return { name, value: rounded(amps), unit: 'A' };
}
