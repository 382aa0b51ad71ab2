/** From the plan to its circuit, part by part. */
import { saidOf } from '../plan/by-kind.ts';
import type { Plan } from '../plan/plan.ts';
import type { Circuit } from './circuit.ts';
import { CircuitDraft } from './circuit-draft.ts';
import { ELEMENTS } from './kinds.ts';
import { type Apart, type JoinedTerminals, joinTerminals, type Rewiring, type Wire } from './nets.ts';
import { withRangeVolts } from './range-volts.ts';

/** A circuit whose cores are conductors of their own instead of joining their two ends. */
export interface WiredCircuit extends Circuit {
  readonly wires: readonly Wire[];
}

/** Builds the circuit of a plan. Throws nothing for a plan that was read without errors. */
export function buildCircuit(plan: Plan, rewiring?: Rewiring): Circuit {
  return assemble(plan, joinTerminals(plan, rewiring));
}

/**
 * The same circuit with every core apart, or every link as well. Inputs, relays, contacts and elements come in the same
 * order.
 */
export function buildWiredCircuit(plan: Plan, apart: Apart = 'cores'): WiredCircuit {
  const wired = joinTerminals(plan, undefined, apart);
  return { ...assemble(plan, wired), wires: wired.wires() };
}

function assemble(plan: Plan, wired: JoinedTerminals): Circuit {
  const draft = new CircuitDraft(wired, plan);
  for (const part of plan.parts.values()) saidOf(ELEMENTS, part, draft);
  return withRangeVolts(draft.done(), wired.wires());
}
