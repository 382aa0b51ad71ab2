/** Heights: the y of every terminal's lines, of every lane, of every symbol. */
import type { Label } from '../drawing.ts';
import { crosses, type End, type Line, type Slot, slotsBySymbol } from './conductor-lines.ts';
import type { Measures } from './measures.ts';
import type { Placed, Placement } from './place-symbols.ts';
import { pluggedHeight } from './plugged-words.ts';
import { besideSide, captionLines } from './symbol-words.ts';

export interface Rows {
  /** top of each symbol's box and its height, by id */
  readonly boxes: ReadonlyMap<string, { readonly y: number; readonly height: number }>;
  /** y of each lane, by the id of its line */
  readonly lanes: ReadonlyMap<string, number>;
  readonly barrier?: number;
  readonly height: number;
}

/** Lines of words over a symbol, the caption below the name, where there is room. */
function headWords(p: Placed, measures: Measures): Label['what'][] {
  return measures.brief ? ['name'] : ['name', ...captionLines(p, measures).map(() => 'caption' as const)];
}

/** Sets the `ys` of all slots and returns what else has a height. */
export function setRows(
  placement: Placement,
  slots: ReadonlyMap<string, readonly Slot[]>,
  lines: readonly Line[],
  measures: Measures,
): Rows {
  return new Stack(placement, slots, measures).stack(lines);
}

/** What a symbol has in one band. */
interface Share {
  readonly placed: Placed;
  readonly slots: readonly Slot[];
  readonly first: boolean;
  readonly last: boolean;
}

class Stack {
  private readonly bands: Share[][];
  private readonly own: ReadonlyMap<Placed, Slot[]>;
  private readonly boxes = new Map<string, { y: number; height: number }>();
  /** y of the first row of each symbol whose box is not closed yet */
  private readonly tops = new Map<Placed, number>();

  constructor(
    private readonly placement: Placement,
    slots: ReadonlyMap<string, readonly Slot[]>,
    private readonly measures: Measures,
  ) {
    this.bands = Array.from({ length: placement.bands }, () => []);
    this.own = slotsBySymbol(slots);
    for (const p of placement.placed) {
      const own = this.own.get(p) ?? [];
      for (let band = p.band; band <= p.lastBand; band++)
        this.bands[band]!.push({
          placed: p,
          slots: own.filter((s) => s.band === band),
          first: band === p.band,
          last: band === p.lastBand,
        });
    }
    for (const band of this.bands) band.sort((a, b) => a.placed.column - b.placed.column);
  }

  stack(lines: readonly Line[]): Rows {
    const m = this.measures;
    const packed = packLanes(lines, this.placement.bands);
    const lanes = new Map<string, number>();
    let y = m.margin;
    let barrier: number | undefined;
    for (let g = 0; g <= this.placement.bands; g++) {
      if (g === this.placement.lowBands && g > 0 && g < this.placement.bands) {
        barrier = y + m.barrierGap + m.height('barrier') + m.labelGap;
        y = barrier + m.labelGap + m.height('barrier') + m.barrierGap;
      }
      const rows = packed[g]!;
      if (rows.length > 0) y += m.laneEdge;
      for (const row of rows) {
        const at = y + (m.inLine ? m.unit / 2 : m.height('core') + m.labelGap);
        for (const line of row) lanes.set(line.id, at);
        y += m.inLine ? m.laneGap : Math.max(m.laneGap, m.height('core') + m.labelGap);
      }
      if (rows.length > 0) y += m.laneEdge;
      if (g < this.placement.bands) y = this.#band(this.bands[g]!, y) + m.bandGap;
    }
    return { boxes: this.boxes, lanes, height: y + m.margin, ...(barrier === undefined ? {} : { barrier }) };
  }

  /** Sets one band from `top` on and returns its bottom. */
  #band(band: readonly Share[], top: number): number {
    const m = this.measures;
    const first = top + Math.max(0, ...band.map((share) => this.#above(share)));
    let bottom = first;
    let offset = 0;
    let left: Share | undefined;
    for (const share of band) {
      this.#rows(share, first + offset);
      while (left !== undefined && this.#meets(left, share)) {
        offset += m.step;
        this.#rows(share, first + offset);
      }
      bottom = Math.max(bottom, this.#box(share, first + offset));
      left = share;
    }
    return bottom;
  }

  /** What a symbol needs above its first line in a band. */
  #above({ placed, slots, first }: Share): number {
    const m = this.measures;
    const label = slots.some((s) => s.inner === 0 && labelled(s.ports[0]!, 'above'));
    const words = label ? m.labelGap + m.height('core') : 0;
    if (!first) return Math.max(m.rowGap / 2, words);
    const beside = besideSide(placed, this.own.get(placed) ?? [], m) !== undefined;
    const names = beside ? 0 : headWords(placed, m).reduce((sum, what) => sum + m.height(what), 0);
    return Math.max(names + m.figure(placed.spec.figure).head, words);
  }

  #rows({ slots, placed, first: begins }: Share, first: number): void {
    const m = this.measures;
    if (begins) this.tops.set(placed, first);
    const rows = Math.max(0, ...slots.map((s) => s.inner + 1));
    let y = first;
    for (let row = 0; row < rows; row++) {
      const here = slots.filter((s) => s.inner === row);
      if (row > 0) {
        const before = slots.filter((s) => s.inner === row - 1);
        y += Math.max(
          m.closeGap,
          this.#room(
            before.flatMap((s) => s.ports.at(-1)!),
            here.flatMap((s) => s.ports[0]!),
          ),
        );
      }
      let deepest = y;
      for (const slot of here) {
        slot.ys = [];
        slot.ports.forEach((_, port) => {
          const last = slot.ys.at(-1);
          const gap =
            port === 0 ? 0 : Math.max(m.portGap, this.#room(slot.ports[port - 1]!, slot.ports[port]!));
          slot.ys.push((last ?? y) + gap);
        });
        deepest = Math.max(deepest, slot.ys.at(-1)!);
      }
      y = deepest;
    }
  }

