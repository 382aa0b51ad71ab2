/** The breakers and fuses of plugs against what starts behind them. */

import type { PlugPart } from '../../plan/part-types.ts';
import type { OvercurrentDevice } from '../../ratings/conductor-protection.ts';
import { sumFigures } from '../../ratings/load.ts';
import { type Figure, motorCurrents } from '../../ratings/motor.ts';
import { judgeStart, type StartVerdict } from '../../ratings/starting-trip.ts';
import type { Study } from '../../study/study.ts';
import { plugBreaker, plugFuse } from './mains-guards.ts';
import { fedPlugs, type Load } from './plug-loads.ts';
import { startsInTurn } from './starts-in-turn.ts';

export interface StartTrip {
  readonly plug: PlugPart;
  readonly loads: readonly Load[];
  readonly device: OvercurrentDevice;
  readonly starting: Figure;
  readonly judged: StartVerdict;
}

/** Every breaker and plug fuse ahead of a load whose starting current is known. */
export function startTrips(study: Study): StartTrip[] {
  return fedPlugs(study).flatMap(({ plug, loads }) =>
    [plugBreaker(plug), plugFuse(plug)].flatMap((device) => {
      const trip =
        device && startOn(study, device, loads, device.kind === 'breaker' ? plug.curve : undefined);
      return trip ? [{ plug, loads, device, ...trip }] : [];
    }),
  );
}

/** What one device makes of all that starts behind it, together or in turn. */
export function startOn(
  study: Study,
  device: OvercurrentDevice,
  loads: readonly Load[],
  curve: string | undefined,
): Pick<StartTrip, 'starting' | 'judged'> | undefined {
  const { plan } = study;
  const currents = loads.map((load) => motorCurrents(load, plan.practice));
  const starting = startsInTurn(study, loads).most;
  const running = sumFigures(currents.map((c) => c.tableRunning ?? c.running))?.amps;
  const judged = starting && judgeStart(device, curve, { starting, running, practice: plan.practice });
  return judged && { starting, judged };
}
