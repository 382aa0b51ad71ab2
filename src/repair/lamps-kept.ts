/** Whether lamps go on telling what they told. */
import { lampsLit } from '../machine/lit-lamps.ts';
import { running } from '../machine/live-conductors.ts';
import { poweredMachine } from '../machine/power.ts';
import { solveState } from '../machine/solved-state.ts';
import type { Part } from '../plan/part-types.ts';
import type { Study } from '../study/study.ts';

/** What runs and which lamps give light in one position. */
interface Shown {
  readonly runs: string;
  readonly lit: readonly string[];
}

const known = new WeakMap<Study, readonly Shown[]>();

/** Gates and switches tried alone; a shop with more has lamps that are wired alike. */
const MOST_ALONE = 24;

function shownBy(study: Study): readonly Shown[] {
  const found = known.get(study);
  if (found) return found;
  const machine = poweredMachine(study);
  const rest = machine.start([]);
  const inputs = study.circuit.inputs.map((i) => i.index);
  const gates = study.circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const positions = [[], ...inputs.slice(0, MOST_ALONE).map((i) => [i]), gates];
  // What a start button holds in is to be seen after it has gone back.
  const buttons = study.circuit.inputs.filter((i) => i.kind === 'button').map((i) => i.index);
  const states = [
    ...positions.map((moved) => machine.moveTo(moved, rest)),
    ...buttons
      .slice(0, MOST_ALONE)
      .map((b) => machine.moveTo(gates, machine.moveTo([...gates, b], machine.moveTo(gates, rest)))),
  ];
  const made = states.map((state): Shown => {
    const solved = solveState(study.plan, state);
    const lamps = lampsLit(study.plan, state, solved);
    return {
      runs: [...running(state, solved)].sort().join(),
      lit: lamps.filter((l) => l.lit).map((l) => l.part),
    };
  });
  known.set(study, made);
  return made;
}

/**
 * Lamps that gave light in some position go on giving it in those, in every position tried in which the loads do what they
 * did before. One that was dark throughout was part of what was wrong.
 */
export function keepsLamps(before: Study, after: Study): boolean {
  if (!hasLamps(before)) return true;
  const [was, now] = [shownBy(before), shownBy(after)];
  // What a lamp with an intent shows is part of the proof.
  const proved = new Set((after.plan.lampIntents ?? []).map((l) => l.target));
  const alive = new Set(was.flatMap((s) => s.lit).filter((lamp) => !proved.has(lamp)));
  const same = (all: readonly string[], y: readonly string[]) => {
    const x = all.filter((lamp) => alive.has(lamp));
    const own = y.filter((lamp) => alive.has(lamp));
    return own.length === x.length && x.every((lamp) => own.includes(lamp));
  };
  return was.every((s, i) => s.runs !== now[i]!.runs || same(s.lit, now[i]!.lit));
}

/** Whether every lamp that gave light in some position gives light in some position still. */
export function keepsLampsAlive(before: Study, after: Study): boolean {
  if (!hasLamps(before)) return true;
  const lit = (study: Study) => new Set(shownBy(study).flatMap((s) => s.lit));
  const now = lit(after);
  return [...lit(before)].every((lamp) => now.has(lamp));
}

/** Lamps that give light in no position tried; in a plan that is right there is none, unless its volts are wrong. */
export function darkLamps(study: Study): readonly string[] {
  const names = lampsOf(study).map((p) => p.name);
  if (names.length === 0) return names;
  const lit = new Set(shownBy(study).flatMap((s) => s.lit));
  return names.filter((name) => !lit.has(name));
}

const hasLamps = (study: Study): boolean => lampsOf(study).length > 0;

function lampsOf({ plan }: Study): readonly Part[] {
  return [...plan.parts.values()].filter((p) => p.kind === 'lamp' || p.kind === 'led');
}
