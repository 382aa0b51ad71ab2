/** A supply on either of its sides: a converter from AC to DC, or a transformer. */

import type { Point } from '../drawing.ts';
import { curve, line, rect, sign } from '../strokes.ts';
import { axisLeads, axisOf } from './axis.ts';
import { bodyBox, type Frame, lead, leadsTo, rowOf, terminal } from './frame.ts';

/** `~` in strokes. */
function acSign({ x, y }: Point): string {
  return curve([
    { x: x - 6, y },
    { x: x - 3, y: y - 5.5 },
    { x, y },
    { x: x + 3, y: y + 5.5 },
    { x: x + 6, y },
  ]);
}

/** Direct current in strokes: a line over a broken one. */
function dcSign({ x, y }: Point): string {
  return (
    line([
      { x: x - 6, y: y - 2 },
      { x: x + 6, y: y - 2 },
    ]) +
    [-5, 0, 5]
      .map((dx) =>
        line([
          { x: x + dx - 1, y: y + 2 },
          { x: x + dx + 1, y: y + 2 },
        ]),
      )
      .join('')
  );
}

/** A converter from AC to DC: a block cut by a diagonal, with the kind of current on either side. */
function converter(frame: Frame): string {
  const body = bodyBox(frame, 14);
  const { x, y, width, height } = body;
  const ac = { x: x + 10, y: y + 8 };
  const dc = { x: x + width - 10, y: y + height - 8 };
  const signs =
    frame.options.practice === 'iec' ? acSign(ac) + dcSign(dc) : sign(ac, 'AC', 9) + sign(dc, 'DC', 9);
  const diagonal = line([
    { x, y: y + height },
    { x: x + width, y },
  ]);
  return leadsTo(frame, body) + rect(body) + diagonal + signs;
}

/** Windings of a transformer on one core; the leads go to the one that this symbol is about. */
function transformer(frame: Frame): string {
  const rows = [...frame.symbol.terminals].sort((a, b) => rowOf(frame, a) - rowOf(frame, b));
  const own = frame.symbol.figure === 'source' ? ['~1', '~2'].map((name) => terminal(frame, name)) : rows;
  const [first, second] = [own[0], own.length > 1 ? own.at(-1) : undefined];
  // Further taps lead to the winding between its ends.
  const taps = own.slice(1, -1).flatMap((drawn) => (drawn === undefined ? [] : [drawn]));
  const axis = axisOf(frame, first, second);
  const half = Math.min(12, axis.length);
  const step = half / 3;
  const s = Math.min(1, axis.across / 16);
  // Turns bulge away from the core.
  const winding = (v: number, bulge: number): string =>
    curve([
      axis.place(-half, v * s),
      ...[-3, -1, 1].flatMap((from) =>
        [
          [from, bulge],
          [from + 1, bulge],
          [from + 2, bulge],
          [from + 2, 0],
        ].map(([u = 0, out = 0]) => axis.place(u * step, (v + out) * s)),
      ),
    ]);
  const core = (frame.options.practice === 'iec' ? [5] : [3.8, 6.2]).map((v) =>
    line([axis.place(-half, v * s), axis.place(half, v * s)]),
  );
  const tapLeads = taps.map((drawn) => lead(frame, drawn, { x: axis.centre.x, y: rowOf(frame, drawn) }));
  return axisLeads(frame, axis, half) + tapLeads.join('') + winding(0, -5) + core.join('') + winding(10, 5);
}

/** A supply, on either of its sides. */
export function supplyFigure(frame: Frame): string {
  const { part } = frame;
  return part.kind === 'supply' && part.output.kind === 'ac' ? transformer(frame) : converter(frame);
}
