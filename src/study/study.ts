import { buildCircuit } from '../circuit/build.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { findSides, type Sides } from '../circuit/sides.ts';
import type { Figure, Finding, QuestionNumber, Severity } from '../findings/report-model.ts';
import { BudgetExceeded, type Fn } from '../logic/bdd.ts';
import { type Moved, movedIn, type Verified, verify } from '../logic/verify.ts';
import type { Part, Plan, Position } from '../plan/plan.ts';

export { findSides, type Sides } from '../circuit/sides.ts';

/** Everything the checks look at: the plan, its circuit and what was proved of it. */
export interface Study {
  readonly plan: Plan;
  readonly circuit: Circuit;
  /** undefined when the exact method would not end; `undecided` says why */
  readonly verified: Verified | undefined;
  readonly undecided: string | undefined;
  readonly sides: Sides;
}

export function study(plan: Plan): Study {
  const circuit = buildCircuit(plan);
  const sides = findSides(circuit);
  try {
    return { plan, circuit, verified: verify(circuit), undecided: undefined, sides };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const why = error instanceof BudgetExceeded ? error.message : 'the circuit is too deep to follow';
    return { plan, circuit, verified: undefined, undecided: why, sides };
  }
}

/** Input states, among those the circuit can stand in, where a function of inputs and relays is true. */
export function everIn(v: Verified, f: Fn): Moved | undefined {
  const { bdd } = v.model;
  let best: Moved | undefined;
  for (const place of v.places) {
    const moved = movedIn(v.circuit, bdd, bdd.and(v.settler.at(f, place.mode), place.states));
    if (moved && (!best || moved.length < best.length)) best = moved;
  }
  return best;
}

/** "gate planer open, cut-out bin tripped"; "every gate shut" when nothing is moved. */
export function sayMoved(circuit: Circuit, moved: Moved): string {
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

export interface FindingInput {
  readonly id: string;
  readonly severity: Severity;
  readonly question: QuestionNumber;
  readonly parts: readonly string[];
  readonly terminals?: readonly string[];
  readonly at?: Position | undefined;
  readonly message: string;
  readonly why: string;
  readonly fix: string;
  readonly figures?: readonly Figure[];
  readonly basis: string;
}

/** A finding with its place in the file: the position given, else that of a core on the terminal, else the part. */
export function finding(plan: Plan, input: FindingInput): Finding {
  const at = input.at ?? coreAt(plan, input.terminals ?? []) ?? plan.parts.get(input.parts[0] ?? '')?.at;
  return {
    id: input.id,
    severity: input.severity,
    question: input.question,
    parts: [...new Set(input.parts)],
    terminals: [...new Set(input.terminals ?? [])],
    line: at?.line ?? 1,
    column: at?.column ?? 1,
    message: input.message,
    why: input.why,
    fix: input.fix,
    figures: [...(input.figures ?? [])],
    basis: input.basis,
    also: [],
    repair: [],
  };
}

function coreAt(plan: Plan, terminals: readonly string[]): Position | undefined {
  for (const t of terminals)
    for (const run of plan.runs)
      for (const core of run.cores)
        for (const end of [core.a, core.b])
          if ((end.terminal === '' ? end.part : `${end.part}.${end.terminal}`) === t) return end.at;
  return undefined;
}

export function netAt(circuit: Circuit, part: string, terminal: string): number | undefined {
  return circuit.netOf.get(terminal === '' ? part : `${part}.${terminal}`);
}

export function isLanded(circuit: Circuit, part: Part | string, terminal: string): boolean {
  const name = typeof part === 'string' ? part : part.name;
  return circuit.landed.has(`${name}.${terminal}`);
}

export function listOf(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  if (shown.length < 2) return shown.join('');
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

export const COMMON_PRACTICE = 'common practice';

/** A plug-in load takes after its outlet; the outlet alone is named. */
export function isPlugIn(study: Study, name: string): boolean {
  const part = study.plan.parts.get(name);
  return part !== undefined && 'pluggedInto' in part && part.pluggedInto !== undefined;
}
