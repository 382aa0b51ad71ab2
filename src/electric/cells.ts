/** A network cut into cells: pieces that meet the rest at few nodes, each with at most one thing in it that moves. */

/** A two-terminal element; `key` names what may change it, and elements of one key may lie in one cell. */
export interface CellEdge {
  readonly a: number;
  readonly b: number;
  readonly key: number | undefined;
}

/** Elements that hang together and meet the rest at `boundary` alone. */
export interface Cell {
  readonly boundary: readonly number[];
  /** places in the list of elements */
  readonly edges: readonly number[];
  readonly key: number | undefined;
}

/** A cell may meet the rest at so many nodes while it grows. */
const MOST_ENDS = 3;

/** A cell with what it was made of. */
interface Grown {
  readonly boundary: readonly number[];
  readonly key: number | undefined;
  readonly of: readonly Grown[];
  readonly edge: number | undefined;
}

/**
 * Nodes are taken out one by one, as in the elimination of a matrix, and the cells round each become one, while none
 * gets two keys or more than three ends; one that has three in the end is taken apart again, since those were only on the
 * way to two. Nodes in `fixed` stay.
 */
export function cellsOf(edges: readonly CellEdge[], fixed: ReadonlySet<number>): Cell[] {
  const growing = new Growing(edges, fixed);
  for (let before = -1; before !== growing.taken; ) {
    before = growing.taken;
    growing.sweep(2);
    growing.sweep(MOST_ENDS);
  }
  return growing.cells();
}

class Growing {
  taken = 0;
  private readonly made: (Grown | undefined)[];
  private readonly at = new Map<number, Set<number>>();

  constructor(
    edges: readonly CellEdge[],
    private readonly fixed: ReadonlySet<number>,
  ) {
    this.made = edges.map(({ a, b, key }, i) => ({ boundary: a === b ? [a] : [a, b], key, of: [], edge: i }));
    for (const [i, cell] of this.made.entries()) this.hang(cell!, i);
  }

  private hang(cell: Grown, index: number): void {
    for (const node of cell.boundary) {
      const known = this.at.get(node);
      if (known) known.add(index);
      else this.at.set(node, new Set([index]));
    }
  }

  sweep(most: number): void {
    const queue = [...this.at.keys()];
    for (let node = queue.pop(); node !== undefined; node = queue.pop())
      if (!this.fixed.has(node)) queue.push(...this.takeOut(node, most));
  }

  /** The ends of the new cell; none where the node stays. */
  private takeOut(node: number, most: number): readonly number[] {
    const around = this.at.get(node);
    if (!around || around.size > 12) return [];
    const cells = [...around].map((i) => this.made[i]!);
    const keys = new Set(cells.flatMap((c) => (c.key === undefined ? [] : [c.key])));
    const boundary = [...new Set(cells.flatMap((c) => c.boundary))].filter((n) => n !== node);
    // A piece of plain wire with three ends would only hide where one cell ends and the next begins.
    if (keys.size > 1 || boundary.length > (keys.size === 0 ? 2 : most)) return [];
    for (const i of around) {
      for (const n of this.made[i]!.boundary) if (n !== node) this.at.get(n)!.delete(i);
      this.made[i] = undefined;
    }
    this.at.delete(node);
    this.taken++;
    const made: Grown = { boundary, key: [...keys][0], of: cells, edge: undefined };
    this.made.push(made);
    this.hang(made, this.made.length - 1);
    return boundary;
  }

  cells(): Cell[] {
    const left = this.made.filter((c) => c !== undefined);
    const found: Cell[] = [];
    for (let cell = left.pop(); cell !== undefined; cell = left.pop()) {
      if (cell.boundary.length > 2) left.push(...cell.of);
      else found.push({ boundary: cell.boundary, key: cell.key, edges: edgesOf(cell) });
    }
    return found;
  }
}

function edgesOf(cell: Grown): number[] {
  const found: number[] = [];
  const left = [cell];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    if (next.edge !== undefined) found.push(next.edge);
    left.push(...next.of);
  }
  return found;
}
