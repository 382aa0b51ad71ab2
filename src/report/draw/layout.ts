/** A plan laid out as a ladder diagram. Pure; a wrong plan is drawn as it is wired, and no core is ever left out. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { Drawing, DrawnCore, DrawnSymbol, DrawnTerminal, Label, Point } from './drawing.ts';
import { isRail, type Line, linesOf, placeWords, type Slot, slotsOf } from './lines.ts';
import type { Measures } from './measures.ts';
import { type Placed, type Placement, placeSymbols } from './place.ts';
import type { NetSides } from './rank.ts';
import { pluggedHeight, type Rows, setRows } from './rows.ts';
import { type SymbolSpec, symbolSpecs } from './specs.ts';
import { assignTracks, type Tracks, yOf } from './tracks.ts';
import { symbolWords } from './words.ts';

export interface LayoutInput {
  readonly circuit: Circuit;
  /** nets by side, as the checks sort them */
  readonly sides: NetSides;
  /** short marks beside the name of a part that a finding speaks of */
  readonly marks?: ReadonlyMap<string, string>;
}

/**
 * Lays out the circuit of a plan in at most `columns` columns of symbols, in the units of `measures`. Every terminal and
 * every core stands in the drawing once; no label or conductor runs into another symbol or label.
 */
export function layOut(input: LayoutInput, measures: Measures, columns: number): Drawing {
  const { plan } = input.circuit;
  const specs = symbolSpecs(plan).map((s) => marked(s, input.marks, measures));
  const placement = placeSymbols(specs, input.circuit, input.sides, columns);
  const slots = slotsOf(placement.placed);
  const lines = linesOf(plan, slots, measures);
  // The first walk goes by the order of rows; the second knows their true heights.
  placeWords(lines, slots.values());
  setRows(placement, slots, lines, measures);
  placeWords(lines, slots.values());
  const rows = setRows(placement, slots, lines, measures);
  const tracks = assignTracks(lines, placement.columns + 1, rows, measures);
  return new Sheet(placement, slots, lines, rows, tracks, measures).draw();
}

function marked(spec: SymbolSpec, marks: LayoutInput['marks'], measures: Measures): SymbolSpec {
  const mark = marks?.get(spec.part.name);
  const caption = measures.brief ? (spec.brief ?? spec.caption) : spec.caption;
  return { ...spec, caption, ...(mark === undefined ? {} : { finding: mark }) };
}

interface Cell {
  readonly left: number;
  readonly bodyLeft: number;
  readonly bodyRight: number;
  readonly right: number;
}

class Sheet {
  private readonly labels: Label[] = [];
  private readonly cells: Cell[] = [];
  /** left edge of each channel */
  private readonly channels: number[] = [];
  private readonly widths = new Map<Placed, ReturnType<typeof symbolWords>>();
  private width = 0;

  constructor(
    private readonly placement: Placement,
    private readonly slots: ReadonlyMap<string, Slot>,
    private readonly lines: readonly Line[],
    private readonly rows: Rows,
    private readonly tracks: Tracks,
    private readonly m: Measures,
  ) {
    for (const p of placement.placed) this.widths.set(p, symbolWords(p, m));
  }

