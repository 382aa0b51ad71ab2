import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { contactFound, WELDS } from './contact-words.ts';
import { openJudgements } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-not-motor-rated',
  title: 'the contact has only a rating for heaters',
  severity: 'warning',
  question: 6,
  base: 'dc-chain',
  meaning:
    'Only a resistive rating is stated, which says nothing of starting a motor. Where even the published multiple of it falls short of the starting current it is a warning; otherwise a doubt that a motor rating on the label would settle. A hand switch in the line of a motor to 2 hp serves at 80 % of its AC rating (nec), a solid-state output to a sixth of its amperes.',
  wrong: 'contact: {ratings: [16 A 240 V AC]}',
  right: 'contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}',
  basis: 'NEC 430.83(A)(1); making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1; NEC 430.83(C), 404.14(A)',
  followsFrom: [],
};

export const contactNotMotorRated: Check = { entry, find };

function find(study: Study): Finding[] {
  return openJudgements(study, 'motor-rated').map((open) =>
    contactFound(study.plan, entry, open, { why: WELDS }),
  );
}
