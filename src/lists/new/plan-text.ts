/** A design as the text of a plan, with comments for whoever builds it. */
import type { Design } from './design.ts';
import { needsOverload } from './design.ts';
import { gateRuns, gateTab, type Laid, lowParts, lowRuns, ordinary, overloadName, type Told } from './low-voltage.ts';
import { mainsCable, mainsJoints, mainsParts, mainsRuns } from './mains-side.ts';
import { entry, flow, type Value } from './yaml-lines.ts';

const SCHEMA = '# yaml-language-server: $schema=https://example.invalid';

const comments = (lines: readonly string[], indent = '') => lines.map((line) => `${indent}# ${line}`);

function told({ comment, name, fields }: Told): string[] {
  return [...comments(comment, '  '), ...entry(name, fields, '  ')];
}

function runLine({ cable, length, cores, link }: Laid): string {
  const value: Record<string, Value | undefined> =
    link === undefined ? { cable, length, cores } : { link };
  return `  - ${flow(value)}`;
}

export function planText(design: Design): string {
  const { answers } = design;
  const { before, after, joints, feed } = lowRuns(design);
  const stops = [...(needsOverload(answers) ? [overloadName] : []), ...answers.cutouts.map((c) => c.name)];
  const lines = [
    SCHEMA,
    'format: 1',
    `title: ${flow(answers.title)}`,
    `practice: ${answers.practice}`,
    'ambient: 40 °C # warmest air round the parts; change it if yours is hotter',
    '',
    'stock:',
    ...entry('snap', { kind: 'gate', 'pressed-when': answers.lever, ...ordinary('gate') }, '  '),
    ...entry('bell', { kind: 'cable', gauge: design.gauge, ...ordinary(`loop-cable-${answers.practice}`) }, '  '),
    ...entry('mains', mainsCable(design), '  '),
    '',
    'parts:',
    ...lowParts(design).flatMap(told),
    ...answers.cutouts.flatMap(({ name }) => told({ comment: [], name, fields: { kind: 'cutout', ...ordinary('cutout') } })),
    ...(answers.hand === undefined ? [] : told({ comment: [], name: 'hand', fields: { kind: 'switch', ...ordinary('hand') } })),
    ...answers.gates.flatMap(({ name }) => entry(name, { from: 'snap' }, '  ')),
    ...[...joints, ...mainsJoints(design)].flatMap((name) => entry(name, { kind: 'joint' }, '  ')),
    ...mainsParts(design).flatMap(told),
    '',
    'runs:',
    ...before.map(runLine),
    ...gateRuns(design, feed, 'call').map(runLine),
    ...after.map(runLine),
    ...mainsRuns(design).map(runLine),
    '',
    'intent:',
    ...entry('collector', {
      'runs-on': [...answers.gates.map((g) => g.name), ...(answers.hand === undefined ? [] : ['hand'])],
      'blocked-by': stops.length === 0 ? undefined : stops,
      'run-on': answers['run-on'] === 0 ? undefined : `${answers['run-on']} s`,
    }, '  '),
    '',
  ];
  void gateTab;
  return lines.join('\n');
}
