/** A piece of the circuit between the rails of its sources: sources at the top, below them one rung after the other. */

import { traitsOf } from '../figure-traits.ts';
import { type Block, blockOf, type Item } from './blocks.ts';
import type { Points } from './points.ts';
import { type Seat, Setter, type Setting, widthOf } from './set-blocks.ts';

/** A piece that can be set on the sheet once its number of columns is known. */
export interface LadderPart {
  /** columns it would like to have */
  readonly width: number;
  set(columns: number, top: number): { readonly seats: readonly Seat[]; readonly bottom: number };
}

/** `live` tells the terminals of sources from which the current comes. */
export function ladderOf(
  items: readonly Item[],
  points: Points,
  live: (key: string) => boolean,
  setting: Setting,
): LadderPart {
  const sources = items.filter((item) => traitsOf(item.ranked.spec.figure).source);
  const others = items.filter((item) => !sources.includes(item));
  const left = new Set<number>();
  const right = new Set<number>();
  for (const { ranked } of sources)
    for (const t of ranked.spec.terminals)
      for (const p of points.of(t.key)) (live(t.key) ? left : right).add(p);
  for (const p of left) right.delete(p);
  const block: Block | undefined = blockOf(others, { left, right });
  return {
    width: block === undefined ? 1 : widthOf(block, setting),
    set(columns, top) {
      const setter = new Setter(setting);
      const rails = new Map<number, number>();
      for (const p of left) rails.set(p, 0);
      for (const p of right) rails.set(p, columns);
      let band = top;
      for (const item of sources) {
        const column = Math.max(1, Math.ceil(columns / 2));
        setter.seats.push({ item, column, bands: [band], channels: rails });
        band++;
      }
      const bottom = block === undefined ? band : setter.set(block, { left: 0, right: columns }, rails, band);
      return { seats: setter.seats, bottom };
    },
  };
}
