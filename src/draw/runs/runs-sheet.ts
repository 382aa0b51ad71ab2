/** The map of the runs as a sheet of its own: as wide as the paper, its words at full size. */
import type { Report } from '../../findings/report-model.ts';
import { verdictLine } from '../../findings/report-sentences.ts';
import { printable } from '../../text/escape.ts';
import { wrap } from '../../text/wrap.ts';
import { xml } from '../../text/xml.ts';
import { millimetres, paperOf } from '../paper.ts';
import type { PaperSize } from '../paper-sizes.ts';
import { num } from '../strokes.ts';
import { FONT } from '../svg.ts';
import type { RunsInput } from './places.ts';
import { runsPicture } from './runs-svg.ts';

export interface RunsSheetInput extends RunsInput {
  readonly report: Report;
  /** date of the plan file, `2026-11-25`; undefined where there is none */
  readonly date?: string;
}

/** px of the margin. */
const MARGIN = (12 * 96) / 25.4;

const [TITLE, SIZE, LINE] = [15, 11, 15] as const;
const CHARACTER = SIZE * 0.615;

export const RUNS_NOTE =
  'Thick lines are as long as the runs, to the scale beside each heading; thin ones have no length. Lengths are those of the plan; the cut list has what to cut. What is joined inside a box is left out.';
const CAUTION =
  'Not an approval. Mains can kill: unplug before you open a box. Local code and a licensed electrician have the last word.';

/** The sheet, and whether it is longer than the paper. Pure. */
export function runsSheet(
  input: RunsSheetInput,
  size: PaperSize,
): { readonly svg: string; readonly longer: boolean } {
  const { plan, report, date } = input;
  const paper = paperOf(size, false);
  const [left, width] = [MARGIN, paper.width - 2 * MARGIN];
  const fit = Math.floor(width / CHARACTER);
  const file = [plan.file === '-' ? 'from standard input' : plan.file, date].filter((w) => w !== undefined);
  const map = runsPicture(input, { width, boxes: true });
  const head = [
    ...wrap(printable(`Runs of ${plan.title}`), Math.floor(width / (TITLE * 0.615))).map((t) => ({
      t,
      size: TITLE,
    })),
    { t: '', size: SIZE },
    ...[file.join(', '), verdictLine(report)].flatMap((words) =>
      wrap(printable(words), fit).map((t) => ({ t, size: SIZE })),
    ),
  ];
  const foot = [map === undefined ? 'No run leads from one place to another.' : RUNS_NOTE, CAUTION];
  const below = foot.flatMap((words) => wrap(words, fit));
  const top = left + TITLE + head.length * LINE + 8;
  const end = top + (map?.height ?? 0) + 20;
  const full = Math.max(paper.height, end + below.length * LINE + left);
  const words = (t: string, y: number, px: number) =>
    `<text x="${num(left)}" y="${num(y)}" font-size="${px}"${px === TITLE ? ' font-weight="bold"' : ''}>${xml(t)}</text>`;
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${millimetres(paper.width)}" height="${millimetres(full)}" viewBox="0 0 ${num(paper.width)} ${num(full)}" color="#000" ${FONT}>`,
    `<title>${xml(`Runs of ${plan.title}`)}</title>`,
    '<rect width="100%" height="100%" fill="#fff"/>',
    ...head.map(({ t, size: px }, i) => words(t, left + TITLE + i * LINE, px)),
    ...(map === undefined ? [] : [`<g transform="translate(${num(left)} ${num(top)})">`, map.svg, '</g>']),
    ...below.map((t, i) => words(t, end + i * LINE, SIZE)),
    '</svg>',
    '',
  ].join('\n');
  return { svg, longer: full > paper.height + 0.5 };
}
