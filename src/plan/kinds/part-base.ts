/** What every part of a plan has, and what parts of both sides have alike. */

import type { Position } from '../device-figures.ts';
import type { Likely } from './failure-modes.ts';

/** What every part has. */
export interface PartBase {
  /** name in the plan */
  readonly name: string;
  /** position of the part's name in the file */
  readonly at: Position;
  /** positions of the fields that were typed, by dotted path such as `coil.rated` (stock positions included) */
  readonly where: ReadonlyMap<string, Position>;
  /** currency amount, for the shopping list */
  readonly price?: number;
  /** times as likely to fail as such parts in general, by the way to fail */
  readonly likely?: Likely;
}

/** How a fuse opens: gG and aM of IEC 60269, time-delay and fast as printed on others. */
export type FuseClass = 'gG' | 'aM' | 'time-delay' | 'fast';
