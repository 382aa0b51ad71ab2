/**
 * Where each symbol goes: low voltage above, mains below; in each the current goes from the rail on the left to the rail
 * on the right, through what lies in line from column to column, and what lies side by side stands one below the other.
 */
import type { Circuit } from '../../circuit/circuit.ts';
import { push } from '../../plan/map-entries.ts';
import type { Side } from '../drawing.ts';
import { type Section, traitsOf } from '../figure-traits.ts';
import type { Item } from './blocks.ts';
import { Cells } from './cells.ts';
import type { NetSides } from './home-section.ts';
import { ladderOf } from './ladder.ts';
import { mainsRowsOf } from './mains-rows.ts';
import { type Flow, type Points, pointsOf } from './points.ts';
import { type Ranked, railsOf, rankSymbols } from './rank-symbols.ts';
import type { Seat, Setting } from './set-blocks.ts';
import { bandOfRow } from './symbol-rows.ts';
import type { SymbolSpec, TerminalSpec } from './symbol-specs.ts';

/** A terminal of a placed symbol. */
export interface PlacedTerminal {
  readonly spec: TerminalSpec;
  readonly side: Side;
  readonly band: number;
  /** row within the band, from 0 */
  readonly inner: number;
  /** where its lines turn up or down: channel `c` is on the right of column `c` */
  readonly channel: number;
  /** point its lines belong to; undefined where no core lands */
  readonly point: number | undefined;
}

export interface Placed {
  readonly spec: SymbolSpec;
  readonly section: Section;
  /** from 1; those of the mains section come after all of low voltage, with one number left out for its first channel */
  readonly column: number;
  /** first and last row of the sheet that it takes, from 0; no two symbols share column and band */
  readonly band: number;
  readonly lastBand: number;
  readonly mirrored: boolean;
  /** a joint in line has one on either side */
  readonly terminals: readonly PlacedTerminal[];
}

export interface Placement {
  readonly placed: readonly Placed[];
  /** columns of the low-voltage section, and of both together */
  readonly lowColumns: number;
  readonly columns: number;
  /** bands of the low-voltage section; those from here on are mains */
  readonly lowBands: number;
  readonly bands: number;
  readonly points: Points;
}

/** The room a drawing has. */
export interface Room extends Setting {
  /** most columns of symbols */
  readonly columns: number;
}

/** The side on which a terminal leaves its symbol. */
function sideOf(mirrored: boolean, side: Side): Side {
  if (!mirrored) return side;
  return side === 'left' ? 'right' : 'left';
}

/** Places every symbol in at most `room.columns` columns. */
export function placeSymbols(
  specs: readonly SymbolSpec[],
  circuit: Circuit,
  sides: NetSides,
  room: Room,
): Placement {
  const ranked = rankSymbols(specs, circuit, sides);
  const rails = railsOf(circuit, sides);
  const flows = new Map<string, Flow>();
  for (const r of ranked)
    for (const t of r.spec.terminals)
      flows.set(t.key, flowOf(r, t, circuit.netOf.get(t.key), rails.feeds[r.section]));
  const joints = specs.filter((s) => s.figure === 'joint').map((s) => s.terminals[0]!.key);
  const points = pointsOf(circuit, joints, (key) => flows.get(key));
  const parts = groupsOf(ranked).map((group) => {
    const items = group.map((r) => itemOf(r, points));
    const { section } = group[0]!;
    const live = (key: string) => rails.feeds[section].includes(circuit.netOf.get(key) ?? -1);
    const part = group.some((r) => r.spec.figure === 'plug')
      ? mainsRowsOf(items, points, room)
      : ladderOf(items, points, live, room);
    return { section, part };
  });
  const seats: Seat[] = [];
  const width = { low: 0, mains: 0 };
  for (const { section, part } of parts)
    width[section] = Math.max(2, width[section], Math.min(room.columns, part.width));
  const first = { low: 0, mains: width.low + 1 };
  let top = 0;
  let lowBands = 0;
  for (const { section, part } of parts) {
    const set = part.set(width[section], top);
    for (const seat of set.seats) seats.push(moved(seat, first[section]));
    top = set.bottom;
    if (section === 'low') lowBands = top;
  }
  const columns = Math.max(width.low, first.mains + width.mains);
  return {
    placed: seated(seats, columns, points),
    lowColumns: width.low,
    columns,
    lowBands,
    bands: top,
    points,
  };
}

