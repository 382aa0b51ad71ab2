/** The map of the runs as SVG: lines as long as the runs, the places where they end, and beside each line what it is. */
import { lengthUnit } from '../../plan/length-unit.ts';
import type { Plan } from '../../plan/plan.ts';
import { printable } from '../../text/escape.ts';
import { FOOT, lengthWords } from '../../text/lengths.ts';
import { columns } from '../../text/wrap.ts';
import { xml } from '../../text/xml.ts';
import { num } from '../strokes.ts';
import { type LaidRun, type LaidSection, layRuns } from './lay-runs.ts';
import { networks, type RunsInput } from './places.ts';
import { type LineWords, lineWords, SECTION_TITLES, sumWords, widest } from './words.ts';

/** px of letters, 96 to the inch: 8.25 points in print at full size. */
const SIZE = 11;
const CHARACTER = SIZE * 0.615;
const LINE = 15;
const ROW_GAP = 3;
const HEAD = 24;
const SECTION_GAP = 12;
/** px from the end of a line to its name, and between names, marks and words. */
const NAME_GAP = 9;
const GAP = 14;
const BOX = 11;
/** Columns of the words of a run, and of a name, at most. */
const WORDS = 46;
const NAME = 24;
/** px of the half side of the square at a place. */
const SQUARE = 3.2;

export interface RunsLook {
  /** px */
  readonly width: number;
  /** a box to tick before each run */
  readonly boxes: boolean;
}

/** A piece of the map that is not to be torn apart: from one y to another. */
export interface RunsPicture {
  /** content of an `<svg>` whose viewBox is `width` by `height` */
  readonly svg: string;
  readonly width: number;
  readonly height: number;
  /** y at which a page may end, between two lines; the last is the height */
  readonly breaks: readonly number[];
}

interface Placing {
  readonly x: (at: number) => number;
  readonly y: (line: number) => number;
  /** left of marks, and of words */
  readonly marks: number;
  readonly words: number;
  readonly look: RunsLook;
}

function text(x: number, y: number, words: string, more = ''): string {
  return `<text x="${num(x)}" y="${num(y)}" font-size="${SIZE}"${more}>${xml(words)}</text>`;
}

/** Level pieces thick and to scale, upright ones thin. */
function runSvg({ path, leg }: LaidRun, { x, y }: Placing): string {
  const points = path.map(({ at, line }) => ({ x: x(at), y: y(line) }));
  const pieces = points.slice(1).map((p, i) => [points[i]!, p] as const);
  const d = (own: typeof pieces) =>
    own.map(([a, b]) => `M${num(a.x)} ${num(a.y)}L${num(b.x)} ${num(b.y)}`).join('');
  const known = leg.run.length === undefined ? ' stroke-dasharray="4 3"' : '';
  const level = pieces.filter(([a, b]) => a.y === b.y);
  const upright = pieces.filter(([a, b]) => a.y !== b.y);
  return [
    ...(upright.length === 0 ? [] : [`<path class="way" d="${d(upright)}" stroke-width="0.9"/>`]),
    `<path class="run" d="${d(level)}" stroke-width="2.4"${known}/>`,
  ].join('');
}

function lineSvg(own: LineWords, line: number, placing: Placing): string {
  const { x, y, marks, words, look } = placing;
  const base = (k: number) => y(line) + SIZE * 0.36 + k * LINE;
  const left = x(own.at) + NAME_GAP;
  const name = own.name.map((t, k) =>
    text(left + (own.box ? 4 : 0), base(k), t, own.again ? ' font-style="italic"' : ' font-weight="bold"'),
  );
  const frame = own.box
    ? `<rect class="box" x="${num(left)}" y="${num(y(line) - LINE / 2)}" width="${num(widest(own.name) * CHARACTER + 8)}" height="${num(own.name.length * LINE)}" fill="none" stroke="currentColor"/>`
    : '';
  const tick =
    look.boxes && own.mark !== ''
      ? `<rect x="${num(marks)}" y="${num(y(line) - BOX / 2)}" width="${BOX}" height="${BOX}" fill="none" stroke="currentColor"/>`
      : '';
  const mark =
    own.mark === ''
      ? ''
      : text(words - 8, base(0), own.mark, ' text-anchor="end" font-weight="bold" class="mark"');
  const told = own.words.map((t, k) => text(words, base(k), t));
  return [frame, ...name, tick, mark, ...told].join('');
}

/** A length of 1, 2 or 5 units that is about a fifth of the whole, m. */
function rulerOf(extent: number, unit: 'm' | 'ft'): number {
  const per = unit === 'ft' ? FOOT : 1;
  const raw = extent / per / 4;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [5, 2, 1].find((n) => n * power <= raw * (1 + 1e-9)) ?? 1;
  return step * power * per;
}

