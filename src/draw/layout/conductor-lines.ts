/** The conductors between placed symbols: which channel each end goes to, which lane it crosses by, where its words stand. */
import { push } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { coreLetters, coreWords } from '../core-words.ts';
import type { Side } from '../drawing.ts';
import type { Measures } from './measures.ts';
import type { Placed, PlacedTerminal, Placement } from './place-symbols.ts';

/** A terminal at its place, with the lines that leave it. A joint in line has one on either side. */
export interface Slot extends PlacedTerminal {
  readonly placed: Placed;
  /** ends of cores by port; the first port is the terminal's own line */
  ports: End[][];
  /** y of each port */
  ys: number[];
}

export interface End {
  readonly slot: Slot;
  readonly line: Line;
  readonly index: 0 | 1;
}

export interface Line {
  readonly id: string;
  readonly run: number;
  readonly core: number;
  readonly link: boolean;
  /** its words; with the other end named where it shares an upright line */
  text: string;
  readonly ends: readonly [End, End];
  /** number of the gutter by which a line between two channels crosses; gutter `g` lies above band `g` */
  readonly gutter?: number;
  /** leads from low voltage to mains */
  readonly overBarrier: boolean;
  /** of a line within one channel, or over the barrier: the end that carries its words, and on which side of the line there */
  label?: { readonly end: 0 | 1; readonly where: 'above' | 'below' };
}

/** Cores at one terminal from which on they share one upright line, as a rail: more lines side by side are no help. */
const RAIL = 12;

/** Whether a core lies on a line of its terminal from which so many part that they are drawn as one rail. */
export function isRail({ slot, line }: Pick<End, 'slot' | 'line'>): boolean {
  const port = slot.ports[0]!;
  return port.length > RAIL && port.some((end) => end.line === line);
}

export function otherEnd(end: End): End {
  return end.line.ends[end.index === 0 ? 1 : 0];
}

/** The side of its channel on which a terminal lies. */
export function inward({ slot }: Pick<End, 'slot'>): Side {
  return slot.side === 'left' ? 'right' : 'left';
}

/** Whether a line goes from one side of its channel to the other at this end. */
export function crosses(end: End): boolean {
  const other = otherEnd(end);
  if (end.line.gutter === undefined) return inward(end) !== inward(other);
  return inward(end) !== (other.slot.channel > end.slot.channel ? 'right' : 'left');
}

/** Slots of all terminals by key. */
export function slotsOf(placed: readonly Placed[]): Map<string, Slot[]> {
  const slots = new Map<string, Slot[]>();
  for (const p of placed)
    for (const terminal of p.terminals)
      push(slots, terminal.spec.key, { ...terminal, placed: p, ports: [[]], ys: [0] });
  return slots;
}

/** The slots of each symbol. */
export function slotsBySymbol(slots: ReadonlyMap<string, readonly Slot[]>): Map<Placed, Slot[]> {
  const own = new Map<Placed, Slot[]>();
  for (const all of slots.values()) for (const slot of all) push(own, slot.placed, slot);
  return own;
}

/** All cores and links as lines between slots. */
export function linesOf(
  plan: Plan,
  slots: ReadonlyMap<string, readonly Slot[]>,
  measures: Measures,
  placement: Placement,
): Line[] {
  const gutters = new Gutters(placement);
  const lines: Line[] = [];
  for (const run of plan.runs)
    run.cores.forEach((core, i) => {
      const point = placement.points.ofCore(run.index, i);
      const slotOf = ({ part, terminal, written }: typeof core.a): Slot => {
        const own = slots.get(terminalKey(part, terminal)) ?? [];
        const slot = own.find((s) => s.point === point) ?? own[0];
        if (slot === undefined) throw new Error(`no place for ${written}`);
        return slot;
      };
      const [a, b] = [slotOf(core.a), slotOf(core.b)];
      const ends: End[] = [];
      const line: Line = {
        id: `${run.index}/${i}`,
        run: run.index,
        core: i,
        link: run.link,
        text: measures.coreText === 'words' ? coreWords(run, core) : coreLetters(run, core),
        ends: ends as unknown as [End, End],
        overBarrier: a.placed.section !== b.placed.section,
        ...(a.channel === b.channel ? {} : { gutter: gutters.between(a, b) }),
      };
      for (const [index, slot] of [a, b].entries()) {
        const end: End = { slot, line, index: index === 0 ? 0 : 1 };
        ends.push(end);
        slot.ports[0]!.push(end);
      }
      lines.push(line);
    });
  for (const line of lines) {
    const rail = line.ends.find((end) => isRail(end));
    if (rail !== undefined) line.text += ` to ${rail.slot.spec.key}`;
  }
  return lines;
}