  draw(): Drawing {
    this.#columns();
    const symbols = this.placement.placed.map((p) => this.#symbol(p));
    const cores = this.lines.map((line) => this.#core(line));
    for (const line of this.lines) this.#coreLabel(line);
    const { barrier } = this.rows;
    if (barrier !== undefined) this.#barrierWords(barrier);
    return {
      width: this.width,
      height: this.rows.height,
      symbols,
      cores,
      labels: this.labels,
      dots: this.#dots(),
      ...(barrier === undefined ? {} : { barrier }),
    };
  }

  /** Widths of columns and channels, from left to right. */
  #columns(): void {
    const { m } = this;
    const zones = Array.from({ length: this.placement.columns + 1 }, () => ({ left: 0, body: 0, right: 0 }));
    const used = new Set(this.placement.placed.map((p) => p.column));
    for (const column of used) Object.assign(zones[column]!, { left: m.stub, right: m.stub });
    for (const [p, words] of this.widths) zones[p.column]!.body = Math.max(zones[p.column]!.body, words.zone);
    for (const line of this.lines) {
      if (line.label === undefined) continue;
      const { slot } = line.ends[line.label.end];
      const zone = zones[slot.placed.column]!;
      zone[slot.side] = Math.max(zone[slot.side], m.width(line.text, 'core') + m.labelPad);
    }
    for (const line of this.lines) if (line.gutter !== undefined) this.#widen(line, zones);
    const section = Math.max(m.width(WORDS.low, 'barrier'), m.width(WORDS.mains, 'barrier'));
    const first = zones[this.#widest(zones, 1, this.placement.columns)]!;
    first.body = Math.max(first.body, section - first.left - first.right);
    let x = m.margin;
    for (let c = 0; c <= this.placement.columns; c++) {
      if (c > 0) {
        const { left, body, right } = zones[c]!;
        this.cells[c] = {
          left: x,
          bodyLeft: x + left,
          bodyRight: x + left + body,
          right: x + left + body + right,
        };
        x = this.cells[c]!.right;
      }
      this.channels[c] = x;
      const count = this.tracks.counts[c]!;
      x += count === 0 ? m.channelEdge : 2 * m.channelEdge + (count - 1) * m.trackGap + m.unit;
    }
    this.width = x + m.margin;
  }

  /** Makes room for the words on a lane in the widest column that it crosses. */
  #widen(line: Line, zones: { left: number; body: number; right: number }[]): void {
    const [from, to] = this.#span(line);
    const zone = zones[this.#widest(zones, from + 1, to)]!;
    const short =
      this.m.width(line.text, 'core') + 2 * this.m.labelPad - (zone.left + zone.body + zone.right);
    if (short > 0) zone.right += short;
  }

  #widest(zones: readonly { left: number; body: number; right: number }[], from: number, to: number): number {
    let best = from;
    const width = (c: number) => zones[c]!.left + zones[c]!.body + zones[c]!.right;
    for (let c = from; c <= to; c++) if (width(c) > width(best)) best = c;
    return best;
  }

  #span(line: Line): [number, number] {
    const [a, b] = line.ends.map((e) => e.slot.channel);
    return [Math.min(a!, b!), Math.max(a!, b!)];
  }

