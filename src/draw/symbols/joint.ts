/** Conductors joined: lines to a dot in the middle, or the dot alone where all come from one side. */
import { circle, line } from '../strokes.ts';
import { type Frame, lead, portOf } from './frame.ts';
export function jointFigure(frame: Frame): string {
  const { box, symbol, cx } = frame;
  const r = Math.min(3, box.width / 2, box.height / 2);
  const sides = new Set(symbol.terminals.map((drawn) => drawn.side));
  const inside = (x: number) => Math.min(Math.max(x, box.x + r), box.x + box.width - r);
  const joints = symbol.terminals.map((drawn) => {
    const port = portOf(frame, drawn);
    return { drawn, at: { x: sides.size > 1 ? cx : inside(port.x), y: port.y } };
  });
  const ys = joints.map(({ at }) => at.y);
  const spread = sides.size > 1 && Math.max(...ys) > Math.min(...ys);
  const spine = spread
    ? line([
        { x: cx, y: Math.min(...ys) },
        { x: cx, y: Math.max(...ys) },
      ])
    : '';
  const dots = joints.map(({ at }) => circle(at, r, true));
  return joints.map(({ drawn, at }) => lead(frame, drawn, at)).join('') + spine + [...new Set(dots)].join('');
}
