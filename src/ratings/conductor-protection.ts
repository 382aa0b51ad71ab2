/** The largest breaker or fuse ahead of a conductor, and the thinnest earth beside one. */
import type { Practice } from '../plan/device-figures.ts';
import type { FuseClass } from '../plan/part-types.ts';
import type { Cable } from '../plan/plan.ts';
import { nextStandardRating } from './branch.ts';
import { SLACK } from './judgement.ts';
import { type Better, carriedIec, cordNec, isCord, type Laid, type Open, wireNec } from './laid-conductor.ts';
import * as tables from './table-files.ts';
import { gaugeWithin } from './wire.ts';

/** A breaker or fuse as conductors see it. */
export interface OvercurrentDevice {
  /** A */
  readonly amps: number;
  readonly kind: 'breaker' | 'fuse' | 'plug-fuse';
  /** of a fuse, where the plan says so */
  readonly class?: FuseClass | undefined;
}

/**
 * Times its rating that a conductor must carry: nec 1; iec by 433.1 so that what opens the device is at most 1.45 times
 * that: a breaker and a BS 1362 fuse 1, gG 1.10 to 1.45. Undefined for a fuse that breaks no overload (aM).
 */
export function neededShare(device: OvercurrentDevice, practice: Laid['practice']): number | undefined {
  if (device.class === 'aM') return undefined;
  if (practice === 'nec' || device.kind !== 'fuse') return 1;
  const rows = tables.fuseConventional().rows;
  const opens =
    device.class === 'gG'
      ? rows.find((r) => device.amps > r.above && device.amps <= r.upTo)?.opens
      : undefined;
  // Whatever opens at more is not known of another fuse: the latest of the table is taken.
  return Math.max(1, (opens ?? Math.max(...rows.map((r) => r.opens))) / 1.45);
}

/** Of a fuse whose class is not said, were it a gG one. */
export function neededShareAsGg(device: OvercurrentDevice, practice: Laid['practice']): number | undefined {
  const unsaid = device.kind === 'fuse' && device.class === undefined;
  return neededShare(unsaid ? { ...device, class: 'gG' } : device, practice);
}

export interface ConductorRule {
  readonly laid: Laid;
  /** NEC 240.4(B): the next standard size up is allowed */
  readonly roundsUp: boolean;
}

export interface ConductorLimit {
  /** A */
  readonly amps: number;
  readonly basis: string;
}

/** A of the largest device by the general rules: NEC 240.4 and 240.5(A), IEC 60364-4-43 clause 433.1 (at a share of one). */
export function largestAhead(cable: Cable, rule: ConductorRule, better: Better): ConductorLimit {
  const { laid } = rule;
  if (laid.practice === 'iec') {
    const carried = carriedIec(cable, laid, better);
    return { amps: carried.amps, basis: `IEC 60364-4-43 clause 433.1; ${carried.basis}` };
  }
  if (isCord(cable)) {
    const cord = cordNec(cable, laid, better);
    return { amps: cord.amps, basis: `NEC 240.5(A); ${cord.basis}` };
  }
  const { amps, cap, basis } = wireNec(cable, laid, better);
  const listed = amps > 0 && Number.isFinite(amps);
  const rounded = rule.roundsUp && listed ? (nextStandardRating(amps) ?? amps) : amps;
  const capped = cap !== undefined && cap < rounded;
  const most = capped ? cap : rounded;
  return { amps: most, basis: `NEC 240.4(${capped || cap === most ? 'D' : 'B'}); ${basis}` };
}

/** What a field of the plan settles, and what none does. */
const ASKED = ['ambient', 'rated', 'class'] as const satisfies readonly Open[];
const UNASKED = ['laying', 'memory'] as const satisfies readonly Open[];
const none: Better = { ambient: false, rated: false, class: false, laying: false, memory: false };
const unasked: Better = { ...none, laying: true, memory: true };
const all: Better = { ambient: true, rated: true, class: true, laying: true, memory: true };

export interface ConductorVerdict {
  /** between pass and fail what is open decides */
  readonly verdict: 'pass' | 'open' | 'fail';
  readonly limit: ConductorLimit;
  /** each would settle it alone; where none would, all that bear on it */
  readonly open: readonly Open[];
}

