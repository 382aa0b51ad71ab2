import { sayMoved } from '../../circuit/input-words.ts';
import { movedIn } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { movedParts, saySteps, startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';
import { rememberingRelays } from './remembering-relays.ts';

const entry: FindingEntry = {
  id: 'depends-on-order',
  title: 'the outcome depends on what moves first',
  severity: 'fault',
  question: 2,
  base: 'two-collectors',
  meaning:
    'From one and the same position of the gates the load sometimes runs and sometimes does not, according to which relay or gate moved first. Here each relay locks the other out, so the shared gate starts whichever is quicker that day. Take the contacts of one relay out of the coil circuit of the other.',
  wrong: extract(
    '  - {link: [line1, K2.31]}',
    '  - {link: [K2.32, K1.A1]}',
    '  - {link: [line2, K1.31]}',
    '  - {link: [K1.32, K2.A1]}',
  ),
  right: extract('  - {link: [line1, K1.A1]}', '  - {link: [line2, K2.A1]}'),
  basis: 'common practice',
  followsFrom: ['toggle-needs-button', 'set-and-reset', 'chatters', 'stays-on', 'mains-meets-low-voltage'],
  goneByOneMove: true,
};

export const dependsOnOrder: Check = { entry, find };

function find(study: Study): Finding[] {
  return [...byMoves(study), ...byRace(study)];
}

function byMoves(study: Study): Finding[] {
  return departuresOf(study, 'stays-off').map(({ wanted, steps }) =>
    found(study.plan, entry, {
      parts: [wanted.target, ...movedParts(study, steps)],
      message: `whether ${wanted.target} runs depends on the order in which things were moved`,
      why: `Steps: ${saySteps(study, steps)}. It ought to run there and does not, though the same positions reached otherwise may start it.${startedThrough(wanted)}`,
      fix: 'Take relay contacts out of the coil circuits that do not need them.',
      basis: entry.basis,
    }),
  );
}

function byRace(study: Study): Finding[] {
  const { circuit, verified: v } = study;
  const race = v?.races[0];
  if (!v || !race) return [];
  const relays = rememberingRelays(study);
  return [
    found(study.plan, entry, {
      parts: [...relays, race.target],
      message: `whether ${race.target} runs depends on which relay moves first`,
      why: `With ${sayMoved(circuit, movedIn(circuit, v.model.bdd, race.states)!)} the relays ${listOf(relays)} race one another.`,
      fix: 'Arrange the contacts so that one relay waits for the other.',
      basis: entry.basis,
    }),
  ];
}
