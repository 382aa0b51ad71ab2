import type { Check } from '../entry.ts';
import { coilDropsAtStart } from './coil-drops-at-start.ts';
import { coilFrequency } from './coil-frequency.ts';
import { coilHoldsIn } from './coil-holds-in.ts';
import { coilInSeries } from './coil-in-series.ts';
import { coilKind } from './coil-kind.ts';
import { coilThinMargin } from './coil-thin-margin.ts';
import { coilTooHigh } from './coil-too-high.ts';
import { coilTooLow } from './coil-too-low.ts';
import { coilUnsuppressed } from './coil-unsuppressed.ts';
import { notAsJoined } from './not-as-joined.ts';
import { polarityReversed } from './polarity-reversed.ts';
import { pulseCoilHeld } from './pulse-coil-held.ts';
import { rectified } from './rectified.ts';
import { setAndReset } from './set-and-reset.ts';
import { supplyInput } from './supply-input.ts';

/** The findings of question 4, as `explain` lists them. */
export const coilChecks: readonly Check[] = [
  coilKind,
  supplyInput,
  rectified,
  coilTooLow,
  coilThinMargin,
  coilTooHigh,
  coilFrequency,
  coilDropsAtStart,
  coilHoldsIn,
  coilInSeries,
  notAsJoined,
  coilUnsuppressed,
  polarityReversed,
  setAndReset,
  pulseCoilHeld,
];
