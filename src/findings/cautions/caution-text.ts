/** A caution as text, and how far its sources were followed up. */
import type { Level } from '../report-words.ts';

export type BasisStatus = 'read' | 'memory' | 'practice';

export interface BasisEntry {
  readonly text: string;
  readonly status: BasisStatus;
  /** left out: under either practice */
  readonly practice?: 'nec' | 'iec';
}

export interface CautionText {
  readonly id: string;
  readonly level: Level;
  readonly text: string;
  /** printed instead of `text` under the practice `iec` */
  readonly iec?: string;
  readonly basis: readonly BasisEntry[];
}

export const read = (text: string, practice?: 'nec' | 'iec'): BasisEntry => entry(text, 'read', practice);
export const memory = (text: string, practice?: 'nec' | 'iec'): BasisEntry => entry(text, 'memory', practice);
export const custom: BasisEntry = { text: 'common practice', status: 'practice' };

function entry(text: string, status: BasisStatus, practice?: 'nec' | 'iec'): BasisEntry {
  return practice === undefined ? { text, status } : { text, status, practice };
}
