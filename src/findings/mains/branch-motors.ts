/** Circuits whose machine is wired in, and the currents by which NEC Article 430 judges them. */
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/part-types.ts';
import { type Figure, motorCurrents } from '../../ratings/motor.ts';
import type { Study } from '../../study/study.ts';
import { type Load, loadsBehind, plugsOf } from './plug-loads.ts';

/** What a group of loads asks of its conductors and its breaker. */
export interface BranchDemand {
  /** A of the largest motor, by the table of its horsepower where it has one */
  readonly motor: Figure;
  /** A of all the rest */
  readonly others: number;
}

export function fixedPlugs({ plan }: Study): PlugPart[] {
  return plugsOf(plan).filter(isFixedFeed);
}

/** A machine behind a socket goes by its marked amperes and by that socket, not by Article 430. */
export function wiredIn(study: Study, plug: PlugPart): Load[] {
  return loadsBehind(study, plug).filter((l) => l.pluggedInto === undefined);
}

/**
 * Undefined where no AC motor is among the loads, or the current of any is not known: circuit-overloaded asks for that.
 * @param byTable whether the table of horsepower counts before the marked amperes; if left out, where the circuit is wired in
 */
export function branchDemand(
  loads: readonly Load[],
  plug: PlugPart,
  byTable = isFixedFeed(plug),
): BranchDemand | undefined {
  const demands = loads.flatMap((load) => {
    const amps = fullLoad(load, byTable);
    return amps ? [{ load, amps }] : [];
  });
  if (demands.length < loads.length) return undefined;
  const motors = demands.filter(({ load }) => load.kind === 'motor' && load.volts.kind === 'ac');
  if (motors.length === 0) return undefined;
  const largest = motors.reduce((a, b) => (a.amps.amps >= b.amps.amps ? a : b));
  const others = demands.filter((d) => d !== largest).reduce((sum, d) => sum + d.amps.amps, 0);
  return { motor: largest.amps, others };
}

/** NEC 430.6(A)(1): table current of the horsepower where it is wired in; else, and where it has none, the marked amperes. */
function fullLoad(load: Load, wired: boolean): Figure | undefined {
  const currents = motorCurrents(load, 'nec');
  const byTable = load.kind === 'motor' && (wired || load.amps === undefined);
  return (byTable ? currents.tableRunning : undefined) ?? currents.running;
}
