import type { Check } from '../entry.ts';
import { colourOfEarth } from './colour-of-earth.ts';
import { colourOfNeutral } from './colour-of-neutral.ts';
import { earthAsReturn } from './earth-as-return.ts';
import { earthBroken } from './earth-broken.ts';
import { insulationTooLow } from './insulation-too-low.ts';
import { lineNeutralSwapped } from './line-neutral-swapped.ts';
import { lineNotSwitched } from './line-not-switched.ts';
import { lowVoltageEarthed } from './low-voltage-earthed.ts';
import { mainsMeetsLowVoltage } from './mains-meets-low-voltage.ts';
import { mainsShorted } from './mains-shorted.ts';
import { mainsThroughGate } from './mains-through-gate.ts';
import { neutralEarthed } from './neutral-earthed.ts';
import { phaseOrder } from './phase-order.ts';
import { sidesShareBox } from './sides-share-box.ts';
import { sidesShareCable } from './sides-share-cable.ts';
import { supplyOverLimits } from './supply-over-limits.ts';
import { triggerMayBeLive } from './trigger-may-be-live.ts';
import { twoFeeds } from './two-feeds.ts';

/** The findings of question 1, as `explain` lists them. */
export const apartChecks: readonly Check[] = [
  mainsMeetsLowVoltage,
  mainsThroughGate,
  mainsShorted,
  earthBroken,
  lineNotSwitched,
  lineNeutralSwapped,
  neutralEarthed,
  earthAsReturn,
  lowVoltageEarthed,
  sidesShareBox,
  sidesShareCable,
  insulationTooLow,
  supplyOverLimits,
  phaseOrder,
  twoFeeds,
  colourOfEarth,
  colourOfNeutral,
  triggerMayBeLive,
];
