/** How the end of a core is joined and stripped, by the kind of part it lands on. Common practice, no source. */

import { isFixedFeed } from '../plan/fixed-feed.ts';
import type { Cable, Part, Plan, Run, TerminalRef } from '../plan/plan.ts';

export const END_METHODS = ['tab', 'screw', 'splice', 'clamp', 'lead', 'earth', 'battery'] as const;
export type EndMethod = (typeof END_METHODS)[number];

/** What each method is, for the legend of a list. */
export const METHOD_WORDS: Readonly<Record<EndMethod, string>> = {
  tab: 'quick-connect tab crimped on, or soldered, at a snap switch; where two cores go to one blade, both are crimped in one connector',
  screw: 'screw terminal of a supply, relay socket, board, control or fuse holder',
  splice: 'wire nut or splicing connector, all wires of the joint together',
  clamp: 'screw clamp under the fixed cap of a plug or outlet',
  lead: "soldered or crimped to the part's own lead, and sleeved",
  earth: 'ring tongue under the earth screw of the box',
  battery: 'quick-connect tab crimped on, at a battery',
};

/** One end of a core. */
export interface WireEnd {
  /** as the plan marks it */
  readonly terminal: string;
  readonly part: string;
  readonly method: EndMethod;
  /** mm of outer sheath to take off; null where there is none */
  readonly sheath: number | null;
  /** mm of insulation to take off; null for a bare link */
  readonly strip: number | null;
  /** a ferrule goes on: stranded copper under a screw */
  readonly ferrule: boolean;
}

/** mm of insulation for wire up to 1 mm². */
const STRIP: Readonly<Record<EndMethod, number>> = {
  tab: 6,
  screw: 7,
  splice: 11,
  clamp: 10,
  lead: 6,
  earth: 7,
  battery: 6,
};
/** mm more for thicker copper, by area in mm². */
const MORE = [
  { above: 6, mm: 5 },
  { above: 2.6, mm: 3 },
  { above: 1, mm: 1 },
] as const;
/** mm of sheath: little where a cable clamp is close to the terminal, much where cores spread in a box. */
const SHEATH: Readonly<Record<EndMethod, number>> = {
  tab: 40,
  screw: 100,
  splice: 100,
  clamp: 40,
  lead: 60,
  earth: 100,
  battery: 60,
};

function methodOf(part: Part | undefined): EndMethod {
  switch (part?.kind) {
    case 'gate':
      return 'tab';
    case 'battery':
      return 'battery';
    case 'joint':
    case 'motor':
    case 'load':
      return 'splice';
    case 'plug':
      return isFixedFeed(part) ? 'screw' : 'clamp';
    case 'outlet':
      return 'clamp';
    case 'diode':
    case 'led':
    case 'resistor':
    case 'lamp':
      return 'lead';
    case 'box':
      return 'earth';
    default:
      return 'screw';
  }
}

function stripOf(method: EndMethod, cable: Cable): number {
  const area = cable.area * 1e6;
  return STRIP[method] + (MORE.find((m) => area > m.above)?.mm ?? 0);
}

/** The end of `core` at `ref`, which is one of its two. */
export function endOf(plan: Plan, run: Run, ref: TerminalRef): WireEnd {
  const method = methodOf(plan.parts.get(ref.part));
  const { cable } = run;
  return {
    terminal: ref.written,
    part: ref.part,
    method,
    sheath: cable === undefined || cable.cores < 2 ? null : SHEATH[method],
    strip: cable === undefined ? null : stripOf(method, cable),
    ferrule: cable !== undefined && cable.strands !== 'solid' && (method === 'screw' || method === 'clamp'),
  };
}
