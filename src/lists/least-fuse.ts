/** The least fuse: what its circuit carries, read in every position that bears on it, and what the wire bears. */

import type { Check } from '../findings/entry.ts';
import { fuseTooSmall } from '../findings/loop/fuse-too-small.ts';
import { supplyOverloaded } from '../findings/loop/supply-overloaded.ts';
import { wireOverloaded } from '../findings/loop/wire-overloaded.ts';
import { conductorUnprotected } from '../findings/mains/conductor-unprotected.ts';
import { mainsFuses } from '../findings/mains/mains-fuses.ts';
import { atWorseEnds, findWeighed } from '../findings/unsaid/weigh.ts';
import { poweredMachine } from '../machine/power.ts';
import { solveState } from '../machine/solved-state.ts';
import type { FusePart } from '../plan/part-types.ts';
import { type Ladder, leastOf, sizesWith, type Trouble } from '../repair/remedies/ladder.ts';
import { withParts } from '../repair/remedies/put.ts';
import { FUSE_AMPS } from '../repair/remedies/series.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import { UNDECIDED } from './least-loop.ts';
import { ratingOf } from './least-rating.ts';
import type { LeastRatings } from './materials-model.ts';

/** A, further sizes of gG fuses, IEC 60269-2. */
const MAINS_FUSE_AMPS = [16, 20, 25, 32, 35, 40, 50, 63] as const;

/** Inputs up to which every combination is read. */
const MOST_INPUTS = 6;

/** Combinations of inputs to read: all, or where there are many rest, each alone, and everything of a kind together. */
function positions({ circuit }: Study): number[][] {
  const { inputs } = circuit;
  if (inputs.length <= MOST_INPUTS)
    return Array.from({ length: 2 ** inputs.length }, (_, bits) =>
      inputs.filter((_, i) => (bits >> i) & 1).map((i) => i.index),
    );
  const gates = inputs.filter((i) => i.kind === 'gate').map((i) => i.index);
  const others = inputs.filter((i) => i.kind !== 'gate').map((i) => i.index);
  const steady = inputs.filter((i) => i.kind === 'gate' || i.kind === 'switch').map((i) => i.index);
  const alone = inputs.map((i) => [i.index]);
  return [[], ...alone, gates, steady, ...others.map((i) => [...new Set([...gates, i])])];
}

/** As `mostIn`, with what the plan leaves out at whichever end makes it most. */
export function mostThrough(study: Study, names: readonly string[]): number | undefined {
  const all = atWorseEnds(study, supplyOverloaded.entry.question).map((s) => mostIn(s, names));
  return all.reduce((a, b) => (a === undefined || b === undefined ? undefined : Math.max(a, b)));
}

/** The most (A) that flows in any of some fuses, as `read` tells it; undefined where some position cannot be told. */
function mostIn(study: Study, names: readonly string[]): number | undefined {
  const machine = poweredMachine(study);
  const rest = machine.start([]);
  let most = 0;
  for (const moved of positions(study)) {
    const state = machine.moveTo(moved, rest);
    const { byNet } = solveState(study.plan, state);
    for (const contact of state.circuit.contacts) {
      if (!names.includes(contact.part)) continue;
      const island = byNet.get(contact.a);
      // Nothing flows where no supply reaches.
      if (island === undefined) continue;
      const amps =
        island.notWorkedOut === undefined && state.settled ? island.flows.amps(contact) : undefined;
      if (amps === undefined || island.flows.island.sources.some((s) => s.mains)) return undefined;
      most = Math.max(most, Math.hypot(amps.re, amps.im));
    }
  }
  return most;
}

/** What one check has against some fuses. */
const judgeOf = (names: readonly string[]) => (check: Check) => (s: Study, inWords: boolean) =>
  findWeighed(s, [check], inWords, (part) => names.includes(part));

