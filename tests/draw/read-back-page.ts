/** A page of text by its cells: letters, where symbols stand, and in which directions line characters go on. */
import type { DrawnSymbol, Label } from '../../src/draw/drawing.ts';
import { columns } from '../../src/text/wrap.ts';

/** What is on a page: its text, and where symbols stand and their terminals' marks. Conductors are not told. */
export interface Page {
  readonly lines: readonly string[];
  readonly ascii: boolean;
  readonly symbols: readonly Pick<DrawnSymbol, 'part' | 'figure' | 'box'>[];
  readonly marks: readonly Label[];
}

/** Directions, as bits. */
export const N = 1;
export const E = 2;
export const S = 4;
export const W = 8;

const STEP: Readonly<Record<number, readonly [number, number]>> = {
  [N]: [0, -1],
  [E]: [1, 0],
  [S]: [0, 1],
  [W]: [-1, 0],
};

/** One cell on: columns and lines. */
export const stepOf = (way: number): readonly [number, number] => STEP[way]!;
/** The direction that a line came from which goes `way`. */
export const back = (way: number): number => (way * 4) % 15;

const LIGHT = '─│┌┐└┘├┤┬┴┼';
const HEAVY = '━┃┏┓┗┛┣┫┳┻╋';
const ARMS = [E | W, N | S, E | S, S | W, N | E, N | W, N | E | S, N | S | W, E | S | W, N | E | W, 15];
const UNICODE = new Map([LIGHT, HEAVY].flatMap((set) => [...set].map((c, i) => [c, ARMS[i]!] as const)));
const ASCII = new Map([
  ['-', E | W],
  ['=', E | W],
  ['|', N | S],
  ['#', N | S],
]);

/** Stands for the second column of a letter that takes two. */
const WIDE = 'w';

const known = new Map<string, number>();

function widthOf(letter: string): number {
  const width = known.get(letter) ?? columns(letter);
  known.set(letter, width);
  return width;
}

/** The letter of each column; the second column of a wide letter is empty. */
export function cellsOf(line: string): string[] {
  const cells: string[] = [];
  for (const letter of line) {
    const wide = widthOf(letter);
    if (wide === 0 && cells.length > 0) cells[cells.length - 1] += letter;
    else cells.push(letter, ...(wide === 2 ? [''] : []));
  }
  return cells;
}

/** Cells by column and line from 0; outside the page all is blank. */
export class Cells {
  readonly ascii: boolean;
  readonly height: number;
  readonly width: number;
  readonly #letters: readonly string[][];
  readonly #boxed: Uint8Array;

  constructor({ lines, ascii, symbols }: Page) {
    this.ascii = ascii;
    this.#letters = lines.map(cellsOf);
    this.height = lines.length;
    this.width = this.#letters.reduce((most, row) => Math.max(most, row.length), 0);
    this.#boxed = new Uint8Array(this.width * this.height);
    for (const { box } of symbols)
      for (let y = Math.floor(box.y); y < Math.min(box.y + box.height, this.height); y++)
        this.#boxed.fill(1, this.number(box.x, y), this.number(Math.min(box.x + box.width, this.width), y));
  }

  number(x: number, y: number): number {
    return y * this.width + x;
  }

  #within(x: number, y: number): boolean {
    return x >= 0 && y >= 0 && x < this.width && y < this.height;
  }

  letter(x: number, y: number): string {
    return (this.#letters[y]?.[x] ?? ' ') || WIDE;
  }

  /** Whether a cell lies in a symbol. */
  boxed(x: number, y: number): boolean {
    return this.#within(x, y) && this.#boxed[this.number(x, y)] === 1;
  }

  /** Directions in which the line character of a cell goes on; 0 for words and blanks. */
  arms(x: number, y: number): number {
    const letter = this.letter(x, y);
    if (!this.ascii) return UNICODE.get(letter) ?? 0;
    // A line goes on at both its ends; a dash that does not is one in words.
    if (letter === '-' && [x - 1, x + 1].some((nx) => this.letter(nx, y) === ' ' && !this.boxed(nx, y)))
      return 0;
    if (letter !== '+') return ASCII.get(letter) ?? 0;
    return this.#points(x, y, N) | this.#points(x, y, S) | this.#points(x, y, E) | this.#points(x, y, W);
  }

  /** The direction, where the neighbour there is a line that comes from a `+`. */
  #points(x: number, y: number, way: number): number {
    const [dx, dy] = stepOf(way);
    const ny = y + dy;
    let nx = x + dx;
    // A level line that meets the side of an upright one does not end there, so it comes from behind it.
    while (dx !== 0 && '|#'.includes(this.letter(nx, ny))) nx += dx;
    return (dx === 0 ? '|#+' : '-=').includes(this.letter(nx, ny)) && !this.boxed(nx, ny) ? way : 0;
  }

  /** How thick a line is drawn; undefined where its character does not tell. */
  weight(x: number, y: number): 'light' | 'heavy' | undefined {
    const letter = this.letter(x, y);
    if (!this.ascii) return HEAVY.includes(letter) ? 'heavy' : 'light';
    // Corners have one weight in ASCII, and a dash beside a letter may be one in words.
    const beside = [x - 1, x + 1].some((nx) => /[^-+|#=]/.test(this.letter(nx, y)));
    if (letter === '+' || (letter === '-' && beside)) return undefined;
    return '=#'.includes(letter) ? 'heavy' : 'light';
  }

  /** Whether a letter is a line and nothing else. */
  surelyLine(x: number, y: number): boolean {
    const letter = this.letter(x, y);
    return this.ascii ? letter === '|' || letter === '#' : UNICODE.has(letter);
  }
}