/** Gutters by which lines cross from channel to channel; gutter `g` lies above band `g`. */
class Gutters {
  /** symbols of several bands, by column: no line crosses them between their rows */
  readonly #tall = new Map<number, Placed[]>();

  constructor(private readonly placement: Placement) {
    for (const p of placement.placed) if (p.lastBand > p.band) push(this.#tall, p.column, p);
  }

  /** The nearest gutter to both bands that no symbol closes; that at the barrier for what leads over it, and only then. */
  between(a: Slot, b: Slot): number {
    if (a.placed.section !== b.placed.section) return this.placement.lowBands;
    const [high, low] = [Math.min(a.band, b.band), Math.max(a.band, b.band)];
    const [from, to] = [Math.min(a.channel, b.channel) + 1, Math.max(a.channel, b.channel)];
    const { lowBands, bands } = this.placement;
    // The gutter at the barrier lies on the mains side of it: no line of the low-voltage side alone goes there.
    const least = high >= lowBands ? lowBands : 0;
    const most = low < lowBands && lowBands < bands ? lowBands - 1 : low < lowBands ? lowBands : bands;
    const open = (g: number) => g >= least && g <= most && !this.#closed(g, from, to);
    const first = high === low ? low + 1 : low;
    for (let away = 0; away <= bands; away++)
      for (const g of [first - away, first + away]) if (open(g)) return g;
    return Math.max(least, Math.min(most, first));
  }

  #closed(gutter: number, from: number, to: number): boolean {
    for (let column = from; column <= to; column++)
      if (this.#tall.get(column)?.some((p) => p.band < gutter && gutter <= p.lastBand)) return true;
    return false;
  }
}

type Direction = 'up' | 'down';

/** Where a line turns to when it has left its symbol; words on one that goes straight on stand where those of one that turns up do. */
function direction(end: End): Direction {
  const { slot, line } = end;
  if (line.gutter !== undefined) return line.gutter <= slot.band ? 'up' : 'down';
  const other = otherEnd(end).slot;
  if (other.band !== slot.band) return other.band < slot.band ? 'up' : 'down';
  const [own, far] = [slot.ys[0]!, other.ys[0]!];
  if (own !== far) return far < own ? 'up' : 'down';
  return other.inner <= slot.inner ? 'up' : 'down';
}

/**
 * Chooses for every line within a channel the end at which its words stand, so that no other line turns the same way
 * there. Where both ends are crowded, the line gets a port of its own.
 */
export function placeWords(lines: readonly Line[], slots: Iterable<Slot>): void {
  for (const slot of slots) slot.ports = [slot.ports.flat()];
  for (const line of lines) {
    if (line.gutter !== undefined && !line.overBarrier) continue;
    const rated = line.ends.map((end) => {
      const way = direction(end);
      const rivals = end.slot.ports[0]!.filter((e) => e !== end && direction(e) === way).length;
      return { end, way, rivals, all: end.slot.ports[0]!.length };
    });
    // At the lower end of a line its words stand over it, where nothing else does: so they lie alike at every gate.
    // A joint has little room beside it.
    const narrow = (r: (typeof rated)[0]) => Number(r.end.slot.placed.spec.figure === 'joint');
    rated.sort(
      (p, q) =>
        p.rivals - q.rivals || narrow(p) - narrow(q) || q.end.slot.band - p.end.slot.band || p.all - q.all,
    );
    const best = rated[0]!;
    // Where a rail's core meets others at its far end, no line but its own may touch the rail.
    const ownLine = best.rivals > 0 || (best.all > 1 && line.ends.some((end) => isRail(end)));
    if (ownLine) {
      const { ports } = best.end.slot;
      ports[0] = ports[0]!.filter((e) => e !== best.end);
      ports.push([best.end]);
    }
    const below = !ownLine && best.way === 'down' && best.all > 1;
    line.label = { end: best.end.index, where: below ? 'below' : 'above' };
  }
}
