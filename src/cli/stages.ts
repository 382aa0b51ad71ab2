/**
 * The stages the commands call, each loaded when it is first needed, so that `--help` loads none. A test may hand
 * `main` its own.
 */

import type { Explanation } from '../findings/explanations.ts';
import type { ReadOptions } from '../machine/read-meter.ts';
import type { Reading } from '../machine/reading.ts';
import type { MeterSheet } from '../meter/sheet/sheet-model.ts';
import type { Mended } from '../repair/mended.ts';
import type { Study } from '../study/study.ts';
import type { TruthTable } from '../study/table-model.ts';
import { CHECK_STAGES, type CheckStages, type Later } from './check-stages.ts';

export interface Stages extends CheckStages {
  truthTable(study: Study, options: { readonly all: boolean }): Later<TruthTable>;
  readMeter(study: Study, options: ReadOptions): Later<Reading>;
  mend(study: Study): Later<Mended>;
  /** `progress` is told how many of how many trials are done */
  meterSheet(study: Study, progress?: (done: number, of: number) => void): Later<MeterSheet>;
  /** one HTML file; `text` is that of the plan's file */
  page(study: Study, text: string): Later<string>;
  explanations(): Later<readonly Explanation[]>;
}

export const STAGES: Stages = {
  ...CHECK_STAGES,
  truthTable: (study, options) => study.truthTable(options),
  readMeter: async (study, options) => (await import('./late/all.ts')).readMeter(study, options),
  mend: async (study) => (await import('./late/all.ts')).mend(study),
  meterSheet: async (study, progress) => (await import('./late/all.ts')).meterSheet(study, progress),
  page: async (study, text) => {
    const { pageOf, check, mendingOf } = await import('./late/all.ts');
    const report = check(study);
    return pageOf(study, report, await browserFiles(), mendingOf(study, report, text));
  },
  explanations: async () => (await import('./late/all.ts')).explanations,
};

/** What the build puts beside the bundle for pages. */
async function browserFiles() {
  const { readFile } = await import('node:fs/promises');
  const text = (name: string) => readFile(new URL(name, import.meta.url), 'utf8');
  return { script: await text('./page-script.js'), style: await text('./page.css') };
}
