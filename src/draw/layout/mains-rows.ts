/**
 * Mains from the plug on the left to what is fed on the right: each conductor in a row of its own, straight where
 * nothing lies in it, and the contacts where they break it.
 */

import { traitsOf } from '../figure-traits.ts';
import { type Block, blockOf, type Item, piecesOf } from './blocks.ts';
import type { LadderPart } from './ladder.ts';
import type { Points } from './points.ts';
import { type Seat, Setter, type Setting, widthOf } from './set-blocks.ts';
import type { TerminalSpec } from './symbol-specs.ts';

/** A symbol that is fed and leads nowhere, with what lies in line before each of its terminals. */
interface Fed {
  readonly item: Item;
  readonly rows: readonly { readonly point: number | undefined; readonly block: Block | undefined }[];
}

/** A mains piece with its plugs. */
export function mainsRowsOf(items: readonly Item[], points: Points, setting: Setting): LadderPart {
  const plugs = items.filter((item) => traitsOf(item.ranked.spec.figure).source);
  const feeds = new Set(plugs.flatMap((item) => [...item.left, ...item.right]));
  const sinks = items.filter((item) => !plugs.includes(item) && isSink(item));
  const ends = new Set(sinks.flatMap((item) => item.left).filter((p) => !feeds.has(p)));
  const isEnd = (p: number) => feeds.has(p) || ends.has(p);
  const pieces = piecesOf(
    items.filter((item) => !plugs.includes(item) && !sinks.includes(item)),
    isEnd,
  );
  const taken = new Set<readonly Item[]>();
  const fed = sinks.map((item): Fed => {
    const rows = byRow(item).map((t) => {
      const [point] = points.of(t.key);
      const own = pieces.filter(
        (piece) => !taken.has(piece) && point !== undefined && leadsTo(piece, point, feeds),
      );
      for (const piece of own) taken.add(piece);
      const block =
        point === undefined ? undefined : blockOf(own.flat(), { left: feeds, right: new Set([point]) });
      return { point, block };
    });
    return { item, rows };
  });
  const rest = pieces.filter((piece) => !taken.has(piece));
  const rungs = rest.map((piece) => rungOf(piece, feeds, points, plugs));
  const between = fed.flatMap(({ rows }) => rows.map(({ block }) => (block ? widthOf(block, setting) : 0)));
  const beside = rungs.map(({ block }) => widthOf(block, setting));
  return {
    width: 1 + Math.max(1, ...between.map((width) => width + 1), ...beside),
    set: (columns, top) => new Rows({ plugs, points, feeds, ends }, setting, columns, top).set(fed, rungs),
  };
}

/** Fed, with all its terminals on the left. */
function isSink(item: Item): boolean {
  const { spec } = item.ranked;
  return traitsOf(spec.figure).fed === 'always' && spec.terminals.every((t) => t.side === 'left');
}

function byRow({ ranked }: Item): TerminalSpec[] {
  return [...ranked.spec.terminals].sort((a, b) => a.row - b.row);
}

/** Whether a piece lies between the feed and a point. */
function leadsTo(piece: readonly Item[], point: number, feeds: ReadonlySet<number>): boolean {
  const own = piece.flatMap((item) => [...item.left, ...item.right]);
  return !feeds.has(point) && own.includes(point);
}

interface Rung {
  readonly block: Block;
  readonly right: ReadonlySet<number>;
}

/** What hangs between two conductors of the feed: from the one it is fed by to the one it returns by. */
function rungOf(
  piece: readonly Item[],
  feeds: ReadonlySet<number>,
  points: Points,
  plugs: readonly Item[],
): Rung {
  const names = new Map<number, string>();
  for (const { ranked } of plugs)
    for (const t of ranked.spec.terminals) for (const p of points.of(t.key)) names.set(p, t.name);
  const own = [...new Set(piece.flatMap((item) => [...item.left, ...item.right]))].filter((p) =>
    feeds.has(p),
  );
  const order = (p: number) => ['PE', 'N', 'L3', 'L2'].indexOf(names.get(p) ?? '');
  const back = own.length < 2 ? [] : [...own].sort((a, b) => rank(order(a)) - rank(order(b))).slice(0, 1);
  const right = new Set(back);
  const left = new Set([...feeds].filter((p) => !right.has(p)));
  return { block: blockOf(piece, { left, right })!, right };
}

const rank = (index: number): number => (index < 0 ? 9 : index);

interface Ends {
  readonly plugs: readonly Item[];
  readonly points: Points;
  /** points of the plugs */
  readonly feeds: ReadonlySet<number>;
  /** points of what is fed that are none of the plugs' */
  readonly ends: ReadonlySet<number>;
}

/** The rows of a mains piece on the sheet. */
class Rows {
  readonly #setter: Setter;
  readonly #rails = new Map<number, number>();
  #band: number;

  constructor(
    private readonly of: Ends,
    setting: Setting,
    private readonly columns: number,
    private readonly top: number,
  ) {
    this.#setter = new Setter(setting);
    this.#band = top;
    for (const p of of.feeds) this.#rails.set(p, 1);
    for (const p of of.ends) this.#rails.set(p, Math.max(2, columns - 1));
  }

  set(fed: readonly Fed[], rungs: readonly Rung[]): { seats: readonly Seat[]; bottom: number } {
    const level = new Map<number, number>();
    for (const one of fed) this.#fed(one, level);
    this.#band = Math.max(this.#band, this.#plugs(level));
    for (const { block, right } of rungs) {
      const rails = new Map(this.#rails);
      for (const p of right) rails.set(p, this.columns);
      this.#band = this.#setter.set(block, { left: 1, right: this.columns }, rails, this.#band);
    }
    return { seats: this.#setter.seats, bottom: this.#band };
  }

  /** What is fed in the last column, each terminal level with what lies before it; below it where there is no room. */
  #fed({ item, rows }: Fed, level: Map<number, number>): void {
    const beside = this.columns > 2;
    const span = { left: 1, right: Math.max(2, this.columns - 1) };
    const bands: number[] = [];
    for (const { point, block } of rows) {
      const band = this.#band;
      for (const p of [point, ...(block === undefined ? [] : leftOf(block))])
        if (p !== undefined && !level.has(p)) level.set(p, band);
      const below = block === undefined ? band : this.#setter.set(block, span, this.#rails, band);
      this.#band = beside ? Math.max(band + 1, below) : below;
      if (beside) bands.push(band);
    }
    while (bands.length < Math.max(1, rows.length)) bands.push(this.#band++);
    this.#setter.seats.push({ item, column: this.columns, bands, channels: this.#rails });
  }

  /** Plugs in the first column, their pins level with what they feed where that keeps their order. */
  #plugs(level: ReadonlyMap<number, number>): number {
    let band = this.top;
    for (const item of this.of.plugs) {
      const bands = byRow(item).map((t) => {
        const [point] = this.of.points.of(t.key);
        const wanted = point === undefined ? undefined : level.get(point);
        band = Math.max(band, wanted ?? band);
        return band++;
      });
      if (bands.length === 0) bands.push(band++);
      this.#setter.seats.push({ item, column: 1, bands, channels: this.#rails });
    }
    return band;
  }
}

/** The points at the left ends of a block. */
function leftOf(block: Block): number[] {
  switch (block.kind) {
    case 'one':
      return [...block.item.left];
    case 'series':
      return leftOf(block.parts[0]!);
    case 'parallel':
      return block.parts.flatMap(leftOf);
    case 'web':
      return block.items.flatMap((item) => item.left);
  }
}
