/** A changeover: a make and a break contact on one arm. */

import type { DrawnTerminal } from '../drawing.ts';
import { circle, group, line } from '../strokes.ts';
import { type ArmStyle, jogs, PIVOT, pivotOf, RING } from './arm-pivot.ts';
import { type Arm, armLine } from './contact-operators.ts';
import { restingArm, wayGroup } from './contact-states.ts';
import { alongRow, type Frame, inward, joggedLead, rowOf } from './frame.ts';

/** px from the arm's middle row to the row of a fixed contact, at most. */
const THROW = 20;
/** One arm between a make and a break contact, resting on the one that is made. */
export function changeover(
  frame: Frame,
  common: DrawnTerminal,
  make: DrawnTerminal,
  opened: DrawnTerminal,
  style: ArmStyle,
): string {
  const direction = inward(common.side);
  const [makeY, breakY] = [rowOf(frame, make), rowOf(frame, opened)];
  const middle = (makeY + breakY) / 2;
  const place = alongRow(frame, middle, direction);
  const push = makeY >= breakY ? 1 : -1;
  const swing = Math.min(THROW, Math.max(6, Math.abs(makeY - breakY) / 2));
  const { near, far } = jogs(frame, common);
  const pivot = pivotOf(place, style.ends);
  const armTo = (v: number, made: boolean): string => {
    const arm: Arm =
      style.ends === 'hooks'
        ? { pivot: [PIVOT, 0], tip: [12, v * 0.68] }
        : { pivot: [PIVOT + RING, v * 0.1], tip: [9.8, v * 0.9] };
    return armLine(place, arm, made) + (style.operator?.(place, arm, push) ?? '');
  };
  const way = (other: DrawnTerminal, side: 1 | -1): string => {
    const v = side * swing;
    const fixed =
      style.ends === 'hooks'
        ? { end: 8, ink: line([place(8, v), place(8, v * 0.57)]) }
        : { end: 12 + RING, ink: circle(place(12, v), RING) };
    return (
      joggedLead(frame, other, far, place(fixed.end, v)) +
      wayGroup(frame, common, other, { fixed: fixed.ink, made: armTo(v, true), open: '' })
    );
  };
  return group(
    'contact',
    {},
    joggedLead(frame, common, near, pivot.lead),
    pivot.ink,
    way(make, push),
    way(opened, push === 1 ? -1 : 1),
    restingArm(frame, common, [make, opened], armTo(0, false)),
  );
}
