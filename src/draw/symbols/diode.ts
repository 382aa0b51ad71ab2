/** Diodes, and those that give light. */
import { group, line, shape } from '../strokes.ts';
import type { Axis, AxisGlyph } from './axis.ts';
import type { Frame } from './frame.ts';

/** Triangle and bar; filled in ladder symbols. A zener's bar is bent. */
function valve(axis: Axis, filled: boolean, zener: boolean): AxisGlyph {
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

export function diodeGlyph(axis: Axis, frame: Frame): AxisGlyph {
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

export function ledGlyph(axis: Axis, frame: Frame): AxisGlyph {
  const { half, ink } = valve(axis, frame.options.practice === 'nec', false);
  return { half, ink: group('lamp', { part: frame.symbol.part }, ink, ray(axis, -3), ray(axis, 3.5)) };
}
