/** Motors and loads with terminals of their own. */

import type { Point } from '../drawing.ts';
import { bodyBox, type Frame, inward, JOG, lead, leadsTo, middleOf, radius, rowOf } from './frame.ts';
import { loadGlyph, motorGlyph } from './machine-glyphs.ts';

/** Leads that run to a glyph in the middle from rows that may lie outside it: straight, then aslant. */
function fanned(
  frame: Frame,
  edge: (side: 1 | -1, y: number) => Point,
  reach: number,
  centre: Point,
): string {
  return (['left', 'right'] as const)
    .flatMap((side) => {
      const rows = frame.symbol.terminals
        .filter((drawn) => drawn.side === side)
        .sort((a, b) => rowOf(frame, a) - rowOf(frame, b));
      const d = inward(side);
      const straight = rows.every((drawn) => Math.abs(rowOf(frame, drawn) - centre.y) <= reach);
      return rows.map((drawn, index) => {
        const y = rowOf(frame, drawn);
        const target = straight ? y : centre.y + reach * ((2 * index + 1) / rows.length - 1);
        const turn = frame.cx - d * Math.min(JOG + 2, frame.box.width / 2 - 1);
        return lead(frame, drawn, { x: turn, y }, edge(d, target));
      });
    })
    .join('');
}

/** A motor or a load with terminals of its own. */
export function machineFigure(frame: Frame): string {
  const { symbol, part, options } = frame;
  if (symbol.figure === 'load' && !(part.kind === 'load' && part.type === 'lamp')) {
    const body = bodyBox(frame, 13);
    return leadsTo(frame, body) + loadGlyph(symbol.part, part, options.practice, body);
  }
  const centre = machineCentre(frame);
  const r = Math.min(16, radius(frame, centre.y, 16));
  const edge = (d: 1 | -1, y: number): Point => ({
    x: centre.x - d * Math.sqrt(Math.max(0, r * r - (y - centre.y) ** 2)),
    y,
  });
  const box = { x: centre.x - r, y: centre.y - r, width: 2 * r, height: 2 * r };
  const glyph = symbol.figure === 'load' ? loadGlyph : motorGlyph;
  return fanned(frame, edge, r * 0.75, centre) + glyph(symbol.part, part, options.practice, box);
}

/** In the middle of the rows, and further from the leads where all come from one side. */
function machineCentre(frame: Frame): Point {
  const { box, symbol } = frame;
  const rows = symbol.terminals.map((drawn) => rowOf(frame, drawn));
  const y = rows.length === 0 ? middleOf(box).y : (Math.min(...rows) + Math.max(...rows)) / 2;
  const sides = new Set(symbol.terminals.map((drawn) => drawn.side));
  const [only] = sides;
  if (only === undefined || sides.size > 1) return { x: frame.cx, y };
  return { x: frame.cx + inward(only) * Math.max(0, Math.min(10, box.width / 2 - 18)), y };
}
