import type { Plan, TerminalRef } from '../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';

/** Writes a terminal as the plan marks it: as it was first typed, else by its canonical name. */
export function marksOf(plan: Plan): (key: string) => string {
  const typed = new Map<string, string>();
  for (const run of plan.runs)
    for (const core of run.cores)
      for (const end of [core.a, core.b]) {
        const key = terminalKey(end.part, end.terminal);
        if (!typed.has(key)) typed.set(key, end.written);
      }
  return (key) => typed.get(key) ?? key;
}

/** The mark alone: `86` of `K1.86`. */
export function bareMark(written: string): string {
  const { part, terminal } = splitTerminalKey(written);
  return terminal === '' ? part : terminal;
}

/** The parts of some terminals, each once. */
export function partsOf(...refs: readonly TerminalRef[]): string[] {
  return [...new Set(refs.map((r) => r.part))];
}

export function keyOf(ref: Pick<TerminalRef, 'part' | 'terminal'>): string {
  return terminalKey(ref.part, ref.terminal);
}
