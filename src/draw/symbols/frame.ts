/** The room a figure has: its centre line, the rows of its terminals, and the leads that come in from its edges. */

import type { Part } from '../../plan/part-types.ts';
import { xml } from '../../text/xml.ts';
import type { Box, DrawnSymbol, DrawnTerminal, Point, Side } from '../drawing.ts';
import { line } from '../strokes.ts';

/** Half the width of the zone in the middle that belongs to the glyph, px. */
export const HALF = 22;
/** Where a lead turns to another row, px from the centre line. */
export const JOG = 20;
/** Room of a glyph above and below a row of terminals, px. */
export const ROW = 16;

/** Room for a cord beside what is plugged in, px. */
export const CORD = 16;

/** Half a stroke, px: what a line needs beside itself to stay in the box. */
const EDGE = 0.75;

/**
 * From a glyph's own coordinates to the sheet's, px. `u` runs along the current from the first terminal to the second,
 * `v` across it.
 */
export type Place = (u: number, v: number) => Point;

/** How a figure is to be drawn. */
export interface FigureOptions {
  readonly practice: 'nec' | 'iec';
  /** whether the contact between two terminals (canonical names of the part: `COM`, `NO` or `13`, `14`) is made */
  readonly made: (common: string, other: string) => boolean;
  /** true: each contact is drawn in both states, for a page to choose from */
  readonly both?: boolean;
  /** the part of a name, for what is plugged into an outlet; without it a machine takes its phases from the outlet */
  readonly partOf?: (name: string) => Part | undefined;
}

export interface Frame {
  readonly symbol: DrawnSymbol;
  readonly part: Part;
  readonly options: FigureOptions;
  readonly box: Box;
  /** x of the vertical centre line */
  readonly cx: number;
}

export function frameOf(symbol: DrawnSymbol, part: Part, options: FigureOptions): Frame {
  return { symbol, part, options, box: symbol.box, cx: centreLine(symbol) };
}

/** x of the middle of a box, or of what is left of it beside the parts that are plugged in. */
function centreLine(symbol: DrawnSymbol): number {
  const { x, width } = symbol.box;
  const middle = x + width / 2;
  const inner = symbol.plugged.map(({ box }) => box);
  if (inner.length === 0) return middle;
  const left = Math.min(...inner.map((box) => box.x)) - CORD;
  const right = Math.max(...inner.map((box) => box.x + box.width)) + CORD;
  if (left - x >= 2 * HALF && left - x >= x + width - right) return (x + left) / 2;
  if (x + width - right >= 2 * HALF) return (right + x + width) / 2;
  return middle;
}

/** The terminal of the frame's part with this canonical name. */
export function terminal(frame: Frame, name: string | undefined): DrawnTerminal | undefined {
  if (name === undefined) return undefined;
  const key = name === '' ? frame.symbol.part : `${frame.symbol.part}.${name}`;
  return frame.symbol.terminals.find((candidate) => candidate.key === key);
}

/** Canonical name of a terminal. */
export function nameOf(frame: Frame, drawn: DrawnTerminal): string {
  return drawn.key.slice(frame.symbol.part.length + 1);
}

/** Where a terminal's lead begins; the middle of its edge where it has no port. */
export function portOf(frame: Frame, drawn: DrawnTerminal): Point {
  const { x, y, width, height } = frame.box;
  return drawn.ports[0] ?? { x: drawn.side === 'left' ? x : x + width, y: y + height / 2 };
}

/** y of a terminal's row. */
export function rowOf(frame: Frame, drawn: DrawnTerminal): number {
  return portOf(frame, drawn).y;
}

/** 1 where what is meant lies to the right of a terminal on this side, else -1. */
export function inward(side: Side): 1 | -1 {
  return side === 'left' ? 1 : -1;
}

/** The lead of a terminal, through the points given, with the line that joins its further ports. */
export function lead(frame: Frame, drawn: DrawnTerminal, ...through: readonly Point[]): string {
  const attributes = ` data-terminal="${xml(drawn.key)}"`;
  const joined = drawn.ports.length > 1 ? line(drawn.ports, attributes) : '';
  return joined + line(pruned([portOf(frame, drawn), ...through]), attributes);
}

/** A lead that turns, where it must, at `jog` (x) to the row of the point it goes to. */
export function joggedLead(frame: Frame, drawn: DrawnTerminal, jog: number, to: Point): string {
  const y = rowOf(frame, drawn);
  return lead(frame, drawn, { x: jog, y }, { x: jog, y: to.y }, to);
}

/** Points that turn nowhere left out; the first stays. */
function pruned(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((point, index) => {
    const last = kept.at(-1);
    const next = points[index + 1];
    if (last !== undefined && same(last, point) && index > 0 && next !== undefined) return;
    const straight =
      last !== undefined &&
      next !== undefined &&
      ((last.x === point.x && point.x === next.x) || (last.y === point.y && point.y === next.y));
    if (!straight) kept.push(point);
  });
  return kept;
}

function same(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/** px free above and below a point of the box, at most ROW. */
export function room(frame: Frame, y: number): { readonly up: number; readonly down: number } {
  const { box } = frame;
  const free = (length: number) => Math.max(0, Math.min(ROW, length - EDGE));
  return { up: free(y - box.y), down: free(box.y + box.height - y) };
}

/** The same in one number, for what is round. */
export function radius(frame: Frame, y: number, wanted: number): number {
  const { up, down } = room(frame, y);
  return Math.min(wanted, up, down, frame.box.width / 2 - EDGE);
}

/** Coordinates along a row, drawn for HALF and ROW and squeezed where the box gives less. */
export function alongRow(frame: Frame, y: number, direction: 1 | -1): Place {
  const { up, down } = room(frame, y);
  const across = Math.min(1, Math.max(0, frame.box.width / 2 - EDGE) / HALF);
  return (u, v) => ({
    x: frame.cx + direction * u * across,
    y: y + v * ((v < 0 ? up : down) / ROW),
  });
}

/** The rectangle of a body whose leads end at its edges: JOG px either side, and past the rows by `pad`. */
export function bodyBox(frame: Frame, pad = 13): Box {
  const rows = frame.symbol.terminals.map((drawn) => rowOf(frame, drawn));
  const middle = frame.box.y + frame.box.height / 2;
  const top = Math.max(frame.box.y + EDGE, Math.min(...(rows.length === 0 ? [middle] : rows)) - pad);
  const bottom = Math.min(
    frame.box.y + frame.box.height - EDGE,
    Math.max(...(rows.length === 0 ? [middle] : rows)) + pad,
  );
  const half = Math.min(JOG, frame.box.width / 2 - EDGE);
  return { x: frame.cx - half, y: top, width: 2 * half, height: bottom - top };
}

/** Leads of all terminals, straight to the edges of a body. */
export function leadsTo(frame: Frame, body: Box): string {
  return frame.symbol.terminals
    .map((drawn) => {
      const x = drawn.side === 'left' ? body.x : body.x + body.width;
      return lead(frame, drawn, { x, y: rowOf(frame, drawn) });
    })
    .join('');
}

export function middleOf(box: Box): Point {
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
