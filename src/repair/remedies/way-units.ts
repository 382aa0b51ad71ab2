/** Runs on the way to coils that are short of volts, in the pieces in which a person would replace them. */
import type { Plan } from '../../plan/plan.ts';
import type { CoilRow } from '../../study/coil-row.ts';
import type { CoilState } from '../../study/coil-states.ts';
import type { Electrics } from '../../study/electrics.ts';
import { lossesOnWay } from '../../study/mains/way-losses.ts';
import { runsText, runText } from '../../text/run-names.ts';
import { listOf } from '../../text/word-list.ts';

/** A coil by one way of feeding it. */
export interface Fed {
  readonly state: CoilState;
  readonly row: CoilRow;
}

/** Runs that are replaced together. */
export interface Unit {
  readonly runs: readonly number[];
  /** V, the most that it takes on any of the ways */
  readonly volts: number;
  readonly trunk: boolean;
  readonly spurOf: string | undefined;
}

/** Pieces beyond the trunk up to which each run is one. */
const MOST_UNITS = 16;

/** The trunk, which every gate's current passes, and each other run of cable on any of the ways; what loses most first. */
export function unitsOn(own: Electrics, ways: readonly Fed[]): Unit[] {
  const { plan } = own.study;
  const lost = ways.map(({ state, row }) => lossesOnWay(own, state, row.leastIn));
  const most = new Map<number, number>();
  for (const l of lost)
    for (const [run, volts] of l)
      if (plan.runs[run]!.cable) most.set(run, Math.max(most.get(run) ?? 0, volts));
  const gates = ways.flatMap(({ row }) => row.gate ?? []);
  const common = [...most.keys()].filter((run) => lost.every((l) => l.has(run)));
  const trunk = new Set(new Set(gates).size > 1 ? common : []);
  const others = [...most.keys()].filter((run) => !trunk.has(run));
  const fedBy = (run: number) => [
    ...new Set(ways.flatMap(({ row }, i) => (lost[i]!.has(run) && row.gate ? [row.gate] : []))),
  ];
  const unit = (runs: readonly number[], isTrunk: boolean, spurOf?: string): Unit => ({
    runs,
    volts: runs.reduce((sum, r) => sum + most.get(r)!, 0),
    trunk: isTrunk,
    spurOf,
  });
  const rest =
    others.length > MOST_UNITS
      ? [unit(others, false)]
      : others.map((r) => unit([r], false, trunk.size > 0 ? spurOf(plan, r, fedBy(r)) : undefined));
  const units = [...(trunk.size > 0 ? [unit([...trunk], true)] : []), ...rest];
  return units.sort((a, b) => b.volts - a.volts);
}

/** The gate that a run of cable ends at, where it carries current for that gate alone. */
function spurOf(plan: Plan, run: number, gates: readonly string[]): string | undefined {
  const [only, ...more] = gates;
  const ends = plan.runs[run]!.cores.flatMap((c) => [c.a.part, c.b.part]);
  return only !== undefined && more.length === 0 && ends.includes(only) ? only : undefined;
}

/** "the trunk (runs 3 to 6) and the router spur (run 7)". */
export function unitsText(plan: Plan, units: readonly Unit[]): string {
  const named = (u: Unit, what: string) => `${what} (${runsText(u.runs.map((r) => plan.runs[r]!))})`;
  const trunk = units.filter((u) => u.trunk).map((u) => named(u, 'the trunk'));
  const spurs = units.filter((u) => u.spurOf !== undefined);
  const rest = units.filter((u) => !u.trunk && u.spurOf === undefined).flatMap((u) => u.runs);
  const few = spurs.length > 3 ? [] : spurs.map((u) => named(u, `the ${u.spurOf} spur`));
  const many = spurs.length > 3 ? [...rest, ...spurs.flatMap((u) => u.runs)] : rest;
  return listOf([...trunk, ...few, ...(many.length > 0 ? [plainRuns(plan, many)] : [])]);
}

/** By the names that the plan gives them, else by their numbers. */
function plainRuns(plan: Plan, runs: readonly number[]): string {
  const [only] = runs;
  const name = runs.length === 1 ? plan.runs[only!]!.name : undefined;
  return name === undefined
    ? runsText(runs.map((r) => plan.runs[r]!))
    : `${name} (${runText(plan.runs[only!]!)})`;
}
