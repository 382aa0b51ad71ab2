/** The stages that a check calls, each loaded when it is first needed. */
import type { CheckStages } from './stages.ts';

export const CHECK_STAGES: CheckStages = {
  readPlan: async (text, file, whatIfs) => (await import('./late-check.ts')).readPlan(text, file, whatIfs),
  formatPlanErrors: async (errors) => (await import('./late-check.ts')).formatPlanErrors(errors),
  check: async (study) => (await import('./late-check.ts')).check(study),
};
