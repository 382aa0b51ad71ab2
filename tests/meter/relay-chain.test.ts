/** Three relays one after the other from each gate to its fan: the last is read with its contact made, mains out. */
import { describe, expect, it } from 'vitest';
import { faultsOf } from '../../src/meter/meter-sheet.ts';
import { Subjects } from '../../src/meter/subject.ts';
import { Trials } from '../../src/meter/trials.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const LINES = [1, 2, 3, 4, 5];
const RELAY =
  '{kind: relay, coil: {rated: 24 V DC, resistance: 1440 ohm}, contact: {ratings: [10 A 250 V AC]}}';
const lines = (of: (i: number) => string) => LINES.map(of).join('');

const PLAN = `title: chains of relays
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 4 A, regulation: regulated}
  plus: {kind: joint}
  minus: {kind: joint}
${lines(
  (i) => `  g${i}: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC]}}
  K${i}: ${RELAY}
  M${i}: ${RELAY}
  Q${i}: ${RELAY}
  P${i}: {kind: plug, pattern: NEMA 5-15, breaker: 15 A, volts: 120 V AC}
  X${i}: {kind: outlet, pattern: NEMA 5-15}
  fan${i}: {kind: motor, type: capacitor-start, power: 0.5 hp, volts: 120 V AC, amps: 8 A, plugged-into: X${i}}
`,
)}runs:
  - {link: [PS1.+, plus]}
  - {link: [PS1.-, minus]}
${lines(
  (
    i,
  ) => `  - {cable: {kind: cable, gauge: 16 AWG, cores: 2}, length: 5 m, cores: {red: [plus, g${i}.COM], white: [g${i}.NO, K${i}.A1]}}
  - {link: [plus, K${i}.COM]}
  - {link: [plus, M${i}.COM]}
  - {link: [K${i}.NO, M${i}.A1]}
  - {link: [M${i}.NO, Q${i}.A1]}
  - {link: [minus, K${i}.A2]}
  - {link: [minus, M${i}.A2]}
  - {link: [minus, Q${i}.A2]}
  - {cable: {kind: cable, gauge: 14 AWG, cores: 3}, length: 2 m, cores: {black: [P${i}.L, Q${i}.COM], white: [P${i}.N, X${i}.N], green: [P${i}.PE, X${i}.PE]}}
  - {cable: {kind: cable, gauge: 14 AWG, cores: 1}, length: 1 m, cores: {black: [Q${i}.NO, X${i}.L]}}
`,
)}intent:
${lines((i) => `  fan${i}: {runs-on: [g${i}]}\n`)}`;

describe('the last of a chain of relays', () => {
  const study = Study.of(planOf(PLAN));
  const faults = faultsOf(study);
  const subjects = new Subjects(study);
  // So many that not each is tried with everything.
  const trials = new Trials(study, subjects, 1e9);

  it.each(LINES)('is tried in before mains is on, though its gate lies beyond others: %i', (i) => {
    const fault = faults.find((f) => f.text === `Q${i}: contact COM-NO never makes`)!;
    const beeps = [...trials.for(fault, 'loop')].flatMap(({ stance, list }) =>
      list.flatMap((m) =>
        m.expect.shows === 'beeps' && [m.pair.a, m.pair.b].sort().join() === `Q${i}.COM,Q${i}.NO`
          ? [stance]
          : [],
      ),
    );
    const gates = beeps.map((s) => s.moved.map((k) => study.wired.inputs[k]!.part));
    expect(gates).toContainEqual([`g${i}`]);
  });

  it('is the position that leads are tried in as well', () => {
    const fault = faults.find((f) => f.text === 'Q4: contact COM-NO never makes')!;
    const tried = [...trials.for(fault, 'loop clipped')].map(({ stance }) => stance.moved);
    expect(tried.map((moved) => moved.map((k) => study.wired.inputs[k]!.part))).toContainEqual(['g4']);
  });
});
