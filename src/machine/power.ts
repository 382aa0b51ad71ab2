/** A plan put under power, wholly or in part. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import type { Plan } from '../plan/plan.ts';
import type { Basis } from '../study/basis.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { withDeltas } from '../study/mains/three-phase.ts';
import { Machine, type MachineState } from './machine.ts';

/** What has power: everything, nothing, or with `loop` the low-voltage supplies while all plugs they can do without are out. */
export type Power = 'on' | 'off' | 'loop';

/** A plan with all its power on, figures as a meter finds them. */
export function poweredMachine({ plan, wired }: Basis): Machine {
  const { circuit, figures } = withDeltas(plan, wired, figuresFor(plan, 'reading'));
  return new Machine(circuit, figures);
}

/**
 * Where a plan stands once it has come to rest and then its inputs were moved. With the power off every relay is out, and
 * unless it is wholly on the figures are those that an ohmmeter finds.
 */
export function settledState(study: Basis, moved: readonly number[], power: Power): MachineState {
  const { plan, wired } = study;
  if (power === 'on') {
    const machine = poweredMachine(study);
    return machine.moveTo(moved, machine.start([]));
  }
  const { circuit, figures } = withDeltas(plan, wired, figuresFor(plan, 'ohmmeter'));
  const dead = new Machine(circuit, figures);
  if (power === 'off') {
    const nothing = { relays: circuit.relays.map(() => false), alive: circuit.sources.map(() => false) };
    return dead.state(new Set(moved), nothing, true);
  }
  const reading = withDeltas(plan, wired, figuresFor(plan, 'reading'));
  const loop = new Machine(reading.circuit, reading.figures, plugsOut(plan, wired));
  const standing = loop.moveTo(moved, loop.start([]));
  return dead.state(standing.moved, standing, standing.settled);
}

/** Plugs that stay out while the loop is tried: all of them, unless a low-voltage supply gets its power through one. */
export function plugsOut(plan: Plan, circuit: WiredCircuit): (source: Source) => boolean {
  const needed = loopNeedsMains(circuit);
  return (s) => s.mains && !needed && plan.parts.get(s.part)?.kind === 'plug';
}

/** Whether a low-voltage supply gets its power through a plug of the plan. */
export function loopNeedsMains({ sources }: Pick<WiredCircuit, 'sources'>): boolean {
  return sources.some((s) => !s.mains && s.feed.by !== 'always');
}
