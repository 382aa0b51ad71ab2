/** The stages that a check calls, each loaded when it is first needed. */
import type { Report } from '../findings/report-model.ts';
import type { PlanError, ReadResult } from '../plan/plan.ts';
import type { WhatIfs } from '../plan/what-if/what-if.ts';
import type { Study } from '../study/study.ts';

/** What may come at once or be waited for. */
export type Later<T> = T | Promise<T>;

export interface CheckStages {
  readPlan(text: Uint8Array, file: string, whatIfs?: WhatIfs): Later<ReadResult>;
  formatPlanErrors(errors: readonly PlanError[]): Later<string>;
  check(study: Study): Later<Report>;
}

export const CHECK_STAGES: CheckStages = {
  readPlan: async (text, file, whatIfs) => (await import('./late/check.ts')).readPlan(text, file, whatIfs),
  formatPlanErrors: async (errors) => (await import('./late/check.ts')).formatPlanErrors(errors),
  check: async (study) => (await import('./late/check.ts')).check(study),
};
