/** Plans that were once judged wrongly; each is kept with what it must give. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { judgeAsTaken } from '../../src/findings/judge.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';

const idsOf = (name: string): string[] => {
  const read = readPlan(readFileSync(new URL(`../corpus/${name}.yaml`, import.meta.url)), name);
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judgeAsTaken(Study.of(read.plan))
    .findings.filter((f) => ['danger', 'warning', 'fault'].includes(f.severity))
    .map((f) => f.id);
};

it.each([
  ['one-touch-feeds-the-coil', 'low-voltage-earthed'],
  ['one-touch-through-the-diode', 'low-voltage-earthed'],
  ['one-touch-where-a-contact-earths-a-pole', 'low-voltage-earthed'],
  ['short-that-kills-its-own-supply', 'mains-shorted'],
  ['neutral-reaches-the-loop-through-the-motor', 'mains-meets-low-voltage'],
])('%s is %s', (name, id) => {
  expect(idsOf(name)).toContain(id);
});

it('an earth core beside the loop is no core of the loop', () => {
  expect(idsOf('earth-core-is-no-loop-core')).not.toContain('sides-share-cable');
});
