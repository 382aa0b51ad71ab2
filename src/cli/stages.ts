/**
 * The stages the commands call, each loaded when it is first needed, so that `--help` loads none. A test may hand
 * `main` its own.
 */

import type { Mended } from '../bench/mended.ts';
import type { ReadOptions } from '../bench/read.ts';
import type { Reading } from '../bench/reading.ts';
import type { Plan, PlanError, ReadResult } from '../plan/plan.ts';
import type { Explanation } from '../report/explain.ts';
import type { Report } from '../report/model.ts';
import type { TruthTable } from '../report/table.ts';

type Later<T> = T | Promise<T>;

export interface Stages {
  readPlan(text: Uint8Array, file: string): Later<ReadResult>;
  formatPlanErrors(errors: readonly PlanError[]): Later<string>;
  check(plan: Plan): Later<Report>;
  truthTable(plan: Plan, options: { readonly all: boolean }): Later<TruthTable>;
  readMeter(plan: Plan, options: ReadOptions): Later<Reading>;
  mend(plan: Plan): Later<Mended>;
  explanations(): Later<readonly Explanation[]>;
}

export const STAGES: Stages = {
  readPlan: async (text, file) => (await import('../plan/read.ts')).readPlan(text, file),
  formatPlanErrors: async (errors) => (await import('../plan/errors.ts')).formatPlanErrors(errors),
  check: async (plan) => (await import('../bench/checked.ts')).checkAndMend(plan),
  truthTable: async (plan, options) => (await import('../checks/table.ts')).truthTable(plan, options),
  readMeter: async (plan, options) => (await import('../bench/read.ts')).readMeter(plan, options),
  mend: async (plan) => (await import('../bench/mend.ts')).mend(plan),
  explanations: async () => (await import('../checks/explain.ts')).explanations,
};
