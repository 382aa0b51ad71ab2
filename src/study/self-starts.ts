/** Loads that start with nobody at a button: when power comes back after a cut, or when a tripped cut-out closes again. */
import type { Source } from '../circuit/circuit.ts';
import { type Bdd, FALSE, type Fn, TRUE } from '../logic/bdd.ts';
import { inputVariable } from '../logic/conduction.ts';
import { handedOver } from '../logic/handed-over.ts';
import type { Wanted } from '../logic/intent.ts';
import { findMemory, type Mode, Settler } from '../logic/memory.ts';
import { buildModel } from '../logic/model.ts';
import { type Moved, movedIn, running, type Verified } from '../logic/verify.ts';
import { perStudy } from './per-study.ts';
import type { Study } from './study.ts';

export interface SelfStart {
  readonly wanted: Wanted;
  /** inputs away from rest, as few as there need to be */
  readonly moved: Moved;
}

/**
 * What runs once power is back after a cut of all mains, with every button released and something that stays put - a gate,
 * a hand switch - calling for it. Empty where nothing was decided.
 */
export const restartsAfterCut = perStudy((study): readonly SelfStart[] => {
  const { verified: v } = study;
  if (!v) return [];
  const starts = afterCut(study, v);
  return v.intents.wanted.flatMap((wanted) => selfStart(v, wanted, starts, TRUE) ?? []);
});

/**
 * What runs again when a cut-out or a stop button that stopped it goes back, with every button released. Its contact is
 * moved alone: tripped from every position the circuit can stand in, then back.
 */
export function restartsAfterTrip(study: Study, stop: string): readonly SelfStart[] {
  const { verified: v, circuit } = study;
  const input = circuit.inputs.find((i) => i.part === stop);
  if (!v || !input) return [];
  const { bdd } = v.model;
  const tripped = bdd.variable(inputVariable(circuit, input.index));
  const starts = new Set<Mode>();
  for (const mode of new Set(v.places.map((p) => p.mode)))
    for (const [to, states] of v.settler.settle(mode).to)
      if (bdd.and(states, tripped) !== FALSE) starts.add(to);
  return v.intents.wanted.flatMap((wanted) => selfStart(v, wanted, starts, bdd.not(tripped)) ?? []);
}

/**
 * Positions of the remembering relays at the moment power comes back: a battery keeps its own relays in, and one that
 * stays put after a pulse stays as it was.
 */
function afterCut({ circuit }: Study, v: Verified): ReadonlySet<Mode> {
  const dead = circuit.sources.filter((s) => dies(v, s));
  const letsGo = circuit.relays.every((r) => r.latch === undefined);
  if (letsGo && dead.length === circuit.sources.length) return new Set([0]);
  const model = buildModel(circuit, v.model.bdd as Bdd, new Set(dead.map((s) => s.index)));
  const settler = new Settler(model, findMemory(model));
  const left = handedOver(v.model.bdd, v.settler, v.places, settler);
  const still = [...left].flatMap((mode) =>
    [...settler.settle(mode).to].map(([to, states]) => ({ mode: to, states })),
  );
  return handedOver(v.model.bdd, settler, still, v.settler);
}

/** Everything but a battery dies with the mains. */
const dies = ({ circuit }: Verified, { part }: Source): boolean =>
  circuit.plan.parts.get(part)?.kind !== 'battery';

/** The fewest inputs moved with which the load runs out of one of these positions; undefined where it never does. */
function selfStart(
  v: Verified,
  wanted: Wanted,
  starts: ReadonlySet<Mode>,
  within: Fn,
): SelfStart | undefined {
  const { bdd } = v.model;
  const buttons = v.circuit.inputs
    .filter((i) => i.kind === 'button')
    .map((i) => inputVariable(v.circuit, i.index));
  const released = bdd.not(bdd.any(buttons.map((x) => bdd.variable(x))));
  const pressed = new Map<number, Fn>(buttons.map((x) => [x, TRUE]));
  // A button may be part of what calls for the load; what stays put beside it does the calling now.
  const called = bdd.any(wanted.entries.map((e) => bdd.compose(e.works, pressed)));
  const run = running(v.model, wanted.target);
  const runs = [...starts].flatMap((start) => {
    const { to, race } = v.settler.settle(start);
    const ends = [...to, ...race.map((r): [Mode, Fn] => [r.modes[1], r.states])];
    return ends.map(([mode, states]) => bdd.and(v.settler.at(run, mode), states));
  });
  const found = bdd.every([bdd.any(runs), released, called, within, bdd.not(wanted.blocked)]);
  const moved = found === FALSE ? undefined : movedIn(v.circuit, bdd, found);
  return moved && { wanted, moved };
}
