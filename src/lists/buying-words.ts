/** What a part or cable is called in a shop, and which parts are the same thing to buy. */
import { saidOf } from '../plan/by-kind.ts';
import type { Part } from '../plan/part-types.ts';
import type { Cable } from '../plan/plan.ts';
import { countedCores } from '../text/core-names.ts';
import { LISTED, PRINTED } from './kinds.ts';
import { num } from './printed-words.ts';

/** `relay: coil 12 V DC, 155 ohm, ...`, from what the plan says. */
export function specOf(part: Part): string {
  const said = saidOf(PRINTED, part).filter((w) => w !== '');
  const { noun } = LISTED[part.kind];
  return said.length === 0 ? noun : `${noun}: ${said.join(', ')}`;
}

/** `bell: 20 AWG, 2 cores, solid, 150 V`. */
export function cableSpec(cable: Cable): string {
  return [
    cable.gauge,
    countedCores(cable.cores),
    cable.strands === 'fine' ? 'fine strands' : cable.strands,
    cable.flexible ? 'flexible' : '',
    cable.insulation === undefined ? 'insulation not stated' : `${num(cable.insulation)} V`,
  ]
    .filter((w) => w !== '')
    .join(', ');
}

/** Parts with the same key are the same thing to buy. */
export function buyingKey(part: Part): string {
  const { fitted } = LISTED[part.kind];
  // A shop does not sell the name, the place in the file, and how the part is fitted and fed.
  const left = new Set<string>(['name', 'at', 'where', ...fitted]);
  return JSON.stringify(
    Object.entries(part)
      .filter(([key]) => !left.has(key))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}
