/** `--open`, `--on`, `--press` and `--trip`: which inputs of a plan stand away from rest. */
import { inputsNamed, NotInPlan, type Positions } from '../machine/named.ts';
import type { Plan } from '../plan/plan.ts';
import type { Verb } from './line/verb.ts';
import { Problem } from './status.ts';

export type PositionFlags = Positions;

/** Adds the four options to a command. */
export function addPositions(command: Verb): Verb {
  return command
    .option('--open <gates>', 'gates that are open, separated by commas', collect)
    .option('--on <switches>', 'switches that are on, and selector positions such as mode.hand', collect)
    .option('--press <buttons>', 'buttons held pressed', collect)
    .option('--trip <cutouts>', 'cut-outs that have tripped', collect);
}

/** Names separated by commas; the option may be given again. */
export function collect(text: string, before: readonly string[] = []): string[] {
  return [
    ...before,
    ...text
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== ''),
  ];
}

/** Numbers of the inputs named, in the order in which the circuit lists them. */
export function inputsOf(plan: Plan, flags: PositionFlags): number[] {
  return named(() => inputsNamed(plan, flags, (way) => `--${way}`));
}

/** What names of the command line stand for. Throws a `Problem` where the plan has no such name. */
export function named<T>(find: () => T): T {
  try {
    return find();
  } catch (error) {
    throw error instanceof NotInPlan ? new Problem(error.message) : error;
  }
}
