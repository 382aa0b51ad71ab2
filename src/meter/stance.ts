/** The positions a sheet puts gates and switches in. */

import type { Circuit } from '../circuit/circuit.ts';
import { positionWord } from '../circuit/input-words.ts';
import type { InputRef, Plan } from '../plan/plan.ts';

/** Inputs away from rest; with `first`, what was worked and let go of before. */
export interface Stance {
  readonly key: string;
  readonly moved: readonly number[];
  readonly first: readonly number[];
}

export const REST: Stance = { key: '/', moved: [], first: [] };

/** Inputs away from rest, and what was worked and let go of before, in any order. */
export function stanceOf(moved: readonly number[], first: readonly number[] = []): Stance {
  const order = (list: readonly number[]) => [...new Set(list)].sort((a, b) => a - b);
  const [m, f] = [order(moved), order(first)];
  return { key: `${f.join()}/${m.join()}`, moved: m, first: f };
}

/** Pairs of an entry and what blocks it, before they are cut to one entry each. */
const MANY = 40;

/**
 * Rest, each input alone, whole entries that need several inputs, an entry with each thing that blocks it, and what
 * ought to hold itself in after its button.
 */
export function stances(plan: Plan, circuit: Circuit): Stance[] {
  const number = (ref: InputRef) =>
    circuit.inputs.find((i) => i.part === ref.part && i.position === ref.position)?.index;
  const numbers = (refs: readonly InputRef[]) => refs.map(number).filter((n) => n !== undefined);
  const all = [REST, ...circuit.inputs.map((i) => stanceOf([i.index]))];
  const put = (s: Stance) => {
    if (fits(circuit, s.moved) && fits(circuit, s.first)) all.push(s);
  };
  for (const intent of plan.intents ?? []) {
    const entries = intent.runsOn.map(numbers);
    const latches = numbers(intent.staysOnAfter);
    for (const entry of entries) if (entry.length > 1) put(stanceOf(entry));
    const blockers = numbers([...intent.blockedBy, ...intent.stoppedBy]);
    const tried = entries.length * blockers.length > MANY ? entries.slice(0, 1) : entries;
    for (const entry of tried) for (const b of blockers) put(stanceOf([...entry, b]));
    const gates = circuit.inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
    const armed = gates.slice(0, 1);
    for (const button of latches) {
      put(stanceOf([button, ...armed]));
      put(stanceOf([], [button]));
      put(stanceOf(armed, [button]));
      put(stanceOf(armed, [button, ...armed]));
    }
    // A start button may only arm the gates: each is then worked with the circuit held.
    if (latches.length > 0 && gates.length <= MANY)
      for (const gate of gates) put(stanceOf([gate], [latches[0]!]));
  }
  return [...new Map(all.map((s) => [s.key, s])).values()];
}

/** A selector stands at one position. */
function fits(circuit: Circuit, moved: readonly number[]): boolean {
  const parts = moved.map((i) => circuit.inputs[i]!.part);
  return new Set(parts).size === new Set(moved).size;
}

/** Buttons whose circuit is meant to hold itself in once they are let go of. */
export function sealingInputs(plan: Plan, circuit: Circuit): ReadonlySet<number> {
  const refs = (plan.intents ?? []).flatMap((i) => i.staysOnAfter);
  const own = (part: string, position: string | undefined) =>
    refs.some((r) => r.part === part && r.position === position);
  return new Set(circuit.inputs.filter((i) => own(i.part, i.position)).map((i) => i.index));
}

/** Names of what springs back by itself: a gate or a switch stays where it is put. */
export function heldInputs(circuit: Circuit, moved: readonly number[]): string[] {
  return moved
    .map((index) => circuit.inputs[index]!)
    .filter(({ kind }) => kind === 'button' || kind === 'cutout')
    .map(({ part }) => part);
}

/** `planer open`, `mode at hand`. */
export function stanceWords(circuit: Circuit, moved: readonly number[]): string[] {
  return moved.map((index) => {
    const input = circuit.inputs[index]!;
    return `${input.part} ${positionWord(input.kind, input.position)}`;
  });
}
