/** Loads that have a plug of their own, and what is left once those plugs are out. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Plan } from '../plan/plan.ts';

export function isUnplugged(plan: Plan, name: string): boolean {
  const part = plan.parts.get(name);
  return (part?.kind === 'motor' || part?.kind === 'load') && part.pluggedInto !== undefined;
}

/** The plan with every load that has a plug of its own taken out of its socket, as the first stage has it. */
export function unplugged(plan: Plan): Plan {
  return { ...plan, parts: new Map([...plan.parts].filter(([name]) => !isUnplugged(plan, name))) };
}

/** The circuit with nothing passing through those loads; its nets stay. */
export function unpluggedCircuit(circuit: WiredCircuit): WiredCircuit {
  return { ...circuit, passives: circuit.passives.filter((p) => !isUnplugged(circuit.plan, p.part)) };
}
