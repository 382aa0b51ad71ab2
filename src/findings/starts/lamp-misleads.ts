import { inputText } from '../../edit/said-plan.ts';
import { type LampDeviation, lampDeviations } from '../../logic/lamps.ts';
import type { LampIntent } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { movedParts, saySteps } from './departure-words.ts';

const entry: FindingEntry = {
  id: 'lamp-misleads',
  title: 'a lamp shows other than the plan means it to',
  severity: 'fault',
  question: 3,
  base: 'lamps',
  meaning:
    'A lamp with an intent is lit when it should be dark, or dark when it should be lit, in at least one position of gates, switches and relays. Whoever trusts it reaches for a machine that can start, or waits for one that runs. Here the lamp for "all shut" hangs on the make contact of the relay in place of its break contact.',
  wrong: 'red: [K2.NO, ready.1]',
  right: 'red: [K2.NC, ready.1]',
  basis: COMMON_PRACTICE,
  followsFrom: [
    'mains-meets-low-voltage',
    'loop-dead',
    'gate-dead',
    'gate-on-wrong-tab',
    'gates-in-series',
    'gate-stops-load',
    'runs-with-all-shut',
    'runs-without-cause',
    'stays-on',
    'chatters',
    'depends-on-order',
    'supply-shorted',
    'coil-in-series',
    'not-as-joined',
    'coil-too-low',
  ],
  ofWiring: true,
};

export const lampMisleads: Check = { entry, find };

function find(study: Study): Finding[] {
  const v = study.nominal?.verified ?? study.verified;
  if (!v) return [];
  return (study.plan.lampIntents ?? []).flatMap((intent) => {
    const deviations = lampDeviations(v, intent);
    return deviations.length === 0 ? [] : [misled(study, intent, deviations)];
  });
}

function misled(study: Study, intent: LampIntent, deviations: readonly LampDeviation[]): Finding {
  const { target } = intent;
  const part = study.plan.parts.get(target);
  const shows = part !== undefined && 'shows' in part ? part.shows : undefined;
  const told = shows === undefined ? '' : `, which shows "${shows}",`;
  const states = deviations.map(({ lit }) =>
    lit ? 'lit when it should be dark' : 'dark when it should be lit',
  );
  const seen = deviations.map(
    ({ lit, steps }) => `with ${saySteps(study, steps)} it is ${lit ? 'lit' : 'dark'}`,
  );
  return found(study.plan, entry, {
    parts: [target, ...deviations.flatMap(({ steps }) => movedParts(study, steps))],
    at: intent.at,
    message: `the lamp ${target}${told} is ${states.join(', and ')}`,
    why: `It is meant to be lit ${meantWords(intent)}: ${seen.join(', and ')}.`,
    fix: `Follow both ends of ${target} in that position, to the contact that feeds it or should.`,
    basis: entry.basis,
    twin: { name: target, alike: states.join() },
  });
}

function meantWords({ litWhen }: LampIntent): string {
  if (litWhen === 'any-open') return 'when any gate is open, and only then';
  if (litWhen === 'all-shut') return 'when every gate is shut, and only then';
  if ('runs' in litWhen) return `while ${litWhen.runs} runs, and only then`;
  const said = litWhen.map((refs) => refs.map(inputText).join(' with '));
  return `by ${said.join(' or ')}, and by nothing else`;
}
