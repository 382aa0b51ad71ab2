/** Selectors: one arm, a fixed contact for each position. */

import type { DrawnTerminal, Point } from '../drawing.ts';
import { circle, group, HEAVY, line } from '../strokes.ts';
import { jogs, PIVOT, pivotOf, RING } from './arm-pivot.ts';
import { hand } from './contact-operators.ts';
import { restingArm, wayGroup } from './contact-states.ts';
import { alongRow, type Frame, inward, joggedLead, nameOf, rowOf, terminal } from './frame.ts';

/** px from the last row of a selector to where its arm points in a position beyond it */
const BEYOND = 12;

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
