/** The words round a symbol: name, caption, marks of its terminals, and what is plugged into it. */
import { wrap } from '../../text/wrap.ts';
import type { Box, Label, Side } from '../drawing.ts';
import type { Measures } from './measures.ts';
import type { Placed } from './place-symbols.ts';
import { BESIDE, placePlugged, pluggedWidth } from './plugged-words.ts';
import type { TerminalSpec } from './symbol-specs.ts';

export type SymbolWords = ReturnType<typeof symbolWords>;

/** Widths of a symbol, and its labels once it has a place. */
export function symbolWords(p: Placed, m: Measures) {
  const { spec } = p;
  const { width: figure } = m.figure(spec.figure);
  const markWidth = (side: Side) =>
    Math.max(
      0,
      ...spec.terminals
        .filter((t) => t.side === side)
        .map((t) => (t.mark === '' ? 0 : m.width(t.mark, 'mark'))),
    );
  const zones = [markWidth('left'), markWidth('right')] as const;
  const pad = m.unit > 0 ? 0 : 6;
  const core =
    m.unit > 0
      ? figure + zones[0] + zones[1]
      : figure + 2 * Math.max(...zones.map((z) => (z > 0 ? z + pad : 0)));
  const inner = pluggedWidth(p, m);
  const box = m.inLine ? Math.max(core, inner) : core + (inner > 0 ? BESIDE + inner : 0);
  const heads = headLines(p, m);
  const head = Math.max(...heads.map((line) => line.width));
  return {
    /** width of the box */
    box,
    /** width of the widest line of words above it */
    head,
    /** width that the symbol takes between the lines at its sides */
    zone: Math.max(box, head),
    heads: (x: number, boxTop: number): Label[] => placeHeads(p, heads, m, x, boxTop),
    mark: (t: TerminalSpec, x: number, y: number, side: Side): Label | undefined => {
      if (t.mark === '') return undefined;
      const width = m.width(t.mark, 'mark');
      const height = m.height('mark');
      return {
        text: t.mark,
        what: 'mark',
        of: t.key,
        width,
        height,
        x: side === 'left' ? x + pad / 2 : x - width - pad / 2,
        y: m.inLine ? y - m.unit / 2 : y - m.labelGap - height + 1,
      };
    },
    plugged: (own: Box, top: number) => placePlugged(p, m, own, top, core),
  };
}

interface HeadLine {
  readonly pieces: readonly { readonly text: string; readonly what: Label['what']; readonly width: number }[];
  readonly width: number;
  readonly height: number;
}

/** Name with finding marks, and the caption beside or below it. */
function headLines(p: Placed, m: Measures): HeadLine[] {
  const { spec } = p;
  const gap = m.unit > 0 ? 1 : 5;
  const piece = (text: string, what: Label['what']) => ({ text, what, width: m.width(text, what) });
  const line = (pieces: HeadLine['pieces']): HeadLine => ({
    pieces,
    width: pieces.reduce((sum, q) => sum + q.width + gap, -gap),
    height: Math.max(...pieces.map((q) => m.height(q.what))),
  });
  const name = [
    piece(spec.name, 'name'),
    ...(spec.finding === undefined ? [] : [piece(spec.finding, 'finding')]),
  ];
  const captions = captionLines(p, m).map((text) => piece(text, 'caption'));
  return m.brief ? [line([...name, ...captions])] : [line(name), ...captions.map((caption) => line([caption]))];
}

/** The caption of a symbol, line by line; none where its name says enough. */
export function captionLines({ spec }: Placed, m: Measures): string[] {
  if (spec.caption === '') return [];
  return m.brief ? [spec.caption] : wrap(spec.caption, m.captionLine);
}

function placeHeads(p: Placed, lines: readonly HeadLine[], m: Measures, x: number, boxTop: number): Label[] {
  const gap = m.unit > 0 ? 1 : 5;
  const labels: Label[] = [];
  let y = boxTop - lines.reduce((sum, l) => sum + l.height, 0);
  const widest = Math.max(...lines.map((l) => l.width));
  for (const line of lines) {
    let at = x + (m.unit > 0 ? Math.floor((widest - line.width) / 2) : (widest - line.width) / 2);
    for (const q of line.pieces) {
      labels.push({
        text: q.text,
        what: q.what,
        of: p.spec.part.name,
        x: at,
        y,
        width: q.width,
        height: m.height(q.what),
      });
      at += q.width + gap;
    }
    y += line.height;
  }
  return labels;
}
