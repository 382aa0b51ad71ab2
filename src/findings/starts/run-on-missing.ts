import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import { shortRunOns } from '../../study/timers/run-on.ts';
import { rounded } from '../../text/numbers.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedThrough } from './departure-words.ts';

const entry: FindingEntry = {
  id: 'run-on-missing',
  title: 'the load does not run on as long as is asked',
  severity: 'fault',
  question: 3,
  base: 'stored-delay',
  meaning:
    'The plan asks that the load goes on for a while once the last gate is shut, and the circuit lets it stop sooner. Usual causes: an on-delay was bought in place of an off-delay, the gates lie in the supply lead of a timer that needs a permanent supply, or the knob is set too short. A timer that times from its trigger has to keep its own supply while the gates are shut.',
  wrong: '    function: on-delay',
  right: extract('    function: off-delay', '    supply: none'),
  basis: 'timer functions of IEC 61812-1 (off-delay with control signal, power on-delay); makers’ charts',
  followsFrom: [
    'runs-with-all-shut',
    'stays-on',
    'toggle-needs-button',
    'loop-dead',
    'gate-dead',
    'timer-supply',
  ],
};

export const runOnMissing: Check = { entry, find };

function find(study: Study): Finding[] {
  return shortRunOns(study).map((short) => {
    const { wanted, seconds, from, moved, cause } = short;
    const { target, runOn } = wanted;
    const timer = cause.why === 'no-timer' ? undefined : cause.timer;
    const how = seconds > 0 ? `stops ${rounded(seconds)} s` : 'stops at once';
    return found(study.plan, entry, {
      parts: [target, ...(timer ? [timer.part] : [])],
      at:
        timer && study.plan.parts.get(timer.part)?.where.get(cause.why === 'too-short' ? 'time' : 'function'),
      message: `${target} ${how}${seconds > 0 ? ' after' : ' when'} the last gate is shut; it ought to run on for ${rounded(runOn)} s`,
      why: `It runs with ${sayMoved(study.circuit, from)}; then with ${sayMoved(study.circuit, moved)}${seconds > 0 ? ` it goes off after ${rounded(seconds)} s` : ' it goes off'}. ${causeWords(short)}${startedThrough(wanted)}`,
      fix: fixWords(short),
      figures: [
        { name: 'runs on for', value: rounded(seconds), unit: 's' },
        { name: 'asked for', value: rounded(runOn), unit: 's' },
      ],
      basis: cause.why === 'too-short' ? COMMON_PRACTICE : entry.basis,
    });
  });
}

type Short = ReturnType<typeof shortRunOns>[number];

function causeWords({ cause, seconds }: Short): string {
  switch (cause.why) {
    case 'no-timer':
      return 'Nothing on its way lets go late.';
    case 'on-delay':
      return `${cause.timer.part} is an on-delay: it waits before it pulls in, and lets go at once.`;
    case 'supply-lost':
      return `${cause.timer.part} loses its own supply with the gates, and without that it cannot time.`;
    case 'too-short':
      return `${cause.timer.part} is set to ${rounded(cause.timer.delay?.seconds ?? seconds)} s.`;
    default:
      return `${cause.timer.part} is still in then; another contact on the way to the load opens with the gates.`;
  }
}

function fixWords({ cause, wanted: { runOn } }: Short): string {
  switch (cause.why) {
    case 'no-timer':
      return 'Let a timer start the load: an off-delay with a permanent supply, the gates on its dry trigger.';
    case 'on-delay':
      return `Fit an off-delay in place of ${cause.timer.part}.`;
    case 'supply-lost':
      return `Feed A1 A2 of ${cause.timer.part} for good, ahead of the gates, and put the gates on its dry trigger T1 T2.`;
    case 'too-short':
      return `Set ${cause.timer.part} to ${rounded(runOn)} s or more; knobs are off by up to a tenth of their range.`;
    default:
      return `Look along the way from ${cause.timer.part} to the load for the contact that opens with the gates. A stop or cut-out stays where it is; a gate that was put there by mistake belongs on the trigger.`;
  }
}
