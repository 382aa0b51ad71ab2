/** A drawing in the characters of a terminal. Contacts and coils are the character symbols of IEC 61131-3. */
import { printable, ascii as toAscii } from '../text/escape.ts';
import { columns } from '../text/wrap.ts';
import { FIGURE, figureOf } from './character-figures.ts';
import { type Grid, gridOf } from './character-grid.ts';
import type { Shown } from './current-shown.ts';
import type { Drawing, DrawnSymbol, DrawnTerminal } from './drawing.ts';

/** Letters of which a colour's name could draw a conductor that is not there. */
const LINES = /[─-╿]/gu;

/**
 * The drawing as lines of text, no wider than the drawing is. `ascii` keeps to plain letters, `-`, `|` and `+`.
 * The drawing must have been laid out with `CHARACTERS`.
 */
export function drawCharacters(drawing: Drawing, shown: Shown, ascii: boolean): string[] {
  const grid = gridOf(drawing, (core) => shown.live(core));
  for (const symbol of drawing.symbols) drawSymbol(grid, symbol, shown);
  for (const label of drawing.labels) {
    const text = printable(label.text).replace(LINES, '?');
    grid.write(Math.floor(label.x), Math.floor(label.y), ascii ? cut(toAscii(text), label.width) : text);
  }
  if (drawing.barrier !== undefined) drawBarrier(grid, drawing, Math.floor(drawing.barrier));
  return grid.lines(ascii);
}

/** Spelling a sign out may make a text longer than its place. */
function cut(text: string, width: number): string {
  return columns(text) <= width ? text : `${text.slice(0, width - 1)}~`;
}

/** A wavy line, open where conductors pass through. */
function drawBarrier(grid: Grid, drawing: Drawing, y: number): void {
  const passes = new Set(
    drawing.cores.flatMap((c) =>
      c.path.flatMap((p, i) => {
        const q = c.path[i + 1];
        if (q === undefined || p.x !== q.x) return [];
        const [top, bottom] = [Math.min(p.y, q.y), Math.max(p.y, q.y)];
        return top < y && bottom > y ? [Math.floor(p.x)] : [];
      }),
    ),
  );
  for (let x = 0; x < drawing.width; x++) if (!passes.has(x)) grid.write(x, y, '~');
}

function drawSymbol(grid: Grid, symbol: DrawnSymbol, shown: Shown): void {
  if (symbol.figure === 'joint') {
    const t = symbol.terminals[0]!;
    const x = Math.floor(symbol.box.x);
    const first = Math.floor(t.ports[0]!.y);
    for (const side of ['left', 'right'] as const) {
      const ports = t.ports.filter((p) => p.x > symbol.box.x === (side === 'right'));
      if (ports.length > 0) bridgePorts(grid, { ...t, side, ports: [t.ports[0]!, ...ports] }, x);
    }
    grid.write(x, first, '●');
    return;
  }
  const left = Math.max(0, ...symbol.terminals.filter((t) => t.side === 'left').map((t) => columns(t.mark)));
  const start = symbol.box.x + left;
  for (const t of symbol.terminals) {
    const y = Math.floor(t.ports[0]!.y);
    const width = columns(t.mark);
    const edge = symbol.box.x + symbol.box.width;
    if (t.side === 'left') fill(grid, symbol.box.x + width, start, y);
    else fill(grid, start + FIGURE, edge - width, y);
    bridgePorts(grid, t, t.side === 'left' ? symbol.box.x : edge - 1);
  }
  for (const { y, x, text } of figureOf(symbol, shown)) grid.write(start + x, y, text);
}

function fill(grid: Grid, from: number, to: number, y: number): void {
  if (to > from) grid.write(from, y, '─'.repeat(to - from));
}

/** Further lines of a terminal hang below its own. */
function bridgePorts(grid: Grid, t: DrawnTerminal, x: number): void {
  const first = Math.floor(t.ports[0]!.y);
  const rows = t.ports.slice(1).map((p) => Math.floor(p.y));
  const last = rows.at(-1) ?? first;
  for (let y = first + 1; y <= last; y++) {
    const turns = rows.includes(y);
    const through = y < last;
    const here = t.side === 'left' ? (through ? '┤' : '┘') : through ? '├' : '└';
    grid.write(x, y, turns ? here : '│');
  }
}
