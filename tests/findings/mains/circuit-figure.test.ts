/** The figure beside a `yes` to the seventh question: the circuit with the least to spare, and all that runs on it. */
import { expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';

const CONTACT = 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 1 mA 5 V DC}';
const COIL = 'coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %, drop-out: 10 %, suppressor: diode}';
/** A breaker in A and the running A of the motors behind it. */
interface Circuit {
  readonly breaker: number;
  readonly motors: readonly number[];
}
const shop = (circuits: readonly Circuit[]) => {
  const parts: string[] = [];
  const runs: string[] = [];
  for (const [i, { breaker, motors }] of circuits.entries()) {
    parts.push(`K${i}: {kind: relay, ${COIL}, contact: {ratings: [63 A 400 V AC], ac-3: 60 A}}`);
    parts.push(`P${i}: {kind: plug, pattern: fixed, breaker: ${breaker} A D, volts: 230 V AC}`);
    runs.push(`g.NO, K${i}.A1`, `K${i}.A2, PS1.-`, `P${i}.L, K${i}.COM`);
    for (const [j, amps] of motors.entries()) {
      parts.push(`M${i}${j}: {kind: motor, volts: 230 V AC, amps: ${amps} A, protector: manual}`);
      runs.push(`K${i}.NO, M${i}${j}.L`, `P${i}.N, M${i}${j}.N`, `P${i}.PE, M${i}${j}.PE`);
    }
  }
  return [
    ...['format: 1', 'practice: iec', 'parts:'],
    '  PS1: {kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true}',
    `  g: {kind: gate, ${CONTACT}}`,
    ...parts.map((p) => `  ${p}`),
    'runs:',
    ...['PS1.+, g.COM', ...runs].map((r) => `  - {link: [${r}]}`),
    '',
  ].join('\n');
};
const figure = (circuits: readonly Circuit[]) => {
  const seventh = reportOf(shop(circuits)).questions[6]!;
  return `${seventh.answer}: ${seventh.figure}`;
};

it.each([
  [
    'three motors of 12 A together',
    [{ breaker: 40, motors: [12, 12, 12] }],
    'yes: 36 A running on a circuit of 40 A',
  ],
  [
    'a large motor on its own circuit and a small one on a small',
    [
      { breaker: 63, motors: [30] },
      { breaker: 6, motors: [5] },
    ],
    'yes: 5 A running on a circuit of 6 A',
  ],
  [
    'the same the other way about',
    [
      { breaker: 6, motors: [1] },
      { breaker: 40, motors: [30] },
    ],
    'yes: 30 A running on a circuit of 40 A',
  ],
])('%s', (_, circuits, expected) => expect(figure(circuits)).toBe(expected));

it('motors that start together are told of in the plural', () => {
  const { findings } = reportOf(shop([{ breaker: 32, motors: [12, 12] }]).replace('32 A D', '32 A B'));
  const trips = findings.find((f) => f.id === 'breaker-may-trip' || f.id === 'trips-at-start');
  expect(trips!.message).toMatch(/M00 and M01/);
  expect(trips!.message).not.toMatch(/M01 (starts|takes|draws)/);
});
