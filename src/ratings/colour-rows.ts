/** The columns of the table of core colours. */
import type { Practice } from '../plan/device-figures.ts';
import type { CoreColour } from '../text/core-colours.ts';
import type { RowBase } from './table-rows.ts';

/** What a core is for. */
export type CoreUse = 'earth' | 'neutral' | 'line' | 'low-voltage';

/** The notes of the table say what each rule and each condition means. */
export interface CoreColourRow extends RowBase {
  readonly practice: Practice;
  readonly use: CoreUse;
  readonly rule: 'only' | 'wears' | 'also' | 're-marked' | 'usual';
  readonly colours: readonly CoreColour[];
  readonly as?: readonly CoreColour[];
  readonly when?: 'multicore' | 'flexible' | 'fixed' | 'no-neutral';
  readonly mostAwg?: number;
  readonly supplyOnly?: boolean;
  readonly stripes?: boolean;
  readonly pattern?: string;
  readonly mostVoltsAc?: number;
  readonly mostVoltsDc?: number;
  readonly clause: string;
}
