/** Plans in which all is joined as it should be and a coil does not get its pull-in as printed. */
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { logicSentence } from '../../src/findings/report-sentences.ts';
import { follow } from '../../src/logic/follow.ts';
import { Walk } from '../../src/machine/walk.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { across, inputs, planOf } from '../helpers/plan-of.ts';

const HEAD = `format: 1
practice: nec
stock:
  w: {kind: cable, gauge: 24 AWG, cores: 2, insulation: 300 V}
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}
`;

/** A gate beside the relay, and one at the end of 300 m of thin wire; `pull` is the coil's pull-in. */
const far = (
  pull: string,
) => `${HEAD}  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 60 ohm, pull-in: ${pull}}, contact: {ratings: [30 A 240 V AC]}}
  near: {kind: gate, pressed-when: open}
  far: {kind: gate, pressed-when: open}
runs:
  - {cable: w, length: 5 m, cores: {red: [PS1.+, near.COM], white: [K1.A1, near.NO]}}
  - {cable: w, length: 300 m, cores: {red: [near.COM, far.COM], white: [near.NO, far.NO]}}
  - {link: [K1.A2, PS1.-]}
intent:
  K1: {runs-on: [near, far]}
`;

const rowOf = (study: Study, label: string) =>
  study.truthTable({ all: false }).rows.find((r) => r.label === label)!;

describe('a gate too far away', () => {
  const plan = planOf(far('19 V'));
  const study = Study.of(plan);

  // 24 AWG has 84.2 ohm a kilometre at 20 °C (ASTM B258): 24 V x 60 / (60 + 610 m x 0.0842 + two contacts) is 12.9 V.
  it('leaves the coil out in the table, by the meter, and in the proof', () => {
    expect(across(plan, 'K1.A1', 'K1.A2', ['far']).volts).toBeCloseTo((24 * 60) / (60 + 610 * 0.0842), 1);
    expect(across(plan, 'K1.A1', 'K1.A2', ['far']).state.relays).toEqual({ K1: 'out' });
    expect(rowOf(study, 'far alone').relays).toEqual({ K1: 'out' });
    expect(rowOf(study, 'near alone').relays).toEqual({ K1: 'in' });
    const { logic } = judge(study);
    expect(logic).toMatchObject({ holds: true, holdsAtNominalVolts: false, restsOn: 'volts' });
    expect(logicSentence(logic)).toContain('By what is joined it would; at nominal volts it does not.');
  });

  it('is a no to question 2 that points to the coil under question 4, and a yes to question 3', () => {
    const { findings, questions } = judge(study);
    const coil = findings.find((f) => f.id === 'coil-too-low')!;
    expect(coil.also.map((a) => a.id)).toContain('not-as-joined');
    expect(coil.also.map((a) => a.message).join()).toContain(
      'K1 stays out, with 12.9 V of the 19 V it needs',
    );
    expect([questions[1]!.answer, questions[1]!.figure]).toEqual(['no', coil.message]);
    expect(questions[2]!.answer).toBe('yes');
    expect(findings.filter((f) => f.question === 2 && f.severity === 'fault')).toEqual([]);
  });

  it('keeps the coil in where the near gate has pulled it in before: the volts are above its drop-out', () => {
    const moves = [['near'], ['near', 'far'], ['far']].map((names) => inputs(plan, names));
    const walk = new Walk(study, false);
    for (const moved of moves) walk.moveTo(moved);
    expect(walk.view().relays[0]).toMatchObject({ part: 'K1', in: true });
    expect(follow(study.nominal!.verified, moves).runs('K1')).toBe(true);
    expect(follow(study.nominal!.verified, [moves[2]!]).runs('K1')).toBe(false);
  });

  it('is proved by joins alone where the coil asks for less than it gets', () => {
    const { logic, questions } = judge(Study.of(planOf(far('8 V'))));
    expect(logic).toMatchObject({ holds: true, holdsAtNominalVolts: true, restsOn: 'joins' });
    expect(questions[1]!.answer).toBe('yes');
  });
});

