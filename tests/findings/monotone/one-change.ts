/** Plans in which one figure is worse or better than before, by the figure that was changed. */
import type { Contact, PilotCode } from '../../../src/plan/device-figures.ts';
import { PILOT_CODES } from '../../../src/plan/device-figures.ts';
import type { MotorPart, Part } from '../../../src/plan/part-types.ts';
import type { Cable, Plan, Run } from '../../../src/plan/plan.ts';

/** What is changed, told for the worse. */
export const WAYS = [
  'thinner wire',
  'longer run',
  'hotter shop',
  'cooler insulation',
  'cooler terminals',
  'larger breaker',
  'larger fuse',
  'smaller contact',
  'weaker supply',
  'larger motor',
] as const;
export type Way = (typeof WAYS)[number];

/** One plan before and after; `after` is the worse of the two. */
export interface OneChange {
  readonly way: Way;
  /** which figure, `thinner wire: run 3 in 16 AWG` */
  readonly words: string;
  readonly before: Plan;
  readonly after: Plan;
}

/** °C where a plan states none, so that the two of a pair differ in one figure. */
const AIR = 30;

const AWG = [26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2];
const METRIC = [0.14, 0.25, 0.34, 0.5, 0.75, 1, 1.25, 1.5, 2.5, 4, 6, 10, 16, 25, 35];
/** mm², ASTM B258. */
const awgArea = (n: number) => (Math.PI / 4) * (0.127 * 92 ** ((36 - n) / 39)) ** 2;

const ordered = (plan: Plan, other: Plan, worse: boolean) =>
  worse ? { before: plan, after: other } : { before: other, after: plan };

/** The cable in the sizes of its own system a step and three steps away. */
function otherGauges(cable: Cable): { readonly cable: Cable; readonly worse: boolean }[] {
  const { awg: _, stock: _stock, ...rest } = cable;
  const sizes: Cable[] =
    cable.awg === undefined
      ? METRIC.map((mm2) => ({ ...rest, gauge: `${mm2} mm2`, area: mm2 * 1e-6 }))
      : AWG.map((awg) => ({ ...rest, gauge: `${awg} AWG`, area: awgArea(awg) * 1e-6, awg }));
  const thinner = sizes.filter((s) => s.area < cable.area * 0.98).reverse();
  const thicker = sizes.filter((s) => s.area > cable.area * 1.02);
  const at = (of: readonly Cable[], worse: boolean) =>
    [0, 2].flatMap((i) => (of[i] === undefined ? [] : [{ cable: of[i], worse }]));
  return [...at(thinner, true), ...at(thicker, false)];
}

function withRun(plan: Plan, index: number, change: (run: Run) => Run): Plan {
  return { ...plan, runs: plan.runs.map((r) => (r.index === index ? change(r) : r)) };
}

function withPart(plan: Plan, part: Part): Plan {
  return { ...plan, parts: new Map([...plan.parts, [part.name, part]]) };
}

function* ofRuns(plan: Plan): Generator<OneChange> {
  for (const { index, cable, length } of plan.runs) {
    const which = `run ${index + 1}`;
    if (cable)
      for (const other of otherGauges(cable))
        yield {
          way: 'thinner wire',
          words: `${which}: ${cable.gauge} and ${other.cable.gauge}`,
          ...ordered(
            plan,
            withRun(plan, index, (r) => ({ ...r, cable: other.cable })),
            other.worse,
          ),
        };
    if (length !== undefined)
      for (const times of [1.5, 4, 0.5])
        yield {
          way: 'longer run',
          words: `${which}: ${length} m and ${length * times} m`,
          ...ordered(
            plan,
            withRun(plan, index, (r) => ({ ...r, length: length * times })),
            times > 1,
          ),
        };
  }
}

function* ofAir(plan: Plan): Generator<OneChange> {
  const air = plan.ambient ?? AIR;
  const stated = { ...plan, ambient: air };
  for (const by of [5, 20, -10])
    yield {
      way: 'hotter shop',
      words: `${air} °C and ${air + by} °C`,
      ...ordered(stated, { ...plan, ambient: air + by }, by > 0),
    };
}

