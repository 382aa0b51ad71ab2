/**
 * Strokes of SVG. Paths hold absolute M, L, Q and Z alone, so that every pair of numbers in them is a point of the
 * sheet. Coordinates are px with two decimals at most.
 */

import { xml } from '../text/xml.ts';
import type { Box, Point } from './drawing.ts';

/** A line of a closed contact, told from an open one by its weight. */
export const HEAVY = ' stroke-width="3"';
/** A line that carries a movement or a plug, not a current. */
export const DASHED = ' stroke-dasharray="3 2.5"';

/** A number as SVG has it: two decimals at most, and no `-0`. */
export function num(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

const at = (point: Point): string => `${num(point.x)} ${num(point.y)}`;

/** An open polyline. `style` is an attribute such as HEAVY, or several. */
export function line(points: readonly Point[], style = ''): string {
  return `<path class="s"${style} d="M${points.map(at).join('L')}"/>`;
}

/** A chain of parabolas: a point, then a control point and an end for each. */
export function curve(points: readonly Point[], style = ''): string {
  const [first, ...rest] = points.map(at);
  const bends: string[] = [];
  for (let i = 0; i + 1 < rest.length; i += 2) bends.push(`Q${rest[i]} ${rest[i + 1]}`);
  return `<path class="s"${style} d="M${first}${bends.join('')}"/>`;
}

const FILLED = 'class="f" fill="currentColor" stroke="none"';

/** A closed polygon, hollow or filled. */
export function shape(points: readonly Point[], filled = false, style = ''): string {
  const kind = filled ? FILLED : 'class="s"';
  return `<path ${kind}${style} d="M${points.map(at).join('L')}Z"/>`;
}

/** A circle, hollow or filled. */
export function circle(centre: Point, radius: number, filled = false): string {
  const kind = filled ? FILLED : 'class="s"';
  return `<circle ${kind} cx="${num(centre.x)}" cy="${num(centre.y)}" r="${num(radius)}"/>`;
}

/** A dot where lines join. */
export function dot(centre: Point): string {
  return circle(centre, 2, true);
}

export function rect(box: Box, style = ''): string {
  const { x, y, width, height } = box;
  return `<rect class="s"${style} x="${num(x)}" y="${num(y)}" width="${num(width)}" height="${num(height)}"/>`;
}

/** A sign that belongs to a symbol, such as `M`, with its middle at `centre`. */
export function sign(centre: Point, words: string, size = 10): string {
  // Capitals are about seven tenths of the font's size high.
  const y = num(centre.y + size * 0.35);
  const font = `font-size="${size}" font-family="sans-serif" text-anchor="middle"`;
  return `<text class="t" fill="currentColor" stroke="none" ${font} x="${num(centre.x)}" y="${y}">${xml(words)}</text>`;
}

/** `<g>` with a class, and data attributes whose values are escaped here. */
export function group(
  name: string,
  data: Readonly<Record<string, string>>,
  ...content: readonly string[]
): string {
  const attributes = Object.entries(data).map(([key, value]) => ` data-${key}="${xml(value)}"`);
  return `<g class="${name}"${attributes.join('')}>${content.join('')}</g>`;
}