interface Sized {
  readonly laid: LaidSection;
  readonly words: readonly LineWords[];
  readonly scale: number;
  readonly marks: number;
  readonly left: number;
}

/** The largest scale at which every name has room before the words, which begin below each other in all sections. */
function sized(sections: readonly LaidSection[], look: RunsLook): Sized[] {
  const told = sections.map((laid) => ({ laid, words: lineWords(laid, printable, () => NAME, WORDS) }));
  const most = (of: (line: LineWords) => number) =>
    told.flatMap(({ words }) => words).reduce((m, line) => Math.max(m, of(line)), 0) * CHARACTER;
  const left = look.width - most((l) => widest(l.words));
  const marks = left - 8 - most((l) => columns(l.mark)) - (look.boxes ? BOX + 6 : 0);
  return told.map(({ laid, words }) => ({ laid, words, marks, left, scale: scaleOf(laid, words, marks) }));
}

function scaleOf(laid: LaidSection, words: readonly LineWords[], marks: number): number {
  const room = marks - GAP - SQUARE - 1;
  const scales = words.flatMap(({ at, name, box }) =>
    at > 0 ? [(room - NAME_GAP - (box ? 9 : 0) - widest(name) * CHARACTER) / at] : [],
  );
  return Math.max(
    1e-6,
    [room / laid.extent, ...scales].reduce((a, b) => Math.min(a, b)),
  );
}

function sectionSvg(
  { laid, words, scale, marks, left }: Sized,
  plan: Plan,
  top: number,
  look: RunsLook,
): { svg: string[]; breaks: number[]; bottom: number } {
  const tops: number[] = [];
  let y = top + HEAD;
  for (const { name, words: own } of words) {
    tops.push(y);
    y += Math.max(1, name.length, own.length) * LINE + ROW_GAP;
  }
  const placing: Placing = {
    x: (at) => SQUARE + 1 + at * scale,
    y: (line) => tops[line]! + LINE / 2,
    marks,
    words: left,
    look,
  };
  const unit = lengthUnit(plan);
  const ruler = rulerOf(laid.extent, unit);
  const [from, to] = [look.width - ruler * scale - 1, look.width - 1].map(num);
  const head = `${SECTION_TITLES[laid.network.section]}: ${sumWords(laid.network, plan)}`;
  const measure = lengthWords(Number(ruler.toPrecision(6)), unit);
  const at = (p: { at: number; line: number }) => ({ x: placing.x(p.at), y: placing.y(p.line) });
  const squares = laid.places
    .map(at)
    .map(
      (p) =>
        `<rect class="place" x="${num(p.x - SQUARE)}" y="${num(p.y - SQUARE)}" width="${2 * SQUARE}" height="${2 * SQUARE}"/>`,
    );
  return {
    svg: [
      text(0, top + 12, head, ' font-weight="bold"'),
      `<path class="ruler" d="M${from} ${num(top + 5)}V${num(top + 11)}M${from} ${num(top + 8)}H${to}M${to} ${num(top + 5)}V${num(top + 11)}" fill="none" stroke="currentColor" stroke-width="1"/>`,
      text(look.width - ruler * scale - 7, top + 12, measure, ' text-anchor="end"'),
      `<g class="runs" fill="none" stroke="currentColor">${laid.runs.map((r) => runSvg(r, placing)).join('')}</g>`,
      `<g class="places" fill="currentColor" stroke="none">${squares.join('')}</g>`,
      `<g fill="currentColor" stroke="none">${words.map((own, i) => lineSvg(own, i, placing)).join('')}</g>`,
    ],
    breaks: tops.slice(1).map((t) => t - ROW_GAP / 2),
    bottom: y,
  };
}

/** The whole map at full size; undefined where no run leads from one place to another. Pure. */
export function runsPicture(input: RunsInput, look: RunsLook): RunsPicture | undefined {
  const laid = sized(networks(input).map(layRuns), look);
  if (laid.length === 0) return undefined;
  const svg: string[] = [];
  const breaks: number[] = [];
  let top = 0;
  for (const own of laid) {
    if (top > 0) breaks.push(top - SECTION_GAP / 2);
    const drawn = sectionSvg(own, input.plan, top, look);
    svg.push(...drawn.svg);
    breaks.push(...drawn.breaks);
    top = drawn.bottom + SECTION_GAP;
  }
  const height = Math.ceil(top - SECTION_GAP);
  return { svg: svg.join('\n'), width: look.width, height, breaks: [...breaks, height] };
}
