/** The least supply, fuse and cable, by the checks of the loop and of the mains side. */

import { coilDropsAtStart } from '../findings/coil/coil-drops-at-start.ts';
import { coilThinMargin } from '../findings/coil/coil-thin-margin.ts';
import { coilTooLow } from '../findings/coil/coil-too-low.ts';
import type { Check } from '../findings/entry.ts';
import { dropLarge } from '../findings/loop/drop-large.ts';
import { supplyOverloaded } from '../findings/loop/supply-overloaded.ts';
import { wireOverloaded } from '../findings/loop/wire-overloaded.ts';
import { conductorUnprotected } from '../findings/mains/conductor-unprotected.ts';
import { cordTooThin } from '../findings/mains/cord-too-thin.ts';
import { findWeighed } from '../findings/unsaid/weigh.ts';
import type { SupplyPart } from '../plan/part-types.ts';
import type { Cable } from '../plan/plan.ts';
import { ratedAmps } from '../ratings/supply.ts';
import { thickerSizes } from '../ratings/wire.ts';
import { type Ladder, leastOf, sizesWith } from '../repair/remedies/ladder.ts';
import { withCable, withLimit, withParts } from '../repair/remedies/put.ts';
import { SUPPLY_AMPS, SUPPLY_VA } from '../repair/remedies/series.ts';
import type { Study } from '../study/study.ts';
import { rounded } from '../text/numbers.ts';
import type { CableGroup } from './cuts.ts';
import { ratingOf } from './least-rating.ts';
import type { LeastRatings } from './materials-model.ts';

const num = (x: number): string => `${rounded(x, 4)}`;

/** What stands against a coil's volts. */
const LOW_COIL: readonly Check[] = [coilDropsAtStart, coilTooLow, coilThinMargin];

function judgeSupply(names: readonly string[]): Ladder<number>['judge'] {
  return (s, inWords) => {
    const fed = s.coilStates.filter((x) => names.includes(x.fed.source.part)).map((x) => x.fed.part.name);
    const concerned = new Set([...names, ...fed]);
    return findWeighed(s, [supplyOverloaded, ...LOW_COIL], inWords, (part) => concerned.has(part));
  };
}

/** Undecided circuits are not judged at all; nothing found in them means nothing. */
export const UNDECIDED: LeastRatings = {
  least: [],
  untold: ['which states feed the coils was not decided'],
};

/** The least output of equal supplies. */
export function leastSupply(study: Study, names: readonly string[], part: SupplyPart): LeastRatings {
  if (study.verified === undefined) return UNDECIDED;
  const ac = part.output.kind === 'ac';
  const { amps, volts, kind } = { ...part.output, amps: ratedAmps(part) };
  const own = ac ? Number((amps * volts).toPrecision(6)) : amps;
  const found = leastOf<number>(study, {
    sizes: sizesWith(ac ? SUPPLY_VA : SUPPLY_AMPS, [own]),
    plan: (size) => withParts(study.plan, names, (p) => (p.kind === 'supply' ? withLimit(p, size) : p)),
    judge: judgeSupply(names),
  });
  if ('untold' in found) return { least: [], untold: [found.untold] };
  const unit = ac ? 'VA' : 'A';
  const rating = ratingOf(found, {
    ...{ what: 'output', unit, value: (size) => size },
    words: (size) => `${num(size)} ${unit} at ${num(volts)} V ${kind.toUpperCase()}`,
  });
  return { least: [rating], untold: [] };
}

/** All sizes of the cable's own system, thinnest first. */
function sizesOf(cable: Cable): readonly Cable[] {
  return thickerSizes({ ...cable, area: 0 });
}

/** Sizes of the system with the cable's own among them, which no table may list. */
export function sizesWithOwn(cable: Cable): readonly Cable[] {
  const listed = sizesOf(cable);
  if (listed.some((c) => Math.abs(c.area / cable.area - 1) < SAME)) return listed;
  return [...listed, cable].sort((a, b) => a.area - b.area);
}
/** Share by which areas of one size may differ: a gauge in mm2 is rounded. */
const SAME = 0.01;

/** The thinnest size of one cable; `sides` says what its runs carry. */
export function leastCable(
  study: Study,
  group: CableGroup,
  sides: { readonly mains: boolean; readonly low: boolean },
): LeastRatings {
  if (study.verified === undefined) return UNDECIDED;
  const runs = new Set(group.runs.map((r) => r.index));
  const checks = [
    ...(sides.low ? [...LOW_COIL, wireOverloaded, dropLarge] : []),
    ...(sides.mains ? [cordTooThin, conductorUnprotected] : []),
  ];
  const judge = (s: Study, inWords: boolean) => findWeighed(s, checks, inWords);
  const sizes = sizesWithOwn(group.cable);
  const found = leastOf(study, {
    sizes,
    own: sizes.findIndex((c) => Math.abs(c.area / group.cable.area - 1) < SAME),
    // The checks tell one cable from another by its gauge, so the one that is tried has a gauge of its own.
    plan: (c) => withCable(study.plan, runs, { ...c, gauge: `${c.gauge} as ${group.name}` }),
    judge,
  });
  if ('untold' in found) return { least: [], untold: [found.untold] };
  const { awg } = found.size;
  const value = (c: Cable) => c.awg ?? Number((c.area * 1e6).toPrecision(4));
  const rating = ratingOf(found, {
    ...{ what: 'gauge', unit: awg === undefined ? 'mm2' : 'AWG', value, more: ' or thicker' },
    words: (c) => c.gauge,
  });
  const first = found.cautions.length > 0 ? '' : found.index > 0 ? ' or thicker' : thinnest(group.cable);
  return { least: [{ ...rating, words: `${rating.words}${first}` }], untold: [] };
}

/** What is said of a size below which none was tried. */
function thinnest(cable: Cable): string {
  const least = sizesOf(cable)[0];
  const below = least !== undefined && cable.area < least.area * (1 - SAME);
  return below ? ' as in the plan, which is thinner than any in the tables' : ', the thinnest in the tables';
}
