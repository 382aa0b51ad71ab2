import type { Check } from '../entry.ts';
import { batteryShortLived } from './battery-short-lived.ts';
import { coilCurrentUnknown } from './coil-current-unknown.ts';
import { coilShorted } from './coil-shorted.ts';
import { diodeBackwards } from './diode-backwards.ts';
import { diodeTooWeak } from './diode-too-weak.ts';
import { dropLarge } from './drop-large.ts';
import { fuseBypassed } from './fuse-bypassed.ts';
import { fuseTooSmall } from './fuse-too-small.ts';
import { indicatorVolts } from './indicator-volts.ts';
import { suppliesJoined } from './supplies-joined.ts';
import { supplyNotLimited } from './supply-not-limited.ts';
import { supplyOverloaded } from './supply-overloaded.ts';
import { supplyShorted } from './supply-shorted.ts';
import { switchKindUnrated } from './switch-kind-unrated.ts';
import { switchOverloaded } from './switch-overloaded.ts';
import { switchUnderloaded } from './switch-underloaded.ts';
import { triggerFed } from './trigger-fed.ts';
import { triggerLoop } from './trigger-loop.ts';
import { wireOverloaded } from './wire-overloaded.ts';

/** The findings of question 5, as `explain` lists them. */
export const loopChecks: readonly Check[] = [
  supplyShorted,
  suppliesJoined,
  supplyNotLimited,
  supplyOverloaded,
  wireOverloaded,
  fuseBypassed,
  fuseTooSmall,
  dropLarge,
  batteryShortLived,
  coilShorted,
  diodeBackwards,
  diodeTooWeak,
  switchOverloaded,
  switchKindUnrated,
  switchUnderloaded,
  coilCurrentUnknown,
  indicatorVolts,
  triggerFed,
  triggerLoop,
];
