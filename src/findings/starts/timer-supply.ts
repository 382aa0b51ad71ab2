import type { Study } from '../../study/study.ts';
import { cutOffTimers, shortRunOns } from '../../study/timers/run-on.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'timer-supply',
  title: 'an off-delay timer without a permanent supply',
  severity: 'doubt',
  question: 3,
  base: 'stored-delay',
  meaning:
    'Most off-delay timers need a permanent supply and a trigger: fed through the gates they let go at once, or never pull in. Only those that store what they time with let go late after their supply has gone. A plan that uses no trigger and says nothing of the supply leaves it open which was bought.',
  wrong: '    function: off-delay',
  right: extract('    function: off-delay', '    supply: none'),
  basis: 'timer functions of IEC 61812-1 (off-delay with control signal, power off-delay); makers’ charts',
  followsFrom: [],
};

export const timerSupply: Check = { entry, find };

function find(study: Study): Finding[] {
  return [...unsaid(study), ...cutOff(study)];
}

/** An off-delay that is started by its supply, of which the plan does not say that it can time without one. */
function unsaid({ plan, circuit }: Study): Finding[] {
  return circuit.relays.flatMap(({ part: name, delay }) => {
    const part = plan.parts.get(name);
    if (part?.kind !== 'timer' || delay?.on !== 'out' || !delay.stored || part.supplied !== undefined)
      return [];
    return [
      found(plan, entry, {
        parts: [name],
        at: part.where.get('function') ?? part.at,
        message: `whether ${name} lets go late cannot be told: supply is not stated and T1 T2 are not used`,
        why: 'Here its supply starts and stops it. An off-delay that times from what it stored does that; one that needs a permanent supply and a trigger never pulls in.',
        fix: `State supply: none of ${name} if it is made to time without a supply; else feed A1 A2 for good and put the gates on T1 T2.`,
        basis: entry.basis,
      }),
    ];
  });
}

/** One with a dry trigger whose own supply comes and goes; where the plan asks for run-on, that finding tells it. */
function cutOff(study: Study): Finding[] {
  const told = new Set(
    shortRunOns(study).flatMap(({ cause }) => (cause.why === 'supply-lost' ? [cause.timer.part] : [])),
  );
  return cutOffTimers(study)
    .filter(({ part }) => !told.has(part))
    .map(({ part }) =>
      found(study.plan, entry, {
        severity: 'caution',
        parts: [part],
        message: `${part} cannot let go late: its own supply goes off with what starts it`,
        why: 'An off-delay with a trigger times only while A1 A2 are fed; without them it is out at once.',
        fix: `Feed A1 A2 of ${part} for good, ahead of the gates.`,
        basis: entry.basis,
      }),
    );
}