/**
 * A device against the conductors behind it. `need` is what they must be good for, A, its rating by its share;
 * `needAtBest` the same for the better end of a fuse's class.
 */
export function judgeAhead(
  limit: (better: Better) => ConductorLimit,
  { need, needAtBest }: { readonly need: number; readonly needAtBest: number },
): ConductorVerdict {
  const spare = (better: Better) => limit(better).amps / (better.class ? needAtBest : need);
  const holds = (better: Better) => spare(better) * SLACK >= 1;
  if (holds(none)) return { verdict: 'pass', limit: limit(none), open: [] };
  if (!holds(all)) return { verdict: 'fail', limit: limit(all), open: [] };
  // What a field can say is asked for wherever it may decide; only where it cannot, the rest is all there is to tell.
  const from = holds(unasked) ? none : unasked;
  const open = holds(unasked) ? UNASKED : ASKED;
  const decisive = open.filter((o) => !holds({ ...all, [o]: false }));
  const bearing = open.filter((o) => spare({ ...from, [o]: true }) > spare(from));
  return { verdict: 'open', limit: limit(none), open: decisive.length > 0 ? decisive : bearing };
}

/** NEC Table 430.72(B): which column. */
export type ControlPlace = 'own' | 'inside' | 'outside';

/** Largest device ahead of a control conductor, NEC 430.72(B) and 725.43; 0 for one thinner than 18 AWG. */
export function largestAheadOfControl(cable: Cable, place: ControlPlace): ConductorLimit {
  const { rows } = tables.controlProtection();
  const gauge = gaugeWithin(
    cable,
    rows.map((r) => r.awg),
  );
  const column = { own: 'A', inside: 'B', outside: 'C' }[place];
  const basis = `NEC Table 430.72(B), column ${column} (seen in one copy)`;
  if (gauge === 'thinner') return { amps: 0, basis: `${basis}: begins at 18 AWG` };
  const row = gauge === 'thicker' ? rows.at(-1)! : rows.find((r) => r.awg === gauge)!;
  return { amps: row[place], basis };
}

/** What stands beside an earth core. */
export interface EarthedCircuit {
  /** of a line to what it earths */
  readonly line: Cable;
  /** A of the breaker or fuse ahead of that line; undefined where the plan does not say */
  readonly ahead: number | undefined;
}

export interface EarthLimit {
  /** m² of copper */
  readonly area: number;
  /** gauge by the table, undefined where the line itself is the limit */
  readonly awg: number | undefined;
  readonly basis: string;
}

const SQUARE_MM = 1e-6;

/**
 * The thinnest earth core that may go with a line, NEC Table 250.122 or IEC 60364-5-54 Table 54.2. NEC asks for no more
 * than the line itself has (250.122(A)); where what stands ahead is not known, what the smallest device would ask for.
 */
export function leastEarth({ line, ahead }: EarthedCircuit, practice: Practice): EarthLimit {
  return practice === 'nec' ? byDevice(line, ahead ?? 0) : byLine(line);
}

function byDevice(line: Cable, ahead: number): EarthLimit {
  const rows = tables.earthConductors().rows.flatMap((r) => (r.practice === 'nec' ? [r] : []));
  const awg = rows.find((r) => ahead <= r.upTo)?.awg;
  const area = tables.wireAwg().rows.find((r) => r.awg === awg)?.area ?? Infinity;
  return area * SQUARE_MM < line.area
    ? { area: area * SQUARE_MM, awg, basis: 'NEC Table 250.122' }
    : { area: line.area, awg: undefined, basis: 'NEC 250.122(A) and Table 250.122' };
}

function byLine(line: Cable): EarthLimit {
  const mm2 = line.area / SQUARE_MM;
  const rows = tables.earthConductors().rows.flatMap((r) => (r.practice === 'iec' ? [r] : []));
  const { share, least } = rows.find((r) => mm2 <= r.upTo) ?? rows.at(-1)!;
  const area = Math.max(share * mm2, least) * SQUARE_MM;
  return { area, awg: undefined, basis: 'IEC 60364-5-54 Table 54.2 (seen in one summary)' };
}
