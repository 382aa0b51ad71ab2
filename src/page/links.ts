/** Which parts and cores of a drawing each finding speaks of: what the page marks for it, and by which it is found again. */
import type { Edit, EndRef } from '../edit/edits.ts';
import type { Finding } from '../findings/report-model.ts';
import type { Core, Plan, TerminalRef } from '../plan/plan.ts';
import { partOfKey, terminalKey } from '../plan/terminal-key.ts';
import { coreFromTo } from '../text/core-names.ts';

/** What one finding speaks of: names of parts, and cores as `RUN/CORE`. */
export type Link = readonly [parts: readonly string[], cores: readonly string[]];

export interface Links {
  /** one each finding, in the order in which the page tells them */
  readonly findings: readonly Link[];
  /** every core that one of them names, in words */
  readonly cores: readonly (readonly [id: string, words: string])[];
}

export function linksOf(plan: Plan, findings: readonly Finding[]): Links {
  const links = findings.map((f): Link => {
    const told = [...f.terminals, ...(f.cause?.terminals ?? [])];
    const parts = [...f.parts, ...told.map(partOfKey)].filter((part) => plan.parts.has(part));
    return [[...new Set(parts)], coresOf(plan, f, new Set(told))];
  });
  const named = new Set(links.flatMap(([, cores]) => cores));
  const cores = idsOf(plan).filter(([id]) => named.has(id));
  return {
    findings: links,
    cores: cores.map(([id, core]) => [id, wordsOf(plan, core)] as const),
  };
}

/** The cores that a repair changes; else those with both ends on terminals of the finding, else with one; else the run it stands at. */
function coresOf(plan: Plan, finding: Finding, told: ReadonlySet<string>): string[] {
  const changed = (finding.repair?.edits ?? []).flatMap(coresChanged);
  if (changed.length > 0) return [...new Set(changed)];
  const ids = idsOf(plan);
  const ends = ([, { a, b }]: (typeof ids)[number]) => [a, b].filter((end) => told.has(keyOf(end))).length;
  for (const least of [2, 1]) {
    const on = ids.filter((core) => ends(core) >= least);
    if (on.length > 0) return on.map(([id]) => id);
  }
  const isHere = ({ at }: { readonly at: { readonly line: number; readonly column: number } }) =>
    at.line === finding.line && at.column === finding.column;
  return ids.filter(([, core]) => isHere(core) || isHere(plan.runs[core.run]!)).map(([id]) => id);
}

/** Cores that an edit takes from where they are, as `RUN/CORE` of the plan before it. */
export function coresChanged(edit: Edit): string[] {
  const id = ({ run, core }: Pick<EndRef, 'run' | 'core'>) => `${run}/${core}`;
  if (edit.do === 'move' || edit.do === 'remove') return [id(edit)];
  return edit.do === 'swap' ? [id(edit.first), id(edit.second)] : [];
}

const idsOf = (plan: Plan): (readonly [string, Core])[] =>
  plan.runs.flatMap((run) => run.cores.map((core, i) => [`${run.index}/${i}`, core] as const));

const keyOf = (end: TerminalRef): string => terminalKey(end.part, end.terminal);

const wordsOf = (plan: Plan, { run, colour, a, b }: Core): string =>
  coreFromTo({ colour, link: plan.runs[run]!.link, a: a.written, b: b.written });

/** Cores of a plan that join two terminals which none joined before, as `RUN/CORE`. */
export function coresNew(before: Plan, after: Plan): string[] {
  const ends = ({ a, b }: Core) => [keyOf(a), keyOf(b)].sort().join('\n');
  const left = new Map<string, number>();
  for (const [, core] of idsOf(before)) left.set(ends(core), (left.get(ends(core)) ?? 0) + 1);
  return idsOf(after).flatMap(([id, core]) => {
    const known = left.get(ends(core)) ?? 0;
    left.set(ends(core), known - 1);
    return known > 0 ? [] : [id];
  });
}
