/** A drawing for a terminal: the ladder in characters, and under it what its marks and numbers stand for. */

import type { Report } from '../findings/report-model.ts';
import { verdictLine } from '../findings/report-sentences.ts';
import type { Plan, Run } from '../plan/plan.ts';
import { ascii, printable } from '../text/escape.ts';
import { lengthWords } from '../text/lengths.ts';
import { runMark } from '../text/run-names.ts';
import { wrap } from '../text/wrap.ts';
import { drawCharacters } from './characters.ts';
import { coreLetters } from './core-words.ts';
import type { Shown } from './current-shown.ts';
import type { Drawing } from './drawing.ts';
import { findingMarks, listed } from './finding-marks.ts';
import { type LayoutInput, layOut } from './layout/layout.ts';
import { CHARACTERS } from './layout/measures.ts';
import { stateWords } from './state-words.ts';

export interface TerminalInput {
  readonly plan: Plan;
  readonly report: Report;
  readonly circuit: LayoutInput['circuit'];
  readonly sides: LayoutInput['sides'];
  readonly shown: Shown;
  readonly state: readonly string[];
}

/** Columns of symbols to try, and letters that one takes at least. */
const COLUMNS = [16, 6, 4, 3, 2];
const LEAST_COLUMN = 8;
/** A window can be scrolled down, not across. */
const BANK = 1000;

/** The text of `pullin draw` without a file: at most `width` columns wide, if one column of symbols fits into them. */
export function renderDrawing(input: TerminalInput, width: number, unicode: boolean): string {
  const drawing = fitted(input, width);
  const clean = unicode ? printable : (text: string) => ascii(printable(text));
  const say = (text: string, first = '', rest?: string) => wrap(clean(text), width, first, rest);
  const state = stateWords(input.plan, input.state);
  const found = listed(input.report.findings);
  return [
    ...say(`${input.plan.title}, drawn with ${state}`),
    ...(drawing.width > width
      ? say(`The drawing is ${Math.ceil(drawing.width)} columns wide; in a narrower window its lines break.`)
      : []),
    '',
    ...drawCharacters(drawing, input.shown, !unicode),
    '',
    ...(found.length === 0
      ? []
      : ['Found', ...found.flatMap(({ mark, text }) => say(text, `  ${mark.padEnd(2)} `, '     ')), '']),
    ...runLines(input.plan, say),
    ...say(readingHelp(input.state.length > 0, unicode)),
    ...say(verdictLine(input.report)),
    ...say(
      'Mains can kill: unplug before you open a box. Local code and a licensed electrician have the last word.',
    ),
    '',
  ].join('\n');
}

function runLines({ runs }: Plan, say: (text: string, first?: string, rest?: string) => string[]): string[] {
  if (runs.length === 0) return [];
  const line = (run: Run) => say(runWords(run), `  ${runMark(run).padStart(3)}  `, '       ');
  return ['Runs, by the number on their cores', ...runs.flatMap(line), ''];
}

/** The widest layout that fits; the narrowest where none does. */
function fitted(input: TerminalInput, width: number): Drawing {
  const marks = findingMarks(input.report.findings);
  let drawing: Drawing | undefined;
  for (const columns of COLUMNS) {
    if (columns * LEAST_COLUMN > width && columns > 2) continue;
    drawing = layOut({ ...input, marks }, CHARACTERS, { columns, bank: BANK });
    if (drawing.width <= width) break;
  }
  return drawing!;
}

function runWords(run: Run): string {
  if (run.link) return 'link, a bare jumper';
  const about = [
    run.name ?? run.cable?.stock ?? '',
    run.cable?.gauge ?? '',
    run.length === undefined ? '' : lengthWords(run.length, run.unit ?? 'm'),
  ].filter((w) => w !== '');
  const cores = run.cores.map((core) => `${coreLetters(run, core).replace(/^[\d.]+ /, '')} ${core.colour}`);
  const route = run.route === undefined ? '' : `; ${run.route}`;
  return `${about.join(', ')}: ${cores.join(', ')}${route}`;
}

function readingHelp(state: boolean, unicode: boolean): string {
  const cross = unicode ? '─│─' : '-|-';
  const join = unicode ? '┬ ├ ┼' : '+';
  const live = state ? ` Live conductors are drawn ${unicode ? 'heavy' : 'with = and #'}.` : '';
  return `Lines join at ${join} and only cross at ${cross}. A contact marked / is made at rest and opens when worked.${live}`;
}
