/** One reading of the right circuit: what it ought to be, how far it may stray, and whether another reading is wrong. */

import { BEEP_OHMS, isSure, type OhmsRead } from '../machine/ohmmeter.ts';
import type { Volts } from './powered-circuit.ts';
import type { Pair } from './probe-pairs.ts';
import type { Expected, MeterStage, Wrong } from './sheet/sheet-model.ts';
import type { Stance } from './stance.ts';
import type { Subject } from './subject.ts';

/** Where everything stands, and where the probes are. */
export interface Where {
  readonly stance: Stance;
  readonly pair: Pair;
  /** terminals that a clip lead joins */
  readonly clipped: readonly string[];
}

export interface Measure extends Where {
  readonly stage: MeterStage;
  readonly range: string;
  /** full scale of the range, ohm or V */
  readonly full: number;
  readonly expect: Expected;
  /** the supply at whose poles this is read, with nothing else on them */
  readonly alone?: string;
}

/** A cheap meter's error: a share of the reading, and last digits of a scale of 2000; common practice, no source. */
const SHARE = 0.02;
const DIGITS = 5 / 2000;
/** Share of full scale under which volts are taken for nothing. */
export const NOTHING = 0.05;
/** ohm up to which a reading ought to stay for a beep to be counted on. */
const BEEPS_SURELY = 25;
/** ohm from which a reading is told by its number as well. */
const A_NUMBER = 2;

const OHM_RANGES = [
  [200, '200 ohm'],
  [2e3, '2 kohm'],
  [2e4, '20 kohm'],
  [2e5, '200 kohm'],
  [2e6, '2 Mohm'],
] as const;
const VOLT_RANGES = [2, 20, 200, 600, 1000] as const;
/** Dial position on which no way through is looked for. */
const OPEN = OHM_RANGES[2];

/** Readings in ohms; none where the plan does not tell enough. `limits` go from least to most. */
export function ohmMeasures(
  stage: 1 | 2,
  where: Where,
  nominal: OhmsRead,
  limits: readonly [number, number],
): Measure[] {
  const base = { ...where, stage };
  const none = nominal.most === Number.POSITIVE_INFINITY;
  const range = OHM_RANGES.find(([full]) => limits[1] * (1 + SHARE) < full);
  if (!isSure(nominal)) {
    if (none || range === undefined) return [];
    const below = {
      nominal: null,
      low: null,
      high: limits[1],
      unit: 'ohm',
      kind: null,
      shows: 'below',
    } as const;
    return [{ ...base, range: range[1], full: range[0], expect: below }];
  }
  const expect = { nominal: nominal.most, low: limits[0], high: limits[1], unit: 'ohm', kind: null } as const;
  if (none) {
    const open = { ...expect, shows: 'open', nominal: null, low: null, high: null } as const;
    return [{ ...base, range: OPEN[1], full: OPEN[0], expect: open }];
  }
  const made: Measure[] = [];
  if (limits[1] < BEEPS_SURELY)
    made.push({ ...base, range: 'continuity', full: 200, expect: { ...expect, shows: 'beeps' } });
  if (nominal.most >= A_NUMBER && range)
    made.push({ ...base, range: range[1], full: range[0], expect: { ...expect, shows: 'ohms' } });
  return made;
}

/**
 * A reading with power on; undefined where the plan does not tell enough. `all` are readings at the ends of the
 * tolerances, `most` the volts that could appear there, V.
 */
