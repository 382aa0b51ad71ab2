/**
 * What stands between the two leads of one contact, in both states. Coordinates are those of a `Place`: `u` from -22
 * to 22 along the current, `v` from -16 to 16 across it; the middle of the row is 0, 0.
 */

import { circle, curve, DASHED, dot, HEAVY, line, shape, sign } from '../strokes.ts';
import { type Place, ROW } from './frame.ts';

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

/** A moving arm from its pivot to its tip, as `u` and `v`. */
export interface Arm {
  readonly pivot: readonly [number, number];
  readonly tip: readonly [number, number];
}

/** What works an arm or rides on it; `push` is the way the arm goes when worked: 1 to greater `v`, else -1. */
export type Operator = (place: Place, arm: Arm, push: 1 | -1) => string;

/** A point of an arm: 0 at its pivot, 1 at its tip. */
function along(arm: Arm, share: number): readonly [number, number] {
  const [u, v] = arm.pivot;
  return [u + (arm.tip[0] - u) * share, v + (arm.tip[1] - v) * share];
}

/** Where on an arm its operator holds it: near enough to the pivot to stay clear of the fixed contacts. */
const MID = 0.36;

export function armLine(place: Place, arm: Arm, made: boolean): string {
  return line([place(...arm.pivot), place(...arm.tip)], made ? HEAVY : '');
}

/** A wedge on the arm: a cam or a gate drives it (position switch, IEC 60617; limit switch, ANSI Y32.2). */
export const wedge: Operator = (place, arm, push) => {
  const [a, b] = [along(arm, 0.2), along(arm, 0.58)];
  const side = -push * 7.5;
  return shape([place(...a), place(b[0], b[1] + side), place(...b)]);
};

/** A dashed link from the arm to `v` = `end`. */
function link(place: Place, arm: Arm, end: number): string {
  const [u, v] = along(arm, MID);
  return line([place(u, v), place(u, end)], DASHED);
}

/** `u` of an operator's middle. */
function linkAt(arm: Arm): number {
  return along(arm, MID)[0];
}

/** Worked by hand, in general: a bar at the end of the link. */
export const hand: Operator = (place, arm, push) => {
  const end = -push * 15;
  const u = linkAt(arm);
  return link(place, arm, end) + line([place(u - 5, end), place(u + 5, end)]);
};

/** Pushed: the bar has ends that point at the arm. */
export const plunger: Operator = (place, arm, push) => {
  const end = -push * 15;
  const u = linkAt(arm);
  const lip = end + push * 4;
  return (
    link(place, arm, end) + line([place(u - 6, lip), place(u - 6, end), place(u + 6, end), place(u + 6, lip)])
  );
};

/** The step of a thermal element. */
export const thermal: Operator = (place, arm, push) => {
  const [near, far] = [-push * 10, -push * 15];
  const u = linkAt(arm);
  const step = [
    place(u - 8, far),
    place(u - 3, far),
    place(u - 3, near),
    place(u + 3, near),
    place(u + 3, far),
    place(u + 8, far),
  ];
  return link(place, arm, near) + line(step);
};

/**
 * The parachute of IEC 60617: two lines to an arc, and the movement from the arc towards its centre is the one that is
 * delayed. `delayed` is 'operate' for on-delay, 'release' for off-delay.
 */
export function parachute(delayed: 'operate' | 'release'): Operator {
  return (place, arm, push) => {
    const [u, v] = along(arm, MID);
    // The ends of a canopy lie towards the centre of its arc, its crown away from it.
    const canopy = delayed === 'operate' ? push : -push;
    const base = -push * (delayed === 'operate' ? 14 : 11);
    const [ends, crown] = [base + canopy * 3, base - canopy * 3];
    return (
      line([place(u - 1.5, v), place(u - 1.5, base)]) +
      line([place(u + 1.5, v), place(u + 1.5, base)]) +
      curve([place(u - 6, ends), place(u, crown), place(u + 6, ends)])
    );
  };
}

/** An arrow under the arm: up, timed after energising; down, timed after de-energising (NFPA 79). */
export function timeArrow(delayed: 'operate' | 'release'): Operator {
  return (place, arm) => {
    const [u, v] = along(arm, 0.5);
    const [top, end] = [v + 3, ROW - 3];
    const barb = delayed === 'operate' ? top + 4 : end - 4;
    const point = delayed === 'operate' ? top : end;
    return (
      line([place(u, v), place(u, end)]) + line([place(u - 3.5, barb), place(u, point), place(u + 3.5, barb)])
    );
  };
}

/** The step of a thermal element hung under an arm. */
export const thermalStep: Operator = (place, arm) => {
  const [u, v] = along(arm, 0.45);
  const [top, end] = [v + 4, v + 9];
  return line([
    place(u, v),
    place(u, top),
    place(u + 5, top),
    place(u + 5, end),
    place(u, end),
    place(u, end + 3),
  ]);
};

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

const RING = 2.5;

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
