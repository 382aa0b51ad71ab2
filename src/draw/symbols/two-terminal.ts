/** Parts with two terminals: coils, diodes, lamps, resistors, fuses and batteries. */
import type { Part } from '../../plan/plan.ts';
import { circle, curve, group, line, rect, shape, sign } from '../strokes.ts';
import { type Axis, axisLeads, axisOf } from './axis.ts';
import { bodyBox, type Frame, leadsTo, middleOf, terminal } from './frame.ts';

/** A glyph on an axis: `half` is half its length along the axis, px. */
interface Part2 {
  readonly half: number;
  readonly ink: string;
}

type Draw = (axis: Axis, frame: Frame) => Part2;

/** A box on the axis, `half` px along it and `across` px to either side. */
function boxOn(axis: Axis, half: number, across: number, middle = 0): string {
  const a = axis.place(-half, middle - across);
  const b = axis.place(half, middle + across);
  return rect({
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  });
}

/** Extra compartment of a timer's coil: filled for a slow release, crossed for a slow pull-in (IEC 60617). */
function compartment(
  axis: Axis,
  half: number,
  from: number,
  to: number,
  delay: 'off-delay' | 'on-delay',
): string {
  const corners = [
    axis.place(-half, from),
    axis.place(half, from),
    axis.place(half, to),
    axis.place(-half, to),
  ] as const;
  if (delay === 'off-delay') return shape(corners, true);
  const [a, b, c, d] = corners;
  return line([a, b]) + line([a, c]) + line([b, d]);
}

function delayOf(part: Part): 'off-delay' | 'on-delay' | undefined {
  return part.kind === 'timer' ? part.function : undefined;
}

/** A coil as a rectangle, its leads in the middle of its long sides. */
function iecCoil(axis: Axis, part: Part): Part2 {
  const half = Math.min(8, axis.length);
  const across = Math.min(14, axis.across);
  const delay = delayOf(part);
  const strip = delay === undefined ? '' : compartment(axis, half, across * 0.42, across, delay);
  return { half, ink: boxOn(axis, half, across) + strip };
}

/** A coil as a circle; a timer's has TR in it, over an arrow: up, timed from energising; down, from de-energising. */
function necCoil(axis: Axis, part: Part): Part2 {
  const half = Math.min(14, axis.length, axis.across);
  const { x, y } = axis.centre;
  const outline = circle(axis.centre, half);
  const delay = delayOf(part);
  if (delay === undefined) return { half, ink: outline };
  const tip = delay === 'on-delay' ? 2.5 : 9.5;
  const barb = delay === 'on-delay' ? 5.5 : 6.5;
  const s = half / 14;
  const arrow =
    line([
      { x, y: y + 2.5 * s },
      { x, y: y + 9.5 * s },
    ]) +
    line([
      { x: x - 3 * s, y: y + barb * s },
      { x, y: y + tip * s },
      { x: x + 3 * s, y: y + barb * s },
    ]);
  return { half, ink: outline + sign({ x, y: y - 3.5 * s }, 'TR', 9) + arrow };
}

function coil(axis: Axis, frame: Frame): Part2 {
  const { half, ink } = (frame.options.practice === 'iec' ? iecCoil : necCoil)(axis, frame.part);
  return { half, ink: group('coil', { part: frame.symbol.part }, ink) };
}

/** Triangle and bar; filled in ladder symbols. A zener's bar is bent. */
function valve(axis: Axis, filled: boolean, zener: boolean): Part2 {
  const half = Math.min(7, axis.length);
  const s = half / 7;
  const triangle = shape([axis.place(-half, -7 * s), axis.place(-half, 7 * s), axis.place(half, 0)], filled);
  const bar = zener
    ? [axis.place(half - 4 * s, -7 * s), axis.place(half, -7 * s), axis.place(half, 7 * s)]
    : [axis.place(half, -7 * s), axis.place(half, 7 * s)];
  // IEC 60617 draws the conductor through the triangle.
  const through = filled ? '' : line([axis.place(-half, 0), axis.place(half, 0)]);
  return { half, ink: triangle + through + line(bar) };
}

