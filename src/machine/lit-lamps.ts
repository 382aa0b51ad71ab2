/** Which lamps and indicators give light in one state. */
import { INDICATOR, SEEN_AMPS, SEEN_VOLTS } from '../logic/lamps.ts';
import type { Plan } from '../plan/plan.ts';
import type { SolvedIsland } from '../study/supply-limits.ts';
import type { MachineState } from './machine.ts';
import type { SolvedState } from './solved-state.ts';

export function lampsLit(
  plan: Plan,
  state: MachineState,
  { byNet }: SolvedState,
): { part: string; lit: boolean }[] {
  const lit = new Map<string, boolean>();
  const across = (a: number, b: number) => {
    const island = byNet.get(a);
    const v = island?.flows.volts(a, b);
    return { island, v };
  };
  for (const p of state.circuit.passives) {
    if (p.what !== 'lamp') continue;
    const { island, v } = across(p.a, p.b);
    const size = v === undefined ? 0 : Math.hypot(v.re, v.im);
    lit.set(p.part, size >= SEEN_VOLTS * lampVolts(plan, state, p.part, island));
  }
  for (const d of state.circuit.diodes) {
    if (!d.load) continue;
    const { island, v } = across(d.anode, d.cathode);
    const { drop, ohms } = state.figures.diode(d);
    // On AC it lights in every other half wave.
    const forward = v === undefined ? 0 : island?.ac ? Math.hypot(v.re, v.im) : v.re;
    lit.set(d.part, (forward - drop) / ohms >= SEEN_AMPS * (d.amps ?? INDICATOR));
  }
  return [...lit].map(([part, on]) => ({ part, lit: on }));
}

function lampVolts(plan: Plan, state: MachineState, name: string, island: SolvedIsland | undefined): number {
  const part = plan.parts.get(name);
  if (part?.kind === 'lamp' && part.rated !== undefined) return part.rated.volts;
  const sources = island?.flows.island.sources.filter((s) => state.situation.alive(s)) ?? [];
  return Math.max(1, ...sources.flatMap((s) => s.rails.map((r) => Math.hypot(r.re, r.im))));
}