  /** Between two lines, of which the upper may have words below it and the lower words above. */
  #room(upper: Slot['ports'][0], lower: Slot['ports'][0]): number {
    const m = this.measures;
    const label = m.labelGap + m.height('core');
    const below = labelled(upper, 'below') ? label : m.unit / 2;
    const above = labelled(lower, 'above') ? label : m.unit / 2;
    return below + above;
  }

  /** Closes the box of a symbol in its last band; returns how far down what it has in this band reaches. */
  #box({ placed, slots, last: ends }: Share, first: number): number {
    const m = this.measures;
    const { head, foot } = m.figure(placed.spec.figure);
    const last = Math.max(first, ...slots.flatMap((s) => s.ys));
    const words = slots
      .filter((s) => labelled(s.ports.at(-1)!, 'below'))
      .map((s) => s.ys.at(-1)! + m.labelGap + m.height('core'));
    if (!ends) return Math.max(last + m.rowGap / 2, ...words);
    const y = this.tops.get(placed)! - head;
    const rowsHigh = last + foot - y;
    const inside = pluggedHeight(placed, m);
    const height = m.inLine ? rowsHigh + inside : Math.max(rowsHigh, inside);
    this.boxes.set(placed.spec.id, { y, height });
    return Math.max(y + height, ...words);
  }

  /** Whether a line of the left symbol would run into one of the right in the channel where both turn. */
  #meets(left: Share, right: Share): boolean {
    const near = this.measures.unit > 0 ? 0.5 : this.measures.step / 2;
    const ends = (share: Share, side: 'left' | 'right') =>
      share.slots
        .filter((s) => s.side === side)
        .flatMap((s) => s.ports.flatMap((port, i) => (port.length > 0 ? [{ y: s.ys[i]!, port }] : [])));
    return ends(left, 'right').some((a) =>
      ends(right, 'left').some((b) => {
        if (a.port[0]!.slot.channel !== b.port[0]!.slot.channel) return false;
        if (Math.abs(a.y - b.y) >= near) return false;
        return a.y !== b.y || !mayLieLevel(a.port, b.port);
      }),
    );
  }
}

/**
 * Whether two facing terminals may lie level: one core at most joins them straight across, and of what else leaves them
 * only one side crosses the channel, so that the lines do not come to lie on each other.
 */
function mayLieLevel(left: readonly End[], right: readonly End[]): boolean {
  const straight = left.filter(({ line }) => right.some((end) => end.line === line));
  if (straight.length > 1) return false;
  const crossing = (ends: readonly End[]) =>
    ends.some((end) => end.line !== straight[0]?.line && crosses(end));
  return !(crossing(left) && crossing(right));
}

function labelled(port: Slot['ports'][0], where: 'above' | 'below'): boolean {
  return port.some(({ line, index }) => line.label?.end === index && line.label.where === where);
}

/** Lanes of each gutter as rows of lines that have no channel in common. */
function packLanes(lines: readonly Line[], bands: number): Line[][][] {
  const gutters: Line[][] = Array.from({ length: bands + 1 }, () => []);
  for (const line of lines) if (line.gutter !== undefined) gutters[line.gutter]!.push(line);
  return gutters.map((gutter) => {
    const rows: { reach: number; lines: Line[] }[] = [];
    const spans = gutter.map((line) => {
      // The channels of the two sections do not lie one below the other.
      if (line.overBarrier) return { line, from: -1, to: Number.POSITIVE_INFINITY };
      const [a, b] = line.ends.map((e) => e.slot.channel);
      return { line, from: Math.min(a!, b!), to: Math.max(a!, b!) };
    });
    spans.sort((p, q) => p.from - q.from || p.to - q.to);
    for (const { line, from, to } of spans) {
      const row = rows.find((r) => r.reach < from);
      if (row) {
        row.lines.push(line);
        row.reach = to;
      } else rows.push({ reach: to, lines: [line] });
    }
    return rows.map((r) => r.lines);
  });
}
