/**
 * The proof at nominal volts: every position of every relay by solved volts wherever joins alone do not settle it. A coil
 * that does not reach its pull-in with all as printed, at 20 °C, is out, for whoever asks.
 */

import type { Relay, Source } from '../circuit/circuit.ts';
import { effort, SOME_EFFORT } from '../circuit/effort.ts';
import type { Sensing } from '../circuit/positions.ts';
import { type Bdd, FALSE, type Fn, TRUE } from '../logic/bdd.ts';
import { type LogicModel, nextPositions } from '../logic/model.ts';
import { joinedSense } from '../logic/sense.ts';
import { Undecided } from '../logic/undecided.ts';
import { type Moved, stateOf, type Verified, verifyWith } from '../logic/verify.ts';
import { figuresFor } from './corner-figures.ts';
import { withDeltas } from './mains/three-phase.ts';
import { senseIsland } from './sense-island.ts';
import { NotWorkedOut } from './sense-volts.ts';
import { type SensedIn, SenseSolver } from './sensed.ts';
import { type TableState, tableSteps } from './table-states.ts';
import { type CoilKnowledge, canBeOverdrawn, canBeShorted, relaysInDoubt } from './volts-in-doubt.ts';

/** What every relay and load does at nominal volts, and how far that was decided. */
export interface Nominal {
  readonly verified: Verified;
  /**
   * `joins`: what is joined settles it, for the volts are ample. `volts`: solved for every state. `some`: solved for the
   * states of the truth table alone, since all of them would take too long. `unknown`: not even those could be.
   */
  readonly rests: 'joins' | 'volts' | 'some' | 'unknown';
}

/** Nets times solutions for the whole, and for the states of the table. */
const BUDGET = 250_000;

/** Pure. Costs next to nothing where no relay is in doubt; throws nothing. */
export function atNominalVolts(known: Omit<CoilKnowledge, 'figures'>): Nominal {
  const { verified } = known;
  const { plan, wired } = known.electrics.study;
  const { circuit, figures } = withDeltas(plan, wired, figuresFor(plan, 'reading'));
  const doubt = decided(() => relaysInDoubt({ ...known, figures }));
  if (doubt?.length === 0) return { verified, rests: 'joins' };
  if (!doubt) return { verified, rests: 'unknown' };
  const steady = steadySources({ ...known, figures });
  const at = { plan, circuit, figures, model: verified.model, steady };
  const solved = (states: readonly Moved[] | undefined) =>
    verifyWith(
      verified,
      solvedModel({ ...at, states, budget: { left: BUDGET, until: effort() + SOME_EFFORT } }, doubt),
    );
  const whole = decided(() => solved(undefined));
  if (whole) return { verified: whole, rests: 'volts' };
  const some = decided(() => solved(statesOf(tableSteps(known.electrics.study, verified))));
  return some ? { verified: some, rests: 'some' } : { verified, rests: 'unknown' };
}

/** Undefined where that would take more than it may. */
function decided<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof Undecided) return undefined;
    throw error;
  }
}

/** Sources that no position of the contacts shorts or asks for more than their limit. */
function steadySources(known: CoilKnowledge): (s: Source) => boolean {
  const { sources } = known.verified.circuit;
  const steady = sources.filter((s) => !canBeShorted(known, s) && !canBeOverdrawn(known, s));
  const found = new Set(steady.map((s) => s.index));
  return (s) => found.has(s.index);
}

/** Rest, and every state on the way to a row of the table, once each. */
function statesOf(rows: readonly TableState[]): Moved[] {
  const all = [[], ...rows.flatMap((r) => r.steps)];
  return [...new Map(all.map((moved) => [[...moved].sort((x, y) => x - y).join(), moved])).values()];
}

/** The model in which relays in doubt go by solved volts. */
function solvedModel(at: SensedIn, doubt: readonly Relay[]): LogicModel {
  const { model, states } = at;
  // Such a source holds its volts whatever is drawn.
  const isFirm = (s: Source) => at.steady(s) && s.feed.by === 'always' && at.figures.source(s).ohms === 0;
  const firm = new Set(at.circuit.sources.filter(isFirm).flatMap((s) => s.rails.map((r) => r.net)));
  const valid = states
    ? model.bdd.any(states.map((moved) => stateOf(model.circuit, model.bdd, moved)))
    : model.valid;
  const sensed = [...model.sensed];
  for (const { index } of doubt) {
    const found = bySolvedVolts({ ...at, firm }, index);
    if (found === undefined) continue;
    sensed[index] = found;
  }
  const next = nextPositions(model.circuit, model.bdd as Bdd, sensed);
  return { ...model, valid, next, sensed, pull: sensed.map((s) => s.on) };
}

/** `firm`: poles of sources that hold their volts whatever is drawn. */
interface Cut extends SensedIn {
  readonly firm: ReadonlySet<number>;
}

/** Undefined where its volts are not worked out. */
function bySolvedVolts(at: Cut, index: number): Sensing<Fn> | undefined {
  const bdd = at.model.bdd as Bdd;
  let on: Fn = TRUE;
  let off: Fn = FALSE;
  let lost: Fn | undefined;
  try {
    at.circuit.relays[index]!.senses.forEach((sense, k) => {
      const joined = at.model.circuit.relays[index]!.senses[k]!;
      const found =
        sense.by === 'volts'
          ? new SenseSolver(at, senseIsland(at.circuit, sense, at.firm), sense).solve()
          : joinedSense(at.model.conduction, bdd, joined);
      on = bdd.and(on, found.on);
      off = bdd.or(off, found.off);
      if (k === 0 && at.circuit.relays[index]!.delay?.stored === false) lost = found.off;
    });
  } catch (error) {
    if (!(error instanceof NotWorkedOut)) throw error;
    return undefined;
  }
  return { on, off, ...(lost !== undefined && { lost }) };
}
