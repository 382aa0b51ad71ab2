/** How far the farthest gate could be for each gauge, and the volts at the coil along that way. */
import { coilTooLow } from '../../findings/coil/coil-too-low.ts';
import { lengthUnit } from '../../plan/length-unit.ts';
import type { Cable } from '../../plan/plan.ts';
import { type LengthUnit, lengthWords } from '../../text/lengths.ts';
import { type FarGate, farGate, isOwn, leastWith, loopGauges, loopRuns, withLast } from './loop-way.ts';
import type { Section, SizeFigure } from './size-model.ts';
import { tight } from './tight.ts';
import { type Questions, type Trial, worseOf } from './trial.ts';
import { withGauge } from './wires.ts';

const QUESTIONS: Questions = [4, 5];
/** m of one step: ten centimetres, or half a foot. */
const STEP: Readonly<Record<LengthUnit, number>> = { m: 0.1, ft: 0.1524 };
/** m of cable from the supply to the gate up to which is looked: a kilometre, or 3000 feet. */
const MOST: Readonly<Record<LengthUnit, number>> = { m: 1000, ft: 914.4 };

function reachWith(trial: Trial, far: FarGate, size: Cable): SizeFigure | { readonly untold: string } {
  const { study } = trial;
  const unit = lengthUnit(study.plan);
  const [step, most] = [STEP[unit], MOST[unit]];
  const runs = new Set(loopRuns(study).map((r) => r.index));
  const plan = withGauge(study.plan, runs, size);
  // The least length of the last runs is a step; lengths of the whole way are in whole steps.
  const shortest = far.metres - Math.min(...far.last.map((r) => r.length!));
  const firstStep = Math.floor(shortest / step + 1e-6) + 1;
  const count = Math.max(1, Math.round(most / step) - firstStep + 1);
  const metresAt = (i: number) => (firstStep + count - 1 - i) * step;
  const ends = [study, ...worseOf(study, coilTooLow)].map((at) => ({ at, far: farGate(at) }));
  const short = (i: number) =>
    ends.some(
      ({ at, far: end }) =>
        !('untold' in end) && leastWith(at, end, size, metresAt(i) - far.metres) < end.state.pullIn - 1e-9,
    );
  const found = tight(trial, {
    ...{ count, questions: QUESTIONS, further: isOwn(study, size) },
    guess: firstLong(count, short),
    planAt: (i) => withLast(plan, far.last, metresAt(i) - far.metres),
    wordsAt: (i) => lengthWords(metresAt(i), unit),
  });
  const of = size.gauge;
  if ('untold' in found) return { untold: `${of}: ${found.untold}` };
  const metres = metresAt(found.index);
  return {
    ...{ of, parts: [far.gate], runs: far.last.map((r) => r.index + 1), what: 'distance' },
    ...{ value: Number(metres.toFixed(4)), unit: 'm' },
    words: `${lengthWords(metres, unit)}${found.limit === null ? ' or more' : ''}`,
    cautions: found.cautions,
    limit: found.limit,
    next: found.next,
  };
}

/** The first index at which the coil gets enough by one solve a try. */
function firstLong(count: number, short: (index: number) => boolean): number {
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (short(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The distance to the farthest gate for each gauge of the loop. */
export function sizeReach(trial: Trial): Section {
  const far = farGate(trial.study);
  if ('untold' in far) return { figures: [], untold: [far.untold] };
  const found = loopGauges(trial.study).map((size) => reachWith(trial, far, size));
  return {
    figures: found.flatMap((f) => ('untold' in f ? [] : [f])),
    untold: found.flatMap((f) => ('untold' in f ? [f.untold] : [])),
  };
}
