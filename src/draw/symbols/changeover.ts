/** Contacts whose ways share one arm: changeovers and selectors. */

import type { DrawnTerminal, Point } from '../drawing.ts';
import { circle, group, HEAVY, line } from '../strokes.ts';
import { type Arm, armLine, hand, type Operator } from './contact-glyphs.ts';
import { restingArm, wayGroup } from './contact-states.ts';
import {
  alongRow,
  type Frame,
  inward,
  JOG,
  joggedLead,
  nameOf,
  type Place,
  rowOf,
  terminal,
} from './frame.ts';

/** px from the arm's middle row to the row of a fixed contact, at most. */
const THROW = 20;
/** px from the last row of a selector to where its arm points in a position beyond it */
const BEYOND = 12;
const RING = 2.5;
const PIVOT = -12;

export interface ArmStyle {
  readonly operator: Operator | undefined;
  /** how the fixed contacts end: with a hook to the arm, or with a ring */
  readonly ends: 'hooks' | 'rings';
}

function jogs(frame: Frame, common: DrawnTerminal): { readonly near: number; readonly far: number } {
  const offset = inward(common.side) * Math.min(JOG, frame.box.width / 2 - 1);
  return { near: frame.cx - offset, far: frame.cx + offset };
}

/** Where an arm starts, and its ring where it has one. */
function pivotOf(place: Place, ends: ArmStyle['ends']): { readonly ink: string; readonly lead: Point } {
  if (ends === 'hooks') return { ink: '', lead: place(PIVOT, 0) };
  return { ink: circle(place(PIVOT, 0), RING), lead: place(PIVOT - RING, 0) };
}

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

/** y the arm of a selector points at in a position that joins nothing. */
function restRow(frame: Frame, rows: readonly DrawnTerminal[]): number {
  const names = frame.part.kind === 'selector' ? frame.part.positions : [];
  const index = names.findIndex((name) => terminal(frame, name) === undefined);
  const y = (name: string | undefined): number | undefined => {
    const drawn = terminal(frame, name);
    return drawn === undefined ? undefined : rowOf(frame, drawn);
  };
  const [before, after] = [y(names[index - 1]), y(names[index + 1])];
  if (index > 0 && before !== undefined && after !== undefined) return (before + after) / 2;
  const ys = rows.map((drawn) => rowOf(frame, drawn));
  const { y: top, height } = frame.box;
  if (index > 0 && before !== undefined) return Math.min(Math.max(...ys) + BEYOND, top + height - 1);
  return Math.max(Math.min(...ys) - BEYOND, top + 1);
}

/** A selector: one arm, a fixed contact for each position. */
export function selectorFigure(frame: Frame): string {
  const common = terminal(frame, 'COM');
  const others = frame.symbol.terminals.filter((drawn) => drawn !== common && nameOf(frame, drawn) !== '');
  if (common === undefined || others.length === 0) {
    return frame.symbol.terminals
      .map((drawn) => joggedLead(frame, drawn, frame.cx, { x: frame.cx, y: rowOf(frame, drawn) }))
      .join('');
  }
  const rings = frame.options.practice === 'nec';
  const ys = others.map((drawn) => rowOf(frame, drawn));
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
  const place = alongRow(frame, middle, inward(common.side));
  const { near } = jogs(frame, common);
  const pivot = pivotOf(place, 'rings');
  const column = place(10, 0).x;
  // A straight blade that stops short of the ring it points at.
  const blade = (y: number, made: boolean): string => {
    const [start, end] = [place(PIVOT, 0), { x: column, y }];
    const length = Math.hypot(end.x - start.x, end.y - start.y);
    const point = (distance: number): Point => ({
      x: start.x + ((end.x - start.x) * distance) / length,
      y: start.y + ((end.y - start.y) * distance) / length,
    });
    return line([point(RING), point(made ? length - RING : Math.min(length, 17))], made ? HEAVY : '');
  };
  const ways = others.map((other) => {
    const y = rowOf(frame, other);
    const end = place(10 + RING, 0).x;
    const fixed = rings ? circle({ x: column, y }, RING) : circle({ x: column, y }, 1.8, true);
    return (
      joggedLead(frame, other, end, { x: rings ? end : column, y }) +
      wayGroup(frame, common, other, { fixed, made: blade(y, true), open: '' })
    );
  });
  return group(
    'contact',
    {},
    joggedLead(frame, common, near, pivot.lead),
    pivot.ink,
    ...ways,
    restingArm(frame, common, others, blade(restRow(frame, others), false)),
    rings ? '' : hand(place, { pivot: [PIVOT, 0], tip: [PIVOT, 0] }, 1),
  );
}
