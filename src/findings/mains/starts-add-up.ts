import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type FedPlug, fedPlugs, runningAmps } from './plug-loads.ts';
import { STARTED_AFTER, startsInTurn } from './starts-in-turn.ts';

const entry: FindingEntry = {
  id: 'starts-add-up',
  title: 'several motors start on one circuit at the same moment',
  severity: 'notice',
  question: 7,
  base: 'two-fans',
  meaning:
    'Motors that start together draw their starting currents together, and the lights dim, a breaker trips or a coil lets go. Held back by an on-delay timer until the first one runs, the second adds its start to no more than a running current. After a power cut all that gates have called start together, unless each has a delay of its own.',
  wrong: 'time: 4 s',
  right: 'time: 5 s',
  basis: 'common practice; starts added as magnitudes',
  followsFrom: ['trips-at-start', 'breaker-may-trip'],
};

export const startsAddUp: Check = { entry, find };

function find(study: Study): Finding[] {
  return fedPlugs(study).flatMap((fed) => addUp(study, fed));
}

function addUp(study: Study, { plug, loads }: FedPlug): Finding[] {
  const motors = loads.filter((l) => l.kind === 'motor');
  if (motors.length < 2) return [];
  const { starts, most, together } = startsInTurn(study, motors);
  const crowd = starts.find((s) => s.loads.length > 1);
  if (!crowd || together === undefined || most === undefined) return [];
  const names = crowd.loads.map((l) => l.name);
  const apart = inTurn(study, motors);
  return [
    found(study.plan, entry, {
      parts: [plug.name, ...names],
      message: `${listOf(names)} can start at one moment: ${rounded(most.amps)} A on ${plug.name}${apart === undefined ? '' : `; in turn at most ${rounded(apart)} A`}`,
      why: `Starts less than ${STARTED_AFTER} s apart add up. After a power cut all that open gates call start together, unless each has a delay of its own.`,
      fix: `An on-delay timer of ${STARTED_AFTER} s or more ahead of all but the first holds them apart.`,
      figures: [
        { name: 'together', value: rounded(together.amps), unit: 'A' },
        { name: 'one after the other', value: apart === undefined ? null : rounded(apart), unit: 'A' },
      ],
      basis: entry.basis,
    }),
  ];
}

/** A at most where each starts once the others run; the greatest start may be the last. */
function inTurn(study: Study, motors: FedPlug['loads']): number | undefined {
  const amps = motors.map((m) => startsInTurn(study, [m]).most?.amps);
  const running = motors.map((m) => runningAmps(study).get(m.name));
  if (amps.some((a) => a === undefined) || running.some((r) => r === undefined)) return undefined;
  const all = running.reduce<number>((sum, r) => sum + r!, 0);
  return Math.max(...amps.map((a, i) => a! + all - running[i]!));
}
