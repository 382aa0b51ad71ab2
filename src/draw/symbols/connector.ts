/** Plugs and outlets: one pole for each terminal, in a common body. */

import type { Box, DrawnTerminal, Point } from '../drawing.ts';
import { curve, line, rect, shape } from '../strokes.ts';
import { earth } from './earth.ts';
import { bodyBox, type Frame, inward, lead, nameOf, rowOf } from './frame.ts';

/** One pole of a plug: a pin (IEC 60617), or an arrow (ANSI Y32.2). Ends of leads are at `at`. */
function pin(at: Point, d: 1 | -1, iec: boolean): string {
  if (iec) {
    return shape(
      [
        { x: at.x, y: at.y - 2.5 },
        { x: at.x + d * 13, y: at.y - 2.5 },
        { x: at.x + d * 13, y: at.y + 2.5 },
        { x: at.x, y: at.y + 2.5 },
      ],
      true,
    );
  }
  return (
    line([at, { x: at.x + d * 12, y: at.y }]) +
    line([
      { x: at.x + d * 6, y: at.y - 5 },
      { x: at.x + d * 12, y: at.y },
      { x: at.x + d * 6, y: at.y + 5 },
    ])
  );
}

/** One pole of an outlet: a cup that a pin enters (IEC 60617), or an open fork (ANSI Y32.2). */
function cup(at: Point, d: 1 | -1, iec: boolean): string {
  if (!iec) {
    return (
      line([
        { x: at.x + d * 10, y: at.y - 5 },
        { x: at.x + d * 4, y: at.y },
        { x: at.x + d * 10, y: at.y + 5 },
      ]) + line([at, { x: at.x + d * 4, y: at.y }])
    );
  }
  const [near, far] = [at.x + d * 4, at.x + d * 11];
  const bowl = curve([
    { x: far, y: at.y - 6.5 },
    { x: near + d, y: at.y - 6.5 },
    { x: near, y: at.y },
    { x: near + d, y: at.y + 6.5 },
    { x: far, y: at.y + 6.5 },
  ]);
  return line([at, { x: near, y: at.y }]) + bowl;
}

/** px from the edge of the body to where a pole's lead ends. */
const INSET = 3;

/** A plug or an outlet: one pole for each terminal, in a common body. */
export function connectorFigure(frame: Frame): string {
  const body = connectorBody(frame);
  const iec = frame.options.practice === 'iec';
  const draw = frame.symbol.figure === 'plug' ? pin : cup;
  const poles = frame.symbol.terminals.map((drawn) => {
    const d = inward(drawn.side);
    const edge = drawn.side === 'left' ? body.x : body.x + body.width;
    const at = { x: edge + d * INSET, y: rowOf(frame, drawn) };
    const ground =
      nameOf(frame, drawn) === 'PE' && !facing(frame, drawn) ? earth({ x: at.x + d * 20, y: at.y }, d) : '';
    return lead(frame, drawn, at) + draw(at, d, iec) + ground;
  });
  return poles.join('') + rect(body, ' rx="4"');
}

/** Whether another terminal comes in from the other side on the same row. */
function facing(frame: Frame, drawn: DrawnTerminal): boolean {
  return frame.symbol.terminals.some(
    (other) => other.side !== drawn.side && Math.abs(rowOf(frame, other) - rowOf(frame, drawn)) < 14,
  );
}

/** The outline of a plug or an outlet. */
export function connectorBody(frame: Frame): Box {
  return bodyBox(frame, 11);
}
