/** Reads a drawing in characters back: which terminals its lines join, by what a person sees and nothing else. */
import type { Box, DrawnSymbol, Label } from '../../../src/report/draw/drawing.ts';
import { columns } from '../../../src/report/wrap.ts';

/** What is on a page: its text, and where symbols stand and their terminals' marks. Conductors are not told. */
export interface Page {
  readonly lines: readonly string[];
  readonly ascii: boolean;
  readonly symbols: readonly Pick<DrawnSymbol, 'part' | 'figure' | 'box'>[];
  readonly marks: readonly Label[];
}

/** Terminals that lines join, and how thick those lines are. */
export interface Strand {
  readonly terminals: readonly string[];
  readonly weights: ReadonlySet<'light' | 'heavy'>;
}

export interface Reading {
  /** every terminal that a line leaves stands in one of them, in order of its name */
  readonly strands: readonly Strand[];
  /** lines that lead nowhere, and where, by column and line from 0 */
  readonly faults: readonly string[];
}

/** Sets of names that grow together. */
export class Joined {
  readonly #parent = new Map<string, string>();

  root(name: string): string {
    const parent = this.#parent.get(name) ?? name;
    if (parent === name) return name;
    const root = this.root(parent);
    this.#parent.set(name, root);
    return root;
  }

  join(a: string, b: string): void {
    const root = this.root(b);
    this.#parent.set(b, root);
    this.#parent.set(this.root(a), root);
  }

  /** The sets that hold any name joined so far, each in order. */
  sets(): string[][] {
    const sets = new Map<string, string[]>();
    for (const name of [...this.#parent.keys()].sort()) {
      const set = sets.get(this.root(name));
      if (set === undefined) sets.set(this.root(name), [name]);
      else set.push(name);
    }
    return [...sets.values()].sort((a, b) => (a[0]! < b[0]! ? -1 : 1));
  }
}

const N = 1;
const E = 2;
const S = 4;
const W = 8;
const STEP: Readonly<Record<number, readonly [number, number]>> = {
  [N]: [0, -1],
  [E]: [1, 0],
  [S]: [0, 1],
  [W]: [-1, 0],
};
const back = (way: number): number => (way * 4) % 15;

const LIGHT = '─│┌┐└┘├┤┬┴┼';
const HEAVY = '━┃┏┓┗┛┣┫┳┻╋';
const ARMS = [E | W, N | S, E | S, S | W, N | E, N | W, N | E | S, N | S | W, E | S | W, N | E | W, 15];
const ASCII: Readonly<Record<string, number>> = { '-': E | W, '=': E | W, '|': N | S, '#': N | S };

/** The letter of each column; the second column of a wide letter is empty. */
export function cellsOf(line: string): string[] {
  const cells: string[] = [];
  for (const letter of line) {
    const wide = columns(letter);
    if (wide === 0 && cells.length > 0) cells[cells.length - 1] += letter;
    else cells.push(letter, ...(wide === 2 ? [''] : []));
  }
  return cells;
}

/** Where a line may meet a terminal: a cell of its symbol's edge, and the way a line that comes from outside goes. */
const portKey = (x: number, y: number, way: number): string => `${x} ${y} ${way}`;

class Reader {
  readonly #cells: readonly string[][];
  readonly #boxed = new Set<string>();
  readonly #ports = new Map<string, string>();
  readonly #strands = new Joined();
  readonly #weights = new Map<string, Set<'light' | 'heavy'>>();
  readonly #seen = new Set<string>();
  readonly #faults = new Set<string>();

  constructor(private readonly page: Page) {
    this.#cells = page.lines.map(cellsOf);
    for (const { box } of page.symbols)
      for (let y = Math.floor(box.y); y < box.y + box.height; y++)
        for (let x = Math.floor(box.x); x < box.x + box.width; x++) this.#boxed.add(`${x} ${y}`);
    for (const mark of page.marks) this.#mark(mark);
    for (const { part, figure, box } of page.symbols) if (figure === 'joint') this.#joint(part, box);
  }

