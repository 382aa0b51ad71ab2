/** A drawing in the characters of a terminal. Contacts and coils are the character symbols of IEC 61131-3. */
import { printable, ascii as toAscii } from '../text/escape.ts';
import { columns } from '../text/wrap.ts';
import { type Grid, gridOf } from './character-grid.ts';
import type { Shown } from './current-shown.ts';
import type { Drawing, DrawnSymbol, DrawnTerminal } from './drawing.ts';

/** Columns of a figure between the marks of its terminals. */
const FIGURE = 7;

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
    t.ports.forEach((p, i) => {
      grid.write(x, Math.floor(p.y), i === 0 ? '●' : '│');
    });
    bridgePorts(grid, t, x);
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

interface Piece {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** The figure's characters, seven columns to a line, `x` from its left. */
function figureOf(symbol: DrawnSymbol, shown: Shown): Piece[] {
  const lines = [...symbol.terminals].sort((a, b) => a.ports[0]!.y - b.ports[0]!.y);
  const left = lines.filter((t) => t.side === 'left');
  const right = lines.filter((t) => t.side === 'right');
  const row = (t: DrawnTerminal) => Math.floor(t.ports[0]!.y);
  const ways = shown.waysOf(symbol);
  if (ways.length > 0) return contactFigure(symbol, shown);
  const sides = left.length > 0 && right.length > 0;
  if (!sides) {
    const words = ONE_SIDED[symbol.figure] ?? ['───┤   ', '   ├───'];
    return lines.map((t, i) => {
      const text = t.side === 'left' ? words[0] : words[1];
      const sign = i === 0 ? SIGNS[symbol.figure] : undefined;
      return { x: 0, y: row(t), text: sign === undefined ? text : text.slice(0, 5) + sign + text.slice(6) };
    });
  }
  const across = TWO_SIDED[symbol.figure] ?? '─┤   ├─';
  return mergeRows(left, right).map(({ y, l, r }, i) => {
    const text = i === 0 ? (symbol.figure === 'source' ? sourceSign(shown, symbol) : across) : '─┤   ├─';
    const turned = symbol.mirrored ? reversed(text) : text;
    return { x: 0, y, text: (l ? turned.slice(0, 3) : '   ') + turned[3] + (r ? turned.slice(4) : '   ') };
  });
}

function mergeRows(left: readonly DrawnTerminal[], right: readonly DrawnTerminal[]) {
  const rows = new Map<number, { y: number; l: boolean; r: boolean }>();
  for (const [list, side] of [
    [left, 'l'],
    [right, 'r'],
  ] as const)
    for (const t of list) {
      const y = Math.floor(t.ports[0]!.y);
      const row = rows.get(y) ?? { y, l: false, r: false };
      row[side] = true;
      rows.set(y, row);
    }
  return [...rows.values()].sort((a, b) => a.y - b.y);
}

const sourceSign = (shown: Shown, symbol: DrawnSymbol): string =>
  shown.isAc(symbol.part) ? '──(~)──' : '──(=)──';

const TWO_SIDED: Partial<Record<DrawnSymbol['figure'], string>> = {
  coil: '──( )──',
  timer: '──(T)──',
  diode: '──>|───',
  led: '──>|*──',
  resistor: '─[   ]─',
  lamp: '──(X)──',
  fuse: '──[─]──',
  board: '─┤   ├─',
};
const ONE_SIDED: Partial<Record<DrawnSymbol['figure'], readonly [string, string]>> = {
  plug: ['───)   ', '   )───'],
  outlet: ['───(   ', '   (───'],
  box: ['──[ ]  ', '  [ ]──'],
};
const SIGNS: Partial<Record<DrawnSymbol['figure'], string>> = {
  motor: 'M',
  load: 'X',
  primary: '~',
  box: '=',
};

const TURNED: Readonly<Record<string, string>> = { '>': '<', '(': ')', ')': '(', '[': ']', ']': '[' };

function reversed(text: string): string {
  return [...text]
    .reverse()
    .map((c) => TURNED[c] ?? c)
    .join('');
}

/** Contacts of a changeover lie below each other and share their common. */
function contactFigure(symbol: DrawnSymbol, shown: Shown): Piece[] {
  const byName = new Map(symbol.terminals.map((t) => [t.key, t]));
  const pieces: Piece[] = [];
  const row = (t: DrawnTerminal) => Math.floor(t.ports[0]!.y);
  const fans = new Map<DrawnTerminal, number[]>();
  for (const way of shown.waysOf(symbol)) {
    const common = byName.get(way.common);
    const other = byName.get(way.other);
    if (common === undefined || other === undefined) continue;
    const sign = way.sign === 'break' ? '/' : shown.made(way) ? '━' : ' ';
    const [open, shut] = way.sign === 'position' ? ['o', 'o'] : ['┤', '├'];
    const inner = way.sign === 'position' && shown.made(way) ? '━' : sign;
    const y = row(other);
    pieces.push({ x: 2, y, text: `${open}${inner}${shut}` });
    const commonLeft = common.side === 'left';
    pieces.push({ x: commonLeft ? 5 : 0, y, text: '──' });
    const fan = fans.get(common) ?? [];
    fan.push(y);
    fans.set(common, fan);
  }
  for (const [common, ys] of fans) {
    const x = common.side === 'left' ? 1 : 5;
    const outer = common.side === 'left' ? 0 : 6;
    const all = [...ys, row(common)];
    const [top, bottom] = [Math.min(...all), Math.max(...all)];
    for (let y = top; y <= bottom; y++) {
      const inward = ys.includes(y);
      const outward = y === row(common);
      if (outward) pieces.push({ x: outer, y, text: '─' });
      const left = common.side === 'left' ? outward : inward;
      const right = common.side === 'left' ? inward : outward;
      pieces.push({ x, y, text: joint(y > top, y < bottom, left, right) });
    }
  }
  return pieces;
}

function joint(up: boolean, down: boolean, left: boolean, right: boolean): string {
  const table = ' ─││─┐┘┤─┌└├─┬┴┼';
  const index = (left && right ? 12 : right ? 8 : left ? 4 : 0) + (up ? 2 : 0) + (down ? 1 : 0);
  if (!up && !down) return left || right ? '─' : ' ';
  return table[index]!;
}
