import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';

const PARTS = `format: 1
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [30 A 240 V AC]}}
  K2: {kind: timer, function: on-delay, time: 5 s, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [30 A 240 V AC]}}
  saw: {kind: gate, contact: {ratings: [5 A 30 V DC]}}
  bin: {kind: cutout, contact: {ratings: [5 A 30 V DC]}}
  ready: {kind: lamp, shows: all shut}
  glow: {kind: led}
  fan1: {kind: motor, volts: 120 V AC, amps: 6 A}
  fan2: {kind: motor, volts: 120 V AC, amps: 6 A}
  fan3: {kind: motor, volts: 120 V AC, amps: 6 A}
runs: []
intent:
`;

const read = (...lines: string[]) =>
  readPlan(`${PARTS}${lines.map((l) => `  ${l}\n`).join('')}`, 'shop.yaml');

function errorsOf(...lines: string[]): string[] {
  const found = read(...lines);
  return found.ok ? [] : found.errors.map((e) => e.message);
}

describe('one intent for several loads', () => {
  it('is the same through another, in any order', () => {
    const found = read('fan3: fan2', 'fan2: fan1', 'fan1: {runs-on: [saw], blocked-by: [bin]}');
    if (!found.ok) throw new Error('not read');
    const intents = found.plan.intents!;
    expect(intents.map((i) => [i.target, i.sameAs])).toEqual([
      ['fan3', 'fan1'],
      ['fan2', 'fan1'],
      ['fan1', undefined],
    ]);
    for (const i of intents) expect([i.runsOn[0]![0]!.part, i.blockedBy[0]!.part]).toEqual(['saw', 'bin']);
  });

  it.each([
    [['fan1: fan2', 'fan2: fan1'], /leads back/],
    [['fan1: fan1'], /leads back/],
    [['fan1: {runs-on: [saw]}', 'fan2: fan9'], /no intent of that name to copy/],
    [['ready: {lit-when: all-shut}', 'fan2: ready'], /a lamp and a load cannot/],
    [['fan1: {runs-on: [saw]}', 'glow: fan1'], /a lamp and a load cannot/],
  ])('%s is an error', (lines, message) => {
    const errors = errorsOf(...lines);
    expect(errors.length).toBeGreaterThan(0);
    for (const e of errors) expect(e).toMatch(message);
  });
});

describe('a relay named where an input belongs', () => {
  it('is one error, however often and wherever it stands', () => {
    const errors = errorsOf(
      'fan1: {runs-on: [K1, [saw, K2]], blocked-by: [K1]}',
      'fan2: {runs-on: [K1]}',
      'ready: {lit-when: [K2]}',
    );
    expect(errors).toHaveLength(1);
    expect(errors[0]).toContain('K1 is a relay, and so is K2 (in 5 places)');
  });
});

describe('when a lamp is lit', () => {
  it.each([
    [
      ['ready: {lit-when: any-opne}'],
      /expected any-open, all-shut, a load that runs, or inputs: .*; did you mean any-open/,
    ],
    [['ready: {}'], /no lit-when/],
    [['ready: {runs-on: [saw]}'], /a lamp takes lit-when alone|no lit-when/],
    [['fan1: {lit-when: any-open}'], /only a lamp or led takes it/],
  ])('%s is an error', (lines, message) => {
    const errors = errorsOf(...lines);
    expect(errors.length).toBeGreaterThan(0);
    for (const e of errors) expect(e).toMatch(message);
  });

  it('leaves the loads their default where nothing else is said', () => {
    const found = read('ready: {lit-when: [[saw, bin]]}', 'glow: ready');
    if (!found.ok) throw new Error('not read');
    expect(found.plan.intents).toBeUndefined();
    expect(found.plan.lampIntents!.map((l) => l.target)).toEqual(['ready', 'glow']);
  });
});

describe('loads for direct current', () => {
  const withFan = (fields: string) => {
    const found = readPlan(
      `${PARTS.replace('fan3: {kind: motor, volts: 120 V AC, amps: 6 A}', `fan3: {kind: motor, amps: 6 A, ${fields}}`).replace('intent:\n', '')}`,
      'shop.yaml',
    );
    return found.ok ? [] : found.errors.map((e) => e.message);
  };
  it.each([
    ['volts: 12 V DC, phases: 3', /phases: not with V DC/],
    ['volts: 12 V DC, plugged-into: fan1', /plugged-into: .*/],
    ['volts: 120 V AC, returns-through: saw', /only a load for V DC returns through metal/],
    ['volts: 12 V DC, returns-through: saw', /saw is a gate, expected a joint/],
  ])('%s is an error', (fields, message) => {
    expect(withFan(fields).some((e) => message.test(e))).toBe(true);
  });
});
