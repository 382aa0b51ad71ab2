import { sayMoved } from '../../circuit/input-words.ts';
import { movedIn } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { rememberingRelays } from './remembering-relays.ts';

const entry: FindingEntry = {
  id: 'chatters',
  title: 'a relay breaks its own coil and buzzes',
  severity: 'fault',
  question: 2,
  base: 'seal-in',
  meaning:
    'The coil is fed through a contact that opens when the relay pulls in. It pulls in, cuts itself off, drops out and begins again, many times a second; it buzzes, and its contacts burn. Use the contact that closes on pulling in (14, not 12).',
  wrong: '{link: [CR.12, CR.A1]}',
  right: '{link: [CR.14, CR.A1]}',
  basis: 'common practice',
  followsFrom: ['toggle-needs-button', 'set-and-reset', 'mains-meets-low-voltage', 'mains-shorted'],
  goneByOneMove: true,
};

export const chatters: Check = { entry, find };

function find(study: Study): Finding[] {
  const { circuit, verified: v } = study;
  const moved = v && movedIn(circuit, v.model.bdd, v.chatter);
  if (!moved) return [];
  const relays = rememberingRelays(study);
  return [
    found(study.plan, entry, {
      parts: relays,
      message: `${listOf(relays)} never settles: it pulls in, breaks its own coil, drops out and starts again`,
      why: `It buzzes with ${sayMoved(circuit, moved)}, because a contact that opens when the relay pulls in lies in the path of its coil.`,
      fix: `Use the make contact (NO, 13-14) in place of the break contact in the coil circuit of ${listOf(relays)}.`,
      basis: entry.basis,
    }),
  ];
}
