/** The moving arm of a contact, and what works it or rides on it. Coordinates are those of a `Place`. */

import { curve, DASHED, HEAVY, line, shape } from '../strokes.ts';
import { type Place, ROW } from './frame.ts';

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
