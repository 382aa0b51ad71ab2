import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import { lateBlocks } from '../../study/timers/run-on.ts';
import { rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'block-late',
  title: 'what ought to stop the load stops it only after a delay',
  severity: 'danger',
  question: 3,
  base: 'timer',
  meaning:
    'A stop, a full bin or an overload contact lies ahead of a timer that lets go late, so that the load runs on while it is tripped. It has to break the way behind the timer: the feed of its contact, or the coil of the contactor.',
  wrong: extract(
    '  - {cable: bell, length: 4 m, cores: {white: [KT1.T1, bin.COM], brown: [KT1.T2, planer.NO]}}',
    '  - {cable: bell, length: 3 m, cores: {white: [bin.NC, planer.COM]}}',
    '  - {cable: bell, length: 3 m, cores: {white: [planer.COM, saw.COM], brown: [planer.NO, saw.NO]}}',
    '  - {cable: bell, length: 5 m, cores: {white: [saw.COM, lathe.COM], brown: [saw.NO, lathe.NO]}}',
    '  - {link: [plus, KT1.15]}',
  ),
  right: extract(
    '  - {cable: bell, length: 4 m, cores: {white: [KT1.T1, planer.COM], brown: [KT1.T2, planer.NO]}}',
    '  - {cable: bell, length: 3 m, cores: {white: [planer.COM, saw.COM], brown: [planer.NO, saw.NO]}}',
    '  - {cable: bell, length: 5 m, cores: {white: [saw.COM, lathe.COM], brown: [saw.NO, lathe.NO]}}',
    '  - {cable: bell, length: 4 m, cores: {red: [plus, bin.COM], black: [bin.NC, KT1.15]}}',
  ),
  basis:
    'IEC 60204-1 clause 9.2: a stop takes precedence and acts without delay (from memory); common practice',
  followsFrom: ['block-ignored'],
};

export const blockLate: Check = { entry, find };

function find(study: Study): Finding[] {
  return lateBlocks(study).map(({ wanted, seconds, from, moved }) => {
    const { circuit } = study;
    const names = moved.map((i) => circuit.inputs[i]!.part);
    const blockers = wanted.blockers.map((b) => b.ref.part).filter((p) => names.includes(p));
    const named = blockers[0] ?? wanted.blockers[0]?.ref.part ?? wanted.target;
    return found(study.plan, entry, {
      parts: [wanted.target, named],
      message: `${wanted.target} runs on for ${rounded(seconds)} s after ${named} ought to have stopped it`,
      why: `It runs with ${sayMoved(circuit, from)}, and still with ${sayMoved(circuit, moved)}: ${named} lies ahead of a timer that lets go late.`,
      fix: `Put the contact of ${named} behind the timer: in line with its output, or with the coil of the contactor.`,
      figures: [{ name: 'stops after', value: rounded(seconds), unit: 's' }],
      basis: entry.basis,
    });
  });
}
