/** What is plugged into an outlet, each in its own box, with the dashed line of its cord. */
import type { Box, Point } from '../drawing.ts';
import { DASHED, line } from '../strokes.ts';
import { connectorBody } from './connector.ts';
import { CORD, type Frame } from './frame.ts';
import { loadGlyph, motorGlyph } from './machine-glyphs.ts';

function overlap(a: number, aLength: number, b: number, bLength: number): boolean {
  return Math.max(a, b) < Math.min(a + aLength, b + bLength);
}

/** A line from the edge of an outlet to the middle of an edge of a machine: beside it, else above or below it. */
function cord(from: Box, to: Box): readonly Point[] {
  const [x, y] = [to.x + to.width / 2, to.y + to.height / 2];
  if (overlap(from.x, from.width, to.x, to.width)) {
    const below = y >= from.y + from.height / 2;
    return [
      { x, y: below ? from.y + from.height : from.y },
      { x, y: below ? to.y : to.y + to.height },
    ];
  }
  const right = x >= from.x + from.width / 2;
  const start = right ? from.x + from.width : from.x;
  const end = right ? to.x : to.x + to.width;
  const turn = right ? Math.max(start, end - CORD / 2) : Math.min(start, end + CORD / 2);
  const level = Math.min(Math.max(y, from.y + 4), from.y + from.height - 4);
  const path = [
    { x: start, y: level },
    { x: turn, y: level },
    { x: turn, y },
    { x: end, y },
  ];
  return level === y ? [path[0]!, path[3]!] : path;
}

/** Everything plugged into the frame's outlet. */
export function pluggedFigures(frame: Frame): string {
  const body = connectorBody(frame);
  return frame.symbol.plugged
    .map(({ part, figure, box }, index) => {
      // In a column below the outlet only the first can be reached without crossing another.
      const before = frame.symbol.plugged[index - 1]?.box;
      const stacked = overlap(body.x, body.width, box.x, box.width);
      const start = stacked && before !== undefined ? outline(before) : body;
      const glyph = figure === 'motor' ? motorGlyph : loadGlyph;
      const machine = frame.options.partOf?.(part) ?? frame.part;
      const own = outline(box);
      return line(cord(start, own), DASHED) + glyph(part, machine, frame.options.practice, own);
    })
    .join('');
}

/** The square of a machine in the middle of its box. */
function outline(box: Box): Box {
  const side = Math.min(box.width, box.height, 36);
  return {
    x: box.x + (box.width - side) / 2,
    y: box.y + (box.height - side) / 2,
    width: side,
    height: side,
  };
}