const DEGREES = [60, 75, 90];

/** Insulation and terminals that stand one listed temperature less, or more. */
function* ofDegrees(plan: Plan): Generator<OneChange> {
  const others = (own: number) =>
    [DEGREES.findLast((d) => d < own), DEGREES.find((d) => d > own)].filter((d) => d !== undefined);
  for (const { index, cable } of plan.runs)
    for (const rated of cable?.rated === undefined ? [] : others(cable.rated))
      yield {
        way: 'cooler insulation',
        words: `run ${index + 1}: ${cable!.rated} °C and ${rated} °C`,
        ...ordered(
          plan,
          withRun(plan, index, (r) => ({ ...r, cable: { ...r.cable!, rated } })),
          rated < cable!.rated!,
        ),
      };
  for (const part of plan.parts.values())
    if ((part.kind === 'plug' || part.kind === 'outlet') && part.terminalRating !== undefined)
      for (const terminalRating of others(part.terminalRating))
        yield {
          way: 'cooler terminals',
          words: `${part.name}: ${part.terminalRating} °C and ${terminalRating} °C`,
          ...ordered(plan, withPart(plan, { ...part, terminalRating }), terminalRating < part.terminalRating),
        };
}

const BREAKERS = [6, 10, 13, 15, 16, 20, 25, 30, 32, 40, 50, 63, 80, 100];
const FUSES = [0.2, 0.5, 1, 2, 3.15, 5, 6.3, 8, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80];

/** Sizes one and three steps up, and one down. */
function otherSizes(
  sizes: readonly number[],
  amps: number,
): { readonly amps: number; readonly worse: boolean }[] {
  const up = sizes.filter((a) => a > amps);
  const down = sizes.filter((a) => a < amps).at(-1);
  return [
    ...[up[0], up[2]].flatMap((a) => (a === undefined ? [] : [{ amps: a, worse: true }])),
    ...(down === undefined ? [] : [{ amps: down, worse: false }]),
  ];
}

function* ofGuards(plan: Plan): Generator<OneChange> {
  for (const part of plan.parts.values()) {
    if (part.kind === 'plug' && part.breaker !== undefined)
      for (const { amps, worse } of otherSizes(BREAKERS, part.breaker))
        yield {
          way: 'larger breaker',
          words: `${part.name}: ${part.breaker} A and ${amps} A`,
          ...ordered(plan, withPart(plan, { ...part, breaker: amps }), worse),
        };
    if (part.kind === 'plug' && part.fuse !== undefined)
      for (const { amps, worse } of otherSizes(FUSES, part.fuse))
        yield {
          way: 'larger fuse',
          words: `fuse of ${part.name}: ${part.fuse} A and ${amps} A`,
          ...ordered(plan, withPart(plan, { ...part, fuse: amps }), worse),
        };
    if (part.kind === 'fuse' && part.rating !== undefined)
      for (const { amps, worse } of otherSizes(FUSES, part.rating))
        yield {
          way: 'larger fuse',
          words: `${part.name}: ${part.rating} A and ${amps} A`,
          ...ordered(plan, withPart(plan, { ...part, rating: amps }), worse),
        };
  }
}

/** Codes of the same volts and kind of current with the letter before (larger) and after (smaller). */
function otherPilot(code: PilotCode, by: 1 | -1): PilotCode | undefined {
  const letter = String.fromCharCode(code.charCodeAt(0) + by);
  return PILOT_CODES.find((c) => c === letter + code.slice(1));
}

