/** What the cables of the plan take from a motor while it draws its starting current. */
import type { Consumer, Source } from '../../circuit/circuit.ts';
import type { Figures, Situation } from '../../electric/island.ts';
import type { MotorPart } from '../../plan/part-types.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Electrics } from '../../study/electrics.ts';
import { loadVolts, runningState, solveMains } from '../../study/mains/mains-flows.ts';
import type { Study } from '../../study/study.ts';
import { loadsOf, runningAmps } from './plug-loads.ts';

/** Share of the mains that may be lost on the way to a starting motor; common practice. */
export const MOST_LOST = 0.15;

export interface StartLoss {
  readonly motor: MotorPart;
  /** A */
  readonly starting: number;
  /** of the mains, 0.2 for 20 % */
  readonly share: number;
}

/** One motor that starts while the rest runs. */
interface Start {
  readonly own: Electrics;
  readonly source: Source;
  readonly consumer: Consumer;
  readonly situation: Situation;
  /** A by name of the load */
  readonly drawn: ReadonlyMap<string, number>;
}

/** The first motor behind a plug that loses too much. */
export function lossAtStart(study: Study, own: Electrics, source: Source): StartLoss | undefined {
  const { plan } = study;
  for (const motor of loadsOf(plan)) {
    const starting = motorCurrents(motor, plan.practice).starting?.amps;
    const consumer = own.circuit.consumers.find((c) => c.part === motor.name);
    const moved = runningState(own, motor.name);
    const standing = moved && own.situations.at(moved);
    if (motor.kind !== 'motor' || starting === undefined || !consumer || !standing) continue;
    const drawn = new Map([...runningAmps(study), [motor.name, starting]]);
    const start = { own, source, consumer, situation: standing.situation, drawn };
    const share = lostShare(start, figuresFor(plan, 'low'));
    if (share > MOST_LOST + 1e-9) return { motor, starting, share };
  }
  return undefined;
}

function lostShare({ own, source, consumer, situation, drawn }: Start, figures: Figures): number {
  const flows = solveMains(own, source, situation, drawn, figures, { starting: consumer.part });
  const full = loadVolts(solveMains(own, source, situation, new Map(), figures), consumer);
  const volts = loadVolts(flows, consumer);
  return volts === undefined || !full ? 0 : 1 - volts / full;
}
