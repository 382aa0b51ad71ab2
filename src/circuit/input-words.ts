/** What people call the positions of gates, switches, buttons and cut-outs. */
import type { Plan } from '../plan/plan.ts';
import type { Circuit, InputKind } from './circuit.ts';

/** "gate planer open, cut-out bin tripped"; "every gate shut" when nothing is moved. */
export function sayMoved(circuit: Circuit, moved: readonly number[]): string {
  if (moved.length === 0) return 'everything at rest (all gates shut)';
  const shown = moved.slice(0, 4).map((i) => sayInput(circuit, i));
  const rest = moved.length - shown.length;
  return shown.join(', ') + (rest > 0 ? ` and ${rest} more moved` : '');
}

function sayInput(circuit: Circuit, index: number): string {
  const input = circuit.inputs[index]!;
  return `${input.part} ${positionWord(input.kind, input.position)}`;
}

/** Words for the working position of each kind of input, and for its rest; a selector's are its own. */
const WORDS: Readonly<Record<InputKind, { readonly working?: string; readonly resting?: string }>> = {
  gate: { working: 'open', resting: 'shut' },
  switch: { working: 'on', resting: 'off' },
  button: { working: 'pressed', resting: 'released' },
  cutout: { working: 'tripped', resting: 'normal' },
  selector: {},
};

/** The word for an input's working position. */
export function positionWord(kind: InputKind, position?: string): string {
  return WORDS[kind].working ?? `at ${position}`;
}

/** The word for an input's resting position; a selector's is its name. */
export function restWord(plan: Plan, part: string, kind: InputKind): string {
  const owner = plan.parts.get(part);
  return WORDS[kind].resting ?? (owner?.kind === 'selector' ? owner.rest : 'rest');
}
