/** A design as the text of a plan, with comments for whoever builds it. */
import type { Answers } from './answers.ts';
import { type Design, needsOverload } from './design.ts';
import { lowParts } from './low-parts.ts';
import { gateRuns, gateTab, loopColours, lowRuns } from './low-runs.ts';
import { isFixed, mainsCable, mainsJoints, mainsParts, mainsRuns } from './mains-side.ts';
import { commented, type Head, headLines } from './plan-head.ts';
import { type Laid, ordinary, overloadName, type Told } from './told.ts';
import { entry, flow, type Value } from './yaml-lines.ts';

function told({ comment, name, fields }: Told): string[] {
  return [...commented(comment.length === 0 ? [] : [comment.join(' ')], '  '), ...entry(name, fields, '  ')];
}

function runLine({ cable, length, cores, link }: Laid): string {
  const value: Record<string, Value | undefined> = link === undefined ? { cable, length, cores } : { link };
  return `  - ${flow(value)}`;
}

/** The text of a plan, whole; without a head the same plan with less to read, for trying. */
export function planText(design: Design, head?: Head): string {
  const { answers } = design;
  return [
    ...(head === undefined ? [] : headLines(head)),
    'format: 1',
    `title: ${flow(answers.title)}`,
    `practice: ${answers.practice}`,
    `ambient: ${String(ordinary(`shop-${answers.practice}`).ambient)} # warmest air round the parts; write more if yours is hotter`,
    '',
    ...stockLines(design),
    '',
    ...partLines(design),
    '',
    ...runLines(design),
    '',
    ...intentLines(design),
    '',
  ].join('\n');
}

function stockLines(design: Design): string[] {
  const { answers, gauge } = design;
  const { practice, lever } = answers;
  const closes = `The ${lever} gate presses the lever, so the tabs to use are COM and ${gateTab(answers)}.`;
  const { ratings } = ordinary('gate').contact as { readonly ratings: readonly string[] };
  const marked = ratings.find((r) => r.endsWith(design.supply.kind.toUpperCase())) ?? ratings[0];
  const cable = mainsCable(design);
  const good = typeof cable.rated === 'string' ? `, good for ${cable.rated} or more` : '';
  const mains = isFixed(design)
    ? `The mains wiring: look for ${design.circuit.gauge} copper or thicker${good}, laid as your code asks.`
    : `The mains cord: look for ${design.circuit.gauge} copper or thicker, flexible${good}.`;
  return [
    'stock:',
    ...commented(
      [
        `The switch at each gate: a snap switch with a lever, marked ${marked} or better. ${closes} Try each with a meter before it is fixed.`,
      ],
      '  ',
    ),
    ...entry('snap', { kind: 'gate', 'pressed-when': lever, ...ordinary('gate') }, '  '),
    ...commented(
      [`The gate cable: look for two cores of ${gauge} copper or thicker. Keep it off the mains cable.`],
      '  ',
    ),
    ...entry('bell', { kind: 'cable', gauge, ...ordinary(`loop-cable-${practice}`) }, '  '),
    ...commented([mains], '  '),
    ...entry('mains', cable, '  '),
  ];
}

function partLines(design: Design): string[] {
  const { answers } = design;
  const cutouts = answers.cutouts.map(
    ({ name }, i): Told => ({
      comment:
        i > 0
          ? []
          : ['What stops the collector: a switch that opens COM to NC as it trips, in line with all gates.'],
      name,
      fields: { kind: 'cutout', ...ordinary('cutout') },
    }),
  );
  const hand: Told = {
    comment: [
      'The hand switch, side by side with the gates: it runs the collector while it is on, and each cut-out stops that as well.',
    ],
    name: 'hand',
    fields: { kind: 'switch', ...ordinary('hand') },
  };
  const joints = [...lowRuns(design).joints, ...mainsJoints(design)];
  return [
    'parts:',
    ...[...lowParts(design), ...cutouts, ...(answers.hand === undefined ? [] : [hand])].flatMap(told),
    ...commented(['The gates, in the order of the duct.'], '  '),
    ...answers.gates.flatMap(({ name }) => entry(name, { from: 'snap' }, '  ')),
    ...commented(['Terminal strips and wire nuts in the box.'], '  '),
    ...joints.flatMap((name) => entry(name, { kind: 'joint' }, '  ')),
    ...mainsParts(design).flatMap(told),
  ];
}

const LAYOUT: Readonly<Record<Answers['layout'], (go: string, back: string) => string>> = {
  chain: (go, back) => `from gate to gate; ${go} goes from COM to COM and ${back} from tab to tab`,
  star: (go, back) => `each from the box; ${go} goes to COM and ${back} to the other tab`,
  ring: (go, back) => `from gate to gate and back to the box, ${go} to ${go} and ${back} to ${back}`,
};

function runLines(design: Design): string[] {
  const { answers } = design;
  const { before, after, feed } = lowRuns(design);
  const [go, back] = loopColours(answers);
  return [
    'runs:',
    ...commented(
      ['From the supply to the box, and through whatever stops the collector. This length is a guess.'],
      '  ',
    ),
    ...before.map(runLine),
    ...commented([`The gates, ${LAYOUT[answers.layout](go, back)}.`], '  '),
    ...gateRuns(design, feed, 'call').map(runLine),
    ...commented(['In the box, low voltage.'], '  '),
    ...after.map(runLine),
    ...commented(['Mains. The earth goes through unbroken. These lengths are guesses.'], '  '),
    ...mainsRuns(design).map(runLine),
  ];
}

function intentLines({ answers }: Design): string[] {
  const stops = [...(needsOverload(answers) ? [overloadName] : []), ...answers.cutouts.map((c) => c.name)];
  const starts = [...answers.gates.map((g) => g.name), ...(answers.hand === undefined ? [] : ['hand'])];
  return [
    'intent:',
    ...commented(['Any of these starts the collector, and with all of them shut it stands still.'], '  '),
    ...entry(
      'collector',
      {
        'runs-on': starts,
        'blocked-by': stops.length === 0 ? undefined : stops,
        'run-on': answers['run-on'] === 0 ? undefined : `${answers['run-on']} s`,
      },
      '  ',
    ),
  ];
}
