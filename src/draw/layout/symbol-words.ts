/** The words round a symbol: name, caption, marks of its terminals, and what is plugged into it. */
import type { Box, Label, Side } from '../drawing.ts';
import type { Slot } from './conductor-lines.ts';
import type { Measures } from './measures.ts';
import type { Placed } from './place-symbols.ts';
import { BESIDE, inLines, placePlugged, pluggedWidth } from './plugged-words.ts';
import type { TerminalSpec } from './symbol-specs.ts';

export type SymbolWords = ReturnType<typeof symbolWords>;

/** Half of what a contact takes in the middle of its box, px: no word comes nearer to the middle. */
const CONTACT_HALF = 24;

/**
 * The side on which the name of a contact stands below the lead of its common terminal; undefined where it stands above.
 * `slots` are the symbol's own.
 */
export function besideSide(p: Placed, slots: readonly Slot[], m: Measures): Side | undefined {
  if (!m.besideNames || p.spec.caption !== '' || !slots.some((s) => s.inner > 0)) return undefined;
  for (const side of ['left', 'right'] as const) {
    const own = slots.filter((s) => s.side === side);
    const [common] = own;
    if (common === undefined || own.length > 1 || common.inner > 0 || common.ports.length > 1) continue;
    const below = common.ports[0]!.some(
      ({ line, index }) => line.label?.end === index && line.label.where === 'below',
    );
    if (!below) return side;
  }
  return undefined;
}

/** Widths of a symbol, and its labels once it has a place. */
export function symbolWords(p: Placed, m: Measures, slots: readonly Slot[]) {
  const { spec } = p;
  const beside = besideSide(p, slots, m);
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
  const head = beside === undefined ? Math.max(...heads.map((line) => line.width)) : 0;
  const reach = beside === undefined ? 0 : Math.max(0, heads[0]!.width + CONTACT_HALF + 2 - box / 2);
  return {
    /** what its name takes beside its box, and on which side */
    beside,
    reach,
    /** width of the box */
    box,
    /** width of the widest line of words above it */
    head,
    /** width that the symbol takes between the lines at its sides */
    zone: Math.max(box, head),
    /** `x`: where words above the box begin; `row`: y of its first line */
    heads: (x: number, own: Box, row: number): Label[] => {
      if (beside === undefined) return placeHeads(p, heads, m, x, own.y);
      const [line] = heads;
      const middle = own.x + own.width / 2;
      const at = beside === 'left' ? middle - CONTACT_HALF - line!.width : middle + CONTACT_HALF;
      return placeHeads(p, [line!], m, at, row + m.labelGap + line!.height);
    },
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
  return m.brief
    ? [line([...name, ...captions])]
    : [line(name), ...captions.map((caption) => line([caption]))];
}

/** The caption of a symbol, line by line; none where its name says enough. */
export function captionLines({ spec }: Placed, m: Measures): string[] {
  if (spec.caption === '') return [];
  return m.brief ? [spec.caption] : inLines(spec.caption, m.captionLine);
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
