/** The figures of symbols in characters: contacts and coils as in IEC 61131-3. */

import { push } from '../plan/map-entries.ts';
import type { Shown } from './current-shown.ts';
import type { DrawnSymbol, DrawnTerminal, Figure } from './drawing.ts';
import type { Way } from './kinds.ts';

/** Columns of a figure between the marks of its terminals. */
export const FIGURE = 7;

/** What is drawn of a figure without contacts; a plain block where nothing is said. */
interface CharacterFigure {
  /** from side to side */
  readonly across?: string;
  /** from the left, and from the right, where all terminals are on one side */
  readonly oneSided?: readonly [string, string];
  /** letter in the block at its first terminal */
  readonly sign?: string;
}

const BLOCK = { across: '─┤   ├─', oneSided: ['───┤   ', '   ├───'] } as const;

const FIGURES: Readonly<Record<Figure, CharacterFigure>> = {
  source: {},
  primary: { sign: '~' },
  gate: {},
  switch: {},
  button: {},
  cutout: {},
  selector: {},
  pole: {},
  'static-pole': {},
  coil: { across: '──( )──' },
  timer: { across: '──(T)──' },
  board: {},
  diode: { across: '──>|───' },
  led: { across: '──>|*──' },
  resistor: { across: '─[   ]─' },
  lamp: { across: '──(X)──' },
  fuse: { across: '──[─]──' },
  joint: {},
  plug: { oneSided: ['───)   ', '   )───'] },
  outlet: { oneSided: ['───(   ', '   (───'] },
  motor: { sign: 'M' },
  load: { sign: 'X' },
  box: { oneSided: ['──[ ]  ', '  [ ]──'], sign: '=' },
};

/** Some characters of a figure, `x` columns from its left, on line `y` of the drawing. */
interface Piece {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** The figure's characters, seven columns to a line. */
export function figureOf(symbol: DrawnSymbol, shown: Shown): Piece[] {
  if (shown.waysOf(symbol).length > 0) return contactFigure(symbol, shown);
  const left = symbol.terminals.filter((t) => t.side === 'left');
  const right = symbol.terminals.filter((t) => t.side === 'right');
  return left.length > 0 && right.length > 0 ? twoSided(symbol, left, right, shown) : oneSided(symbol);
}

const rowOf = (t: DrawnTerminal): number => Math.floor(t.ports[0]!.y);

function oneSided(symbol: DrawnSymbol): Piece[] {
  const { oneSided: [left, right] = BLOCK.oneSided, sign } = FIGURES[symbol.figure];
  const lines = [...symbol.terminals].sort((a, b) => a.ports[0]!.y - b.ports[0]!.y);
  return lines.map((t, i) => {
    const text = t.side === 'left' ? left : right;
    const signed = i === 0 && sign !== undefined;
    return { x: 0, y: rowOf(t), text: signed ? text.slice(0, 5) + sign + text.slice(6) : text };
  });
}

function twoSided(
  symbol: DrawnSymbol,
  left: readonly DrawnTerminal[],
  right: readonly DrawnTerminal[],
  shown: Shown,
): Piece[] {
  const own = FIGURES[symbol.figure].across ?? BLOCK.across;
  const across = symbol.figure === 'source' ? sourceSign(shown, symbol) : own;
  return mergeRows(left, right).map(({ y, l, r }, i) => {
    const text = i === 0 ? across : BLOCK.across;
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

const TURNED: Readonly<Record<string, string>> = { '>': '<', '(': ')', ')': '(', '[': ']', ']': '[' };

function reversed(text: string): string {
  return [...text]
    .reverse()
    .map((c) => TURNED[c] ?? c)
    .join('');
}

/** Contacts of a changeover lie below each other and share their common. */
function contactFigure(symbol: DrawnSymbol, shown: Shown): Piece[] {
  const byKey = new Map(symbol.terminals.map((t) => [t.key, t]));
  const pieces: Piece[] = [];
  const fans = new Map<DrawnTerminal, number[]>();
  for (const way of shown.waysOf(symbol)) {
    const common = byKey.get(way.common);
    const other = byKey.get(way.other);
    if (common === undefined || other === undefined) continue;
    const y = rowOf(other);
    pieces.push({ x: 2, y, text: wayText(way, shown.made(way)) });
    pieces.push({ x: common.side === 'left' ? 5 : 0, y, text: '──' });
    push(fans, common, y);
  }
  return [...pieces, ...[...fans].flatMap(([common, ys]) => fanFrom(common, ys))];
}

function wayText({ sign }: Way, made: boolean): string {
  if (sign === 'position') return made ? 'o━o' : 'o o';
  return sign === 'break' ? '┤/├' : made ? '┤━├' : '┤ ├';
}

/** The upright line from a common terminal to the rows of its contacts. */
function fanFrom(common: DrawnTerminal, ys: readonly number[]): Piece[] {
  const pieces: Piece[] = [];
  const own = rowOf(common);
  const onLeft = common.side === 'left';
  const [top, bottom] = [Math.min(...ys, own), Math.max(...ys, own)];
  for (let y = top; y <= bottom; y++) {
    const inward = ys.includes(y);
    const outward = y === own;
    if (outward) pieces.push({ x: onLeft ? 0 : 6, y, text: '─' });
    const [left, right] = onLeft ? [outward, inward] : [inward, outward];
    pieces.push({ x: onLeft ? 1 : 5, y, text: joint(y > top, y < bottom, left, right) });
  }
  return pieces;
}

function joint(up: boolean, down: boolean, left: boolean, right: boolean): string {
  const table = ' ─││─┐┘┤─┌└├─┬┴┼';
  const index = (left && right ? 12 : right ? 8 : left ? 4 : 0) + (up ? 2 : 0) + (down ? 1 : 0);
  if (!up && !down) return left || right ? '─' : ' ';
  return table[index]!;
}
