import type { Plan, PlanError } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';

export { example } from './example.ts';

export function good(text: string): Plan {
  const result = readPlan(text, 'plan.yaml');
  if (!result.ok) throw new Error(result.errors.map((error) => error.message).join('\n'));
  return result.plan;
}

export function bad(text: string | Uint8Array): readonly PlanError[] {
  const result = readPlan(text, 'plan.yaml');
  return result.ok ? [] : result.errors;
}

/** A plan of the given parts and runs, one a line. */
export function plan(parts: readonly string[], runs: readonly string[] = [], rest = ''): string {
  const list = runs.length === 0 ? 'runs: []' : `runs:\n${runs.map((run) => `  - ${run}`).join('\n')}`;
  return `format: 1\nparts:\n${parts.map((part) => `  ${part}`).join('\n')}\n${list}\n${rest}\n`;
}

export const RELAY =
  'K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [30 A 240 V AC]}}';
