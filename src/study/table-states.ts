/** The states a person would try, each with the moves that lead there. */
import { positionWord, restWord, sayMoved } from '../circuit/input-words.ts';
import { type Fn, TRUE } from '../logic/bdd.ts';
import { baseState, entryState } from '../logic/entry-states.ts';
import type { Wanted } from '../logic/intent.ts';
import type { Moved, Verified } from '../logic/verify.ts';
import type { Basis } from './basis.ts';

/** Inputs away from rest after one move. */
export type Step = Moved;

/** A row to be: inputs away from rest after each move in turn, from rest; one move at least. */
export interface TableState {
  readonly label: string;
  readonly steps: readonly Step[];
}

/**
 * All shut, each entry of the intent alone, all open, each blocking input with everything open, straight from rest; then,
 * where a start button is to be remembered, what follows when it is let go, what a gate does then, and what stops it.
 */
export function tableSteps(s: Basis, v: Verified): TableState[] {
  return [...usualStates(s, v), ...heldStates(s, v)];
}

/** Every combination, straight from rest; then what is held. */
export function everyStep(s: Basis, v: Verified): TableState[] {
  let states: number[][] = [[]];
  for (const part of new Set(v.circuit.inputs.map((i) => i.part))) {
    const own = v.circuit.inputs.filter((i) => i.part === part).map((i) => i.index);
    states = [states, ...own.map((i) => states.map((x) => [...x, i]))].flat();
  }
  const direct = states.map((moved) => ({ label: sayMoved(v.circuit, moved), steps: [moved] }));
  return [...direct, ...heldStates(s, v)];
}

function usualStates(s: Basis, v: Verified): TableState[] {
  const found: TableState[] = [{ label: 'all shut', steps: [[]] }];
  const seen = new Set(['']);
  const add = (label: string, moved: Moved | undefined) => {
    if (!moved) return;
    const sorted = [...moved].sort((a, b) => a - b);
    if (seen.has(sorted.join())) return;
    seen.add(sorted.join());
    found.push({ label, steps: [sorted] });
  };
  for (const w of v.intents.wanted) {
    const base = baseState(v, w);
    add('all shut, nothing blocking', base);
    for (const e of w.entries)
      add(`${e.refs.map((r) => r.position ?? r.part).join(' with ')} alone`, entryState(v, w, e.works, base));
  }
  const gates = s.circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const bases = [...new Set(v.intents.wanted.flatMap((w) => baseState(v, w)))];
  const open = [...new Set([...gates, ...bases])];
  add('all gates open', open);
  for (const w of v.intents.wanted)
    for (const { ref } of w.blockers) {
      const own = s.circuit.inputs.filter((i) => i.part === ref.part);
      const named = own.find((i) => i.position === ref.position) ?? own[0];
      if (!named) continue;
      const without = open.filter((i) => !own.some((o) => o.index === i));
      const isSwitch = named.kind === 'switch';
      const resting = named.kind === 'selector' && named.position !== ref.position;
      add(
        `all gates open, ${ref.part} ${isSwitch ? 'off' : resting ? `at ${ref.position}` : positionWord(named.kind, named.position)}`,
        isSwitch || resting ? without : [...without, named.index],
      );
    }
  return found;
}

/** For every wanted seal-in: pressed and let go; each entry it serves then; and each stop, put on and taken off. */
function heldStates(s: Basis, v: Verified): TableState[] {
  const found = new Map<string, TableState>();
  const add = (steps: readonly Step[]) =>
    found.set(JSON.stringify(steps), { label: movesOf(s, steps).join(', then '), steps });
  for (const w of v.intents.wanted) {
    const base = baseState(v, w);
    for (const steps of turns(v, w, base)) add(steps);
    for (const { pressed } of w.latches) {
      const press = entryState(v, w, pressed, base);
      if (!press) continue;
      const armed = [press, base];
      add(armed);
      const started = servedEntries(v, w, pressed).flatMap((works) => {
        const state = entryState(v, w, works, base);
        return state && state.length > base.length ? [[...armed, state]] : [];
      });
      for (const steps of started) add(steps);
      const running = started[0] ?? armed;
      for (const { blocks } of w.blockers) {
        const last = running.at(-1)!;
        const stopped = nearestTo(v, blocks, last);
        if (!stopped) continue;
        add([...running, stopped]);
        add([...running, stopped, last]);
      }
    }
  }
  return [...found.values()];
}

/** Of a button that starts and stops by turns: pressed, let go, and pressed again, with the first gate it serves. */
function turns(v: Verified, w: Wanted, base: Moved): Step[][] {
  if (!w.alternating) return [];
  const press = entryState(v, w, w.alternating.pressed, base);
  const { parts, pressed } = w.alternating;
  const entry = w.entries.find((e) => e.refs.some((r) => parts.has(r.part)));
  const served = entry && entryState(v, w, v.model.bdd.compose(entry.works, own(v, pressed)), base);
  if (!press || !served) return [];
  const again = [...new Set([...served, ...press])];
  return [
    [press, base],
    [press, base, served],
    [press, base, served, again],
    [press, base, served, again, served],
  ];
}

/** The variables of buttons, each taken as pressed. */
const own = (v: Verified, pressed: Fn) => new Map([...v.model.bdd.support(pressed)].map((x) => [x, TRUE]));

/** What is left to do for each entry that asks for a button, once that is remembered. */
function servedEntries(v: Verified, w: Wanted, pressed: Fn): Fn[] {
  const { bdd } = v.model;
  const button = bdd.support(pressed);
  return w.entries
    .filter(({ works }) => [...bdd.support(works)].some((x) => button.has(x)))
    .map(({ works }) => bdd.compose(works, new Map([...button].map((x) => [x, TRUE]))));
}

/** The state with the fewest inputs changed in which a function of the inputs is true. */
function nearestTo(v: Verified, f: Fn, from: Moved): Moved | undefined {
  const { bdd, valid } = v.model;
  const first = v.circuit.relays.length;
  const was = new Set(from);
  const found = bdd.nearest(bdd.and(valid, f), (x) => was.has(x - first));
  if (!found) return undefined;
  return v.circuit.inputs.filter((i) => found.get(first + i.index) ?? was.has(i.index)).map((i) => i.index);
}

/** Each move in words, `START pressed`; none for rest. */
export function movesOf(s: Basis, steps: readonly Step[]): string[] {
  const { inputs } = s.circuit;
  let before = new Set<number>();
  return steps.flatMap((step) => {
    const now = new Set(step);
    const on = step.filter((i) => !before.has(i)).map((i) => inputs[i]!);
    const off = [...before].filter((i) => !now.has(i)).map((i) => inputs[i]!);
    const back = off.filter((i) => !on.some((o) => o.part === i.part));
    before = now;
    const words = [
      ...on.map((i) => `${i.part} ${positionWord(i.kind, i.position)}`),
      ...back.map(
        (i) => `${i.part} ${i.kind === 'selector' ? 'at ' : ''}${restWord(s.plan, i.part, i.kind)}`,
      ),
    ];
    return words.length === 0 ? [] : [words.join(' and ')];
  });
}
