import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type StartTrip, startTrips } from './start-trips.ts';

const entry: FindingEntry = {
  id: 'trips-at-start',
  title: 'the breaker or fuse opens whenever the motor starts',
  severity: 'fault',
  question: 7,
  base: 'iec-star',
  meaning:
    'The starting current is beyond what this breaker or plug fuse can hold for even a tenth of a second. The motor never comes up to speed. Another curve or class of the same rating may hold it; a larger one only where plug and wire allow it.',
  wrong: 'breaker: 10 A B',
  right: 'breaker: 16 A C',
  basis: 'IEC 60898-1, upper ends of the instantaneous bands; IEC 60269-1 pre-arcing I2t; BS 1362',
  followsFrom: [],
};

export const tripsAtStart: Check = { entry, find };

function find(study: Study): Finding[] {
  return startTrips(study)
    .filter(({ judged }) => judged.verdict === 'opens')
    .map((trip) => trips(study, trip));
}

function trips({ plan }: Study, { plug, loads, device, starting, judged }: StartTrip): Finding {
  const names = loads.map((l) => l.name);
  const [amps, opens] = [rounded(starting.amps, 4), rounded(judged.opens!, 4)];
  const breaker = device.kind === 'breaker';
  const curve = breaker && plug.curve !== undefined ? ` of curve ${plug.curve}` : '';
  const what = breaker
    ? `${device.amps} A breaker${curve} of ${plug.name}`
    : `${device.amps} A fuse in ${plug.name}`;
  return found(plan, entry, {
    parts: [plug.name, ...names],
    at: plug.where.get(breaker ? 'breaker' : 'fuse') ?? plug.at,
    message: `the ${what} opens at every start: ${listOf(names)} ${names.length > 1 ? 'start' : 'starts'} at ${amps} A, and ${opens} A open it at once`,
    why: 'It opens within a tenth of a second or two, and a start lasts longer.',
    fix: `A breaker or fuse is needed that holds ${amps} A while the motor starts, as far as plug and wire allow one; or a motor that starts on less.`,
    figures: [
      { name: 'starting', value: amps, unit: 'A' },
      { name: 'opens at', value: opens, unit: 'A' },
    ],
    basis: `${starting.basis}; ${judged.basis}`,
  });
}
