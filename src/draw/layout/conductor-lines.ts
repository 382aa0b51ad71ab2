/** The conductors between placed symbols: which channel each end goes to, which lane it crosses by, where its words stand. */
import type { Plan } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { coreLetters, coreWords } from '../core-words.ts';
import type { Side } from '../drawing.ts';
import type { Measures } from './measures.ts';
import { type Placed, sideOf } from './place-symbols.ts';
import type { TerminalSpec } from './symbol-specs.ts';

/** A terminal at its place, with the lines that leave it. */
export interface Slot {
  readonly spec: TerminalSpec;
  readonly placed: Placed;
  readonly side: Side;
  readonly channel: number;
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
  /** of a line within one channel: the end that carries its words, and on which side of the line there */
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

/** Slots of all terminals by key. */
export function slotsOf(placed: readonly Placed[]): Map<string, Slot> {
  const slots = new Map<string, Slot>();
  for (const p of placed)
    for (const spec of p.spec.terminals) {
      const side = sideOf(p, spec.side);
      const channel = side === 'left' ? p.column - 1 : p.column;
      slots.set(spec.key, { spec, placed: p, side, channel, ports: [[]], ys: [0] });
    }
  return slots;
}

/** All cores and links as lines between slots. */
export function linesOf(
  plan: Plan,
  slots: ReadonlyMap<string, Slot>,
  measures: Measures,
  lowBands: number,
): Line[] {
  const lines: Line[] = [];
  for (const run of plan.runs)
    run.cores.forEach((core, i) => {
      const a = slots.get(terminalKey(core.a.part, core.a.terminal));
      const b = slots.get(terminalKey(core.b.part, core.b.terminal));
      if (a === undefined || b === undefined)
        throw new Error(`no place for ${core.a.written} or ${core.b.written}`);
      const ends: End[] = [];
      const line: Line = {
        id: `${run.index}/${i}`,
        run: run.index,
        core: i,
        link: run.link,
        text: measures.coreText === 'words' ? coreWords(run, core) : coreLetters(run, core),
        ends: ends as unknown as [End, End],
        ...(a.channel === b.channel ? {} : { gutter: gutterBetween(a.placed.band, b.placed.band, lowBands) }),
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

/**
 * Just above the lower of two bands, and below a band that holds both ends. The gutter at the barrier lies on the mains
 * side of it: no line of the low-voltage side alone goes there.
 */
function gutterBetween(a: number, b: number, lowBands: number): number {
  if (a !== b) return Math.max(a, b);
  return a + 1 === lowBands ? a : a + 1;
}

type Direction = 'up' | 'down' | 'straight';

/** Where a line turns to when it has left its symbol. */
function direction(end: End): Direction {
  const { slot, line } = end;
  if (line.gutter !== undefined) return line.gutter <= slot.placed.band ? 'up' : 'down';
  const other = otherEnd(end).slot;
  if (other.placed.band !== slot.placed.band) return other.placed.band < slot.placed.band ? 'up' : 'down';
  const [own, far] = [slot.ys[0]!, other.ys[0]!];
  if (own !== far) return far < own ? 'up' : 'down';
  if (other.spec.row !== slot.spec.row) return other.spec.row < slot.spec.row ? 'up' : 'down';
  if (other.side === slot.side) return 'straight';
  // Level with each other: of two neighbours the right one is never the higher.
  return slot.side === 'left' ? 'up' : 'down';
}

/**
 * Chooses for every line within a channel the end at which its words stand, so that no other line turns the same way
 * there. Where both ends are crowded, the line gets a port of its own.
 */
export function placeWords(lines: readonly Line[], slots: Iterable<Slot>): void {
  for (const slot of slots) slot.ports = [slot.ports.flat()];
  for (const line of lines) {
    if (line.gutter !== undefined) continue;
    const rated = line.ends.map((end) => {
      const way = direction(end);
      const rivals = end.slot.ports[0]!.filter((e) => e !== end && direction(e) === way).length;
      return { end, way, rivals, all: end.slot.ports[0]!.length };
    });
    // At the lower end of a line its words stand over it, where nothing else does: so they lie alike at every gate.
    rated.sort(
      (p, q) => p.rivals - q.rivals || q.end.slot.placed.band - p.end.slot.placed.band || p.all - q.all,
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
