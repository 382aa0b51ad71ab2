/** What `check --format sarif` needs besides, loaded as one piece when it is asked for. */
import { createHash } from 'node:crypto';
import type { Report } from '../../findings/report-model.ts';
import type { Plan } from '../../plan/plan.ts';
import { type SarifOfPlan, sarifOfReport } from '../../report/sarif/plan.ts';
import type { Artifact } from '../../report/sarif/words.ts';

export * from '../../report/sarif/plan.ts';
export * from '../../report/sarif/run.ts';

const digest = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 32);

export function sarifOf(report: Report, plan: Plan, bytes: Uint8Array, artifact: Artifact): SarifOfPlan {
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  return sarifOfReport(report, { plan, text, artifact, digest });
}
