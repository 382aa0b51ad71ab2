/** Marks of terminals in the symbols they belong to, so that those of symbols that are alike are told once. */
import type { Drawing, Label } from '../../draw/drawing.ts';
import { fontSize } from '../../draw/layout/measures.ts';
import { num } from '../../draw/strokes.ts';
import { xml } from '../../text/xml.ts';

const SYMBOL = /<g data-part="[^"]*" transform="translate\([^)]*\)">/g;
/** Height of the letters over the line they stand on, as a share of their size. */
const LETTERS = 0.78;

/** `svg` writes a drawing whose symbols count from their own corner, in their order; it is given one without marks. */
export function withMarksAtSymbols(drawing: Drawing, svg: (drawing: Drawing) => string): string {
  const isMark = (l: Label) => l.what === 'mark';
  const marks = new Map([...drawing.symbols.keys()].map((i) => [i, [] as Label[]] as const));
  const ofTerminal = new Map(drawing.symbols.flatMap((s, i) => s.terminals.map((t) => [t.key, i] as const)));
  const rest = drawing.labels.filter((l) => {
    const own = isMark(l) ? marks.get(ofTerminal.get(l.of) ?? -1) : undefined;
    own?.push(l);
    return own === undefined;
  });
  let place = 0;
  return svg({ ...drawing, labels: rest }).replace(SYMBOL, (open) => {
    const symbol = drawing.symbols[place];
    const texts = (marks.get(place++) ?? []).map((l) => markSvg(l, symbol?.box ?? { x: 0, y: 0 }));
    return `${open}${texts.join('')}`;
  });
}

function markSvg(label: Label, { x, y }: { readonly x: number; readonly y: number }): string {
  const size = fontSize('mark');
  const line = label.y + (label.height - size) / 2 + size * LETTERS;
  return `<text font-size="${size}" fill="currentColor" stroke="none" x="${num(label.x + 1 - x)}" y="${num(line - y)}">${xml(label.text)}</text>`;
}
