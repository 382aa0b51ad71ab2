import { terminalKey } from '../plan/terminal-key.ts';
import type { MachineState } from './machine.ts';

/** Whether the contact between two terminals (`PART.TERMINAL`, common one first) is made; false where there is none. */
export function madeContacts(state: MachineState): (common: string, other: string) => boolean {
  const made = new Map<string, boolean>();
  for (const c of state.circuit.contacts) {
    const key = c.terminals.map((t) => terminalKey(c.part, t)).join(' ');
    // The resting position of a selector is a chain of contacts, one for each position it is not at.
    made.set(key, (made.get(key) ?? true) && state.situation.closed(c));
  }
  return (common, other) => made.get(`${common} ${other}`) ?? false;
}
