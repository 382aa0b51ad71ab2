/** What has been measured, put together: every symbol, core and label at its place. */

import type { Drawing, DrawnCore, DrawnSymbol, DrawnTerminal, Label, Point, Side } from '../drawing.ts';
import { BARRIER_WORDS, type Columns, spanOf, trackOffset } from './column-widths.ts';
import type { End, Line, Slot } from './conductor-lines.ts';
import { dotsOf } from './join-dots.ts';
import type { Measures } from './measures.ts';
import type { Placed, Placement } from './place-symbols.ts';
import { pluggedHeight } from './plugged-words.ts';
import type { Rows } from './row-heights.ts';
import type { SymbolWords } from './symbol-words.ts';
import { type Tracks, yOf } from './upright-tracks.ts';

export interface Measured {
  readonly placement: Placement;
  readonly slots: ReadonlyMap<string, readonly Slot[]>;
  readonly lines: readonly Line[];
  readonly rows: Rows;
  readonly tracks: Tracks;
  readonly words: ReadonlyMap<Placed, SymbolWords>;
  readonly widths: Columns;
}

/** The drawing of what has been measured. */
export function assembled(of: Measured, measures: Measures): Drawing {
  return new Assembly(of, measures).draw();
}

class Assembly {
  private readonly labels: Label[] = [];

  constructor(
    private readonly of: Measured,
    private readonly m: Measures,
  ) {}

  draw(): Drawing {
    const { placement, slots, lines, rows, widths } = this.of;
    const symbols = placement.placed.map((p) => this.#symbol(p));
    const cores = lines.map((line) => this.#core(line));
    for (const line of lines) this.#coreLabel(line);
    if (rows.barrier !== undefined) this.#barrierWords(rows.barrier);
    return {
      width: widths.width,
      height: rows.height,
      symbols,
      cores,
      labels: this.labels,
      dots: dotsOf([...slots.values()].flat(), {
        trackX: (end) => this.#trackX(end.line, end.slot.channel),
        laneY: (end) => rows.lanes.get(end.line.id)!,
      }),
      ...(rows.barrier === undefined ? {} : { barrier: rows.barrier }),
    };
  }

  /** Left edge of a symbol's box: in the middle of its column; a splice keeps to the side on which its lines leave. */
  #boxX(p: Placed): number {
    const cell = this.of.widths.cells[p.column]!;
    const { box } = this.of.words.get(p)!;
    if (p.spec.figure === 'joint' && p.terminals.length === 1)
      return p.terminals[0]!.side === 'right' ? cell.bodyRight - box : cell.bodyLeft;
    const middle = (cell.bodyLeft + cell.bodyRight - box) / 2;
    return this.m.unit > 0 ? Math.floor(middle) : middle;
  }

  #symbol(p: Placed): DrawnSymbol {
    const { m } = this;
    const words = this.of.words.get(p)!;
    const cell = this.of.widths.cells[p.column]!;
    const { y, height } = this.of.rows.boxes.get(p.spec.id)!;
    const x = this.#boxX(p);
    const box = { x, y, width: words.box, height };
    const middle = Math.min(x + (words.box - words.head) / 2, cell.bodyRight - words.head);
    const left = Math.max(cell.bodyLeft, middle);
    const row = y + m.figure(p.spec.figure).head;
    this.labels.push(...words.heads(m.unit > 0 ? Math.floor(left) : left, box, row));
    const terminals = p.spec.terminals.map((spec): DrawnTerminal => {
      const own = this.of.slots.get(spec.key)!;
      const xOf = (side: Side) => (side === 'left' ? x : x + words.box);
      const { side, ys } = own[0]!;
      const mark = words.mark(spec, xOf(side), ys[0]!, side);
      if (mark !== undefined) this.labels.push(mark);
      const ports = own.flatMap((slot) => slot.ys.map((v) => ({ x: xOf(slot.side), y: v })));
      return { key: spec.key, mark: spec.mark, side, ports };
    });
    const plugged = words.plugged(box, m.inLine ? y + height - pluggedHeight(p, m) : y);
    this.labels.push(...plugged.labels);
    const { id, figure, part } = p.spec;
    return { id, part: part.name, figure, box, mirrored: p.mirrored, terminals, plugged: plugged.parts };
  }

  #trackX(line: Line, channel: number): number {
    const track = this.of.tracks.trackOf(line, channel)!;
    return this.of.widths.channels[channel]! + trackOffset(track, this.m);
  }

  #port(end: End): Point {
    const { slot } = end;
    const x = this.#boxX(slot.placed);
    return { x: slot.side === 'left' ? x : x + this.of.words.get(slot.placed)!.box, y: yOf(end) };
  }

  #core(line: Line): DrawnCore {
    const [a, b] = line.ends;
    const from = this.#port(a);
    const to = this.#port(b);
    const path = [from];
    if (line.gutter !== undefined) {
      const lane = this.of.rows.lanes.get(line.id)!;
      const xa = this.#trackX(line, a.slot.channel);
      const xb = this.#trackX(line, b.slot.channel);
      path.push({ x: xa, y: from.y });
      if (xa !== xb) path.push({ x: xa, y: lane }, { x: xb, y: lane });
      path.push({ x: xb, y: to.y });
    } else if (from.y !== to.y) {
      const x = this.#trackX(line, a.slot.channel);
      path.push({ x, y: from.y }, { x, y: to.y });
    }
    path.push(to);
    const { id, run, core, link } = line;
    return { id, run, core, link, from: a.slot.spec.key, to: b.slot.spec.key, path };
  }

  /** Words stand over a lane, or beside the symbol at one end of the line. */
  #coreLabel(line: Line): void {
    const { m } = this;
    const width = m.width(line.text, 'core');
    const height = m.height('core');
    const label = { width, height, text: line.text, what: 'core' as const, of: line.id };
    if (line.label === undefined) {
      const [from, to] = spanOf(line);
      const lane = this.of.rows.lanes.get(line.id)!;
      const y = m.inLine ? lane - m.unit / 2 : lane - m.labelGap - height;
      this.labels.push({ ...label, x: this.of.widths.widest(from + 1, to).left + m.labelPad, y });
      return;
    }
    const end = line.ends[line.label.end];
    const cell = this.of.widths.cells[end.slot.placed.column]!;
    const at = yOf(end);
    const x = end.slot.side === 'left' ? cell.left + m.labelPad / 2 : cell.right - width - m.labelPad / 2;
    const y = line.label.where === 'above' ? at - m.labelGap - height : at + m.labelGap;
    this.labels.push({ ...label, x: m.unit > 0 ? Math.round(x) : x, y });
  }

  #barrierWords(y: number): void {
    const { m } = this;
    const { left } = this.of.widths.widest(1, this.of.placement.lowColumns);
    const height = m.height('barrier');
    const gap = Math.max(m.unit / 2, m.labelGap);
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
    put(BARRIER_WORDS.low, y - gap - height);
    put(BARRIER_WORDS.mains, y + gap);
  }
}
