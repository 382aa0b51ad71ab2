import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { contactFound, WELDS } from './contact-words.ts';
import { openJudgements } from './judged-contacts.ts';

const entry: FindingEntry = {
  id: 'contact-starting',
  title: 'the motor or coil starts at more than the contact can make',
  severity: 'warning',
  question: 6,
  base: 'iec-star',
  meaning:
    'A motor draws five to eight times its running current in the first moment; an AC coil takes several times its holding current while it pulls in. A contact that closes on more than it can make bounces and welds, and then the motor runs on with all gates shut. Compare the locked-rotor current with what the contact makes.',
  wrong: 'contact: {ratings: [25 A 690 V AC], make: 30 A}',
  right: 'contact: {ratings: [25 A 690 V AC], ac-3: 12 A}',
  basis: 'making capacity as printed; IEC 60947-4-1 Table 7',
  followsFrom: ['contact-not-motor-rated', 'contact-horsepower'],
};

export const contactStarting: Check = { entry, find };

const COIL_WELDS =
  'A contact that closes on more than it is built for welds, and the relay behind it stays in.';

function find(study: Study): Finding[] {
  return openJudgements(study, 'starting').map((open) =>
    contactFound(study.plan, entry, open, { why: open.contact.feeds === 'coil' ? COIL_WELDS : WELDS }),
  );
}
