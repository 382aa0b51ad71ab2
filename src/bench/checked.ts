/** The check with its repairs. */
import { check } from '../checks/check.ts';
import type { Plan } from '../plan/plan.ts';
import type { Report } from '../report/model.ts';
import { GRAVE, mend } from './mend.ts';

/** Terminals of a plan up to which a repair is sought as part of the check; beyond, `mend` is asked for by name. */
const MOST_TERMINALS = 250;

/** The report of `check`, each grave finding of questions 1 to 3 with the first verified repair that does away with it. */
export function checkAndMend(plan: Plan): Report {
  const report = check(plan);
  const terminals = [...plan.terminals.values()].reduce((sum, t) => sum + t.names.length, 0);
  const wrong = report.findings.filter((f) => f.question <= 3 && GRAVE.has(f.severity));
  if (wrong.length === 0 || terminals > MOST_TERMINALS) return report;
  const first = mend(plan, report).repairs[0];
  if (!first) return report;
  const findings = report.findings.map((f) => (wrong.includes(f) ? { ...f, repair: [...first.words] } : f));
  return { ...report, findings };
}
