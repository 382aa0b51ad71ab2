import { circle, curve, group, line, sign } from '../strokes.ts';
import { type Axis, type AxisGlyph, axisLeads, axisOf, boxOn } from './axis.ts';
import { coilBlock } from './coil.ts';
import { type Frame, terminal } from './frame.ts';

export function resistorGlyph(axis: Axis, frame: Frame): AxisGlyph {
  const half = Math.min(14, axis.length - 1);
  if (frame.options.practice === 'iec') return { half, ink: boxOn(axis, half, 5) };
  const step = half / 6;
  const peaks = [-5, -3, -1, 1, 3, 5].map((at, index) => axis.place(at * step, index % 2 === 0 ? -6 : 6));
  return { half, ink: line([axis.place(-half, 0), ...peaks, axis.place(half, 0)]) };
}

export function lampGlyph(axis: Axis, frame: Frame): AxisGlyph {
  const iec = frame.options.practice === 'iec';
  const most = Math.min(axis.length, axis.across);
  const half = iec ? Math.min(11, most) : Math.min(9, most - 4);
  const { x, y } = axis.centre;
  const arm = (share: number, sx: number, sy: number) => ({
    x: x + sx * half * share * Math.SQRT1_2,
    y: y + sy * half * share * Math.SQRT1_2,
  });
  const corners = [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ] as const;
  const marks = iec
    ? line([arm(1, -1, -1), arm(1, 1, 1)]) + line([arm(1, 1, -1), arm(1, -1, 1)])
    : corners.map(([sx, sy]) => line([arm(1.05, sx, sy), arm(1 + 5.5 / half, sx, sy)])).join('');
  return { half, ink: group('lamp', { part: frame.symbol.part }, circle(axis.centre, half), marks) };
}

export function fuseGlyph(axis: Axis, frame: Frame): AxisGlyph {
  const half = Math.min(14, axis.length - 1);
  if (frame.options.practice === 'iec') {
    return { half, ink: boxOn(axis, half, 5) + line([axis.place(-half, 0), axis.place(half, 0)]) };
  }
  const ring = 2;
  const inner = half - 2 * ring;
  const swing = Math.min(13, axis.across);
  const wave = curve([
    axis.place(-inner, 0),
    axis.place(-inner / 2, -swing),
    axis.place(0, 0),
    axis.place(inner / 2, swing),
    axis.place(inner, 0),
  ]);
  const rings = circle(axis.place(-half + ring, 0), ring) + circle(axis.place(half - ring, 0), ring);
  return { half, ink: wave + rings };
}

/** Two cells; the long plate of each is its positive one. */
export function batteryGlyph(axis: Axis): AxisGlyph {
  const half = Math.min(7.5, axis.length);
  const step = half / 7.5;
  const plate = (u: number, across: number, style = ''): string =>
    line([axis.place(u * step, -across), axis.place(u * step, across)], style);
  const short = ' stroke-width="3" stroke-linecap="butt"';
  const cells = plate(-7.5, 10) + plate(-2.5, 5, short) + plate(2.5, 10) + plate(7.5, 5, short);
  const plus = axis.vertical ? axis.place(-half * 0.2, -15) : axis.place(-13.5, -8);
  return { half, ink: cells + sign(plus, '+') };
}

/** What stands on the axis of a part with two terminals. */
export type AxisFigure = (axis: Axis, frame: Frame) => AxisGlyph;

/**
 * The figure of a part with two terminals of these names. A timer with a dry trigger, T1 and T2, is drawn as a block
 * round its coil.
 */
export function twoTerminal(
  figure: AxisFigure,
  ...names: readonly [string, string]
): (frame: Frame) => string {
  return (frame) => {
    const [first, second] = names.map((name) => terminal(frame, name));
    if (frame.symbol.terminals.some((drawn) => drawn !== first && drawn !== second)) return coilBlock(frame);
    const axis = axisOf(frame, first, second);
    const { half, ink } = figure(axis, frame);
    return axisLeads(frame, axis, half) + ink;
  };
}
