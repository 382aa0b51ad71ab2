import type { Check } from '../entry.ts';
import { grouped } from '../groups.ts';
import { boxOverfilled } from './box-overfilled.ts';
import { breakerMayTrip } from './breaker-may-trip.ts';
import { breakerTooLarge } from './breaker-too-large.ts';
import { circuitOverloaded } from './circuit-overloaded.ts';
import { cordAsFixedWiring } from './cord-as-fixed-wiring.ts';
import { cordTooThin } from './cord-too-thin.ts';
import { phaseMissing } from './phase-missing.ts';
import { plugMismatch } from './plug-mismatch.ts';
import { powerImplausible } from './power-implausible.ts';

/** The findings of question 7, as `explain` lists them. */
export const mainsChecks: readonly Check[] = [
  grouped(circuitOverloaded),
  grouped(breakerTooLarge),
  grouped(breakerMayTrip),
  grouped(cordTooThin),
  grouped(cordAsFixedWiring),
  grouped(boxOverfilled),
  grouped(plugMismatch),
  grouped(powerImplausible),
  grouped(phaseMissing),
];
