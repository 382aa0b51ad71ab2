/** The live conductors of a mains part: how its fields and the marks on it tell them, and its terminals by them. */

import type { Volts } from '../device-figures.ts';
import type { Feed } from '../part-types.ts';
import { figure, optional } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import type { Add, Surroundings } from './kind-row.ts';

/** Single-phase NEMA WD 6 series with two live legs, with or without a neutral. */
const TWO_LEG = new Set([2, 6, 8, 9, 10, 14]);
/** Three-phase NEMA WD 6 series. */
const THREE_PHASE = new Set([11, 12, 15, 16, 17, 18, 19, 20, 21, 22, 23]);

/** What a plug pattern says of its live conductors, or undefined when it says nothing. */
function patternFeed(pattern: string): Feed | undefined {
  const nema = /^\s*(?:NEMA\s*)?L?(\d{1,2})-\d{2}/.exec(pattern.toUpperCase());
  if (nema !== null) {
    const series = Number(nema[1]);
    if (THREE_PHASE.has(series)) return 'three-phase';
    return TWO_LEG.has(series) ? 'two-leg' : 'single';
  }
  if (/\b3P\b|\b(?:three|3)[- ]?phase\b/i.test(pattern)) return 'three-phase';
  if (/^\s*(?:CEE|BS\s*1363|AS\/NZS\s*3112)|\b2P\b/i.test(pattern)) return 'single';
  return undefined;
}

/** Everyday names of two-leg and three-phase patterns, and 110 V site sockets (55-0-55 V): they count where no mark says otherwise. */
const USUALLY: readonly (readonly [RegExp, Feed])[] = [
  [/\b(?:3p ?\+|three[- ]?phase|[45][- ]?pin|63 ?A|T15|T25)/i, 'three-phase'],
  [/\b(?:welder|dryer|range|generator) outlet\b|\bRV 50\b/i, 'two-leg'],
  [/\byellow\b|\b110 ?V\b/i, 'two-leg'],
];

/** What a pattern says of its live conductors where neither the plan nor a mark on the part does. */
export function usualFeed(pattern: string | undefined): Feed | undefined {
  return pattern === undefined ? undefined : USUALLY.find(([is]) => is.test(pattern))?.[1];
}

export const feed = () => ({
  phases: optional(figure([1, 3], 'Number of phases; 3 gives the terminals L1 L2 L3.')),
  legs: optional(figure([1, 2], 'Number of live legs; 2 gives the terminals L1 L2.')),
});

interface FeedFields {
  readonly phases?: 1 | 3 | undefined;
  readonly legs?: 1 | 2 | undefined;
}

/** What phases, legs and the pattern say. */
export function feedOfFields({ phases, legs }: FeedFields, pattern?: string): Feed | undefined {
  if (phases === 3) return 'three-phase';
  if (legs !== undefined) return legs === 2 ? 'two-leg' : 'single';
  const feed = pattern === undefined ? undefined : patternFeed(pattern);
  return feed === 'single' ? undefined : feed;
}

/** What the marks that runs use on a part say; L says so too: a single-leg outlet on a two-leg circuit. */
export function feedOfMarks(marks: ReadonlySet<string>): Feed | undefined {
  if (marks.has('L3')) return 'three-phase';
  if (marks.has('L1') || marks.has('L2')) return 'two-leg';
  return marks.has('L') ? 'single' : undefined;
}

export function checkFeed({ phases, legs }: FeedFields, add: Add): void {
  if (phases === 3 && legs !== undefined) add(['legs'], 'legs: not with phases: 3; leave one of them out');
}

const MAINS: Readonly<Record<Feed, readonly string[]>> = {
  single: ['L', 'N', 'PE'],
  'two-leg': ['L1', 'L2', 'N', 'PE'],
  'three-phase': ['L1', 'L2', 'L3', 'N', 'PE'],
  dc: ['+', '-', 'PE'],
};

export const mainsTerminals = (of: Feed): Terminals => shared(of, () => new Terminals(MAINS[of]));

export const builtFeed = ({ phases, legs }: FeedFields, of: Feed) => ({ feed: of, phases, legs });

/** Mains volts between the conductors of a feed, by what is usual between one and neutral. */
export function usualVolts({ feed: own, fedVolts: { volts, kind: of } }: Surroundings): Volts {
  // Other volts than those to neutral are between live conductors already.
  const between = volts === 120 ? 240 : volts === 230 ? 400 : volts;
  return { volts: own === 'single' ? volts : between, kind: of };
}

/** What is said of volts that the plan leaves to the rest of it. */
export const takenVolts = ({ volts }: { readonly volts?: Volts | undefined }, shown: string, fed: Volts) =>
  volts === undefined
    ? `${shown} gives no volts: ${fed.volts} V ${fed.kind.toUpperCase()} is taken.`
    : undefined;
