/** A plan with other figures in it than its file has. */
import type { Plan, PlanError } from '../plan.ts';
import { readPlan } from '../read.ts';
import { alongWith } from './along.ts';
import { WhatIfs } from './what-if.ts';

/** A plan as it would be with what-ifs in it. */
export interface Changed {
  /** the plan with them */
  readonly plan: Plan;
  /** what was changed, a sentence each; what had to go along with it as well */
  readonly done: readonly string[];
}

/** A plan with what-ifs in it, or its errors, or what cannot be understood or found of the what-ifs, as sentences. */
export type ChangedResult =
  | ({
      /** whether it could be read */
      readonly ok: true;
    } & Changed)
  | {
      /** whether it could be read */
      readonly ok: false;
      /** what is wrong with the plan as it would be, in the order of the file */
      readonly errors: readonly PlanError[];
      /** what cannot be understood or found of the what-ifs */
      readonly problems: readonly string[];
    };

/** Reads a plan with what-ifs such as `collector=3 hp 240 V` put into it, and what has to go along with them. */
export function planWith(text: string | Uint8Array, file: string, typed: readonly string[]): ChangedResult {
  const whatIfs = new WhatIfs(typed);
  const read = readPlan(text, file, whatIfs);
  if (!read.ok) return { ok: false, errors: read.errors, problems: whatIfs.problems };
  if (whatIfs.problems.length > 0) return { ok: false, errors: [], problems: whatIfs.problems };
  return { ok: true, ...withAlong(text, file, typed, read.plan, whatIfs) };
}

/** The plan that was read with `whatIfs` in it, and with what has to go along with them. */
export function withAlong(
  text: string | Uint8Array,
  file: string,
  typed: readonly string[],
  plan: Plan,
  whatIfs: WhatIfs,
): Changed {
  if (whatIfs.none) return { plan, done: [] };
  const before = readPlan(text, file);
  const along = before.ok ? alongWith(before.plan, plan) : [];
  if (along.length === 0) return { plan, done: whatIfs.done };
  const all = new WhatIfs(typed, along);
  const again = readPlan(text, file, all);
  return again.ok ? { plan: again.plan, done: all.done } : { plan, done: whatIfs.done };
}