/** From the least fuse that carries what flows to the largest that the wire bears. */
export function leastFuse(study: Study, names: readonly string[], part: FusePart): LeastRatings {
  if (study.verified === undefined) return UNDECIDED;
  if (mainsFuses(study).some((f) => names.includes(f.fuse.name))) return leastMainsFuse(study, names, part);
  const carries = mostThrough(study, names);
  if (carries === undefined) return { least: [], untold: ['the current through it is not worked out'] };
  if (carries < NEXT_TO_NONE) return { least: [], untold: ['nothing flows through it in the plan'] };
  const judge = judgeOf(names);
  const blows = (s: Study): Trouble[] => {
    const fuse = s.plan.parts.get(part.name);
    const small = fuse?.kind === 'fuse' && (fuse.rating ?? Infinity) < carries * (1 - 1e-9);
    const message = `${names.join(', ')} would carry more than any size listed`;
    return small ? [{ id: 'fuse-too-small', severity: 'fault', message }] : [];
  };
  const plan = (rating: number) =>
    withParts(study.plan, names, (p): FusePart | typeof p => (p.kind === 'fuse' ? { ...p, rating } : p));
  const sizes = sizesWith(FUSE_AMPS, part.rating === undefined ? [] : [part.rating]);
  const ladder = (more: Pick<Ladder<number>, 'sizes' | 'judge'>) => leastOf<number>(study, { plan, ...more });
  const tooSmall = judge(fuseTooSmall);
  const least = ladder({ sizes, judge: (s, inWords) => [...blows(s), ...tooSmall(s, inWords)] });
  if ('untold' in least) return { least: [], untold: [least.untold] };
  const most = ladder({ sizes: [...sizes].reverse(), judge: judge(wireOverloaded) });
  const value = (amps: number) => amps;
  const words = (amps: number) => `${rounded(amps, 4)} A`;
  const rating = ratingOf(least, { what: 'rating', unit: 'A', value, words });
  if ('untold' in most) return { least: [rating], untold: [most.untold] };
  if (most.index === 0) return { least: [rating], untold: [] };
  const upper = ratingOf(most, { what: 'most', unit: 'A', value, words: (a) => `at most ${words(a)}` });
  return { least: [rating, upper], untold: [] };
}

/** On the mains: from the least that carries running and start to the largest that its conductors may have ahead. */
function leastMainsFuse(study: Study, names: readonly string[], part: FusePart): LeastRatings {
  const judge = judgeOf(names);
  const plan = (rating: number) =>
    withParts(study.plan, names, (p): FusePart | typeof p => (p.kind === 'fuse' ? { ...p, rating } : p));
  // Behind a breaker a larger fuse has nothing left to do.
  const ahead = mainsFuses(study).find((f) => names.includes(f.fuse.name))?.from.plug.breaker ?? Infinity;
  const sizes = sizesWith(
    [...FUSE_AMPS, ...MAINS_FUSE_AMPS],
    part.rating === undefined ? [] : [part.rating],
  ).filter((amps) => amps <= Math.max(ahead, part.rating ?? 0));
  const least = leastOf<number>(study, { plan, sizes, judge: judge(fuseTooSmall) });
  const most = leastOf<number>(study, {
    plan,
    sizes: [...sizes].reverse(),
    judge: judge(conductorUnprotected),
  });
  const value = (amps: number) => amps;
  const words = (amps: number) => `${rounded(amps, 4)} A`;
  const shown = [
    'untold' in least ? undefined : ratingOf(least, { what: 'rating', unit: 'A', value, words, more: '' }),
    'untold' in most || most.index === 0
      ? undefined
      : ratingOf(most, { what: 'most', unit: 'A', value, words: (a) => `at most ${words(a)}` }),
  ];
  const untold = [least, most].flatMap((x) => ('untold' in x ? [x.untold] : []));
  return { least: shown.filter((x) => x !== undefined), untold: [...new Set(untold)] };
}

/** A below which a reading is rounding. */
const NEXT_TO_NONE = 1e-6;
