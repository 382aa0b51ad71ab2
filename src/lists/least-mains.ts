/** The least breaker, plug pattern and box, by the checks of the mains side. */

import { mainsBoxes } from '../findings/mains/box-contents.ts';
import { breakerMayTrip } from '../findings/mains/breaker-may-trip.ts';
import { breakerTooLarge } from '../findings/mains/breaker-too-large.ts';
import { circuitOverloaded } from '../findings/mains/circuit-overloaded.ts';
import { conductorUnprotected } from '../findings/mains/conductor-unprotected.ts';
import { plugMismatch } from '../findings/mains/plug-mismatch.ts';
import { tripsAtStart } from '../findings/mains/trips-at-start.ts';
import { findWeighed } from '../findings/unsaid/weigh.ts';
import type { Part, PlugPart } from '../plan/part-types.ts';
import { receptacleByName } from '../ratings/pattern-names.ts';
import type { ReceptacleRow } from '../ratings/table-rows.ts';
import { leastOf, sizesWith } from '../repair/remedies/ladder.ts';
import { withParts } from '../repair/remedies/put.ts';
import { breakerSizes, patternSizes } from '../repair/remedies/series.ts';
import type { Study } from '../study/study.ts';
import { ratingOf, type Tried, withTried } from './least-rating.ts';
import type { LeastRating, LeastRatings } from './materials-model.ts';

const NOTHING: LeastRatings = { least: [], untold: [] };
const BREAKER_CHECKS = [
  circuitOverloaded,
  tripsAtStart,
  breakerMayTrip,
  plugMismatch,
  breakerTooLarge,
  conductorUnprotected,
];

function leastBreaker(study: Study, names: readonly string[], plug: PlugPart): LeastRatings {
  const found = leastOf<number>(study, {
    sizes: sizesWith(breakerSizes(study.plan.practice), [plug.breaker]),
    plan: (breaker) => withParts(study.plan, names, (p) => (p.kind === 'plug' ? { ...p, breaker } : p)),
    judge: (s, inWords) => findWeighed(s, BREAKER_CHECKS, inWords, (part) => names.includes(part)),
    scan: true,
  });
  if ('untold' in found) return { least: [], untold: [found.untold] };
  const curve = plug.curve === undefined ? '' : ` curve ${plug.curve}`;
  const rating = ratingOf(found, {
    ...{ what: 'breaker', unit: 'A', value: (amps) => amps, more: '' },
    words: (amps) => `breaker of ${amps} A${curve}`,
  });
  return { least: [rating], untold: [] };
}

function leastPattern(study: Study, names: readonly string[], part: PlugPart): LeastRatings {
  if (part.pattern === undefined || part.pattern.toLowerCase() === 'fixed') return NOTHING;
  const row = receptacleByName(part.pattern, {
    volts: part.volts.volts,
    phases: part.feed === 'three-phase' ? 3 : 1,
  });
  if (row === undefined) return { least: [], untold: [`the pattern ${part.pattern} is not in the tables`] };
  const outlets = [...study.plan.parts.values()].filter(
    (p) => p.kind === 'outlet' && p.pattern === part.pattern,
  );
  const all = [...names, ...outlets.map((o) => o.name)];
  const found = leastOf<ReceptacleRow>(study, {
    sizes: patternSizes(row),
    plan: ({ names: [pattern] }) =>
      withParts(
        study.plan,
        all,
        (p): Part => ('pattern' in p && pattern !== undefined ? { ...p, pattern } : p),
      ),
    judge: (s, inWords) =>
      findWeighed(s, [plugMismatch, circuitOverloaded], inWords, (part) => all.includes(part)),
    scan: true,
  });
  if ('untold' in found) return { least: [], untold: [found.untold] };
  const rating = ratingOf(found, {
    ...{ what: 'pattern', unit: 'A', value: (r) => r.amps, more: '' },
    words: ({ names: own }) => `${own[0]} on the breaker of the plan`,
  });
  return { least: [rating], untold: [] };
}

/** Breaker, and the pattern that suits the breaker of the plan. */
export function leastPlug(study: Study, names: readonly string[], plug: PlugPart): LeastRatings {
  const both = [leastBreaker(study, names, plug), leastPattern(study, names, plug)];
  return { least: both.flatMap((b) => b.least), untold: [...new Set(both.flatMap((b) => b.untold))] };
}

const IN3 = 0.0254 ** 3;

/** in³ that the contents of a box need; undefined where the tables give no volume for them, or there is no mains in it. */
function volumeNeeded(study: Study, name: string): number | undefined {
  return mainsBoxes(study).find(({ box }) => box.name === name)?.fill?.in3;
}

/** The volume of boxes with mains in them, NEC 314.16(B). */
export function leastBox(study: Study, names: readonly string[]): LeastRatings {
  if (study.plan.practice !== 'nec')
    return { least: [], untold: ['no rule of this practice gives a volume; leave room for the bends'] };
  const needed = names.flatMap((n) => volumeNeeded(study, n) ?? []);
  if (needed.length === 0) return { least: [], untold: ['the tables give no volume for what is in it'] };
  const most = Math.max(...needed);
  // Rounded up, so that a box of just that size passes.
  const in3 = Math.ceil(most * 10 - 1e-6) / 10;
  const rating: LeastRating = {
    ...{ what: 'volume', value: in3, unit: 'in3', cautions: [], without: null },
    words: `${in3} in3 (${Math.ceil((in3 * IN3) / 1e-6)} cm3) and room for relays on top`,
  };
  const tenths = Math.round(in3 * 10);
  const at = (i: number): number => (tenths - 1 + i) / 10;
  const among: Tried = {
    ...{ index: 1, count: 2, valueAt: at, wordsAt: (i) => `${at(i)} in3` },
    planAt: (i) =>
      withParts(study.plan, names, (p): Part => (p.kind === 'box' ? { ...p, volume: at(i) * IN3 } : p)),
  };
  return { least: [withTried(rating, among)], untold: [] };
}