it('a relay fed through one that stays out is judged by the way that is left', () => {
  const coil =
    'coil: {rated: 24 V DC, resistance: 60 ohm, pull-in: 19 V}, contact: {ratings: [10 A 30 V DC]}';
  const plan = planOf(`${HEAD}  K1: {kind: relay, ${coil}}
  K2: {kind: relay, ${coil}}
  g: {kind: gate, pressed-when: open}
  call: {kind: joint}
runs:
  - {cable: w, length: 300 m, cores: {red: [PS1.+, g.COM], white: [call, g.NO]}}
  - {link: [call, K1.A1]}
  - {link: [K1.A2, PS1.-]}
  - {cable: w, length: 1 m, cores: {red: [PS1.+, K1.COM], white: [K1.NO, K2.A1]}}
  - {cable: w, length: 1 m, cores: {red: [call, K2.A1]}}
  - {link: [K2.A2, PS1.-]}
intent:
  K2: {runs-on: [g]}
`);
  const { state } = across(plan, 'K2.A1', 'K2.A2', ['g']);
  expect(state.relays).toEqual({ K1: 'out', K2: 'out' });
  expect(rowOf(Study.of(plan), 'g alone').relays).toEqual(state.relays);
});

it('a supply that gives less than a coil takes leaves it out', () => {
  const plan = planOf(far('19 V').replace('limit: 1 A', 'limit: 150 mA'));
  const study = Study.of(plan);
  expect(across(plan, 'K1.A1', 'K1.A2', ['near']).volts).toBeCloseTo(0.15 * 60, 2);
  expect(rowOf(study, 'near alone').relays).toEqual({ K1: 'out' });
  expect(judge(study).questions[1]!.answer).toBe('no');
});

it('a load that a relay at rest ought to stop runs where that relay stays out', () => {
  const plan =
    planOf(`${HEAD}  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 60 ohm, pull-in: 19 V}, contact: {ratings: [10 A 240 V AC]}}
  K2: {kind: relay, coil: {rated: 24 V DC, resistance: 600 ohm}, contact: {ratings: [10 A 240 V AC]}}
  lever: {kind: gate, pressed-when: open}
runs:
  - {cable: w, length: 300 m, cores: {red: [PS1.+, lever.COM], white: [K1.A1, lever.NC]}}
  - {link: [K1.A2, PS1.-]}
  - {link: [PS1.+, K1.COM]}
  - {link: [K1.NC, K2.A1]}
  - {link: [K2.A2, PS1.-]}
intent:
  K2: {runs-on: [lever]}
`);
  const study = Study.of(plan);
  expect(rowOf(study, 'all shut').relays).toEqual({ K1: 'out', K2: 'in' });
  expect(across(plan, 'K1.A1', 'K1.A2').state.relays).toEqual({ K1: 'out', K2: 'in' });
  const { questions, logic } = judge(study);
  expect(logic).toMatchObject({ holds: true, holdsAtNominalVolts: false });
  expect(questions[2]!.answer).toBe('no');
});

it('does not keep a wrong mains core from being mended', () => {
  const mains = `  - {cable: m, length: 1 m, cores: {a: [P1.N, K1.COM], b: [P1.L, X1.N], c: [P1.PE, X1.PE]}}
  - {cable: m, length: 1 m, cores: {a: [K1.NO, X1.L]}}
intent:
  X1: {runs-on: [near, far]}
`;
  const parts = `  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-20}
runs:`;
  const text = far('19 V')
    .replace(/intent:[\s\S]*/, mains)
    .replace('runs:', parts)
    .replace('stock:', 'stock:\n  m: {kind: cable, gauge: 12 AWG, cores: 3, insulation: 600 V}');
  const study = Study.of(planOf(text));
  expect(judge(study).logic).toMatchObject({ holds: true, holdsAtNominalVolts: false });
  expect(judge(study).findings.map((f) => f.question)).toContain(1);
  expect(mend(study).repairs.length).toBeGreaterThan(0);
});
