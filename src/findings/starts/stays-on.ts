import type { ContactEdge } from '../../circuit/circuit.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { movedParts, saySteps, startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';
import { rememberingRelays } from './remembering-relays.ts';

const entry: FindingEntry = {
  id: 'stays-on',
  title: 'once started, it does not stop',
  severity: 'fault',
  question: 3,
  base: 'seal-in',
  meaning:
    'A relay holds itself in, and shutting the gates does not break its holding path. Here the holding contact was taken from the contactor, which any gate pulls in: after the first gate the fan runs on until STOP. Take it from the relay that START works.',
  wrong: extract('  - {link: [armed, Q1.13]}', '  - {link: [Q1.14, CR.A1]}'),
  right: extract('  - {link: [armed, CR.11]}', '  - {link: [CR.14, CR.A1]}'),
  basis: 'common practice',
  followsFrom: ['toggle-needs-button', 'coil-holds-in'],
  goneByOneMove: true,
};

export const staysOn: Check = { entry, find };

function find(study: Study): Finding[] {
  return departuresOf(study, 'keeps-on').map((d) => {
    const { target, latches, blockers } = d.wanted;
    const holders = rememberingRelays(study);
    return found(study.plan, entry, {
      parts: [target, ...(holders.length > 0 ? holders : movedParts(study, d.steps))],
      message: `once started, ${target} does not stop`,
      why: `Steps: ${saySteps(study, d.steps)}. It ought to be off there and still runs: a relay holds itself in.${holdingWords(d.holding)}${startedThrough(d.wanted)}`,
      fix:
        latches.length > 0
          ? `Lead the holding contact so that ${listOf(blockers.map((b) => b.ref.part)) || 'the stop'} ${blockers.length > 1 ? 'break' : 'breaks'} it.`
          : 'Take the holding contact off, or lead it so that shutting the gates breaks it.',
      basis: entry.basis,
      twin: { alike: '' },
    });
  });
}

function holdingWords(contacts: readonly ContactEdge[]): string {
  const names = new Set(contacts.map((c) => `${c.part}.${c.terminals[0]} to ${c.part}.${c.terminals[1]}`));
  return names.size === 0 ? '' : ` Holding contact: ${listOf([...names], 3)}.`;
}
