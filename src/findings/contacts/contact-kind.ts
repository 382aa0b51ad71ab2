import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { contactFound } from './contact-words.ts';
import { openJudgements } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-kind',
  title: 'a contact with AC ratings alone breaks direct current',
  severity: 'danger',
  question: 6,
  base: 'dc-load',
  meaning:
    'A DC load hangs on a contact that states ratings for AC and none for DC. Alternating current passes through nothing a hundred times a second, which puts the arc out; direct current does not, and the arc goes on burning between the open contacts. Above what such contacts are known to break it is a danger, below a doubt that a DC rating on the label would settle.',
  wrong: 'contact: {ratings: [30 A 240 V AC], make: 300 A, resistance: 3 mohm}',
  right: 'contact: {ratings: [30 A 28 V DC], make: 300 A, resistance: 3 mohm}',
  basis: 'contact ratings as printed; common practice for what AC contacts break on DC',
  followsFrom: [],
};

export const contactKind: Check = { entry, find };

function find(study: Study): Finding[] {
  return openJudgements(study, 'kind').map((open) =>
    contactFound(study.plan, entry, open, {
      why: 'Direct current has no zero that puts the arc out: it goes on burning between the open contacts, and the load goes on running.',
    }),
  );
}
