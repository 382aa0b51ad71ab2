/** Which coils a supply may have to feed at one time. */

import { FALSE } from '../logic/bdd.ts';
import { fedWhere } from '../logic/model.ts';
import { type Moved, movedIn, type Verified } from '../logic/verify.ts';
import type { FedCoil } from './fed-coils.ts';
import type { Study } from './study.ts';

/** Above so many coils on one supply all of them count together. */
const MOST_COILS = 10;

export interface Together {
  readonly coils: readonly FedCoil[];
  readonly amps: number;
  /** inputs away from rest when they are all in; undefined where the state was not looked for */
  readonly moved: Moved | undefined;
}

/** The coils that draw most among those that can be in together, over every state the circuit can stand in. */
export function mostTogether(
  study: Study,
  coils: readonly FedCoil[],
  amps: (c: FedCoil) => number,
): Together {
  const v = study.verified;
  const sum = (set: readonly FedCoil[]) => set.reduce((total, c) => total + amps(c), 0);
  if (!v || coils.length > MOST_COILS) return { coils, amps: sum(coils), moved: undefined };
  // A coil that never pulls in for want of volts draws its current all the same.
  const never = coils.filter((c) => whenIn(v, [c]) === undefined);
  let sets: FedCoil[][] = [[]];
  for (const c of coils.filter((x) => !never.includes(x))) sets = [...sets, ...sets.map((s) => [...s, c])];
  for (const set of sets.sort((x, y) => sum(y) - sum(x))) {
    const moved = set.length === 0 ? [] : whenIn(v, set);
    if (moved) return { coils: [...set, ...never], amps: sum([...set, ...never]), moved };
  }
  return { coils: [], amps: 0, moved: [] };
}

/** The fewest inputs moved with all these relays in. */
function whenIn(v: Verified, set: readonly FedCoil[]): Moved | undefined {
  const { bdd } = v.model;
  // A timer, and one that stays put, draws while it is fed, wherever its contact stands.
  const drawing = set.map(({ relay: { index, latch, delay } }) =>
    latch === undefined && delay === undefined ? bdd.variable(index) : fedWhere(v.model, index),
  );
  let best: Moved | undefined;
  for (const place of v.places) {
    const all = bdd.every([...drawing.map((f) => v.settler.at(f, place.mode)), place.states]);
    const moved = all === FALSE ? undefined : movedIn(v.circuit, bdd, all);
    if (moved && (!best || moved.length < best.length)) best = moved;
  }
  return best;
}
