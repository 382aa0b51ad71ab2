import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { contactFound } from './contact-words.ts';
import { openJudgements } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-running',
  title: 'the load draws more than the contact carries',
  severity: 'warning',
  question: 6,
  base: 'iec-star',
  meaning:
    'The full-load current of the motor is above the rating of the contact. It overheats in use and its springs go soft, until it welds and the motor does not stop. A motor counts against the AC-3 rating, not the larger AC-1 figure on the same label; a contact that feeds another relay’s coil against its pilot-duty code, AC-15 or DC-13.',
  wrong: 'contact: {ratings: [25 A 690 V AC], ac-3: 6 A}',
  right: 'contact: {ratings: [25 A 690 V AC], ac-3: 12 A}',
  basis: 'rating as printed; IEC 60947-4-1 category AC-3; NEMA ICS 5, IEC 60947-5-1 for coils',
  followsFrom: ['contact-horsepower', 'contact-not-motor-rated'],
};

export const contactRunning: Check = { entry, find };

const OVERHEATS = 'A contact that carries more than its rating overheats, its springs go soft, and it welds.';
const BURNS = 'A contact that breaks more coil current than it is built for burns away or sticks.';

function find(study: Study): Finding[] {
  return openJudgements(study, 'running').map((open) =>
    contactFound(study.plan, entry, open, { why: open.contact.feeds === 'coil' ? BURNS : OVERHEATS }),
  );
}
