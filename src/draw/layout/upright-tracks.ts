/** Upright pieces: which track of a channel each takes, so that no two of them meet. */

import type { Side } from '../drawing.ts';
import { crosses, type End, inward, isRail, type Line, type Slot } from './conductor-lines.ts';
import type { Measures } from './measures.ts';
import type { Rows } from './row-heights.ts';

/** An upright piece of a line in one channel. */
export interface Upright {
  readonly line: Line;
  readonly channel: number;
  readonly top: number;
  readonly bottom: number;
  /** ends of the line that this piece reaches, with the y there */
  readonly at: readonly { readonly y: number; readonly slot?: Slot }[];
  /** the side of the channel where its ends lie; both for a piece that goes from side to side */
  readonly side: Side | 'both';
}

export interface Tracks {
  /** number of tracks in each channel */
  readonly counts: readonly number[];
  /** track of each upright piece, from the left, by line and channel */
  trackOf(line: Line, channel: number): number | undefined;
}

/** y of one end of a line. */
export function yOf(end: End): number {
  const { slot, line, index } = end;
  const port = slot.ports.findIndex((p) => p.some((e) => e.line === line && e.index === index));
  return slot.ys[port]!;
}

/** Gives a track to every upright piece; shorter pieces lie nearer to their terminals. */
export function assignTracks(
  lines: readonly Line[],
  channels: number,
  rows: Rows,
  measures: Measures,
): Tracks {
  const byChannel: Upright[][] = Array.from({ length: channels }, () => []);
  for (const u of uprightsOf(lines, rows)) byChannel[u.channel]!.push(u);
  const counts: number[] = [];
  const tracks = new Map<string, number>();
  byChannel.forEach((pieces, channel) => {
    const sides = { left: [], both: [], right: [] } as Record<Upright['side'], Upright[]>;
    for (const u of pieces) sides[u.side].push(u);
    const left = fill(sides.left, measures.trackClear);
    const both = fill(sides.both, measures.trackClear);
    const right = fill(sides.right, measures.trackClear);
    const count = left.count + both.count + right.count;
    const set = (group: Filled, place: (track: number) => number) => {
      for (const [u, track] of group.track) tracks.set(`${u.line.id} ${channel}`, place(track));
    };
    set(left, (t) => t);
    set(both, (t) => left.count + t);
    set(right, (t) => count - 1 - t);
    counts.push(count);
  });
  return { counts, trackOf: (line, channel) => tracks.get(`${line.id} ${channel}`) };
}

function uprightsOf(lines: readonly Line[], rows: Rows): Upright[] {
  const result: Upright[] = [];
  for (const line of lines) {
    const [a, b] = line.ends;
    const ya = yOf(a);
    const yb = yOf(b);
    if (line.gutter === undefined) {
      // Straight across, from neighbour to neighbour: nothing upright.
      if (ya === yb) continue;
      const side = crosses(a) ? 'both' : inward(a);
      const at = [
        { y: ya, slot: a.slot },
        { y: yb, slot: b.slot },
      ];
      result.push({
        line,
        channel: a.slot.channel,
        top: Math.min(ya, yb),
        bottom: Math.max(ya, yb),
        at,
        side,
      });
      continue;
    }
    const lane = rows.lanes.get(line.id)!;
    for (const end of [a, b]) {
      const y = yOf(end);
      result.push({
        line,
        channel: end.slot.channel,
        top: Math.min(y, lane),
        bottom: Math.max(y, lane),
        at: [{ y, slot: end.slot }, { y: lane }],
        side: crosses(end) ? 'both' : inward(end),
      });
    }
  }
  return result;
}

interface Filled {
  readonly count: number;
  readonly track: ReadonlyMap<Upright, number>;
}

/** The terminal whose cores share an upright line, where this piece is one of them. */
function railOf(u: Upright): Slot | undefined {
  return u.line.ends.find((end) => u.at.some(({ slot }) => slot === end.slot) && isRail(end))?.slot;
}

/** First fit, short pieces first. Pieces that end on one line of one terminal may touch there. */
function fill(pieces: readonly Upright[], clear: number): Filled {
  const order = [...pieces].sort((p, q) => p.bottom - p.top - (q.bottom - q.top) || p.top - q.top);
  const filled: Upright[][] = [];
  const track = new Map<Upright, number>();
  for (const u of order) {
    let index = filled.findIndex((others) => others.every((o) => apart(u, o, clear)));
    if (index < 0) index = filled.push([]) - 1;
    filled[index]!.push(u);
    track.set(u, index);
  }
  return { count: filled.length, track };
}

function apart(u: Upright, o: Upright, clear: number): boolean {
  const rail = railOf(u);
  if (rail !== undefined && rail === railOf(o)) return true;
  if (u.top >= o.bottom + clear || u.bottom <= o.top - clear) return true;
  const touch = u.top === o.bottom ? u.top : u.bottom === o.top ? u.bottom : undefined;
  if (touch === undefined) return false;
  const slot = (x: Upright) => x.at.find((end) => end.y === touch)?.slot;
  return slot(u) !== undefined && slot(u) === slot(o);
}
