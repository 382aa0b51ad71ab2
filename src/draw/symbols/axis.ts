/** The line on which a part with two terminals is drawn: across its box, or down it where both stand on one side. */
import type { DrawnTerminal, Point } from '../drawing.ts';
import { rect } from '../strokes.ts';
import { type Frame, HALF, inward, JOG, joggedLead, lead, type Place, room, rowOf } from './frame.ts';

export interface Axis {
  readonly centre: Point;
  readonly vertical: boolean;
  /** px free along the axis from its centre, and to either side of it */
  readonly length: number;
  readonly across: number;
  readonly ends: readonly [DrawnTerminal | undefined, DrawnTerminal | undefined];
  /** `u` px from the centre towards the second terminal, `v` px to the side (downwards, or away from the leads) */
  readonly place: Place;
}

/** The axis from one terminal to the other; either may be missing. */
export function axisOf(
  frame: Frame,
  first: DrawnTerminal | undefined,
  second: DrawnTerminal | undefined,
): Axis {
  const rows = [first, second].flatMap((drawn) => (drawn === undefined ? [] : [rowOf(frame, drawn)]));
  const [a = frame.box.y + frame.box.height / 2, b = a] = rows;
  const centre = { x: frame.cx, y: (a + b) / 2 };
  const width = Math.min(HALF, frame.box.width / 2 - 1);
  const ends = [first, second] as const;
  if (first !== undefined && second !== undefined && first.side === second.side && a !== b) {
    const down = a < b ? 1 : -1;
    const away = inward(first.side);
    const place: Place = (u, v) => ({ x: centre.x + away * v, y: centre.y + down * u });
    return { centre, vertical: true, length: Math.abs(a - b) / 2 - 3, across: width, ends, place };
  }
  const side = first?.side ?? (second?.side === 'left' ? 'right' : 'left');
  const direction = inward(side);
  const { up, down } = room(frame, centre.y);
  const place: Place = (u, v) => ({ x: centre.x + direction * u, y: centre.y + v });
  return { centre, vertical: false, length: Math.min(JOG, width), across: Math.min(up, down), ends, place };
}

/** Leads from the terminals of an axis to a glyph that is `half` px long either way. */
export function axisLeads(frame: Frame, axis: Axis, half: number): string {
  return axis.ends
    .map((drawn, index) => {
      if (drawn === undefined) return '';
      const end = axis.place(index === 0 ? -half : half, 0);
      if (axis.vertical) return lead(frame, drawn, { x: end.x, y: rowOf(frame, drawn) }, end);
      const jog = frame.cx - inward(drawn.side) * Math.min(JOG, frame.box.width / 2 - 1);
      return joggedLead(frame, drawn, jog, end);
    })
    .join('');
}

/** A glyph on an axis: `half` is half its length along the axis, px. */
export interface AxisGlyph {
  readonly half: number;
  readonly ink: string;
}

/** A box on the axis, `half` px along it and `across` px to either side. */
export function boxOn(axis: Axis, half: number, across: number, middle = 0): string {
  const a = axis.place(-half, middle - across);
  const b = axis.place(half, middle + across);
  return rect({
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  });
}
