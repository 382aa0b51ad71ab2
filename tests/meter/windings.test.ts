/** A contact that has welded is read through the winding behind it, of which the plan tells volts and VA alone. */
import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/machine/read-meter.ts';
import { commission } from '../../src/meter/meter-sheet.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

/** A relay on the loop feeds a winding for 120 V AC from the plug. */
const behind = (
  winding: string,
  ends: readonly [string, string],
  output = '',
) => `title: a winding behind a contact
parts:
  P1: {kind: plug, pattern: NEMA 5-15, volts: 120 V AC, breaker: 15 A}
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [10 A 250 V AC]}}
  ${winding}
  gate: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [PS1.+, gate.COM]}
  - {link: [gate.NO, K1.A1]}
  - {link: [PS1.-, K1.A2]}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NO, ${ends[0]}]}
  - {link: [P1.N, ${ends[1]}]}
${output}`;

const COIL = (stated: string) =>
  behind(`Q1: {kind: relay, coil: {rated: 120 V AC${stated}}, contact: {ratings: [10 A 250 V AC]}}`, [
    'Q1.A1',
    'Q1.A2',
  ]);
const PRIMARY = (stated: string) =>
  behind(`T1: {kind: supply, output: 24 V AC, input: 120 V AC${stated}}`, ['T1.L', 'T1.N']);

const WELDED = 'K1: contact COM-NO never breaks (welded or stuck)';

/** Stages of the steps that show the welded contact. */
function shownIn(text: string): { stages: number[]; hidden: boolean } {
  const { sheet, faults } = commission(Study.of(planOf(text)));
  const fault = faults.find((f) => f.text === WELDED)!;
  return {
    stages: fault.steps.map((n) => sheet.steps[n - 1]!.stage),
    hidden: !fault.detectable,
  };
}

/** From the contact to the neutral pin, through the winding alone. */
function throughWinding(text: string) {
  const plan = planOf(text);
  const between = [
    { part: 'K1', terminal: 'NO' },
    { part: 'P1', terminal: 'N' },
  ] as const;
  return readMeter(Study.of(plan), { moved: [], dead: true, between: [...between] });
}

describe.each([
  ['a coil for alternating current', COIL, ', power: 8 VA', ''],
  [
    'the primary of a transformer',
    PRIMARY,
    ', limit: 20 VA, regulation: transformer',
    ', regulation: transformer',
  ],
] as const)('%s', (_, plan, told, untold) => {
  it('shows the welded contact with everything dead once its VA are told', () => {
    expect(shownIn(plan(told)).stages[0]).toBe(1);
  });

  it('lets a meter through, with ohms that are still not told', () => {
    const read = throughWinding(plan(told));
    expect([read.through, read.ohms]).toEqual([true, null]);
  });

  it('is anything where its VA are not told', () => {
    expect(throughWinding(plan(untold)).through).toBeNull();
  });
});

it('a supply that holds its volts may be electronic, and tells nothing', () => {
  const read = throughWinding(
    behind('T1: {kind: supply, output: 24 V DC, input: 120 V AC, limit: 1 A, regulation: regulated}', [
      'T1.L',
      'T1.N',
    ]),
  );
  expect(read.through).toBeNull();
});
