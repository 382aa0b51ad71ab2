/** Motors and loads, in a box of their own. */

import type { Practice } from '../../plan/device-figures.ts';
import type { Part } from '../../plan/part-types.ts';
import type { Box, Point } from '../drawing.ts';
import { circle, curve, group, line, rect, sign } from '../strokes.ts';
import { middleOf } from './frame.ts';

/** px left free inside the box of a glyph */
const MARGIN = 0.75;

function inset(box: Box, by = MARGIN): Box {
  const [width, height] = [Math.max(0, box.width - 2 * by), Math.max(0, box.height - 2 * by)];
  return { x: box.x + by, y: box.y + by, width, height };
}

function isThreePhase(part: Part): boolean {
  if (part.kind === 'motor' && part.type === 'three-phase') return true;
  if ('phases' in part && part.phases !== undefined) return part.phases === 3;
  return 'feed' in part && part.feed === 'three-phase';
}

function roundIn(box: Box): { readonly centre: Point; readonly r: number } {
  return { centre: middleOf(box), r: Math.max(0, Math.min(box.width, box.height, 36) / 2 - MARGIN) };
}

/** `M` with `1~` or `3~` (IEC 60617), or `MTR` in a ladder, where M names the coil of a contactor. */
export function motorGlyph(name: string, part: Part, practice: Practice, box: Box): string {
  const { centre, r } = roundIn(box);
  const { x, y } = centre;
  const words =
    practice === 'iec'
      ? sign({ x, y: y - r * 0.28 }, 'M', 10) +
        sign(
          { x, y: y + r * 0.42 },
          part.kind === 'motor' && part.volts.kind === 'dc' ? '=' : isThreePhase(part) ? '3~' : '1~',
          10,
        )
      : sign(centre, 'MTR', 10);
  return group('load', { part: name }, circle(centre, r), words);
}

function heaterMarks(box: Box, practice: Practice): string {
  const { x, y, width, height } = box;
  if (practice === 'iec') {
    return [1, 2, 3, 4]
      .map((n) => {
        const at = x + (width * n) / 5;
        return line([
          { x: at, y },
          { x: at, y: y + height },
        ]);
      })
      .join('');
  }
  const { y: middle } = middleOf(box);
  const step = width / 10;
  return line(
    [0, 1, 2, 3, 4, 5, 6, 7, 8].map((n) => ({
      x: x + (n + 1) * step,
      y: n === 0 || n === 8 ? middle : middle + (n % 2 === 0 ? 5 : -5),
    })),
  );
}

function twoCircles(box: Box): string {
  const { x, y } = middleOf(box);
  const r = Math.min(8, box.height / 2 - 2, box.width / 4);
  return circle({ x: x - r * 0.6, y }, r) + circle({ x: x + r * 0.6, y }, r);
}

function wave({ x, y }: Point, size: number): string {
  return curve([
    { x: x - size, y },
    { x: x - size / 2, y: y - size },
    { x, y },
    { x: x + size / 2, y: y + size },
    { x: x + size, y },
  ]);
}

function cross(box: Box): string {
  const { centre, r } = roundIn(box);
  const d = r * Math.SQRT1_2;
  const { x, y } = centre;
  return (
    circle(centre, r) +
    line([
      { x: x - d, y: y - d },
      { x: x + d, y: y + d },
    ]) +
    line([
      { x: x - d, y: y + d },
      { x: x + d, y: y - d },
    ])
  );
}

/** What a load does, in its outline: lamp, heater, transformer, electronics, or a plain block. */
export function loadGlyph(name: string, part: Part, practice: Practice, box: Box): string {
  const type = part.kind === 'load' ? part.type : undefined;
  if (type === 'lamp') return group('load', { part: name }, cross(box));
  const frame = inset(box);
  const { x, y, width, height } = frame;
  const centre = middleOf(frame);
  const inner = (): string => {
    switch (type) {
      case 'heater':
        return heaterMarks(frame, practice);
      case 'transformer':
        return twoCircles(frame);
      case 'electronic':
        return (
          line([
            { x, y: y + height },
            { x: x + width, y },
          ]) + wave({ x: x + width * 0.28, y: y + height * 0.3 }, Math.min(6, width / 5))
        );
      default:
        return practice === 'iec' ? wave(centre, Math.min(7, width / 4)) : sign(centre, 'LOAD', 10);
    }
  };
  return group('load', { part: name }, rect(frame), inner());
}
