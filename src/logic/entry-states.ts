/** The states, reached straight from rest, by which an intent is tried entry by entry. */
import type { Fn } from './bdd.ts';
import type { Wanted } from './intent.ts';
import { type Moved, movedIn, running, type Verified } from './verify.ts';

/** Input states reached straight from rest in which the load runs. */
export function runsFromRest(v: Verified, target: string): Fn {
  const { bdd } = v.model;
  const run = running(v.model, target);
  return bdd.any([...v.fromRest].map(([mode, states]) => bdd.and(v.settler.at(run, mode), states)));
}

/** Inputs to move so that nothing blocks: master switches on, selectors out of blocking positions. */
export function baseState(v: Verified, w: Wanted): Moved {
  const { bdd } = v.model;
  return movedIn(v.circuit, bdd, bdd.and(v.model.valid, bdd.not(w.blocked))) ?? [];
}

/** The smallest state in which an entry works and nothing else is moved beyond what unblocks. */
export function entryState(v: Verified, w: Wanted, works: Fn, base: Moved): Moved | undefined {
  const { bdd } = v.model;
  const baseValues = new Set(base);
  const found = bdd.nearest(bdd.every([works, bdd.not(w.blocked), v.model.valid]), (x) =>
    baseValues.has(x - v.circuit.relays.length),
  );
  if (!found) return undefined;
  return v.circuit.inputs
    .filter((i) => found.get(v.circuit.relays.length + i.index) ?? baseValues.has(i.index))
    .map((i) => i.index);
}

/** Input states, among those the circuit can stand in, where a function of inputs and relays is true. */
export function everIn(v: Verified, f: Fn): Moved | undefined {
  const { bdd } = v.model;
  let best: Moved | undefined;
  for (const place of v.places) {
    const moved = movedIn(v.circuit, bdd, bdd.and(v.settler.at(f, place.mode), place.states));
    if (moved && (!best || moved.length < best.length)) best = moved;
  }
  return best;
}
