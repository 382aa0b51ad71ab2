/** The plan with its first repair in it: written as `mend --write` would write it, read again and checked again in whole. */
import { applyEdits } from '../edit/apply-edits.ts';
import type { FindingRepair, Report } from '../findings/report-model.ts';
import { readPlan } from '../plan/read.ts';
import { check } from '../repair/check.ts';
import { Study } from '../study/study.ts';

export interface Mending {
  readonly repair: FindingRepair;
  readonly study: Study;
  /** what the check says of the mended plan */
  readonly report: Report;
}

/**
 * `text` is the file that the plan was read from. Undefined where the check has no proved repair of the wiring, and where it
 * cannot be written into the text.
 */
export function mendingOf(study: Study, report: Report, text: string): Mending | undefined {
  const repair = report.findings.find((f) => f.repair !== null)?.repair;
  if (repair == null) return undefined;
  const applied = applyEdits(text, study.plan, repair.edits);
  if ('refused' in applied) return undefined;
  const read = readPlan(applied.text, study.plan.file);
  if (!read.ok) return undefined;
  const mended = Study.of(read.plan);
  return { repair, study: mended, report: check(mended) };
}
