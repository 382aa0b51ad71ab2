import { judgeBreaker } from '../../ratings/circuit.ts';
import type { Study } from '../../study/study.ts';
import { roundedOrNull } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { fedPlugs } from './plug-loads.ts';

const entry: FindingEntry = {
  id: 'breaker-may-trip',
  title: 'the breaker may trip when the motor starts',
  severity: 'caution',
  question: 7,
  base: 'iec-star',
  meaning:
    'The starting current lies in the band in which this breaker may trip at once. It holds on most days and trips on some. A breaker of curve C holds more than one of curve B.',
  wrong: 'breaker: 16 A B',
  right: 'breaker: 16 A C',
  basis: 'IEC 60898-1, instantaneous tripping bands B, C and D',
  followsFrom: [],
};

export const breakerMayTrip: Check = { entry, find };

/** Only where it is known: a starting current that is not stated is no reason to think that the breaker trips. */
function find(study: Study): Finding[] {
  const { plan } = study;
  return fedPlugs(study).flatMap(({ plug, loads }) => {
    const judged = judgeBreaker({ plug, loads, practice: plan.practice });
    if (judged?.verdict !== 'fail') return [];
    const [needed, holds] = [roundedOrNull(judged.needed), roundedOrNull(judged.found)];
    const names = loads.map((l) => l.name);
    return [
      found(plan, entry, {
        parts: [plug.name, ...names],
        at: plug.where.get('breaker') ?? plug.at,
        message: `${listOf(names)} ${names.length > 1 ? 'start' : 'starts'} at ${needed} A; the circuit of ${plug.name} holds ${holds} A`,
        why: 'The breaker may trip at the start of the motor.',
        fix: 'Put the motor on a circuit of its own that is big enough.',
        figures: [
          { name: 'needed', value: needed, unit: 'A' },
          { name: 'allowed', value: holds, unit: 'A' },
        ],
        basis: judged.basis,
      }),
    ];
  });
}
