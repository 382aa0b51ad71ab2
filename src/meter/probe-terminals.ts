/** The terminals that a core or a probe can be put on: those that a drawing of the plan shows. */
import type { Part, Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import { keyOf } from './probe-words.ts';

const TABS = ['COM', 'NO', 'NC'];
const POLES = ['+', '-', '~1', '~2'];

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
    const there = part === undefined ? [] : names.filter((t) => on(t) || isSure(part, t, names.filter(on)));
    known.set(name, there);
    return there;
  };
}

/** Terminals with a core on them, `PART.TERMINAL`. */
export function wiredTerminals(plan: Plan): ReadonlySet<string> {
  return new Set(plan.runs.flatMap((r) => r.cores.flatMap((c) => [keyOf(c.a), keyOf(c.b)])));
}

/** Whether a part surely has this terminal when no core is on it; `wired`: its terminals with a core. */
function isSure(part: Part, terminal: string, wired: readonly string[]): boolean {
  switch (part.kind) {
    case 'supply':
      return POLES.includes(terminal);
    case 'gate':
    case 'switch':
    case 'button':
      return part.tabs.some((tab) => tab === terminal);
    case 'cutout': {
      const overload = wired.some((t) => !TABS.includes(t));
      const plain = !overload || wired.some((t) => TABS.includes(t));
      if (!TABS.includes(terminal)) return overload;
      return plain && part.tabs.some((tab) => tab === terminal);
    }
    case 'selector':
      return terminal !== 'off';
    case 'timer':
      return terminal !== 'T1' && terminal !== 'T2';
    case 'motor':
    case 'load':
      if (part.pluggedInto !== undefined && wired.length === 0) return false;
      return isSureOnMains(part.feed, terminal) && !(terminal === 'PE' && part.class2Insulated);
    case 'plug':
    case 'outlet':
      return isSureOnMains(part.feed, terminal);
    case 'box':
      return part.metal;
    default:
      return true;
  }
}

/** Two legs and three phases need no neutral. */
function isSureOnMains(feed: Extract<Part, { kind: 'plug' }>['feed'], terminal: string): boolean {
  return feed === 'single' || terminal !== 'N';
}
