import { rectifiedParts } from '../../logic/rectified.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'undecided',
  title: 'the circuit is too involved to decide',
  severity: 'doubt',
  question: 2,
  base: 'eleven-relays',
  meaning:
    'Every state of the circuit is looked at, and this one has too many relays that feed back on one another. Nothing is guessed in that case. Split it into plans that do not share relays.',
  wrong: '{link: [K11.NO, K1.A1]}',
  right: '{link: [K11.NO, lamp.1]}',
  basis: 'limit of the method',
  followsFrom: [],
};

export const undecided: Check = { entry, find };

function find(study: Study): Finding[] {
  if (study.verified) return [];
  const [behind] = rectifiedParts(study.circuit);
  if (behind)
    return [
      found(study.plan, entry, {
        parts: [behind.part],
        message: `what ${behind.part} does cannot be told, nor what it starts and stops`,
        why: `${behind.part} hangs on ${behind.source.part} behind diodes; what rectified alternating current does is not worked out, and nothing was guessed.`,
        fix: `Feed ${behind.part} from a supply for V DC.`,
        basis: entry.basis,
      }),
    ];
  return [
    found(study.plan, entry, {
      parts: [],
      message: 'this circuit is too involved to be decided for every state',
      why: `The exact method gave up: ${study.undecided}. Nothing was guessed.`,
      fix: 'Split the plan into circuits that do not share relays, and check each.',
      basis: entry.basis,
    }),
  ];
}
