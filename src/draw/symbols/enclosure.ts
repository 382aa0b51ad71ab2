/** A box or an enclosure: a dashed outline, with the sign of protective earth at its terminal. */
import { circle, DASHED, rect } from '../strokes.ts';
import { earth } from './earth.ts';
import { bodyBox, type Frame, inward, lead, radius, rowOf } from './frame.ts';
export function enclosureFigure(frame: Frame): string {
  const body = bodyBox(frame, 15);
  const marks = frame.symbol.terminals.map((drawn) => {
    const d = inward(drawn.side);
    const centre = { x: frame.cx + d * 4, y: rowOf(frame, drawn) };
    const r = radius(frame, centre.y, 10);
    const size = r / 11;
    const bars = earth({ x: centre.x - d * 1.5 * size, y: centre.y }, d, size);
    return lead(frame, drawn, { x: centre.x - d * 1.5 * size, y: centre.y }) + circle(centre, r) + bars;
  });
  return rect(body, DASHED) + marks.join('');
}
