/**
 * The stages the commands call, each loaded when it is first needed, so that `--help` loads none. A test may hand
 * `main` its own.
 */

import type { Report } from '../findings/report-model.ts';
import type { ReadOptions } from '../machine/read-meter.ts';
import type { Reading } from '../machine/reading.ts';
import type { MeterSheet } from '../meter/sheet-model.ts';
import type { Plan, PlanError, ReadResult } from '../plan/plan.ts';
import type { Mended } from '../repair/mended.ts';
import type { Explanation } from '../report/explain.ts';
import type { TruthTable } from '../report/table.ts';

type Later<T> = T | Promise<T>;

export interface Stages {
  readPlan(text: Uint8Array, file: string): Later<ReadResult>;
  formatPlanErrors(errors: readonly PlanError[]): Later<string>;
  check(plan: Plan): Later<Report>;
  truthTable(plan: Plan, options: { readonly all: boolean }): Later<TruthTable>;
  readMeter(plan: Plan, options: ReadOptions): Later<Reading>;
  mend(plan: Plan): Later<Mended>;
  /** `progress` is told how many of how many trials are done */
  meterSheet(plan: Plan, progress?: (done: number, of: number) => void): Later<MeterSheet>;
  /** one HTML file */
  page(plan: Plan, report: Report): Later<string>;
  explanations(): Later<readonly Explanation[]>;
}

export const STAGES: Stages = {
  readPlan: async (text, file) => (await import('../plan/read.ts')).readPlan(text, file),
  formatPlanErrors: async (errors) => (await import('../plan/errors.ts')).formatPlanErrors(errors),
  check: async (plan) => (await import('../repair/check-and-mend.ts')).checkAndMend(plan),
  truthTable: async (plan, options) => (await import('../study/truth-table.ts')).truthTable(plan, options),
  readMeter: async (plan, options) => (await import('../machine/read-meter.ts')).readMeter(plan, options),
  mend: async (plan) => (await import('../repair/mend.ts')).mend(plan),
  meterSheet: async (plan, progress) => (await import('../meter/meter-sheet.ts')).meterSheet(plan, progress),
  page: async (plan, report) => {
    const { pageOf } = await import('../page/build.ts');
    return pageOf(plan, report, await browserFiles());
  },
  explanations: async () => (await import('../findings/explanations.ts')).explanations,
};

/** What the build puts beside the bundle for pages. */
async function browserFiles() {
  const { readFile } = await import('node:fs/promises');
  const text = (name: string) => readFile(new URL(name, import.meta.url), 'utf8');
  return { script: await text('./page-script.js'), style: await text('./page.css') };
}
