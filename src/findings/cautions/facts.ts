/** What the choice of cautions turns on, worked out from a study and from what was found in it. */

import type { Practice } from '../../plan/device-figures.ts';
import type { Study } from '../../study/study.ts';
import type { Finding } from '../report-model.ts';
import { type BoxFacts, boxFacts } from './box-facts.ts';
import { type LoopFacts, loopFacts } from './loop-facts.ts';
import { type MainsFacts, mainsFacts } from './mains-facts.ts';
import { type MotorFacts, motorFacts } from './motor-facts.ts';
import type { Stands } from './stands.ts';

/** Readings that the document asks for: of the loop with the motor unplugged, or of mains as well. */
export type Readings = 'none' | 'loop' | 'mains';

/** Every fact is there: what a plan does not say is taken as what calls for the caution. */
export interface CautionFacts extends MainsFacts, MotorFacts, LoopFacts, BoxFacts {
  readonly practice: Practice;
  readonly readings: Readings;
}

export function cautionFacts(study: Study, findings: readonly Finding[], readings: Readings): CautionFacts {
  const ids = new Set(findings.flatMap((f) => [f.id, ...f.also.map((a) => a.id)]));
  const stands: Stands = (id) => ids.has(id);
  return {
    practice: study.plan.practice,
    readings,
    ...mainsFacts(study, findings, stands),
    ...motorFacts(study, stands),
    ...loopFacts(study, findings, stands),
    ...boxFacts(study, stands),
  };
}
