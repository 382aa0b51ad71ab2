/** Which of its terminals a cut-out really has. */
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import type { NumberedCircuit } from './numbered-circuit.ts';

const isNumber = (mark: string): boolean => /^9[5-8]$/.test(mark);

/**
 * A cut-out has the tabs of a switch or the numbers of an overload relay, and mostly not both: those that its cores tell, and
 * where it has none its dial.
 * @param landed ends of cores on every terminal
 */
export function hasTerminal(circuit: NumberedCircuit, landed: Int32Array, terminal: number): boolean {
  const { part: name, terminal: mark } = splitTerminalKey(circuit.names[terminal]!);
  const part = circuit.parts.get(name);
  if (part?.kind !== 'cutout' || landed[terminal]! > 0) return true;
  const on = (m: string) => landed[circuit.terminal(terminalKey(name, m)) ?? -1] ?? 0;
  const used = circuit.marksOf(name).filter((m) => on(m) > 0);
  if (used.length > 0) return used.some((m) => isNumber(m) === isNumber(mark));
  return isNumber(mark) === (part.setting !== undefined || part.reset !== undefined);
}
