/** Heights: the y of every terminal's lines, of every lane, of every symbol. */
import type { Label } from '../drawing.ts';
import type { Line, Slot } from './conductor-lines.ts';
import type { Measures } from './measures.ts';
import type { Placed, Placement } from './place-symbols.ts';
import { pluggedHeight } from './plugged-words.ts';

export interface Rows {
  /** top of each symbol's box and its height, by id */
  readonly boxes: ReadonlyMap<string, { readonly y: number; readonly height: number }>;
  /** y of each lane, by the id of its line */
  readonly lanes: ReadonlyMap<string, number>;
  readonly barrier?: number;
  readonly height: number;
}

/** Lines of words over a symbol, the caption below the name. */
function headWords(p: Placed, measures: Measures): Label['what'][] {
  return measures.brief || p.spec.caption === '' ? ['name'] : ['name', 'caption'];
}

/** Sets the `ys` of all slots and returns what else has a height. */
export function setRows(
  placement: Placement,
  slots: ReadonlyMap<string, Slot>,
  lines: readonly Line[],
  measures: Measures,
): Rows {
  return new Stack(placement, slots, measures).stack(lines);
}

class Stack {
  private readonly bands: Placed[][];
  private readonly own = new Map<Placed, Slot[]>();
  private readonly boxes = new Map<string, { y: number; height: number }>();

  constructor(
    private readonly placement: Placement,
    slots: ReadonlyMap<string, Slot>,
    private readonly measures: Measures,
  ) {
    this.bands = Array.from({ length: placement.bands }, () => []);
    for (const p of placement.placed) {
      this.bands[p.band]!.push(p);
      this.own.set(
        p,
        p.spec.terminals.map((t) => slots.get(t.key)!),
      );
    }
    for (const band of this.bands) band.sort((a, b) => a.column - b.column);
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
  #band(band: readonly Placed[], top: number): number {
    const m = this.measures;
    const first = top + Math.max(0, ...band.map((p) => this.#above(p)));
    let bottom = first;
    let offset = 0;
    let left: Placed | undefined;
    for (const p of band) {
      if (left?.column !== p.column - 1) offset = 0;
      this.#rows(p, first + offset);
      while (left?.column === p.column - 1 && this.#meets(left, p)) {
        offset += m.step;
        this.#rows(p, first + offset);
      }
      bottom = Math.max(bottom, this.#box(p, first + offset));
      left = p;
    }
    return bottom;
  }

  /** What a symbol needs above its first line. */
  #above(p: Placed): number {
    const m = this.measures;
    const names = headWords(p, m).reduce((sum, what) => sum + m.height(what), 0);
    const label = this.own.get(p)!.some((s) => s.spec.row === 0 && labelled(s.ports[0]!, 'above'));
    return Math.max(names + m.figure(p.spec.figure).head, label ? m.labelGap + m.height('core') : 0);
  }

  #rows(p: Placed, first: number): void {
    const m = this.measures;
    const own = this.own.get(p)!;
    const rows = Math.max(0, ...own.map((s) => s.spec.row + 1));
    let y = first;
    for (let row = 0; row < rows; row++) {
      const here = own.filter((s) => s.spec.row === row);
      if (row > 0) {
        const before = own.filter((s) => s.spec.row === row - 1);
        y += Math.max(
          m.rowGap,
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

  /** Sets the box of a symbol and returns how far down it and its labels reach. */
  #box(p: Placed, first: number): number {
    const m = this.measures;
    const own = this.own.get(p)!;
    const { head, foot } = m.figure(p.spec.figure);
    const last = Math.max(first, ...own.flatMap((s) => s.ys));
    const y = first - head;
    const rowsHigh = last + foot - y;
    const inside = pluggedHeight(p, m);
    const height = m.inLine ? rowsHigh + inside : Math.max(rowsHigh, inside);
    this.boxes.set(p.spec.id, { y, height });
    const words = own
      .filter((s) => labelled(s.ports.at(-1)!, 'below'))
      .map((s) => s.ys.at(-1)! + m.labelGap + m.height('core'));
    return Math.max(y + height, ...words);
  }

  /** Whether a line of the left symbol would run into one of the right in the channel between them. */
  #meets(left: Placed, right: Placed): boolean {
    const near = this.measures.unit > 0 ? 0.5 : this.measures.step / 2;
    const ends = (p: Placed, side: 'left' | 'right') =>
      this.own
        .get(p)!
        .filter((s) => s.side === side)
        .flatMap((s) => s.ports.flatMap((port, i) => (port.length > 0 ? [{ y: s.ys[i]!, port }] : [])));
    return ends(left, 'right').some((a) =>
      ends(right, 'left').some((b) => {
        if (Math.abs(a.y - b.y) >= near) return false;
        const alone = a.port.length === 1 && b.port.length === 1 && a.port[0]!.line === b.port[0]!.line;
        return !(alone && a.y === b.y);
      }),
    );
  }
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
