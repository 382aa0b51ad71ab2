/** A circuit that the exact method does not decide: what is still told of it, and what is not guessed. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';
import { type Wired, wired } from '../wired-plans.ts';

/** Severity, question, id and parts of what is told of questions 1 to 5 where the logic is left undecided. */
function undecided(w: Wired): string[] {
  const read = readPlan(wired(w), 'undecided.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  const { findings, coils } = judge(Study.of(read.plan).givenUp('too many states'));
  expect(coils).toEqual([]);
  return findings
    .filter((f) => f.question < 6)
    .map((f) => `${f.severity} ${f.question} ${f.id}: ${f.parts.join(' ')}`);
}

const M = [
  'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 20 A}',
  'M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp, protector: manual}',
];
const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';
const LINE = 'P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE';
const at = (wires: string, more: Partial<Wired> = {}): Wired => ({
  parts: 'PS1 g K1',
  more: M,
  wires,
  intent: ['M: {runs-on: [g]}'],
  ...more,
});

describe('undecided', () => {
  it.each<[string, Wired, readonly string[]]>([
    ['as meant', at(`${LOOP}, ${LINE}`), ['doubt 2 undecided: ']],
    [
      'a loop that is never closed',
      at(`PS1.+ g.COM, K1.A2 PS1.-, ${LINE}`),
      ['caution 2 loose-end: g', 'caution 2 loose-end: K1', 'doubt 2 undecided: '],
    ],
    [
      'an earthed loop',
      at(`${LOOP}, ${LINE}, PS1.- M.PE`),
      ['notice 1 low-voltage-earthed: PS1', 'doubt 2 undecided: '],
    ],
    [
      'no earth',
      at(`${LOOP}, P1.L K1.COM, K1.NO M.L, P1.N M.N`),
      ['danger 1 earth-broken: M', 'doubt 2 undecided: '],
    ],
    [
      'earth from another plug',
      at(`${LOOP}, P1.L K1.COM, K1.NO M.L, P1.N M.N, P2.PE M.PE`, {
        more: [...M, 'P2: {kind: plug, volts: 120 V AC, pattern: NEMA 5-15}'],
      }),
      ['doubt 2 undecided: '],
    ],
    [
      'two throws between neutral and earth are taken as joined',
      at(`${LOOP}, ${LINE}, P1.N s.NC, s.NO P1.PE`, { parts: 'PS1 g s K1' }),
      ['danger 1 neutral-earthed: s P1', 'caution 2 loose-end: s', 'doubt 2 undecided: '],
    ],
    [
      'mains on the loop',
      at(`${LOOP}, ${LINE}, P1.L g.NO`),
      ['danger 1 mains-meets-low-voltage: P1 g', 'doubt 2 undecided: '],
    ],
    ['a gate on the wrong tab', at(`PS1.+ g.COM, g.NC K1.A1, K1.A2 PS1.-, ${LINE}`), ['doubt 2 undecided: ']],
    [
      'a supply with no limit',
      at(`${LOOP}, ${LINE}`, {
        parts: 'g K1',
        more: [...M, 'PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}'],
      }),
      ['doubt 2 undecided: ', 'caution 5 supply-not-limited: PS1'],
    ],
    ['no load', at(LOOP, { more: [], intent: ['K1: {runs-on: [g]}'] }), ['doubt 2 undecided: ']],
  ])('%s', (_, w, expected) => {
    expect(undecided(w)).toEqual(expected);
  });
});
