/** The terminals that a core or a probe can be put on: those that a drawing of the plan shows. */
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { kindOf } from './kinds.ts';
import { keyOf } from './probe-words.ts';

/** Names of the terminals of a part that exist, in the order of the plan; what may be missing counts only where it is wired. */
export function terminalsOf(plan: Plan): (part: string) => readonly string[] {
  const wired = wiredTerminals(plan);
  const known = new Map<string, readonly string[]>();
  return (name) => {
    const found = known.get(name);
    if (found) return found;
    const part = plan.parts.get(name);
    const names = plan.terminals.get(name)?.names ?? [];
    const on = (t: string) => wired.has(terminalKey(name, t));
    const there =
      part === undefined
        ? []
        : names.filter((t) => on(t) || kindOf(part).surelyHas(part, t, names.filter(on)));
    known.set(name, there);
    return there;
  };
}

/** Terminals with a core on them, `PART.TERMINAL`. */
export function wiredTerminals(plan: Plan): ReadonlySet<string> {
  return new Set(plan.runs.flatMap((r) => r.cores.flatMap((c) => [keyOf(c.a), keyOf(c.b)])));
}
