/** Lines and words on cells, as a terminal shows them. */
import { columns } from '../text/wrap.ts';
import type { Drawing, DrawnCore, Point } from './drawing.ts';

const N = 1;
const E = 2;
const S = 4;
const W = 8;

const LIGHT: Readonly<Record<number, string>> = {
  [N]: '│',
  [S]: '│',
  [N | S]: '│',
  [E]: '─',
  [W]: '─',
  [E | W]: '─',
  [S | E]: '┌',
  [S | W]: '┐',
  [N | E]: '└',
  [N | W]: '┘',
  [N | S | E]: '├',
  [N | S | W]: '┤',
  [S | E | W]: '┬',
  [N | E | W]: '┴',
  [N | E | S | W]: '┼',
};
const HEAVY: Readonly<Record<string, string>> = {
  '│': '┃',
  '─': '━',
  '┌': '┏',
  '┐': '┓',
  '└': '┗',
  '┘': '┛',
  '├': '┣',
  '┤': '┫',
  '┬': '┳',
  '┴': '┻',
  '┼': '╋',
};
const PLAIN: Readonly<Record<string, string>> = { '│': '|', '─': '-', '┃': '#', '━': '=', '●': 'o' };

/** One cell's piece of conductor: by whom it is, and where it goes on. */
interface Piece {
  readonly owner: string;
  bits: number;
  readonly live: boolean;
}

/** A page of cells. Words lie over lines; where lines only cross, the upright one is shown. */
export class Grid {
  readonly #rows: string[][];
  readonly #pieces = new Map<number, Piece[]>();

  constructor(
    private readonly width: number,
    private readonly height: number,
  ) {
    this.#rows = Array.from({ length: height }, () => []);
  }

  /** Writes a text from a cell on; a letter that is two columns wide takes two cells. */
  write(x: number, y: number, text: string): void {
    const row = this.#rows[y]!;
    let at = x;
    for (const letter of text) {
      const wide = columns(letter);
      // Marks that sit on the letter before them have no cell of their own.
      if (wide === 0 && at > x) {
        row[at - 1] += letter;
        continue;
      }
      row[at] = letter;
      if (wide === 2) row[at + 1] = '';
      at += wide;
    }
  }

  core({ id, path }: DrawnCore, live: boolean): void {
    for (let i = 1; i < path.length; i++) {
      const a = path[i - 1]!;
      const b = path[i]!;
      if (a.y === b.y) this.#across(a, b, id, live);
      else this.#upright(a, b, id, live);
    }
  }

  /** Joins the conductors that meet in a cell; without this they only cross, or lie on one another. */
  join({ x, y }: Point): void {
    const key = Math.floor(y) * this.width + Math.floor(x);
    const pieces = this.#pieces.get(key) ?? [];
    const bits = pieces.reduce((sum, p) => sum | p.bits, 0);
    this.#pieces.set(key, [{ owner: '', bits, live: pieces.some((p) => p.live) }]);
  }

  /** Horizontal piece; an end on the edge of a box takes the cell beside it, not the one within. */
  #across(a: Point, b: Point, owner: string, live: boolean): void {
    const y = Math.floor(a.y);
    const [from, to] = a.x < b.x ? [a.x, b.x] : [b.x, a.x];
    const begin = Math.floor(from);
    const end = Number.isInteger(to) ? to - 1 : Math.floor(to);
    for (let x = begin; x <= end; x++) {
      const bits = (x > begin || Number.isInteger(from) ? W : 0) | (x < end || Number.isInteger(to) ? E : 0);
      this.#add(x, y, owner, bits, live);
    }
  }

  #upright(a: Point, b: Point, owner: string, live: boolean): void {
    const x = Math.floor(a.x);
    const [top, bottom] = [Math.floor(Math.min(a.y, b.y)), Math.floor(Math.max(a.y, b.y))];
    for (let y = top; y <= bottom; y++)
      this.#add(x, y, owner, (y > top ? N : 0) | (y < bottom ? S : 0), live);
  }

  #add(x: number, y: number, owner: string, bits: number, live: boolean): void {
    const key = y * this.width + x;
    const pieces = this.#pieces.get(key);
    const own = pieces?.find((p) => p.owner === owner);
    if (own) own.bits |= bits;
    else if (pieces) pieces.push({ owner, bits, live });
    else this.#pieces.set(key, [{ owner, bits, live }]);
  }

  /** The lines of text, without blanks at their ends. */
  lines(ascii: boolean): string[] {
    for (const [key, pieces] of this.#pieces) {
      const y = Math.floor(key / this.width);
      const x = key % this.width;
      if (this.#rows[y]![x] !== undefined) continue;
      const { bits } = uppermost(pieces);
      const light = LIGHT[bits] ?? ' ';
      this.#rows[y]![x] = pieces.some((p) => p.bits === bits && p.live) ? HEAVY[light]! : light;
    }
    return this.#rows.slice(0, this.height).map((row) => {
      let text = '';
      for (let x = 0; x < row.length; x++) text += row[x] ?? ' ';
      text = text.trimEnd();
      return ascii ? plain(text) : text;
    });
  }
}

/** What turns lies over what only passes, and the upright line over the level one. */
function uppermost(pieces: readonly Piece[]): Piece {
  return pieces.find((p) => p.bits !== (E | W)) ?? pieces[0]!;
}

/** Lines in ASCII: corners and joins are `+`; other letters stay as they are. */
function plain(text: string): string {
  return text.replace(/[─-╿●]/gu, (c) => PLAIN[c] ?? '+');
}

/** A page for a drawing in columns and lines, with its conductors on it. */
export function gridOf(drawing: Drawing, live: (core: DrawnCore) => boolean): Grid {
  const grid = new Grid(Math.ceil(drawing.width), Math.ceil(drawing.height));
  for (const core of drawing.cores) grid.core(core, live(core));
  for (const dot of drawing.dots) grid.join(dot);
  return grid;
}
