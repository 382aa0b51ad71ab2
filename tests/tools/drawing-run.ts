/** `npm run bench` part: figures of the drawings of all examples and of generated plans. `--plans 500` says how many. */

import { SMALL_TYPE } from '../../src/draw/layout/measures.ts';
import { layOnSheets, paperOf } from '../../src/draw/paper.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { allExamples, generatedPlans } from '../draw/plans.ts';
import { type DrawingFigures, figuresOf } from './drawing-figures.ts';

const at = process.argv.indexOf('--plans');
const count = at < 0 ? 500 : Number(process.argv[at + 1]);

/** px of an A4 sheet that a drawing may take, its margin and title block left out. */
const MARGIN = 32;
const BLOCK = 84;
/** points of a px at 96 px to the inch. */
const POINTS = 0.75;

const roomFor = (across: boolean) => {
  const { width, height } = paperOf('a4', across);
  return { width: width - 2 * MARGIN, height: height - 2 * MARGIN - BLOCK, below: 0 };
};

interface Sum extends DrawingFigures {
  readonly cores: number;
  readonly share: number;
  readonly sheets: number;
  readonly type: number;
}

function sumOf(name: string, text: string): Sum | undefined {
  const read = readPlan(text, name);
  if (!read.ok) return undefined;
  const { circuit, sides } = Study.of(read.plan);
  const laid = layOnSheets({ circuit, sides }, roomFor);
  const { width, height } = roomFor(laid.across);
  const figures = laid.cuts.map((cut) => figuresOf(cut.drawing));
  const add = (of: (f: DrawingFigures) => number) => figures.reduce((sum, f) => sum + of(f), 0);
  const used = laid.cuts.reduce(
    (sum, cut) => sum + (cut.drawing.width * (cut.bottom - cut.top) * laid.scale ** 2) / (width * height),
    0,
  );
  return {
    cores: read.plan.runs.reduce((sum, run) => sum + run.cores.length, 0),
    bends: add((f) => f.bends),
    length: add((f) => f.length),
    least: add((f) => f.least),
    crossings: add((f) => f.crossings),
    share: used / laid.cuts.length,
    sheets: laid.cuts.length,
    type: SMALL_TYPE * laid.scale * POINTS,
  };
}

function tell(title: string, plans: readonly { readonly name: string; readonly text: string }[]): void {
  const sums = plans.flatMap(({ name, text }) => sumOf(name, text) ?? []);
  const total = (of: (s: Sum) => number) => sums.reduce((sum, s) => sum + of(s), 0);
  const cores = total((s) => s.cores);
  console.log(`${title}: ${sums.length} plans, ${cores} cores`);
  console.log(`  bends a conductor          ${(total((s) => s.bends) / cores).toFixed(2)}`);
  console.log(`  length a conductor         ${(total((s) => s.length) / cores).toFixed(0)} px`);
  console.log(`  length over the least      ${(total((s) => s.length) / total((s) => s.least)).toFixed(2)}`);
  console.log(`  crossings a drawing        ${(total((s) => s.crossings) / sums.length).toFixed(1)}`);
  console.log(`  share of the sheet in use  ${((100 * total((s) => s.share)) / sums.length).toFixed(0)} %`);
  console.log(`  sheets of A4               ${(total((s) => s.sheets) / sums.length).toFixed(2)}`);
  console.log(`  least type                 ${Math.min(...sums.map((s) => s.type)).toFixed(1)} points`);
}

tell('Examples', allExamples());
tell('Generated plans', generatedPlans(count, 20261125));
