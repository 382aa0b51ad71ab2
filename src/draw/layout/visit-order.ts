/** The order in which the conductors lead from one symbol to the next. */

import type { Circuit } from '../../circuit/circuit.ts';
import { push } from '../../plan/map-entries.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { traitsOf } from '../figure-traits.ts';
import type { SymbolSpec } from './symbol-specs.ts';

/** Symbols in the order in which cores lead from one to the next, sources first. */
export function visitOrder(specs: readonly SymbolSpec[], circuit: Circuit): number[] {
  const owner = new Map<string, number>();
  specs.forEach((s, i) => {
    for (const t of s.terminals) owner.set(t.key, i);
  });
  const next = new Map<string, string[]>();
  for (const run of circuit.plan.runs)
    for (const core of run.cores) {
      const a = terminalKey(core.a.part, core.a.terminal);
      const b = terminalKey(core.b.part, core.b.terminal);
      push(next, a, b);
      push(next, b, a);
    }
  const seen = new Set<number>();
  const followed = new Set<string>();
  const order: number[] = [];
  const entered: string[] = [];
  const follow = (start: string) => {
    const stack = [start];
    for (let key = stack.pop(); key !== undefined; key = stack.pop()) {
      if (followed.has(key)) continue;
      followed.add(key);
      const i = owner.get(key);
      if (i !== undefined && !seen.has(i)) {
        seen.add(i);
        order.push(i);
        for (const t of specs[i]!.terminals) entered.push(t.key);
      }
      for (const to of [...(next.get(key) ?? [])].reverse()) if (!followed.has(to)) stack.push(to);
    }
  };
  const sources = specs.filter((s) => traitsOf(s.figure).source);
  for (const s of sources) for (const t of s.terminals) entered.push(t.key);
  for (let at = 0; at < entered.length; at++) follow(entered[at]!);
  specs.forEach((s, i) => {
    if (seen.has(i)) return;
    seen.add(i);
    order.push(i);
    for (const t of s.terminals) follow(t.key);
  });
  return order;
}
