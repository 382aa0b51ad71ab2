/** Which mains terminals a part has: one live leg, two, or three phases. */
import type { RawPart } from './parts.ts';
import type { Feed } from './plan.ts';

/** A terminal as typed in a run. */
export interface Written {
  readonly part: string;
  readonly mark: string;
}

/** Single-phase NEMA WD 6 series with two live legs, with or without a neutral. */
const TWO_LEG = new Set([2, 6, 8, 9, 10, 14]);
/** Three-phase NEMA WD 6 series. */
const THREE_PHASE = new Set([11, 12, 15, 16, 17, 18, 19, 20, 21, 22, 23]);

/** What a plug pattern says of its live conductors, or undefined when it says nothing. */
export function patternFeed(pattern: string): Feed | undefined {
  const nema = /^\s*(?:NEMA\s*)?L?(\d{1,2})-\d{2}/i.exec(pattern);
  if (nema !== null) {
    const series = Number(nema[1]);
    if (THREE_PHASE.has(series)) return 'three-phase';
    return TWO_LEG.has(series) ? 'two-leg' : 'single';
  }
  if (/\b3P\b|\b(?:three|3)[- ]?phase\b/i.test(pattern)) return 'three-phase';
  if (/^\s*(?:CEE|BS\s*1363|AS\/NZS\s*3112)|\b2P\b/i.test(pattern)) return 'single';
  return undefined;
}

function translated(part: RawPart, mark: string): string {
  return part.fields.marks?.[mark] ?? mark;
}

/** What a part itself says, or the marks used on it say. */
function stated(part: RawPart, used: ReadonlySet<string>): Feed | undefined {
  const { fields } = part;
  if (
    fields.kind === 'plug' ||
    fields.kind === 'outlet' ||
    fields.kind === 'motor' ||
    fields.kind === 'load'
  ) {
    if (fields.phases === 3 || (fields.kind === 'motor' && fields.type === 'three-phase'))
      return 'three-phase';
    if (fields.legs !== undefined) return fields.legs === 2 ? 'two-leg' : 'single';
  }
  if (fields.kind === 'plug' || fields.kind === 'outlet') {
    const feed = fields.pattern === undefined ? undefined : patternFeed(fields.pattern);
    if (feed === 'two-leg' || feed === 'three-phase') return feed;
  }
  const marks = new Set([...used].map((mark) => translated(part, mark)));
  if (marks.has('L3') && fields.kind !== 'supply') return 'three-phase';
  if (marks.has('L1') || marks.has('L2')) return 'two-leg';
  // A run that uses L says so too: a single-leg outlet on a two-leg circuit.
  return marks.has('L') || fields.kind === 'plug' || fields.kind === 'supply' ? 'single' : undefined;
}

const MAINS = new Set(['supply', 'plug', 'outlet', 'motor', 'load']);
/** Kinds a mains conductor passes through. */
const THROUGH = new Set([
  ...['outlet', 'relay', 'timer', 'board', 'gate', 'switch', 'button', 'cutout', 'selector', 'fuse', 'joint'],
]);

/** The feed of every mains part. */
export function resolveFeeds(
  parts: ReadonlyMap<string, RawPart | undefined>,
  joins: readonly (readonly [Written, Written])[],
): ReadonlyMap<string, Feed> {
  const used = new Map<string, Set<string>>();
  const beside = new Map<string, Set<string>>();
  for (const [a, b] of joins) {
    for (const [here, there] of [[a, b] as const, [b, a] as const]) {
      if (!used.has(here.part)) used.set(here.part, new Set());
      if (!beside.has(here.part)) beside.set(here.part, new Set());
      used.get(here.part)!.add(here.mark);
      beside.get(here.part)!.add(there.part);
    }
  }
  const feeds = new Map<string, Feed>();
  const open: string[] = [];
  for (const [name, part] of parts) {
    if (part === undefined || !MAINS.has(part.kind)) continue;
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
      if (MAINS.has(part.kind) && !feeds.has(next)) feeds.set(next, feed);
      if (THROUGH.has(part.kind)) queue.push(next);
    }
  }
}