function diode(axis: Axis, frame: Frame): Part2 {
  const zener = frame.part.kind === 'diode' && frame.part.zener !== undefined;
  return valve(axis, frame.options.practice === 'nec', zener);
}

/** A ray of light that leaves at `u`. */
function ray(axis: Axis, u: number): string {
  const s = Math.min(1, axis.across / 16);
  const place = (along: number, across: number) => axis.place(along, -across * s);
  return (
    line([place(u, 8.5), place(u + 5, 14.5)]) +
    line([place(u + 1.4, 14), place(u + 5, 14.5), place(u + 4.9, 10.9)])
  );
}

function led(axis: Axis, frame: Frame): Part2 {
  const { half, ink } = valve(axis, frame.options.practice === 'nec', false);
  return { half, ink: group('lamp', { part: frame.symbol.part }, ink, ray(axis, -3), ray(axis, 3.5)) };
}

function resistor(axis: Axis, frame: Frame): Part2 {
  const half = Math.min(14, axis.length - 1);
  if (frame.options.practice === 'iec') return { half, ink: boxOn(axis, half, 5) };
  const step = half / 6;
  const peaks = [-5, -3, -1, 1, 3, 5].map((at, index) => axis.place(at * step, index % 2 === 0 ? -6 : 6));
  return { half, ink: line([axis.place(-half, 0), ...peaks, axis.place(half, 0)]) };
}

function lamp(axis: Axis, frame: Frame): Part2 {
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

function fuse(axis: Axis, frame: Frame): Part2 {
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
function battery(axis: Axis): Part2 {
  const half = Math.min(7.5, axis.length);
  const step = half / 7.5;
  const plate = (u: number, across: number, style = ''): string =>
    line([axis.place(u * step, -across), axis.place(u * step, across)], style);
  const short = ' stroke-width="3" stroke-linecap="butt"';
  const cells = plate(-7.5, 10) + plate(-2.5, 5, short) + plate(2.5, 10) + plate(7.5, 5, short);
  const plus = axis.vertical ? axis.place(-half * 0.2, -15) : axis.place(-13.5, -8);
  return { half, ink: cells + sign(plus, '+') };
}

const DRAWS: Partial<Record<string, { readonly draw: Draw; readonly names: readonly [string, string] }>> = {
  coil: { draw: coil, names: ['A1', 'A2'] },
  timer: { draw: coil, names: ['A1', 'A2'] },
  diode: { draw: diode, names: ['A', 'K'] },
  led: { draw: led, names: ['A', 'K'] },
  resistor: { draw: resistor, names: ['1', '2'] },
  lamp: { draw: lamp, names: ['1', '2'] },
  fuse: { draw: fuse, names: ['1', '2'] },
  source: { draw: battery, names: ['+', '-'] },
};

/** The figure of a part with two terminals. A timer with a dry trigger, T1 and T2, is drawn as a block round its coil. */
export function twoTerminalFigure(frame: Frame): string {
  const entry = DRAWS[frame.symbol.figure];
  if (entry === undefined) return '';
  const { terminals } = frame.symbol;
  const [first, second] = entry.names.map((name) => terminal(frame, name));
  if (terminals.some((drawn) => drawn !== first && drawn !== second)) return coilBlock(frame);
  const axis = axisOf(frame, first, second);
  const { half, ink } = entry.draw(axis, frame);
  return axisLeads(frame, axis, half) + ink;
}

/** A block with a coil in it: a timer with a trigger, or a relay board. */
export function coilBlock(frame: Frame): string {
  const body = bodyBox(frame, 14);
  const centre = middleOf(body);
  const axis: Axis = {
    centre,
    vertical: false,
    length: 14,
    across: Math.min(14, body.height / 2 - 3),
    ends: [undefined, undefined],
    place: (u, v) => ({ x: centre.x + u, y: centre.y + v }),
  };
  const { half, ink } = coil(axis, frame);
  const stubs = [-1, 1].map((side) =>
    line([axis.place(side * half, 0), axis.place(side * Math.min(half + 4, body.width / 2 - 2), 0)]),
  );
  return leadsTo(frame, body) + rect(body) + stubs.join('') + ink;
}
