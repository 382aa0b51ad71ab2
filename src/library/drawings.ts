/** Drawings of a plan. */
import { drawingInput } from '../draw/input.ts';
import type { PaperSize } from '../draw/paper-sizes.ts';
import { renderRuns } from '../draw/runs/characters.ts';
import { runsSheet } from '../draw/runs/runs-sheet.ts';
import { sheetsOf } from '../draw/sheet.ts';
import { renderDrawing } from '../draw/terminal-window.ts';
import { judge } from '../findings/judge.ts';
import { inputsNamed, type Positions } from '../machine/named.ts';
import { answered } from './not-answered.ts';
import { type Study, wholeOf } from './study.ts';

/** What is drawn. */
export interface DrawingOptions {
  /** what stands away from rest, with live conductors drawn heavier; left out: at rest, with none heavier */
  readonly positions?: Positions;
  /** true: the runs of cable between boxes and parts in place of the circuit, and `positions` does not count; default false */
  readonly runs?: boolean;
}

/** How a drawing lies on paper. */
export interface SheetOptions extends DrawingOptions {
  /** default `a4` */
  readonly size?: PaperSize;
  /** date of the plan for the title block, such as `2026-11-25`; default none */
  readonly date?: string;
}

/** How a drawing lies in a terminal. */
export interface WindowOptions extends DrawingOptions {
  /** columns to fill; default 80 */
  readonly width?: number;
  /** false: ASCII in place of line characters; default true */
  readonly unicode?: boolean;
}

function inputOf(study: Study, { positions }: DrawingOptions) {
  const whole = wholeOf(study);
  return answered(() => drawingInput(whole, positions && inputsNamed(whole.plan, positions, (way) => way)));
}

function runsOf(study: Study) {
  const whole = wholeOf(study);
  const { plan, circuit, sides } = whole;
  return { plan, circuit, sides, report: judge(whole) };
}

/**
 * The ladder diagram, or with `runs` the map of the cables, as SVG: a text for each sheet, as `pullin draw -o` writes them.
 * No word is below 8 points; symbols are those of IEC 60617 or ANSI Y32.2, by the practice of the plan.
 * @throws {NotAnswered} `name`, for an input that the plan has not
 */
export function drawSvg(study: Study, options: SheetOptions = {}): readonly string[] {
  const { size = 'a4', date } = options;
  const dated = date === undefined ? {} : { date };
  if (options.runs === true) return [runsSheet({ ...runsOf(study), ...dated }, size).svg];
  return sheetsOf({ ...inputOf(study, options), ...dated }, size).svgs;
}

/**
 * The same in characters, as `pullin draw` prints it: at most `width` columns wide, if one column of symbols fits into them.
 * @throws {NotAnswered} `name`, for an input that the plan has not
 */
export function drawText(study: Study, options: WindowOptions = {}): string {
  const { width = 80, unicode = true } = options;
  return options.runs === true
    ? renderRuns(runsOf(study), width, unicode)
    : renderDrawing(inputOf(study, options), width, unicode);
}
