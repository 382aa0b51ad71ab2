/** What the sources of a plan put on the mains side of its supplies, and what those then give. */
import type { Part, SupplyPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import type { Consumer, ContactEdge, Rail, Source } from './circuit.ts';
import type { Wire } from './nets.ts';
import { difference, widestVolts } from './rail-volts.ts';
import { UnionFind } from './union-find.ts';

interface Made {
  readonly plan: Plan;
  readonly sources: readonly Source[];
  readonly contacts: readonly ContactEdge[];
  readonly consumers: readonly Consumer[];
}

/**
 * The sources with the volts that come to their mains sides. A transformer, and an adapter that does not hold its output,
 * gives as much more or less as it gets more or less than it is wired for. Plugs first, then what they feed, and so on
 * outwards; what is fed in a ring is left as printed.
 */
export function withFeedVolts(
  { plan, sources, contacts, consumers }: Made,
  wires: readonly Wire[],
): Source[] {
  const known = new Map<number, Source>();
  for (const s of sources) if (s.feed.by === 'always') known.set(s.index, s);
  const waiting = new Set(sources.filter((s) => s.feed.by !== 'always'));
  if (waiting.size > 0) {
    const joined = everJoined(contacts, wires, [...sources, ...known.values()]);
    for (let before = -1; before !== waiting.size; ) {
      before = waiting.size;
      for (const s of waiting) {
        const volts = voltsAt(s, [...known.values()], consumers, joined);
        if (volts === undefined) continue;
        known.set(s.index, fedWith(s, volts, plan.parts.get(s.part)));
        waiting.delete(s);
      }
    }
  }
  return sources.map((s) => known.get(s.index) ?? s);
}

/** Net by net which are one once every contact is closed, but for those on which a rail lies. */
function everJoined(
  contacts: readonly ContactEdge[],
  wires: readonly Wire[],
  sources: readonly Source[],
): UnionFind {
  const nets = [
    ...contacts.flatMap((c) => [c.a, c.b]),
    ...wires.flatMap((w) => [w.a, w.b]),
    ...sources.flatMap((s) => s.rails.map((r) => r.net)),
    ...sources.flatMap(({ feed }) => (feed.by === 'nets' ? [feed.a, feed.b] : [])),
  ];
  const sets = new UnionFind(nets.reduce((most, net) => Math.max(most, net), -1) + 1);
  for (const w of wires) sets.union(w.a, w.b);
  for (const c of contacts) sets.union(c.a, c.b);
  return sets;
}

/** V between the two nets of a feed by the source that puts most on them; undefined where none that is known reaches both. */
function voltsAt(
  { feed }: Source,
  known: readonly Source[],
  consumers: readonly Consumer[],
  joined: UnionFind,
): number | undefined {
  if (feed.by === 'always') return undefined;
  const plug = feed.by === 'part' ? known.find((s) => s.part === feed.part) : undefined;
  if (plug) return widestVolts(plug);
  const outlet = feed.by === 'part' ? consumers.find((c) => c.part === feed.part) : undefined;
  const [a, b] = feed.by === 'nets' ? [feed.a, feed.b] : [...(outlet?.nets.values() ?? [])];
  if (a === undefined || b === undefined) return undefined;
  const meets = (r: Rail, net: number) => r.net === net || joined.joined(r.net, net);
  const found = known.flatMap(({ rails }) =>
    rails.flatMap((p) =>
      rails.flatMap((q) => (p !== q && meets(p, a) && meets(q, b) ? [difference(p, q)] : [])),
    ),
  );
  return found.length === 0 ? undefined : Math.max(...found);
}

function fedWith(s: Source, volts: number, part: Part | undefined): Source {
  const feed = s.feed.by === 'nets' ? { ...s.feed, volts } : s.feed;
  if (s.winding === undefined || part?.kind !== 'supply') return { ...s, feed };
  const share = volts / s.winding;
  if (!followsMains(part)) return { ...s, feed, share };
  const rails = s.rails.map((r) => ({ ...r, re: r.re * share, im: r.im * share }));
  return { ...s, feed, share, rails };
}

/** Whether its output goes up and down with what it is fed: a transformer does, electronics hold theirs. */
function followsMains({ regulation, output }: SupplyPart): boolean {
  return regulation === undefined ? output.kind === 'ac' : regulation !== 'regulated';
}

/** The share of its printed volts that a supply gives for being fed more or less than it is wired for. */
export function followedShare({ share }: Source, part: Part): number {
  return share === undefined || part.kind !== 'supply' || !followsMains(part) ? 1 : share;
}
