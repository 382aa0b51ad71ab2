/** The states a repair must get right, and what each load must do there. */

import { FALSE } from '../logic/bdd.ts';
import { inputVariable } from '../logic/conduction.ts';
import { baseState, entryState } from '../logic/entry-states.ts';
import { readIntents, type Wanted } from '../logic/intent.ts';
import { meantLit } from '../logic/lamps.ts';
import { type Moved, runsAt, type Verified } from '../logic/verify.ts';
import type { InputRef, LampIntent } from '../plan/plan.ts';
import { mayHaveResistor } from '../study/indicators.ts';

/** Entries of an intent that are tried one by one; more than these look alike. */
const MOST_ENTRIES = 250;

export interface RequiredState {
  /** inputs moved, one set a step */
  readonly steps: readonly ReadonlySet<number>[];
  /** what each target must do there */
  readonly want: ReadonlyMap<string, boolean>;
}

/** What the intents say of one state reached straight from rest; a target they leave open is left out. */
function required(v: Verified, moved: Moved, lamps: readonly LampIntent[]): RequiredState {
  const { bdd } = v.model;
  const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
  const holds = (f: number) => bdd.evaluate(f, (x) => set.has(x));
  const want = new Map<string, boolean>();
  for (const w of v.intents.wanted) {
    const works = w.entries.some((e) => holds(e.works));
    if (holds(w.blocked)) want.set(w.target, false);
    else if (works && !w.loose) want.set(w.target, true);
    else if (!works && !w.latches.some((l) => holds(l.pressed))) want.set(w.target, false);
  }
  // Where loads do what is meant, what is to be mended may be a lamp; else lamps are left to the whole check.
  if (v.deviations.length === 0)
    for (const lamp of lamps) {
      const { litWhen } = lamp;
      const lit =
        typeof litWhen === 'object' && 'runs' in litWhen
          ? runsAt(v, litWhen.runs, moved) === true
          : holds(meantLit(v.model, lamp));
      want.set(lamp.target, lit);
    }
  return { steps: [new Set(moved)], want };
}

/**
 * The states of every reading that the intents allow: a start button that no `runs-on` names starts the load by itself or
 * arms it for the gates. A circuit has to get one list right in whole.
 */
export function readingsOf(v: Verified): (readonly RequiredState[])[] {
  const { plan } = v.circuit;
  const isOpen = (plan.intents ?? []).some((i) =>
    i.staysOnAfter.some((ref) => !i.runsOn.flat().some((r) => r.part === ref.part)),
  );
  if (!isOpen) return [requiredStates(v)];
  return [true, false].map((arming) =>
    requiredStates({ ...v, intents: readIntents(v.circuit, v.model.bdd, arming) }),
  );
}

/** States in which something is wrong now come first, then rest, each entry alone, all gates, each blocking input. */
function requiredStates(v: Verified): RequiredState[] {
  const states: Moved[] = v.deviations.filter((d) => d.direct).map((d) => d.steps.at(-1)!);
  const add = (moved: Moved | undefined) => {
    if (moved) states.push(moved);
  };
  add([]);
  const gates = v.circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  for (const w of v.intents.wanted) addFor(v, w, gates, add);
  add(gates);
  // One that shares its volts with a resistor is none of the quick look's.
  const { plan } = v.circuit;
  const lamps = (plan.lampIntents ?? []).filter(({ target }) => !mayHaveResistor(plan, target));
  const unique = new Map(states.map((s) => [[...s].sort((x, y) => x - y).join(), s]));
  return [
    ...[...unique.values()].map((s) => required(v, s, lamps)),
    ...v.intents.wanted.flatMap((w) => heldStates(v, w)),
  ];
}

/** A wanted seal-in: held after its button, ended by each of what stops or blocks it, and not back after that. */
function heldStates(v: Verified, w: Wanted): RequiredState[] {
  if (w.loose) return [];
  const base = baseState(v, w);
  const on = (run: boolean) => new Map([[w.target, run]]);
  return w.latches.flatMap(({ ref }) => {
    const own = w.entries.filter((e) => e.refs.some((r) => r.part === ref.part));
    // Entries that ask for the button and for a gate are alike; the first stands for them.
    return own.slice(0, 1).flatMap(({ refs }) => {
      const others = refs.filter((r) => r.part !== ref.part).flatMap((r) => inputsOf(v, r));
      const set = (more: readonly number[]) => new Set([...base, ...more]);
      const calling = set(others);
      // A button that an entry names together with a gate may do nothing by itself.
      const held = [set([...inputsOf(v, ref), ...others]), calling];
      const stops = [...(w.intent?.stoppedBy ?? []), ...(w.intent?.blockedBy ?? [])].map((x) =>
        set([...others, ...inputsOf(v, x)]),
      );
      return [
        { steps: held, want: on(true) },
        ...(others.length > 0 ? [{ steps: [...held, set([])], want: on(false) }] : []),
        ...stops.flatMap((s) => [
          { steps: [...held, s], want: on(false) },
          { steps: [...held, s, calling], want: on(false) },
        ]),
      ];
    });
  });
}

const inputsOf = ({ circuit }: Verified, ref: InputRef): number[] =>
  circuit.inputs.filter((i) => i.part === ref.part && i.position === ref.position).map((i) => i.index);

function addFor(v: Verified, w: Wanted, gates: Moved, add: (moved: Moved | undefined) => void): void {
  const { bdd } = v.model;
  const base = baseState(v, w);
  add(base);
  const step = Math.max(1, Math.ceil(w.entries.length / MOST_ENTRIES));
  w.entries.forEach((e, i) => {
    if (i % step !== 0 && i !== w.entries.length - 1) return;
    add(entryState(v, w, e.works, base));
    // Of several together, each without one: a key alone, a gate with the key off.
    if (e.refs.length > 1)
      for (const left of e.refs) {
        const others = e.refs.filter((r) => r !== left).flatMap((r) => inputsOf(v, r));
        add([...new Set([...base, ...others])].sort((x, y) => x - y));
      }
  });
  const open = [...new Set([...gates, ...base])].sort((x, y) => x - y);
  add(open);
  for (const { ref, blocks } of w.blockers) {
    const own = v.circuit.inputs.filter((i) => i.part === ref.part).map((i) => i.index);
    const without = open.filter((i) => !own.includes(i));
    for (const more of [[], ...own.map((i) => [i])]) {
      const moved = [...without, ...more].sort((x, y) => x - y);
      const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
      if (blocks !== FALSE && bdd.evaluate(blocks, (x) => set.has(x))) add(moved);
    }
  }
}
