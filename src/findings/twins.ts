/** Findings that say the same of several parts, told as one with the list of parts. */
import { push } from '../plan/map-entries.ts';
import { listOf } from '../text/word-list.ts';
import type { Found } from './finding.ts';
import type { Also, Finding } from './report-model.ts';

/** Remedies that differ are told part by part up to so many. */
const MOST_REMEDIES = 3;

/**
 * Each group of twins as one finding, at the place of its first, with what follows from any of them; what a finding says
 * of its twins is left behind.
 */
export function twinsTogether(
  list: readonly Found[],
  effectsOf: (f: Found) => readonly Found[] = () => [],
): Finding[] {
  const groups = new Map<string, Found[]>();
  for (const f of list) push(groups, keyOf(f, groups), f);
  return [...groups.values()].map((group) => together(group, group.flatMap(effectsOf)));
}

/** What twins have in common. Two findings that name one part alike are no twins but two findings. */
function keyOf(f: Found, groups: ReadonlyMap<string, readonly Found[]>): string {
  const { id, severity, question, cause, twin = {}, why, fix } = f;
  const key = JSON.stringify([id, severity, question, cause?.what ?? null, twin.alike ?? [why, fix]]);
  const name = nameOf(f);
  const alone = name === undefined || groups.get(key)?.some((g) => nameOf(g) === name);
  return alone ? `${key} ${groups.size}` : key;
}

function nameOf({ twin, parts }: Found): string | undefined {
  return twin?.name ?? parts[0];
}

/** Without the last digits, in which equal figures differ by how they were worked out. */
function badnessOf({ twin }: Found): number {
  return Number((twin?.badness ?? 0).toPrecision(9));
}

function together(group: readonly Found[], effects: readonly Found[]): Finding {
  const order = [...group].sort((x, y) => badnessOf(y) - badnessOf(x));
  const { twin, ...worst } = order[0]!;
  const follow = effects.length === 0 ? [] : twinsTogether(effects);
  const all: Also[] = [
    ...order.flatMap((f) => f.also),
    ...follow.map(({ id, message }) => ({ id, message })),
  ];
  const also = [...new Map(all.map((a) => [`${a.id}|${a.message}`, a])).values()];
  if (order.length === 1) return { ...worst, also };
  const names = order.map((f) => nameOf(f)!);
  const terminals = order.flatMap((f) => f.cause?.terminals ?? []);
  return {
    ...worst,
    parts: [...new Set([...order.flatMap((f) => f.parts.slice(0, 1)), ...order.flatMap((f) => f.parts)])],
    terminals: [...new Set(order.flatMap((f) => f.terminals))],
    cause: worst.cause && { ...worst.cause, terminals: [...new Set(terminals)] },
    message: `${worst.message}; likewise ${listOf(names.slice(1))}`,
    fix: remedyOf(order, names),
    ...twin?.several?.(names),
    also,
  };
}

/** One remedy for all, else each with the part it is for. */
function remedyOf(order: readonly Finding[], names: readonly string[]): string {
  const remedies = order.map((f) => f.fix);
  if (new Set(remedies).size === 1) return remedies[0]!;
  const told = remedies.slice(0, MOST_REMEDIES).map((fix, i) => `For ${names[i]}: ${fix}`);
  const rest = names.slice(MOST_REMEDIES);
  return [...told, ...(rest.length > 0 ? [`Likewise for ${listOf(rest)}.`] : [])].join(' ');
}
