import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const lane = readFileSync(new URL('../../examples/saltmarsh-lane.yaml', import.meta.url), 'utf8');
const told = (text: string) => judge(Study.of(planOf(text))).defaults.filter((d) => d.startsWith('intent:'));

it('says what it takes for granted where a plan has no intent, and only there', () => {
  expect(told(lane)).toEqual([]);
  expect(told(lane.slice(0, lane.indexOf('intent:')))).toEqual([
    'intent: every load runs when any gate is open, and only then',
  ]);
});
