/** The voltage each net may come to work at, from the sources that reach it in some position of the contacts. */

import { followedShare } from '../circuit/feed-volts.ts';
import { isLow, isMains, reachOf } from '../circuit/sides.ts';
import type { BatteryPart, SupplyPart } from '../plan/part-types.ts';
import { supplyModel } from '../ratings/supply.ts';
import type { Study } from './study.ts';

/** V; 0 where nothing of that side reaches the net, and on the protective conductor. */
export interface WorkingVolts {
  readonly mains: (net: number | undefined) => number;
  readonly low: (net: number | undefined) => number;
}

/** Mains by what is between the plug's live pins; a supply or battery by what it gives with no load on it. */
export function workingVolts(study: Study): WorkingVolts {
  const { circuit, plan, sides } = study;
  const mains = new Map<number, number>();
  const low = new Map<number, number>();
  const reach = reachOf(circuit, sides);
  for (const source of circuit.sources) {
    const part = plan.parts.get(source.part);
    if (part?.kind !== 'plug' && part?.kind !== 'supply' && part?.kind !== 'battery') continue;
    const volts = part.kind === 'plug' ? part.volts.volts : highestVolts(study, part);
    const map = source.mains ? mains : low;
    for (const net of reach(source)) map.set(net, Math.max(volts, map.get(net) ?? 0));
  }
  const at = (map: ReadonlyMap<number, number>, net: number | undefined) => map.get(net ?? -1) ?? 0;
  return {
    mains: (net) => (isMains(sides, net) ? at(mains, net) : 0),
    low: (net) => (isLow(sides, net) ? at(low, net) : 0),
  };
}

/** V at the terminals with no load, defaults of the ratings included, rounded to five digits. */
export function highestVolts(study: Study, part: SupplyPart | BatteryPart): number {
  const source = study.circuit.sources.find((s) => s.part === part.name);
  const share = source === undefined ? 1 : followedShare(source, part);
  return Number(supplyModel(part, study.plan.practice, share).noLoad.toPrecision(5));
}
