/**
 * What stands between the two leads of one contact, in both states. Coordinates are those of a `Place`: `u` from -22
 * to 22 along the current, `v` from -16 to 16 across it; the middle of the row is 0, 0.
 */

import { circle, dot, HEAVY, line, shape, sign } from '../strokes.ts';
import { RING } from './arm-pivot.ts';
import { type Arm, armLine, type Operator } from './contact-operators.ts';
import type { Place } from './frame.ts';

/** A contact that one movement makes, or breaks. */
export type Form = 'make' | 'break';

export interface Glyph {
  /** where the lead of the common terminal ends, and where that of the other one begins: `u` */
  readonly from: number;
  readonly to: number;
  /** drawn in either state */
  readonly fixed: string;
  readonly made: string;
  readonly open: string;
}

/** A contact of IEC 60617: a bare arm; a break contact's arm rests on the hook of its fixed contact. */
export function barePlain(place: Place, form: Form, operator: Operator | undefined): Glyph {
  const pivot = [-12, 0] as const;
  const state = (arm: Arm, made: boolean): string =>
    armLine(place, arm, made) + (operator?.(place, arm, 1) ?? '');
  if (form === 'make') {
    return {
      from: -12,
      to: 12,
      fixed: '',
      made: dot(place(-12, 0)) + dot(place(12, 0)) + state({ pivot, tip: [12, 0] }, true),
      open: state({ pivot, tip: [9, -11] }, false),
    };
  }
  return {
    from: -12,
    to: 9,
    fixed: line([place(9, 0), place(9, 6)]),
    made: state({ pivot, tip: [13, 7.14] }, true),
    open: state({ pivot, tip: [10, 14.5] }, false),
  };
}

/** Two small rings with an arm that is pushed up from below: limit switches and the like of ANSI Y32.2. */
export function ringArm(place: Place, form: Form, operator: Operator | undefined): Glyph {
  const rings = circle(place(-12, 0), RING) + circle(place(12, 0), RING);
  const state = (tip: readonly [number, number], made: boolean): string => {
    const arm: Arm = { pivot: [-9.7, 0], tip };
    return armLine(place, arm, made) + (operator?.(place, arm, -1) ?? '');
  };
  const made = state(form === 'make' ? [13, 3.6] : [14, -3.6], true);
  const open = state(form === 'make' ? [12, 10] : [12, -11], false);
  return { from: -12 - RING, to: 12 + RING, fixed: rings, made, open };
}

/** Two small rings and a blade between them: a switch worked by hand. */
export function ringBlade(place: Place): Glyph {
  return {
    from: -12 - RING,
    to: 12 + RING,
    fixed: circle(place(-12, 0), RING) + circle(place(12, 0), RING),
    made: line([place(-9.5, 0), place(9.5, 0)], HEAVY),
    open: line([place(-10, -1.5), place(9, -12)]),
  };
}

/** A push button's bridge: above the rings where it makes, below them where it breaks; pressed downwards. */
export function ringPlunger(place: Place, form: Form): Glyph {
  const stem = form === 'make' ? 9 : 13;
  const bridge = (v: number, made: boolean): string =>
    line([place(-11, v), place(11, v)], made ? HEAVY : '') + line([place(0, v), place(0, v - stem)]);
  return {
    from: -8 - RING,
    to: 8 + RING,
    fixed: circle(place(-8, 0), RING) + circle(place(8, 0), RING),
    made: bridge(form === 'make' ? -3.8 : 3.8, true),
    open: bridge(form === 'make' ? -7 : 10, false),
  };
}

/** Two bars, with a slash where the contact breaks; a heavy bridge between the bars where it is made. */
export function bars(place: Place, form: Form, words?: string): Glyph {
  const height = 9;
  const upright = (u: number): string => line([place(u, -height), place(u, height)]);
  const slash = form === 'break' ? line([place(-9, height), place(9, -height)]) : '';
  return {
    from: -5,
    to: 5,
    fixed: upright(-5) + upright(5) + slash + (words === undefined ? '' : sign(place(-14, -6), words, 9)),
    made: line([place(-4.5, 0), place(4.5, 0)], ' stroke-width="5" stroke-linecap="butt"'),
    open: '',
  };
}

/** Two valves back to back between two bars: an output of a semiconductor. Filled where it conducts. */
export function valves(place: Place, form: Form): Glyph {
  const pair = (filled: boolean): string =>
    shape([place(-6, -10), place(-6, -1), place(6, -5.5)], filled) +
    shape([place(6, 1), place(6, 10), place(-6, 5.5)], filled);
  const upright = (u: number): string => line([place(u, -10), place(u, 10)]);
  const slash = form === 'break' ? line([place(-11, 11), place(11, -11)]) : '';
  return {
    from: -6,
    to: 6,
    fixed: upright(-6) + upright(6) + line([place(6, 9), place(11, 13)]) + slash,
    made: pair(true),
    open: pair(false),
  };
}
