/** What each load does while low-voltage sources are dead, from every position the circuit can stand in. */
import { type Bdd, FALSE } from '../logic/bdd.ts';
import { runsFromRest } from '../logic/entry-states.ts';
import { handedOver } from '../logic/handed-over.ts';
import type { Wanted } from '../logic/intent.ts';
import { findMemory, Settler } from '../logic/memory.ts';
import { buildModel, type LogicModel } from '../logic/model.ts';
import { type Moved, movedIn, running, stateOf, type Verified } from '../logic/verify.ts';
import { perStudy } from './per-study.ts';

/** A load that does not do what is asked of it while some sources are dead. */
interface DeadSupply {
  readonly target: string;
  /** names of the sources that are dead */
  readonly dead: readonly string[];
  /** whether it runs where it ought to be off; else it is off where it ought to run on */
  readonly runsOn: boolean;
  /** inputs away from rest, as few as there need to be */
  readonly moved: Moved;
}

/** Each low-voltage source dead alone, then all together; a load is listed for the first of these only. */
export const deadSupplies = perStudy((study): readonly DeadSupply[] => {
  const { circuit, verified: v } = study;
  if (!v || v.intents.wanted.length === 0) return [];
  const low = circuit.sources.filter((s) => !s.mains).map((s) => s.index);
  const sets = [...low.map((i) => [i]), ...(low.length > 1 ? [low] : [])];
  const found = new Map<string, DeadSupply>();
  for (const dead of sets) {
    const model = buildModel(circuit, v.model.bdd as Bdd, new Set(dead));
    const settler = new Settler(model, findMemory(model));
    const starts = [...handedOver(v.model.bdd, v.settler, v.places, settler)];
    for (const wanted of v.intents.wanted) {
      if (found.has(wanted.target)) continue;
      const moved = whenWrong(v, wanted, model, settler, starts);
      const runsOn = wanted.ifSupplyFails === 'stopped';
      const names = dead.map((i) => circuit.sources[i]!.part);
      if (moved) found.set(wanted.target, { target: wanted.target, dead: names, runsOn, moved });
    }
  }
  return [...found.values()];
});

/** The fewest inputs moved with the load against its intent; undefined where it never is. */
function whenWrong(
  v: Verified,
  wanted: Wanted,
  model: LogicModel,
  settler: Settler,
  starts: readonly number[],
): Moved | undefined {
  const { bdd } = v.model;
  const runs = bdd.any(
    starts.flatMap((m) =>
      [...settler.settle(m).to].map(([mode, set]) =>
        bdd.and(settler.at(running(model, wanted.target), mode), set),
      ),
    ),
  );
  // A way of running that does not need this supply is judged with the supply alive; here only what its death starts.
  const wrong =
    wanted.ifSupplyFails === 'stopped'
      ? bdd.diff(runs, runsFromRest(v, wanted.target))
      : bdd.diff(bdd.diff(model.valid, wanted.blocked), runs);
  if (wrong === FALSE) return undefined;
  const atRest = bdd.and(wrong, stateOf(v.circuit, bdd, [])) !== FALSE;
  return atRest ? [] : movedIn(v.circuit, bdd, wrong)!;
}