export function liveMeasure(
  stage: 2 | 3,
  where: Where,
  nominal: Volts | undefined,
  all: readonly (Volts | undefined)[],
  most: Volts,
): Measure | undefined {
  if (nominal === undefined || all.some((v) => v === undefined)) return undefined;
  const values = [nominal, ...(all as readonly Volts[])].map((v) => v.volts);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const kind = nominal.kind ?? most.kind;
  const full = VOLT_RANGES.find((v) => Math.max(-low, high, most.volts) * (1 + SHARE) < v);
  if (full === undefined || kind === null) return undefined;
  const base = { ...where, stage, full, range: `${full} V ${kind.toUpperCase()}` };
  const floor = NOTHING * full;
  const expect = { nominal: nominal.volts, unit: 'V', kind: nominal.kind } as const;
  if (low > -floor && high < floor)
    return { ...base, expect: { ...expect, shows: 'nothing', low: null, high: floor } };
  if (low >= floor) return { ...base, expect: { ...expect, shows: 'volts', low, high } };
  if (high > -floor) return undefined;
  // Probes the other way round, so that a right circuit never shows a minus sign.
  const pair = { ...where.pair, a: where.pair.b, b: where.pair.a };
  const turned = { ...expect, nominal: -nominal.volts, shows: 'volts', low: -high, high: -low } as const;
  return { ...base, pair, expect: turned };
}

/** How a circuit's reading differs from what it ought to be; undefined where it does not, or cannot be told. */
export function howWrong(measure: Measure, subject: Subject): Wrong | undefined {
  const { stance, pair, stage, clipped } = measure;
  if (measure.expect.unit === 'ohm') {
    const relays = stage === 1 ? undefined : subject.loop.relaysAt(stance, pair.a, pair.b);
    if (stage !== 1 && relays === undefined) return undefined;
    return wrongOhms(
      measure,
      subject.dead.readOneOfMany({ moved: stance.moved, relays, clipped }, pair.a, pair.b),
    );
  }
  const powered = stage === 2 ? subject.loop : subject.mains;
  const found = wrongVolts(measure, powered.volts(stance, pair.a, pair.b));
  return found ?? wrongAtEvery(measure, powered.moments(stance, pair.a, pair.b));
}

/** Where relays never rest, as with a supply that one of them shorts: only what is wrong alike at every moment. */
function wrongAtEvery(measure: Measure, moments: readonly (Volts | undefined)[]): Wrong | undefined {
  const wrong = new Set(moments.map((volts) => wrongVolts(measure, volts)));
  return wrong.size === 1 ? [...wrong][0] : undefined;
}

/** Judges a reading in ohms. */
export function wrongOhms({ expect, full }: Measure, { least, most }: OhmsRead): Wrong | undefined {
  if (expect.shows === 'open') {
    if (most >= full) return undefined;
    // A winding is next to nothing on this range, however many ohms it may have at most.
    return least < BEEP_OHMS ? 'shorted' : 'too low';
  }
  if (expect.shows === 'beeps') {
    if (least < BEEP_OHMS) return undefined;
    return least === Number.POSITIVE_INFINITY ? 'open' : 'too high';
  }
  const digits = DIGITS * full;
  if (least > expect.high! * (1 + SHARE) + digits) return least >= full ? 'open' : 'too high';
  if (expect.low === null) return undefined;
  if (most < expect.low * (1 - SHARE) - digits) return most < SHARE * expect.low ? 'shorted' : 'too low';
  return undefined;
}

/** ohm that may be taken off what a dead circuit reads before it is too low; undefined where that is not told in ohms. */
export function sparedBelow({ stage, expect, full }: Measure): number | undefined {
  if (stage !== 1 || expect.shows !== 'ohms') return undefined;
  return expect.nominal! - (expect.low! * (1 - SHARE) - DIGITS * full);
}

/** Judges a reading in volts. */
function wrongVolts({ expect, full, range }: Measure, read: Volts | undefined): Wrong | undefined {
  if (read === undefined) return undefined;
  const seen = read.kind !== null && !range.endsWith(read.kind.toUpperCase()) ? 0 : read.volts;
  const volts = Math.abs(seen) < NOTHING * full ? 0 : seen;
  if (expect.shows === 'nothing') return volts === 0 ? undefined : 'too high';
  if (volts === 0) return 'open';
  if (volts < 0) return 'reversed';
  const digits = DIGITS * full;
  if (volts > expect.high! * (1 + SHARE) + digits) return 'too high';
  return volts < expect.low! * (1 - SHARE) - digits ? 'too low' : undefined;
}
