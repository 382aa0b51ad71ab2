import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { overRating, switchCurrents } from './switch-currents.ts';

const entry: FindingEntry = {
  id: 'switch-overloaded',
  title: 'the coil current is above the switch’s rating',
  severity: 'fault',
  question: 5,
  base: 'dc-chain',
  meaning:
    'A gate switch has to carry or make more than is printed on it for this kind of current. Its contacts burn and in the end weld, and the load does not stop. Use a stronger switch, or a small relay between the gates and the contactor.',
  wrong: 'contact: {ratings: [0.5 A 125 V AC, 0.05 A 30 V DC], least: 10 mA 5 V DC}',
  right: 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}',
  basis: 'rating as printed; making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1',
  followsFrom: [],
};

export const switchOverloaded: Check = { entry, find };

function find(study: Study): Finding[] {
  return switchCurrents(study).flatMap((s) => {
    const over = overRating(s);
    if (over === undefined) return [];
    const worst = over === 'carry' ? s.held : s.start;
    const coils = s.coils.map((c) => c.part.name);
    return [
      found(study.plan, entry, {
        parts: [s.part.name, ...coils],
        message: `${s.part.name} is rated ${ampsText(s.rating!)} and has to ${over} ${ampsText(worst)}`,
        why: `That is the ${over === 'carry' ? 'holding' : 'pull-in'} current of ${listOf(coils)} at ${s.volts} V ${s.kind.toUpperCase()}.`,
        fix: `${s.part.name} is ${ampsText(worst - s.rating!)} short of it by its rating.`,
        figures: [ampsFigure('current', worst), ampsFigure('rating', s.rating!)],
        basis: entry.basis,
        twin: { alike: over, badness: worst / s.rating! },
      }),
    ];
  });
}
