/** The map of the runs in characters, for a terminal. */
import type { Report } from '../../findings/report-model.ts';
import { verdictLine } from '../../findings/report-sentences.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import { ascii, printable } from '../../text/escape.ts';
import { lengthWords } from '../../text/lengths.ts';
import { columns, pad, wrap } from '../../text/wrap.ts';
import { type LaidSection, layRuns } from './lay-runs.ts';
import { networks, type RunsInput } from './places.ts';
import { type LineWords, lineWords, SECTION_TITLES, sumWords, widest } from './words.ts';

const [N, E, S, W] = [1, 2, 4, 8] as const;
/** What a cell shows by the sides on which a line leaves it. */
const LINES = [' ', '│', '─', '└', '│', '│', '┌', '├', '─', '┘', '─', '┴', '┐', '┤', '┬', '┼'];
const PLACE = '●';
const PLAIN: Readonly<Record<string, string>> = { '│': '|', '─': '-', '●': 'o', ' ': ' ' };

/** Share of a window that the lines may take, and the columns that they take at most. */
const SHARE = 0.3;
const MOST = 40;
/** Share that lines and names take together before names are broken. */
const MOST_PICTURE = 0.5;
/** Columns that a name gets at least, and between lines and words. */
const LEAST_NAME = 14;
const GAP = 2;
/** Columns of the words of a run, at least. */
const LEAST_WORDS = 24;

/** Columns of metres; a run takes two at least, so that what hangs on it can be told apart. */
function columnsOf(laid: LaidSection, most: number): (at: number) => number {
  const scale = laid.extent > 0 ? most / laid.extent : 0;
  const known = new Map<number, number>([[0, 0]]);
  const ends = laid.runs.map(({ path }) => [path[0]!.at, path.at(-1)!.at] as const);
  for (const [from, to] of ends.sort((x, y) => x[1] - y[1])) {
    const least = (known.get(from) ?? Math.round(from * scale)) + 2;
    if (to > from) known.set(to, Math.max(known.get(to) ?? 0, Math.round(to * scale), least));
  }
  return (at) => known.get(at) ?? Math.round(at * scale);
}

/** The lines and places of a section, as one text for each line of the window. */
function pictureOf(
  laid: LaidSection,
  words: readonly LineWords[],
  column: (at: number) => number,
  plain: boolean,
) {
  const tops: number[] = [];
  let height = 0;
  for (const { name, words: own } of words) {
    tops.push(height);
    height += Math.max(1, name.length, own.length);
  }
  const cells = Array.from({ length: height }, () => [] as number[]);
  const mark = (x: number, y: number, bits: number) => {
    cells[y]![x] = (cells[y]![x] ?? 0) | bits;
  };
  const stroke = ([x1, y1]: readonly [number, number], [x2, y2]: readonly [number, number]) => {
    for (let x = Math.min(x1, x2); x < Math.max(x1, x2); x++) {
      mark(x, y1, E);
      mark(x + 1, y1, W);
    }
    for (let y = Math.min(y1, y2); y < Math.max(y1, y2); y++) {
      mark(x2, y, S);
      mark(x2, y + 1, N);
    }
  };
  for (const { path } of laid.runs) {
    const points = path.map(({ at, line }) => [column(at), tops[line]!] as const);
    for (let i = 1; i < points.length; i++) stroke(points[i - 1]!, points[i]!);
  }
  const rows = cells.map((row) => Array.from(row, (bits) => LINES[bits ?? 0]!));
  for (const { at, line } of laid.places) {
    const row = rows[tops[line]!]!;
    while (row.length < column(at)) row.push(' ');
    row[column(at)] = PLACE;
  }
  const text = rows.map((row) => row.join(''));
  return {
    tops,
    rows: plain ? text.map((t) => t.replace(/[─-╿●]/gu, (c) => PLAIN[c] ?? '+')) : text,
  };
}

/** A section at most `width` columns wide. */
function sectionLines(
  laid: LaidSection,
  width: number,
  clean: (text: string) => string,
  plain: boolean,
): string[] {
  const column = columnsOf(laid, Math.min(MOST, Math.floor(width * SHARE)));
  const most = Math.max(MOST_PICTURE * width, column(laid.extent) + LEAST_NAME + GAP + 2);
  const nameRoom = (at: number) => Math.max(LEAST_NAME, Math.floor(most) - column(at) - 2 - GAP);
  const marks = widest(laid.runs.map((r) => `${r.leg.run.index}`)) + 3;
  const named = lineWords(laid, clean, nameRoom, width);
  const picture = named.reduce((m, l) => Math.max(m, column(l.at) + 2 + widest(l.name)), column(laid.extent));
  const beside = picture + GAP + marks;
  const words = lineWords(laid, clean, nameRoom, Math.max(LEAST_WORDS, width - beside - GAP));
  const { tops, rows } = pictureOf(laid, words, column, plain);
  const lines = [...rows];
  for (const [i, { at, name, mark, words: own }] of words.entries())
    for (let k = 0; k < Math.max(name.length, own.length); k++) {
      const y = tops[i]! + k;
      const named = name[k] === undefined ? lines[y]! : `${pad(lines[y]!, column(at) + 2)}${name[k]}`;
      const first = k === 0 ? mark : '';
      lines[y] =
        own[k] === undefined
          ? named
          : `${pad(named, picture + GAP)}${' '.repeat(Math.max(0, marks - columns(first)))}${first}  ${own[k]}`;
    }
  return lines.map((line) => line.trimEnd());
}
export interface RunsMapInput extends RunsInput {
  readonly report: Report;
}

const NOTE =
  'From the left each line is as long as its run, to the column; a run that is shorter than two columns takes two. Lengths are those of the plan: pullin wirelist --cuts has what to cut. What is joined inside a box is left out.';

/** The text of `pullin draw --runs` without a file. */
export function renderRuns(input: RunsMapInput, width: number, unicode: boolean): string {
  const { plan, report } = input;
  const clean = unicode ? printable : (text: string) => ascii(printable(text));
  const say = (text: string) => wrap(clean(text), width);
  const sections = networks(input).flatMap((network) => {
    const laid = layRuns(network);
    const most = Math.min(MOST, Math.floor(width * SHARE));
    const scale = lengthWords(Number((laid.extent / most).toPrecision(2)), lengthUnit(plan));
    return [
      ...say(`${SECTION_TITLES[network.section]}: ${sumWords(network, plan)}; a column is ${scale}`),
      '',
      ...sectionLines(laid, width, clean, !unicode),
      '',
    ];
  });
  return [
    ...say(`Runs of ${plan.title}`),
    '',
    ...(sections.length === 0 ? ['No run leads from one place to another.', ''] : sections),
    ...say(NOTE),
    ...say(verdictLine(report)),
    ...say(
      'Mains can kill: unplug before you open a box. Local code and a licensed electrician have the last word.',
    ),
    '',
  ].join('\n');
}