  #symbol(p: Placed): DrawnSymbol {
    const { m } = this;
    const words = this.widths.get(p)!;
    const cell = this.cells[p.column]!;
    const { y, height } = this.rows.boxes.get(p.spec.id)!;
    const middle = (cell.bodyLeft + cell.bodyRight - words.box) / 2;
    // A splice keeps to the side on which its lines leave.
    const x =
      p.spec.figure === 'joint'
        ? p.mirrored
          ? cell.bodyRight - words.box
          : cell.bodyLeft
        : m.unit > 0
          ? Math.floor(middle)
          : middle;
    const box = { x, y, width: words.box, height };
    const left = Math.max(
      cell.bodyLeft,
      Math.min(x + (words.box - words.head) / 2, cell.bodyRight - words.head),
    );
    this.labels.push(...words.heads(m.unit > 0 ? Math.floor(left) : left, y));
    const terminals = p.spec.terminals.map((spec): DrawnTerminal => {
      const slot = this.slots.get(spec.key)!;
      const at = slot.side === 'left' ? x : x + words.box;
      const mark = words.mark(spec, at, slot.ys[0]!, slot.side);
      if (mark !== undefined) this.labels.push(mark);
      return {
        key: spec.key,
        mark: spec.mark,
        side: slot.side,
        ports: slot.ys.map((v) => ({ x: at, y: v })),
      };
    });
    const top = m.inLine ? y + height - pluggedHeight(p, m) : y;
    const plugged = words.plugged(box, top);
    this.labels.push(...plugged.labels);
    return {
      id: p.spec.id,
      part: p.spec.part.name,
      figure: p.spec.figure,
      box,
      mirrored: p.mirrored,
      terminals,
      plugged: plugged.parts,
    };
  }

  #trackX(line: Line, channel: number): number {
    const track = this.tracks.trackOf(line, channel)!;
    return this.channels[channel]! + this.m.channelEdge + track * this.m.trackGap + this.m.unit / 2;
  }

  #port(line: Line, index: 0 | 1): Point {
    const end = line.ends[index];
    const { slot } = end;
    const words = this.widths.get(slot.placed)!;
    const cell = this.cells[slot.placed.column]!;
    const middle = (cell.bodyLeft + cell.bodyRight - words.box) / 2;
    const joint = slot.placed.spec.figure === 'joint';
    const x = joint
      ? slot.side === 'right'
        ? cell.bodyRight - words.box
        : cell.bodyLeft
      : this.m.unit > 0
        ? Math.floor(middle)
        : middle;
    return { x: slot.side === 'left' ? x : x + words.box, y: yOf(end) };
  }

  #core(line: Line): DrawnCore {
    const [a, b] = line.ends;
    const from = this.#port(line, 0);
    const to = this.#port(line, 1);
    const path = [from];
    if (line.gutter !== undefined) {
      const lane = this.rows.lanes.get(line.id)!;
      const xa = this.#trackX(line, a.slot.channel);
      const xb = this.#trackX(line, b.slot.channel);
      path.push({ x: xa, y: from.y }, { x: xa, y: lane }, { x: xb, y: lane }, { x: xb, y: to.y });
    } else if (from.y !== to.y) {
      const x = this.#trackX(line, a.slot.channel);
      path.push({ x, y: from.y }, { x, y: to.y });
    }
    path.push(to);
    const rail = isRail(a) ? 'from' : isRail(b) ? 'to' : undefined;
    return {
      id: line.id,
      run: line.run,
      core: line.core,
      link: line.link,
      from: a.slot.spec.key,
      to: b.slot.spec.key,
      path,
      ...(rail === undefined ? {} : { rail }),
    };
  }

  #coreLabel(line: Line): void {
    const { m } = this;
    const width = m.width(line.text, 'core');
    const height = m.height('core');
    const label = { width, height, text: line.text, what: 'core' as const, of: line.id };
    if (line.label === undefined) {
      const [from, to] = this.#span(line);
      let best = from + 1;
      for (let c = from + 1; c <= to; c++)
        if (this.cells[c]!.right - this.cells[c]!.left > this.cells[best]!.right - this.cells[best]!.left)
          best = c;
      const lane = this.rows.lanes.get(line.id)!;
      const y = m.inLine ? lane - m.unit / 2 : lane - m.labelGap - height;
      this.labels.push({ ...label, x: this.cells[best]!.left + m.labelPad, y });
      return;
    }
    const end = line.ends[line.label.end];
    const cell = this.cells[end.slot.placed.column]!;
    const at = yOf(end);
    const x = end.slot.side === 'left' ? cell.left + m.labelPad / 2 : cell.right - width - m.labelPad / 2;
    const y = line.label.where === 'above' ? at - m.labelGap - height : at + m.labelGap;
    this.labels.push({ ...label, x: m.unit > 0 ? Math.round(x) : x, y });
  }

  #barrierWords(y: number): void {
    const { m } = this;
    let best = 1;
    for (let c = 1; c <= this.placement.columns; c++)
      if (this.cells[c]!.right - this.cells[c]!.left > this.cells[best]!.right - this.cells[best]!.left)
        best = c;
    const { left } = this.cells[best]!;
    const height = m.height('barrier');
    const line = m.unit / 2;
    const put = (text: string, top: number) => {
      this.labels.push({
        text,
        what: 'barrier',
        of: '',
        x: left,
        y: top,
        width: m.width(text, 'barrier'),
        height,
      });
    };
    put(WORDS.low, y - Math.max(line, m.labelGap) - height);
    put(WORDS.mains, y + Math.max(line, m.labelGap));
  }

  /** Where lines of one terminal part, and where a core leaves a rail. */
  #dots(): Point[] {
    const dots = new Map<string, Point>();
    const put = (p: Point) => dots.set(`${p.x},${p.y}`, p);
    for (const slot of this.slots.values())
      slot.ports.forEach((port, i) => {
        if (port.length < 2) return;
        const y = slot.ys[i]!;
        const turns = port.map(({ line, index }) => ({
          x: this.#trackX(line, slot.channel),
          to: line.gutter === undefined ? yOf(line.ends[index === 0 ? 1 : 0]) : this.rows.lanes.get(line.id)!,
        }));
        const xs = turns.map((t) => t.x);
        const farthest = slot.side === 'left' ? Math.min(...xs) : Math.max(...xs);
        for (const x of new Set(xs)) {
          const here = turns.filter((t) => t.x === x);
          const ways = [x !== farthest, here.some((t) => t.to < y), here.some((t) => t.to > y)];
          if (ways.filter((way) => way).length > 1) put({ x, y });
          if (here.length < 2 || i > 0) continue;
          const top = Math.min(...here.map((t) => t.to));
          const bottom = Math.max(...here.map((t) => t.to));
          for (const t of here)
            if (t.to !== y && t.to > Math.min(top, y) && t.to < Math.max(bottom, y)) put({ x, y: t.to });
        }
      });
    return [...dots.values()];
  }
}

const WORDS = { low: 'low voltage', mains: 'mains' };
