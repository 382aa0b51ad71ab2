/** Terminals of parts in the circuit. */

import type { Part } from '../plan/part-types.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { Circuit } from './circuit.ts';

/** Net of a terminal; undefined where nothing is wired to it. */
export function netAt(circuit: Circuit, part: string, terminal: string): number | undefined {
  return circuit.netOf.get(terminalKey(part, terminal));
}

/** Whether a core or link ends at a terminal. */
export function isLanded(circuit: Circuit, part: Part | string, terminal: string): boolean {
  return circuit.landed.has(terminalKey(typeof part === 'string' ? part : part.name, terminal));
}
