import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { contactFound, WELDS } from './contact-words.ts';
import { openJudgements } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-horsepower',
  title: 'the motor is bigger than the contact’s horsepower rating',
  severity: 'warning',
  question: 6,
  base: 'dc-chain',
  meaning:
    'The contact states the largest motor it may switch at this voltage, and this motor is larger. The amperes beside it are for heaters and do not count. Such a relay lasts some weeks and then sticks.',
  wrong: 'contact: {ratings: [30 A 240 V AC], motor: [0.5 hp 120 V AC]}',
  right: 'contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}',
  basis: 'NEC 430.83(A)(1)',
  followsFrom: [],
};

export const contactHorsepower: Check = { entry, find };

function find(study: Study): Finding[] {
  return openJudgements(study, 'horsepower').map((open) =>
    contactFound(study.plan, entry, open, { why: WELDS }),
  );
}