/** The contact with one of its figures multiplied. */
function* otherContacts(c: Contact, times: number): Generator<readonly [string, Contact]> {
  for (const [i, r] of c.ratings.entries())
    yield [
      `${r.amps} A ${r.volts} V ${r.kind}`,
      { ...c, ratings: c.ratings.map((x, k) => (k === i ? { ...x, amps: x.amps * times } : x)) },
    ];
  for (const [i, m] of c.motor.entries())
    yield [
      `${m.horsepower} hp ${m.volts} V`,
      {
        ...c,
        motor: c.motor.map((x, k) =>
          k === i ? { ...x, watts: x.watts * times, horsepower: x.horsepower * times } : x,
        ),
      },
    ];
  if (c.ac3 !== undefined) yield ['ac-3', { ...c, ac3: c.ac3 * times }];
  if (c.ac15 !== undefined) yield ['ac-15', { ...c, ac15: c.ac15 * times }];
  if (c.dc13 !== undefined) yield ['dc-13', { ...c, dc13: c.dc13 * times }];
  if (c.lockedRotor !== undefined) yield ['locked-rotor', { ...c, lockedRotor: c.lockedRotor * times }];
  if (c.make !== undefined) yield ['make', { ...c, make: c.make * times }];
  const pilot = c.pilot && otherPilot(c.pilot, times < 1 ? 1 : -1);
  if (pilot !== undefined) yield ['pilot', { ...c, pilot }];
}

/** The part with one contact in place of another, wherever it has that. */
function partsWith(part: Part): { readonly contact: Contact; readonly put: (c: Contact) => Part }[] {
  if ('poles' in part) {
    const labels = [...new Set(part.poles.map((p) => JSON.stringify(p.contact)))];
    return labels.map((label) => ({
      contact: part.poles.find((p) => JSON.stringify(p.contact) === label)!.contact,
      put: (contact) => ({
        ...part,
        poles: part.poles.map((p) => (JSON.stringify(p.contact) === label ? { ...p, contact } : p)),
      }),
    }));
  }
  return 'contact' in part ? [{ contact: part.contact, put: (contact) => ({ ...part, contact }) }] : [];
}

function* ofContacts(plan: Plan): Generator<OneChange> {
  for (const part of plan.parts.values())
    for (const { contact, put } of partsWith(part))
      for (const times of [0.7, 0.2, 2])
        for (const [figure, other] of otherContacts(contact, times))
          yield {
            way: 'smaller contact',
            words: `${part.name}: ${figure} and ${times} times that`,
            ...ordered(plan, withPart(plan, put(other)), times < 1),
          };
}

function* ofSupplies(plan: Plan): Generator<OneChange> {
  for (const part of plan.parts.values())
    if (part.kind === 'supply' && part.limit !== undefined)
      for (const times of [0.5, 0.1, 2]) {
        const { amps, printed, value } = part.limit;
        yield {
          way: 'weaker supply',
          words: `${part.name}: limit of ${value} ${printed} and ${times} times that`,
          ...ordered(
            plan,
            withPart(plan, { ...part, limit: { amps: amps * times, printed, value: value * times } }),
            times < 1,
          ),
        };
      }
}

function largerMotor(part: MotorPart, times: number): MotorPart {
  const { power, amps, lockedRotor } = part;
  return {
    ...part,
    ...(power && {
      power: {
        ...power,
        watts: power.watts * times,
        ...(power.horsepower !== undefined && { horsepower: power.horsepower * times }),
      },
    }),
    ...(amps !== undefined && { amps: amps * times }),
    ...(lockedRotor !== undefined && { lockedRotor: lockedRotor * times }),
  };
}

function* ofMotors(plan: Plan): Generator<OneChange> {
  for (const part of plan.parts.values())
    if (part.kind === 'motor')
      for (const times of [1.3, 3, 0.5])
        yield {
          way: 'larger motor',
          words: `${part.name} and ${times} times that`,
          ...ordered(plan, withPart(plan, largerMotor(part, times)), times > 1),
        };
}

/** Every change of one figure that this plan has, for the worse and for the better. */
export function* changesOf(plan: Plan): Generator<OneChange> {
  yield* ofRuns(plan);
  yield* ofAir(plan);
  yield* ofDegrees(plan);
  yield* ofGuards(plan);
  yield* ofContacts(plan);
  yield* ofSupplies(plan);
  yield* ofMotors(plan);
}