/** A seat `by` columns further on. */
function moved(seat: Seat, by: number): Seat {
  if (by === 0) return seat;
  const channels = new Map<number, number>();
  for (const [point, channel] of seat.channels) channels.set(point, channel + by);
  return { ...seat, column: seat.column + by, channels };
}

/** Connected pieces, those of low voltage first. */
function groupsOf(ranked: readonly Ranked[]): Ranked[][] {
  const groups = new Map<string, Ranked[]>();
  for (const section of ['low', 'mains'] as const)
    for (const r of ranked) if (r.section === section) push(groups, `${section} ${r.group}`, r);
  return [...groups.values()];
}

/** How the current goes at a terminal: it leaves a symbol on the right, and comes to it on the left. */
function flowOf(r: Ranked, t: TerminalSpec, net: number | undefined, feeds: readonly number[]): Flow {
  const { figure } = r.spec;
  if (figure === 'joint' || figure === 'box') return undefined;
  if (traitsOf(figure).source) return net !== undefined && feeds.includes(net) ? 'brings' : 'takes';
  return sideOf(r.mirrored, t.side) === 'right' ? 'brings' : 'takes';
}

function itemOf(ranked: Ranked, points: Points): Item {
  const left: number[] = [];
  const right: number[] = [];
  for (const t of ranked.spec.terminals) {
    const own = points.of(t.key);
    if (ranked.spec.figure === 'joint') {
      if (own.length === 2) {
        left.push(own[0]!);
        right.push(own[1]!);
      } else (sideOf(ranked.mirrored, 'left') === 'left' ? left : right).push(...own);
    } else (sideOf(ranked.mirrored, t.side) === 'left' ? left : right).push(...own);
  }
  return { ranked, left, right };
}

/** Gives every terminal its channel: that of its point where nothing stands between, else the one beside its symbol. */
function seated(seats: readonly Seat[], columns: number, points: Points): Placed[] {
  const cells = new Cells(columns);
  for (const seat of seats)
    for (let band = seat.bands[0]!; band <= seat.bands.at(-1)!; band++)
      cells.take(band, seat.column, seat.column, seat.item.ranked.spec.id);
  return seats.map((seat) => {
    const { ranked } = seat.item;
    const { spec, section } = ranked;
    const terminals = spec.terminals.flatMap((t): PlacedTerminal[] => {
      const { band: row, inner } = bandOfRow(spec, t.row);
      const band = seat.bands[row]!;
      const own = points.of(t.key);
      const sides: [Side, number | undefined][] =
        own.length === 2
          ? [
              ['left', own[0]],
              ['right', own[1]],
            ]
          : [[sideOf(ranked.mirrored, t.side), own[0]]];
      return sides.map(([side, point]) => ({
        spec: t,
        side,
        band,
        inner,
        channel: channelOf(seat, side, point, band, cells),
        point,
      }));
    });
    return {
      spec,
      section,
      column: seat.column,
      band: seat.bands[0]!,
      lastBand: seat.bands.at(-1)!,
      mirrored: ranked.mirrored,
      terminals,
    };
  });
}

function channelOf(
  { item, column, channels }: Seat,
  side: Side,
  point: number | undefined,
  band: number,
  cells: Cells,
): number {
  const near = side === 'left' ? column - 1 : column;
  const wanted = point === undefined ? undefined : channels.get(point);
  if (wanted === undefined || wanted === near) return near;
  if (side === 'left' ? wanted > near : wanted < near) return near;
  const [from, to] = side === 'left' ? [wanted + 1, column - 1] : [column + 1, wanted];
  const { id } = item.ranked.spec;
  if (!cells.free(band, from, to, id)) return near;
  cells.take(band, from, to, id);
  return wanted;
}
