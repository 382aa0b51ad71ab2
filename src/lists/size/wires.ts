/** The thinnest gauge of each cable, and of each run by itself. */
import type { Cable, Plan, Run } from '../../plan/plan.ts';
import { inGauge } from '../../repair/remedies/change.ts';
import { runText } from '../../text/run-names.ts';
import { cableGroups } from '../cuts.ts';
import { sizesWithOwn } from '../least-loop.ts';
import { sectionOf } from '../wiring-order.ts';
import type { Section, SizeFigure } from './size-model.ts';
import { tight } from './tight.ts';
import type { Questions, Trial } from './trial.ts';

/** Runs up to which each is tried by itself; of more the cables alone are told. */
const MOST_RUNS = 24;

/** Share by which areas of one size may differ: a gauge in mm2 is rounded. */
const SAME = 0.01;

/** The plan with some runs in another gauge. */
export function withGauge(plan: Plan, runs: ReadonlySet<number>, size: Cable): Plan {
  return {
    ...plan,
    runs: plan.runs.map((r) =>
      runs.has(r.index) && r.cable !== undefined ? { ...r, cable: inGauge(r.cable, size) } : r,
    ),
  };
}

/** Which questions the wire of some runs answers to: 4 and 5 in the loop, 7 on the mains. */
function questionsOf({ study }: Trial, runs: readonly Run[]): Questions {
  const sides = new Set(
    runs.flatMap((r) => r.cores.map((core) => sectionOf(study.circuit, study.sides, core))),
  );
  return [
    ...(sides.has('low voltage') ? ([4, 5] as const) : []),
    ...(sides.has('mains') ? [7 as const] : []),
  ];
}

interface Piece {
  readonly of: string;
  readonly cable: Cable;
  readonly runs: readonly Run[];
  readonly further: boolean;
}

function thinnest(
  trial: Trial,
  { of, cable, runs, further }: Piece,
): SizeFigure | { readonly untold: string } {
  const { plan } = trial.study;
  const indices = new Set(runs.map((r) => r.index));
  const sizes = sizesWithOwn(cable);
  const found = tight(trial, {
    ...{ count: sizes.length, guess: 0, questions: questionsOf(trial, runs), further },
    own: sizes.findIndex((c) => Math.abs(c.area / cable.area - 1) < SAME),
    planAt: (i) => withGauge(plan, indices, sizes[i]!),
    wordsAt: (i) => sizes[i]!.gauge,
  });
  if ('untold' in found) return { untold: `${of}: ${found.untold}` };
  const { awg, area, gauge } = sizes[found.index]!;
  return {
    ...{ of, parts: [], runs: runs.map((r) => r.index + 1), what: 'gauge' },
    ...(awg === undefined
      ? { value: Number((area * 1e6).toPrecision(4)), unit: 'mm2' }
      : { value: awg, unit: 'AWG' }),
    words: found.limit === null ? `${gauge}, the thinnest in the tables` : `${gauge} or thicker`,
    cautions: found.cautions,
    limit: found.limit,
    next: found.next,
  };
}

/** Each cable with all of its runs in one gauge, then each run alone with all others as they stand. */
export function sizeWires(trial: Trial): Section {
  const { plan } = trial.study;
  const groups = cableGroups(plan);
  const cables = groups.map(({ name, cable, runs }): Piece => ({ of: name, cable, runs, further: true }));
  const laid = plan.runs.filter((r) => r.cable !== undefined);
  const alone = laid.map((r): Piece => ({ of: runText(r), cable: r.cable!, runs: [r], further: false }));
  // A cable of one run is told already.
  const single = new Set(groups.filter((g) => g.runs.length === 1).map((g) => g.runs[0]!.index));
  const each = laid.length > MOST_RUNS ? [] : alone.filter((p) => !single.has(p.runs[0]!.index));
  const found = [...cables, ...each].map((piece) => thinnest(trial, piece));
  const many =
    laid.length > MOST_RUNS
      ? [`each run by itself: told up to ${MOST_RUNS} runs, and this plan has ${laid.length}`]
      : [];
  return {
    figures: found.flatMap((f) => ('untold' in f ? [] : [f])),
    untold: [...found.flatMap((f) => ('untold' in f ? [f.untold] : [])), ...many],
  };
}
