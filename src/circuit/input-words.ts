/** What people call the positions of gates, switches, buttons and cut-outs. */
import type { Plan } from '../plan/plan.ts';
import type { Circuit } from './circuit.ts';

/** "gate planer open, cut-out bin tripped"; "every gate shut" when nothing is moved. */
export function sayMoved(circuit: Circuit, moved: readonly number[]): string {
  if (moved.length === 0) return 'everything at rest (all gates shut)';
  const shown = moved.slice(0, 4).map((i) => sayInput(circuit, i));
  const rest = moved.length - shown.length;
  return shown.join(', ') + (rest > 0 ? ` and ${rest} more moved` : '');
}

export function sayInput(circuit: Circuit, index: number): string {
  const input = circuit.inputs[index]!;
  return `${input.part} ${positionWord(input.kind, input.position)}`;
}

/** The word for an input's working position. */
export function positionWord(kind: string, position?: string): string {
  switch (kind) {
    case 'gate':
      return 'open';
    case 'switch':
      return 'on';
    case 'button':
      return 'pressed';
    case 'cutout':
      return 'tripped';
    default:
      return `at ${position}`;
  }
}

/** The word for an input's resting position; a selector's is its name. */
export function restWord(plan: Plan, part: string, kind: string): string {
  switch (kind) {
    case 'gate':
      return 'shut';
    case 'switch':
      return 'off';
    case 'button':
      return 'released';
    case 'cutout':
      return 'normal';
    default: {
      const owner = plan.parts.get(part);
      return owner?.kind === 'selector' ? owner.rest : 'rest';
    }
  }
}