  read(): Reading {
    for (const [port, key] of this.#ports) {
      const [x, y, way] = port.split(' ').map(Number) as [number, number, number];
      const out = back(way);
      const [dx, dy] = STEP[out]!;
      if ((this.#arms(x + dx, y + dy) & way) !== 0) this.#follow(x + dx, y + dy, out, key);
    }
    this.#strays();
    const strands = this.#strands.sets().map((terminals) => ({
      terminals,
      weights: new Set(terminals.flatMap((t) => [...(this.#weights.get(t) ?? [])])),
    }));
    return { strands, faults: [...this.#faults] };
  }

  #letter(x: number, y: number): string {
    return this.#cells[y]?.[x] ?? ' ';
  }

  #isBoxed(x: number, y: number): boolean {
    return this.#boxed.has(`${x} ${y}`);
  }

  /** Ways in which the character of a cell goes on. */
  #arms(x: number, y: number): number {
    const letter = this.#letter(x, y);
    if (!this.page.ascii) return ARMS[Math.max(LIGHT.indexOf(letter), HEAVY.indexOf(letter))] ?? 0;
    if (letter !== '+') return ASCII[letter] ?? 0;
    const points = (way: number, letters: string): number => {
      const [dx, dy] = STEP[way]!;
      const near = this.#letter(x + dx, y + dy);
      return near !== '' && letters.includes(near) && !this.#isBoxed(x + dx, y + dy) ? way : 0;
    };
    return points(N, '|#+') | points(S, '|#+') | points(E, '-=') | points(W, '-=');
  }

  /** A terminal's own line meets its mark; further ones hang below it on the edge of the symbol. */
  #mark({ x, y, width, of }: Label): void {
    const line = Math.floor(y);
    const left = !this.#isBoxed(x - 1, line);
    const edge = left ? x : x + width - 1;
    this.#ports.set(portKey(edge, line, left ? E : W), of);
    this.#hanging(edge, line, left ? [E] : [W], of);
  }

  #joint(part: string, box: Box): void {
    const x = Math.floor(box.x);
    for (let y = Math.floor(box.y); y < box.y + box.height; y++) {
      if (this.#letter(x, y) !== (this.page.ascii ? 'o' : '●')) continue;
      this.#ports.set(portKey(x, y, E), part);
      this.#ports.set(portKey(x, y, W), part);
      this.#hanging(x, y, [E, W], part);
    }
  }

  #hanging(x: number, from: number, ways: readonly number[], key: string): void {
    const upright = this.page.ascii ? '|#+' : '│┤┘├└┃┫┛┣┗';
    for (let y = from + 1; this.#isBoxed(x, y); y++) {
      const letter = this.#letter(x, y);
      if (letter === '' || !upright.includes(letter)) return;
      if (letter === '+' || (this.#arms(x, y) & (E | W)) !== 0)
        for (const way of ways) this.#ports.set(portKey(x, y, way), key);
      if (!this.page.ascii && (this.#arms(x, y) & S) === 0) return;
    }
  }

  /** Goes along all lines from a cell that was entered going `way`, and joins the terminals they reach. */
  #follow(x: number, y: number, way: number, key: string): void {
    this.#strands.join(key, key);
    const open: [number, number, number][] = [[x, y, way]];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      const arms = this.#arrive(...next, key);
      if (arms === undefined) continue;
      const [cx, cy] = arms.at;
      for (const out of [N, E, S, W])
        if ((arms.arms & out) !== 0) open.push([cx + STEP[out]![0], cy + STEP[out]![1], out]);
    }
  }

  /** The cell in which a line that goes `way` goes on; undefined where it ends or was before. */
  #arrive(x: number, y: number, way: number, key: string): { at: [number, number]; arms: number } | undefined {
    const [dx, dy] = STEP[way]!;
    let blanks = 0;
    for (let [cx, cy] = [x, y]; ; cx += dx, cy += dy) {
      const letter = this.#letter(cx, cy);
      if (this.#isBoxed(cx, cy)) {
        const reached = this.#ports.get(portKey(cx, cy, way));
        if (reached === undefined) this.#fault('runs into a symbol', cx, cy);
        else this.#strands.join(key, reached);
        return undefined;
      }
      const arms = this.#arms(cx, cy);
      if ((arms & back(way)) !== 0) {
        this.#weigh(letter, key);
        if (this.#seen.has(`${cx} ${cy}`)) return undefined;
        this.#seen.add(`${cx} ${cy}`);
        return { at: [cx, cy], arms: arms & ~back(way) };
      }
      // Level lines go on behind upright ones and behind words that stand in them.
      blanks = letter === ' ' ? blanks + 1 : 0;
      const words = arms === 0 && blanks < 2 && (cx !== x || letter !== ' ');
      if (dy !== 0 || !(arms === (N | S) || words)) {
        this.#fault('ends', cx, cy);
        return undefined;
      }
    }
  }

  #weigh(letter: string, key: string): void {
    if (letter === '+') return;
    const heavy = this.page.ascii ? '=#' : HEAVY;
    const weights = this.#weights.get(key) ?? new Set();
    this.#weights.set(key, weights.add(heavy.includes(letter) ? 'heavy' : 'light'));
  }

  /** Lines outside the symbols that no terminal is joined to. */
  #strays(): void {
    const lines = this.page.ascii ? '|#' : LIGHT + HEAVY;
    this.#cells.forEach((row, y) => {
      row.forEach((letter, x) => {
        if (letter === '' || !lines.includes(letter) || this.#isBoxed(x, y) || this.#seen.has(`${x} ${y}`))
          return;
        this.#fault('belongs to no terminal', x, y);
      });
    });
  }

  #fault(what: string, x: number, y: number): void {
    this.#faults.add(`a line ${what} at ${x}, ${y}`);
  }
}

/** Follows the lines of a page, cell by cell. */
export function readBack(page: Page): Reading {
  return new Reader(page).read();
}
