/** A settled state as a drawing shows it. */
import { liveCores } from '../machine/live-conductors.ts';
import { type BenchState, settleBench } from '../machine/machine.ts';
import { solveState } from '../machine/solved-state.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { DrawnState } from './current-shown.ts';

/** Contacts and live conductors once the inputs with these numbers have been moved from rest. */
export function drawnState(plan: Plan, moved: readonly number[]): DrawnState {
  const state = settleBench(plan, moved, 'on');
  const live = liveCores(plan, state, solveState(plan, state));
  return { made: madeContacts(state), live: (run, core) => live.has(`${run}/${core}`) };
}

/** Whether the contact between two terminals (`PART.TERMINAL`, common one first) is made; false where there is none. */
export function madeContacts(state: BenchState): (common: string, other: string) => boolean {
  const made = new Map<string, boolean>();
  for (const c of state.circuit.contacts) {
    const key = c.terminals.map((t) => terminalKey(c.part, t)).join(' ');
    // The resting position of a selector is a chain of contacts, one for each position it is not at.
    made.set(key, (made.get(key) ?? true) && state.situation.closed(c));
  }
  return (common, other) => made.get(`${common} ${other}`) ?? false;
}
