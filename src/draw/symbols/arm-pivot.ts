/** Where the common arm of several contacts starts. */

import type { DrawnTerminal, Point } from '../drawing.ts';
import { circle } from '../strokes.ts';
import type { Operator } from './contact-operators.ts';
import { type Frame, inward, JOG, type Place } from './frame.ts';

/** How a common arm looks. */
export interface ArmStyle {
  readonly operator: Operator | undefined;
  /** how the fixed contacts end: with a hook to the arm, or with a ring */
  readonly ends: 'hooks' | 'rings';
}

/** Radius of the small rings of a contact, px. */
export const RING = 2.5;

/** Where an arm turns: `u` of its row. */
export const PIVOT = -12;

/** x at which a lead turns to its row: on the side of the common terminal, and on the other. */
export function jogs(frame: Frame, common: DrawnTerminal): { readonly near: number; readonly far: number } {
  const offset = inward(common.side) * Math.min(JOG, frame.box.width / 2 - 1);
  return { near: frame.cx - offset, far: frame.cx + offset };
}

/** Where an arm starts, and its ring where it has one. */
export function pivotOf(
  place: Place,
  ends: ArmStyle['ends'],
): { readonly ink: string; readonly lead: Point } {
  if (ends === 'hooks') return { ink: '', lead: place(PIVOT, 0) };
  return { ink: circle(place(PIVOT, 0), RING), lead: place(PIVOT - RING, 0) };
}
