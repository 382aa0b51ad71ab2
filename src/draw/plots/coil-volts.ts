/**
 * The volts at a coil with each gate open alone, a line for each gate, as one SVG: this folder draws figures that are
 * handed to it, and must not know how they are found.
 */
import { printable } from '../../text/escape.ts';
import { rounded } from '../../text/numbers.ts';
import { columns } from '../../text/wrap.ts';
import { xml } from '../../text/xml.ts';
import { num } from '../strokes.ts';
import { FONT } from '../svg.ts';

/** What is plotted; volts are magnitudes. */
export interface CoilVolts {
  readonly coil: string;
  /** V that the warm coil needs to pull in */
  readonly needs: number;
  /** in the order of the loop */
  readonly gates: readonly {
    readonly name: string;
    /** V in the worst state and at the worst ends of all tolerances */
    readonly least: number;
    /** V with all as printed at 20 °C; null where that is not told */
    readonly printed: number | null;
  }[];
}

/** px of letters and of a line, 96 to the inch. */
const SIZE = 11;
const CHARACTER = SIZE * 0.615;
const LINE = 16;
const DOT = 3.4;
/** Columns of a gate's name; what is longer is cut. */
const NAME = 20;
const GAP = 10;

function text(x: number, y: number, words: string, more = ''): string {
  return `<text x="${num(x)}" y="${num(y)}" font-size="${SIZE}"${more}>${xml(words)}</text>`;
}

function cut(name: string): string {
  const clean = printable(name);
  if (columns(clean) <= NAME) return clean;
  let kept = '';
  for (const letter of clean) {
    if (columns(kept + letter) > NAME - 1) break;
    kept += letter;
  }
  return `${kept}…`;
}

const volts = (v: number): string => `${rounded(v, 4)} V`;
const width = (words: string): number => columns(words) * CHARACTER;

/** Round steps, about so many to the stretch. */
function ticks(from: number, to: number, about: number): number[] {
  const raw = (to - from) / about;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= raw * (1 - 1e-9)) ?? 10 * power;
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.max(0, Math.min(20, Math.floor(to / step + 1e-9) - first + 1));
  return Array.from({ length: count }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** What is said beside a gate: its least volts, and that they are too few where they are. */
const toldOf = (least: number, needs: number): string =>
  least < needs ? `${volts(least)}, too low` : volts(least);

/**
 * The plot as a whole `<svg>` element `px` wide, black lines in `currentColor`; undefined where no gate has volts. Pure.
 * A full dot is the least, a ring what a meter reads with all as printed; the thick line is what the warm coil needs.
 */
export function coilVoltsSvg({ coil, needs, gates }: CoilVolts, px: number): string | undefined {
  if (gates.length === 0) return undefined;
  const all = [needs, ...gates.flatMap((g) => [g.least, g.printed ?? g.least])];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = Math.max((high - low) * 0.08, high * 0.004, 1e-3);
  const [from, to] = [Math.max(0, low - room), high + room];
  const left = Math.max(...gates.map((g) => width(cut(g.name)))) + GAP;
  const right = px - Math.max(...gates.map((g) => width(toldOf(g.least, needs)))) - GAP;
  const x = (v: number) => left + ((v - from) / (to - from)) * (right - left);
  const [top, bottom] = [LINE * 1.5, LINE * (1.5 + gates.length)];
  const y = (i: number) => top + LINE * (i + 0.5);
  const need = `needs ${volts(needs)} warm`;
  // The words stand over the line, but never beyond the field.
  const at = Math.min(Math.max(x(needs), width(need) / 2), px - width(need) / 2);
  const marks = ticks(from, to, 4);
  const trace = gates.map(({ least }, i) => `${i === 0 ? 'M' : 'L'}${num(x(least))} ${num(y(i))}`).join('');
  const rows = gates.map(({ name, least, printed }, i) => {
    const base = y(i) + SIZE * 0.36;
    const bold = least < needs ? ' font-weight="bold"' : '';
    return [
      text(left - GAP, base, cut(name), ' text-anchor="end"'),
      ...(printed === null
        ? []
        : [
            `<circle class="printed" cx="${num(x(printed))}" cy="${num(y(i))}" r="${DOT}" fill="none" stroke="currentColor"/>`,
          ]),
      `<circle class="least" cx="${num(x(least))}" cy="${num(y(i))}" r="${DOT}" fill="currentColor"/>`,
      text(right + GAP, base, toldOf(least, needs), bold),
    ].join('');
  });
  const height = Math.ceil(bottom + LINE * 1.4);
  const lowest = gates.reduce((a, b) => (b.least < a.least ? b : a));
  const label = `Volts at the coil of ${coil}: it needs ${volts(needs)} warm; least ${volts(lowest.least)}, ${lowest.name}`;
  return [
    `<svg class="coil-volts" role="img" aria-label="${xml(label)}" width="${num(px)}" height="${height}" viewBox="0 0 ${num(px)} ${height}" fill="currentColor" ${FONT}>`,
    `<path d="${marks.map((t) => `M${num(x(t))} ${num(top)}V${num(bottom + 3)}`).join('')}" fill="none" stroke="currentColor" stroke-width="0.4"/>`,
    `<path d="M${num(left)} ${num(bottom)}H${num(right)}" fill="none" stroke="currentColor"/>`,
    ...marks.map((t) => text(x(t), bottom + 14, `${t}`, ' text-anchor="middle"')),
    text(px, bottom + 14, 'V', ' text-anchor="end"'),
    `<path class="needs" d="M${num(x(needs))} ${num(top - 3)}V${num(bottom)}" fill="none" stroke="currentColor" stroke-width="3"/>`,
    text(at, top - 8, need, ' text-anchor="middle" font-weight="bold"'),
    `<path class="trace" d="${trace}" fill="none" stroke="currentColor" stroke-width="0.8"/>`,
    ...rows,
    '</svg>',
  ].join('');
}
