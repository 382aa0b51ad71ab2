/** Coils of relays and timers, alone or in a block. */

import type { Part } from '../../plan/part-types.ts';
import { circle, group, line, rect, shape, sign } from '../strokes.ts';
import { type Axis, type AxisGlyph, boxOn } from './axis.ts';
import { bodyBox, type Frame, leadsTo, middleOf } from './frame.ts';

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
function iecCoil(axis: Axis, part: Part): AxisGlyph {
  const half = Math.min(8, axis.length);
  const across = Math.min(14, axis.across);
  const delay = delayOf(part);
  const strip = delay === undefined ? '' : compartment(axis, half, across * 0.42, across, delay);
  return { half, ink: boxOn(axis, half, across) + strip };
}

/** A coil as a circle; a timer's has TR in it, over an arrow: up, timed from energising; down, from de-energising. */
function necCoil(axis: Axis, part: Part): AxisGlyph {
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

export function coilGlyph(axis: Axis, frame: Frame): AxisGlyph {
  const { half, ink } = (frame.options.practice === 'iec' ? iecCoil : necCoil)(axis, frame.part);
  return { half, ink: group('coil', { part: frame.symbol.part }, ink) };
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
  const { half, ink } = coilGlyph(axis, frame);
  const stubs = [-1, 1].map((side) =>
    line([axis.place(side * half, 0), axis.place(side * Math.min(half + 4, body.width / 2 - 2), 0)]),
  );
  return leadsTo(frame, body) + rect(body) + stubs.join('') + ink;
}
