/** Plans that are only begun: what is missing is named, and nothing is said to work. */
import { expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { wired, words } from '../wired-plans.ts';

const P1 = 'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}';
const load = (name: string, more = '') => `${name}: {kind: load, volts: 120 V AC, amps: 1 A${more}}`;
const begun = (wires: string, more: readonly string[]) =>
  wired({
    parts: 'PS1 g K1',
    more: [P1, ...more],
    wires: `PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, ${wires}`,
    intent: ['K1: {runs-on: [g]}'],
  });
const lacks = (text: string) => words(text, /^nothing-wired/).map((w) => w.split('. ')[0]);

it('a load with no core on it, and one in an outlet with none, are named', () => {
  const more = [load('V'), load('W', ', plugged-into: X1'), 'X1: {kind: outlet, pattern: NEMA 5-15}'];
  const text = begun('P1.L K1.COM', more);
  expect(lacks(text)).toEqual(['there is nothing to prove: nothing feeds V and nothing feeds W']);
  expect(judge(Study.of(planOf(text))).verdict).not.toBe('pass');
});

it('a load that has its cores, at itself or at its outlet, is not', () => {
  const more = [load('V'), load('W', ', plugged-into: X1'), 'X1: {kind: outlet, pattern: NEMA 5-15}'];
  const fed = 'P1.L K1.COM, K1.NO V.L, P1.N V.N, P1.PE V.PE, K1.NO X1.L, P1.N X1.N, P1.PE X1.PE';
  expect(lacks(begun(fed, more))).toEqual([]);
});
