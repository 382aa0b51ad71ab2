/** What is plugged into a symbol: its words, and its box. */

import { columns, wrap } from '../../text/wrap.ts';
import type { Box, DrawnSymbol, Label } from '../drawing.ts';
import type { Measures } from './measures.ts';
import type { Placed } from './place-symbols.ts';

/** On a terminal a plugged-in part is a line of words; on paper a figure with its words above. */
function pluggedWords(p: Placed, m: Measures) {
  return p.spec.plugged.map((q) => {
    const name = m.brief ? `feeds ${q.part}` : q.part;
    const captions = m.brief || q.caption === '' ? [] : inLines(q.caption, m.captionLine - 4);
    return {
      ...q,
      name,
      captions,
      width: Math.max(
        m.width(name, 'name'),
        ...captions.map((text) => m.width(text, 'caption')),
        m.plugged.width,
      ),
    };
  });
}

/** Words of a caption in lines of at most `most` letters, parted at commas where that will do. */
export function inLines(caption: string, most: number): string[] {
  const lines: string[] = [];
  for (const piece of caption.split(/(?<=,) /)) {
    const last = lines.at(-1);
    if (last !== undefined && columns(last) + 1 + columns(piece) <= most)
      lines[lines.length - 1] = `${last} ${piece}`;
    else lines.push(piece);
  }
  return lines.flatMap((line) => wrap(line, most));
}

/** Width of the widest of what is plugged in; 0 for nothing. */
export function pluggedWidth(p: Placed, m: Measures): number {
  return Math.max(0, ...pluggedWords(p, m).map((q) => q.width));
}

/** Their boxes and words in the box of the symbol, from `top` down; `core` is the width of the symbol's own figure. */
export function placePlugged(
  p: Placed,
  m: Measures,
  own: Box,
  top: number,
  core: number,
): { parts: DrawnSymbol['plugged']; labels: Label[] } {
  const labels: Label[] = [];
  const parts: { part: string; figure: 'motor' | 'load'; box: Box }[] = [];
  let y = top;
  const x = m.inLine ? own.x : own.x + core + BESIDE;
  for (const q of pluggedWords(p, m)) {
    const put = (text: string, what: 'name' | 'caption') => {
      const height = m.height(what);
      labels.push({ text, what, of: q.part, x, y, width: m.width(text, what), height });
      y += height;
    };
    if (q.name !== '') put(q.name, 'name');
    for (const text of q.captions) put(text, 'caption');
    // On a terminal the words are all there is of it.
    const last = labels.at(-1)!;
    const box = m.brief ? last : { x, y, width: m.plugged.width, height: m.plugged.height };
    parts.push({
      part: q.part,
      figure: q.figure,
      box: { x: box.x, y: box.y, width: box.width, height: box.height },
    });
    y += m.plugged.height;
  }
  return { parts, labels };
}

/** px between the figure and the words of what is plugged in. */
export const BESIDE = 16;

/** Height of the parts plugged into a symbol with their words. */
export function pluggedHeight(p: Placed, m: Measures): number {
  return pluggedWords(p, m).reduce(
    (sum, { captions }) => sum + m.height('name') + captions.length * m.height('caption') + m.plugged.height,
    0,
  );
}
