/** Which mains terminals a part has: one live leg, two, or three phases. */
import { rowOf } from './kinds/kinds.ts';
import { kept } from './map-entries.ts';
import type { Feed } from './part-types.ts';
import type { RawPart } from './parts.ts';

/** A terminal as typed in a run, by any of its marks. */
export interface Written {
  readonly part: string;
  readonly terminal: string;
}

function translated(part: RawPart, mark: string): string {
  return part.fields.marks?.[mark] ?? mark;
}

/** What a part itself says, or the marks used on it say. */
function stated(part: RawPart, used: ReadonlySet<string>): Feed | undefined {
  return rowOf(part.kind).feed?.(part.fields, new Set([...used].map((mark) => translated(part, mark))));
}

const isMains = (part: RawPart): boolean => rowOf(part.kind).feed !== undefined;

/** The feed of every mains part. */
export function resolveFeeds(
  parts: ReadonlyMap<string, RawPart | undefined>,
  joins: readonly (readonly [Written, Written])[],
): ReadonlyMap<string, Feed> {
  const used = new Map<string, Set<string>>();
  const beside = new Map<string, Set<string>>();
  for (const [a, b] of joins) {
    for (const [here, there] of [[a, b] as const, [b, a] as const]) {
      kept(used, here.part, () => new Set<string>()).add(here.terminal);
      kept(beside, here.part, () => new Set<string>()).add(there.part);
    }
  }
  const feeds = new Map<string, Feed>();
  const open: string[] = [];
  for (const [name, part] of parts) {
    if (part === undefined || !isMains(part)) continue;
    const feed = stated(part, used.get(name) ?? new Set());
    if (feed !== undefined) feeds.set(name, feed);
    else open.push(name);
  }
  if (open.length > 0) spread(parts, beside, feeds);
  // Outlets first: what is plugged into one takes after it.
  for (const name of open) {
    if (parts.get(name)?.kind === 'outlet' && !feeds.has(name)) feeds.set(name, 'single');
  }
  for (const name of open) {
    if (feeds.has(name)) continue;
    const fields = parts.get(name)?.fields;
    const socket = fields !== undefined && 'plugged-into' in fields ? fields['plugged-into'] : undefined;
    const feed = socket === undefined ? undefined : feeds.get(socket);
    // A single-phase machine on a three-phase outlet is a mismatch to be reported, not a three-phase machine.
    const single = fields !== undefined && 'phases' in fields && fields.phases === 1;
    feeds.set(name, feed === undefined || (single && feed === 'three-phase') ? 'single' : feed);
  }
  return feeds;
}

/** Lets outlets and motors that say nothing take after the plug they are wired to, nearest plug first. */
function spread(
  parts: ReadonlyMap<string, RawPart | undefined>,
  beside: ReadonlyMap<string, ReadonlySet<string>>,
  feeds: Map<string, Feed>,
): void {
  const reached = new Map<string, Feed>();
  const queue: string[] = [];
  for (const [name, part] of parts) {
    if (part?.kind !== 'plug') continue;
    reached.set(name, feeds.get(name) ?? 'single');
    queue.push(name);
  }
  for (let at = 0; at < queue.length; at++) {
    const name = queue[at]!;
    const feed = reached.get(name)!;
    for (const next of beside.get(name) ?? []) {
      const part = parts.get(next);
      if (part === undefined || reached.has(next)) continue;
      reached.set(next, feed);
      if (isMains(part) && !feeds.has(next)) feeds.set(next, feed);
      if (rowOf(part.kind).passes) queue.push(next);
    }
  }
}
