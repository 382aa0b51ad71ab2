import { push } from '../plan/map-entries.ts';
import { entryOf } from './register.ts';
import type { Finding } from './report-model.ts';
import { SEVERITIES } from './report-words.ts';
import { twinsTogether } from './twins.ts';

/**
 * Folds effects under causes, drops duplicates, makes one of what says the same of several parts, and puts the list in
 * order: question, severity, place, id.
 */
export function arrange(all: readonly Finding[]): Finding[] {
  const list = withoutDuplicates(all);
  const also = new Map<Finding, Finding[]>();
  const kept: Finding[] = [];
  const move = list.find((f) => f.cause?.what === 'tab') ?? list.find((f) => f.cause?.what === 'diode');
  for (const f of list) {
    const cause =
      move && f !== move && entryOf(f.id).goneByOneMove
        ? move
        : entryOf(f.id)
            .followsFrom.map((id) =>
              list.find((c) => c.id === id && c !== f && related(f, c) && (isGrave(c) || !isGrave(f))),
            )
            .find((c) => c !== undefined);
    if (cause) push(also, cause, f);
    else kept.push(f);
  }
  // A cause may itself have been folded under another; its effects then go one further up.
  return twinsTogether(kept, (f) => gather(f, also)).sort(
    (a, b) =>
      a.question - b.question ||
      SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
      a.line - b.line ||
      a.column - b.column ||
      (a.id < b.id ? -1 : 1),
  );
}

/** A doubt or a notice explains no danger, warning or fault. */
function isGrave(f: Finding): boolean {
  return f.severity === 'danger' || f.severity === 'warning' || f.severity === 'fault';
}

/**
 * A contact's figure follows from another of the same contact, a loose end from what its part has, a conductor from what
 * lies on it; the rest follow anywhere.
 */
function related(effect: Finding, cause: Finding): boolean {
  if (effect.id === 'contact-starting' || effect.id === 'contact-running')
    return effect.parts[0] === cause.parts[0];
  const { followsBeside } = entryOf(effect.id);
  if (followsBeside === undefined || followsBeside.but?.some((id) => id === cause.id)) return true;
  return effect.parts.some(
    (p) => cause.parts.includes(p) || cause.terminals.some((t) => t.startsWith(`${p}.`)),
  );
}

/** What was folded under a finding, and what under that in turn. */
function gather(
  f: Finding,
  under: ReadonlyMap<Finding, readonly Finding[]>,
  seen = new Set<Finding>(),
): Finding[] {
  if (seen.has(f)) return [];
  seen.add(f);
  const own = under.get(f) ?? [];
  return [...own, ...own.flatMap((x) => gather(x, under, seen))];
}

function withoutDuplicates(all: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return all.filter((f) => {
    const key = `${f.id}|${f.message}`;
    return seen.has(key) ? false : seen.add(key);
  });
}
