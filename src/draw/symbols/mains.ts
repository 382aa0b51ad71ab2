/** Mains and what stands on it: supplies, plugs, outlets, motors, loads; and blocks, boxes and joints. */

import type { Box, DrawnTerminal, Point } from '../drawing.ts';
import { circle, curve, DASHED, line, rect, shape, sign } from '../strokes.ts';
import { axisLeads, axisOf } from './axis.ts';
import {
  bodyBox,
  type Frame,
  inward,
  JOG,
  lead,
  leadsTo,
  middleOf,
  nameOf,
  portOf,
  radius,
  rowOf,
  terminal,
} from './frame.ts';
import { loadGlyph, motorGlyph } from './machine-glyphs.ts';

/** `~` in strokes. */
export function acSign({ x, y }: Point): string {
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
  const names =
    frame.symbol.figure === 'source'
      ? ['~1', '~2']
      : terminal(frame, 'L') === undefined
        ? ['L1', 'L2']
        : ['L', 'N'];
  const [first, second] = names.map((name) => terminal(frame, name));
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
  return axisLeads(frame, axis, half) + winding(0, -5) + core.join('') + winding(10, 5);
}

/** A supply, on either of its sides. */
export function supplyFigure(frame: Frame): string {
  const { part } = frame;
  return part.kind === 'supply' && part.output.kind === 'ac' ? transformer(frame) : converter(frame);
}

/** Earth: bars that grow shorter away from the lead; `direction` is that of the lead. */
function earth(at: Point, direction: 1 | -1, size = 1): string {
  return [7, 4.5, 2]
    .map((height, index) => {
      const x = at.x + direction * index * 3 * size;
      return line([
        { x, y: at.y - height * size },
        { x, y: at.y + height * size },
      ]);
    })
    .join('');
}

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

/** A box or an enclosure: a dashed outline, with the sign of protective earth at its terminal. */
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

/** Conductors joined: lines to a dot in the middle, or the dot alone where all come from one side. */
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
