/** Reads a drawing in characters back: which terminals its lines join, by what a person sees and nothing else. */
import type { Box, Label } from '../../src/draw/drawing.ts';
import { back, Cells, E, N, type Page, S, stepOf, W } from './read-back-page.ts';

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

/** A cell of a symbol's edge at which a line ends that goes `way`. */
interface Port {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly way: number;
}

class Reader {
  readonly #cells: Cells;
  readonly #ports = new Map<string, Port>();
  readonly #strands = new Joined();
  readonly #weights = new Map<string, Set<'light' | 'heavy'>>();
  readonly #seen: Uint8Array;
  readonly #faults = new Set<string>();

  constructor(page: Page) {
    this.#cells = new Cells(page);
    this.#seen = new Uint8Array(this.#cells.width * this.#cells.height);
    for (const mark of page.marks) this.#mark(mark);
    for (const { part, figure, box } of page.symbols) if (figure === 'joint') this.#joint(part, box);
  }

  read(): Reading {
    for (const { key, x, y, way } of this.#ports.values()) {
      const out = back(way);
      const [dx, dy] = stepOf(out);
      if ((this.#cells.arms(x + dx, y + dy) & way) !== 0) this.#follow(x + dx, y + dy, out, key);
    }
    this.#strays();
    const strands = this.#strands.sets().map((terminals) => ({
      terminals,
      weights: new Set(terminals.flatMap((t) => [...(this.#weights.get(t) ?? [])])),
    }));
    return { strands, faults: [...this.#faults] };
  }

  #port(x: number, y: number, way: number, key: string): void {
    this.#ports.set(`${x} ${y} ${way}`, { key, x, y, way });
  }

  /** A terminal's own line meets its mark; further ones hang below it on the edge of the symbol. */
  #mark({ x, y, width, of }: Label): void {
    const line = Math.floor(y);
    const left = !this.#cells.boxed(x - 1, line);
    const edge = left ? x : x + width - 1;
    this.#port(edge, line, left ? E : W, of);
    this.#hanging(edge, line, left ? [E] : [W], of);
  }

  #joint(part: string, box: Box): void {
    const x = Math.floor(box.x);
    for (let y = Math.floor(box.y); y < box.y + box.height; y++) {
      if (this.#cells.letter(x, y) !== (this.#cells.ascii ? 'o' : '●')) continue;
      for (const way of [E, W]) this.#port(x, y, way, part);
      this.#hanging(x, y, [E, W], part);
    }
  }

  #hanging(x: number, from: number, ways: readonly number[], key: string): void {
    for (let y = from + 1; this.#cells.boxed(x, y); y++) {
      const corner = this.#cells.letter(x, y) === '+';
      const arms = this.#cells.arms(x, y);
      if (!corner && (arms & N) === 0) return;
      if (corner || (arms & (E | W)) !== 0) for (const way of ways) this.#port(x, y, way, key);
      if (!corner && (arms & S) === 0) return;
    }
  }

  /** Goes along all lines from a cell that was entered going `way`, and joins the terminals they reach. */
  #follow(x: number, y: number, way: number, key: string): void {
    this.#strands.join(key, key);
    const open: [number, number, number][] = [[x, y, way]];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      const cell = this.#arrive(...next, key);
      if (cell === undefined) continue;
      for (const out of [N, E, S, W]) {
        const [dx, dy] = stepOf(out);
        if ((cell.arms & out) !== 0) open.push([cell.x + dx, cell.y + dy, out]);
      }
    }
  }

  /** The cell in which a line that goes `way` goes on, with its other arms; undefined where it ends or was before. */
  #arrive(fromX: number, fromY: number, way: number, key: string) {
    const [dx, dy] = stepOf(way);
    let blanks = 0;
    let lettered = false;
    for (let [x, y] = [fromX, fromY]; ; x += dx, y += dy) {
      if (this.#cells.boxed(x, y)) {
        const port = this.#ports.get(`${x} ${y} ${way}`);
        if (port === undefined) this.#fault('runs into a symbol', x, y);
        else this.#strands.join(key, port.key);
        return undefined;
      }
      const arms = this.#cells.arms(x, y);
      if ((arms & back(way)) !== 0)
        return this.#enter(x, y, key) ? { x, y, arms: arms & ~back(way) } : undefined;
      // Level lines go on behind upright ones and behind words that stand in them.
      const letter = this.#cells.letter(x, y);
      blanks = letter === ' ' ? blanks + 1 : 0;
      lettered ||= arms === 0 && !' -'.includes(letter);
      const words = arms === 0 && lettered && blanks < 2;
      if (dy !== 0 || !(arms === (N | S) || words)) {
        this.#fault('ends', x, y);
        return undefined;
      }
    }
  }

  /** False where a line was followed before. */
  #enter(x: number, y: number, key: string): boolean {
    const weight = this.#cells.weight(x, y);
    const weights = this.#weights.get(key) ?? new Set();
    if (weight !== undefined) this.#weights.set(key, weights.add(weight));
    const number = this.#cells.number(x, y);
    if (this.#seen[number] === 1) return false;
    this.#seen[number] = 1;
    return true;
  }

  /** Lines outside the symbols that no terminal is joined to. */
  #strays(): void {
    const cells = this.#cells;
    for (let y = 0; y < cells.height; y++)
      for (let x = 0; x < cells.width; x++)
        if (cells.surelyLine(x, y) && !cells.boxed(x, y) && this.#seen[cells.number(x, y)] === 0)
          this.#fault('belongs to no terminal', x, y);
  }

  #fault(what: string, x: number, y: number): void {
    this.#faults.add(`a line ${what} at ${x}, ${y}`);
  }
}

/** Follows the lines of a page, cell by cell. */
export function readBack(page: Page): Reading {
  return new Reader(page).read();
}
