import type { Study } from '../../study/study.ts';
import { rounded, roundedOrNull } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type StartTrip, startTrips } from './start-trips.ts';

const entry: FindingEntry = {
  id: 'breaker-may-trip',
  title: 'the breaker may trip when the motor starts',
  severity: 'caution',
  question: 7,
  base: 'iec-star',
  meaning:
    'The starting current lies in the band in which this breaker may trip at once. It holds on most days and trips on some. A breaker of curve C holds more than one of curve B. Of a plug fuse it means that a start of some length melts it.',
  wrong: 'breaker: 16 A B',
  right: 'breaker: 16 A C',
  basis: 'IEC 60898-1, instantaneous tripping bands B, C and D; UL 489 (from memory); BS 1362; IEC 60269-1',
  followsFrom: [],
};

export const breakerMayTrip: Check = { entry, find };

/** Only where it is known: a starting current that is not stated is no reason to think that the breaker trips. */
function find(study: Study): Finding[] {
  return startTrips(study)
    .filter(({ judged }) => judged.verdict === 'may')
    .map((trip) => mayTrip(study, trip));
}

function mayTrip({ plan }: Study, { plug, loads, device, starting, judged }: StartTrip): Finding {
  const [needed, holds] = [roundedOrNull(starting.amps), roundedOrNull(judged.holds)];
  const names = loads.map((l) => l.name);
  const breaker = device.kind === 'breaker';
  return found(plan, entry, {
    parts: [plug.name, ...names],
    at: plug.where.get(breaker ? 'breaker' : 'fuse') ?? plug.at,
    message: `${listOf(names)} ${names.length > 1 ? 'start' : 'starts'} at ${needed} A; the ${breaker ? 'circuit of' : 'fuse in'} ${plug.name} holds ${holds} A`,
    why: `The ${breaker ? 'breaker' : 'fuse'} may ${breaker ? 'trip' : 'open'} at the start of the ${names.length > 1 ? 'motors' : 'motor'}.`,
    fix: breaker
      ? `The breaker of ${plug.name} may let go ${rounded((starting.amps ?? 0) - (judged.holds ?? 0))} A below the start.`
      : 'Where it opens, a motor that starts on less is needed; never a larger fuse than plug and cord are made for.',
    figures: [
      { name: 'needed', value: needed, unit: 'A' },
      { name: 'allowed', value: holds, unit: 'A' },
    ],
    basis: `${starting.basis}; ${judged.basis}`,
  });
}
