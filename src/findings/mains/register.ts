/**
 * Question 7: whether circuit, plug, cable and box suit the machine by their figures. Knows nothing of the loop, nor of
 * whether the mains are wired as they should be.
 */
import type { Check } from '../entry.ts';
import { boxOverfilled } from './box-overfilled.ts';
import { breakerMayTrip } from './breaker-may-trip.ts';
import { breakerTooLarge } from './breaker-too-large.ts';
import { circuitOverloaded } from './circuit-overloaded.ts';
import { conductorUnprotected } from './conductor-unprotected.ts';
import { cordAsFixedWiring } from './cord-as-fixed-wiring.ts';
import { cordTooThin } from './cord-too-thin.ts';
import { earthTooThin } from './earth-too-thin.ts';
import { fuseInNeutral } from './fuse-in-neutral.ts';
import { phaseMissing } from './phase-missing.ts';
import { plugMismatch } from './plug-mismatch.ts';
import { powerImplausible } from './power-implausible.ts';
import { startsAddUp } from './starts-add-up.ts';
import { transformerUnprotected } from './transformer-unprotected.ts';
import { tripsAtStart } from './trips-at-start.ts';

/** The findings of question 7, as `explain` lists them. */
export const mainsChecks: readonly Check[] = [
  circuitOverloaded,
  breakerTooLarge,
  tripsAtStart,
  startsAddUp,
  breakerMayTrip,
  conductorUnprotected,
  earthTooThin,
  transformerUnprotected,
  fuseInNeutral,
  cordTooThin,
  cordAsFixedWiring,
  boxOverfilled,
  plugMismatch,
  powerImplausible,
  phaseMissing,
];
