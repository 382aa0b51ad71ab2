import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { finding, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

export const entry: FindingEntry = {
  id: 'value-unsaid',
  title: 'the verdict turns on a figure that the plan leaves out',
  severity: 'doubt',
  question: 2,
  base: 'dc-chain',
  meaning:
    'A figure that is left out counts at both ends of what such parts usually have. Where the plan passes at both it passes, and where it fails at both it fails. Here it passes at one end and fails at the other, so that nobody can tell until the figure is looked up; the report names it and, where it can be worked out, the value that is enough. What has no usual value, such as the way a lever is mounted, is asked for.',
  wrong: '    kind: gate',
  right: extract('    kind: gate', '    pressed-when: open'),
  basis: 'a missing figure is never a pass',
  followsFrom: [],
};

export const valueUnsaid: Check = { entry, find };

/** What has no usual value and is asked for wherever it bears on something. */
function find(study: Study): Finding[] {
  return [...levers(study), ...times(study), ...practice(study), ...volts(study)];
}

/** Gates of which nothing says how the lever is mounted. */
function levers({ plan, circuit }: Study): Finding[] {
  const names = [...plan.parts.values()]
    .filter(
      (p) =>
        p.kind === 'gate' && !p.where.has('pressed-when') && circuit.inputs.some((i) => i.part === p.name),
    )
    .map((p) => p.name);
  if (names.length === 0) return [];
  const one = names.length === 1;
  return [
    found(plan, entry, {
      parts: names,
      message: `which position of ${listOf(names)} presses ${one ? 'its' : 'their'} lever${one ? '' : 's'} is not stated`,
      why: 'Mounted one way the open gate presses the lever and NO closes; mounted the other way it is the shut gate, and the load would run with every gate shut.',
      fix: `State pressed-when: open or shut of ${listOf(names)}.`,
      basis: entry.basis,
    }),
  ];
}

/** Timers of which nothing says for how long they are set. */
function times({ plan }: Study): Finding[] {
  return [...plan.parts.values()].flatMap((p) =>
    p.kind !== 'timer' || p.time !== undefined
      ? []
      : [
          finding(plan, {
            ...{ id: entry.id, severity: 'doubt', question: 2, parts: [p.name] },
            message: `the time that ${p.name} is set to is not stated`,
            why: 'With none a load that ought to run on stops at once; with a long one it runs on after what stops it.',
            fix: `State time: of ${p.name}, such as 10 s.`,
            basis: entry.basis,
          }),
        ],
  );
}

/** Which tables apply, where neither the plan nor its plugs tell. */
function practice({ plan }: Study): Finding[] {
  if (plan.practiceFrom !== 'taken') return [];
  return [
    finding(plan, {
      ...{ id: entry.id, severity: 'doubt', question: 7, parts: [] },
      message: `practice is not stated, and no pattern of a plug or outlet tells it; ${plan.practice} is taken`,
      why: 'North American and other tables differ in what a cord, a breaker and a contact may bear.',
      fix: 'State practice: nec or iec, or the pattern of each plug and outlet.',
      basis: entry.basis,
    }),
  ];
}

/** Machines of which the volts are not stated, for many can be wired for two; and mains of two or three live conductors. */
function volts({ plan }: Study): Finding[] {
  return [...plan.parts.values()].flatMap((p) => {
    if (p.kind !== 'motor' && p.kind !== 'plug') return [];
    if (p.where.has('volts') || (p.kind === 'plug' && (p.feed === 'single' || plan.practice === 'iec')))
      return [];
    return [
      finding(plan, {
        ...{ id: entry.id, severity: 'doubt', question: 7, parts: [p.name] },
        message: `the volts of ${p.name} are not stated; ${p.volts.volts} V are taken`,
        why:
          p.kind === 'motor'
            ? 'Many motors can be connected for two voltages, and draw twice the current at the lower.'
            : 'Two live conductors have 208 V or 240 V between them, three have more besides.',
        fix: `State volts: of ${p.name}.`,
        basis: entry.basis,
      }),
    ];
  });
}
