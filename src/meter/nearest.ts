/** What lies near a part: inputs along the cores, and terminals that are near everywhere. */
import type { Circuit } from '../circuit/circuit.ts';
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';

/** Inputs that are looked for around a part. */
const FEW = 2;

/** The few inputs that lie fewest cores away from some parts, in the order in which they are met. */
export function nearestInputs(plan: Plan, circuit: Circuit): (parts: readonly string[]) => readonly number[] {
  const around = new Map<string, string[]>();
  for (const run of plan.runs)
    for (const { a, b } of run.cores) {
      push(around, a.part, b.part);
      push(around, b.part, a.part);
    }
  const inputs = new Map<string, number[]>();
  for (const { part, index } of circuit.inputs) push(inputs, part, index);
  return (parts) => {
    const seen = new Set(parts);
    const found: number[] = [];
    for (const part of seen) {
      found.push(...(inputs.get(part) ?? []));
      if (found.length >= FEW) break;
      for (const to of around.get(part) ?? []) seen.add(to);
    }
    return found;
  };
}

export function terminalsOfSources(plan: Plan, { sources }: Circuit): string[] {
  return sources.flatMap((s) => allTerminals(plan, s.part));
}

export function allTerminals(plan: Plan, part: string): string[] {
  return (plan.terminals.get(part)?.names ?? []).map((t) => terminalKey(part, t));
}
