/** Terminals by the marks that a plan uses for them. */
import type { Plan } from '../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';

/** Marks that belong together: DIN 72552, EN 50005, EN 50042 for timers. */
const FAMILIES: readonly ReadonlySet<string>[] = [
  new Set(['30', '85', '86', '87', '87a']),
  new Set(['11', '12', '14']),
  new Set(['15', '16', '18']),
];

/** A terminal as the plan writes it elsewhere, or would by the marks that it uses on the same part; else as it is. */
export function asWritten(plan: Plan, key: string): string {
  const { part, terminal } = splitTerminalKey(key);
  const ends = plan.runs
    .flatMap((run) => run.cores.flatMap((c) => [c.a, c.b]))
    .filter((e) => e.part === part);
  const own = ends.find((e) => e.terminal === terminal);
  if (own !== undefined) return own.written;
  const used = new Set(ends.map((e) => e.written.slice(part.length + 1)));
  const family = FAMILIES.find((marks) => [...used].some((mark) => marks.has(mark)));
  const marks = plan.terminals.get(part);
  const mark = [...(marks?.marks() ?? [])].find((m) => family?.has(m) && marks?.find(m) === terminal);
  return mark === undefined ? key : terminalKey(part, mark);
}
