/** What starts when power comes back: followed through the circuit, never by the names of its parts. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reportOf } from '../contact-plans.ts';

const base = (name: string) => readFileSync(new URL(`../bases/${name}.yaml`, import.meta.url), 'utf8');
const changed = (text: string, ...changes: readonly (readonly [string, string])[]) =>
  changes.reduce((t, [from, to]) => {
    expect(t).toContain(from);
    return t.replace(from, () => to);
  }, text);
const of = (text: string) =>
  reportOf(text)
    .findings.filter((f) => f.id === 'restarts-by-itself')
    .map((f) => [f.severity, f.message]);
const verdict = (text: string) => reportOf(text).verdict;

const HEAD = (practice: string) => `format: 1
practice: ${practice}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %, class-2: true}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, suppressor: diode}, contact: {ratings: [30 A 240 V AC], motor: [1 hp 120 V AC, 1 hp 240 V AC], ac-3: 12 A}}
`;
const MAINS: Readonly<Record<string, string>> = {
  nec: `  P1: {kind: plug, volts: 120 V AC, breaker: 20 A, pattern: NEMA 5-20}
  saw: {kind: motor, volts: 120 V AC, amps: 8 A, power: 0.5 hp, locked-rotor: 40 A, protector: manual}
`,
  iec: `  P1: {kind: plug, volts: 230 V AC, breaker: 16 A B}
  saw: {kind: motor, volts: 230 V AC, amps: 4 A, power: 0.5 kW, locked-rotor: 20 A, protector: manual}
`,
};
const RUNS = `runs:
  - {link: [PS1.+, s.COM]}
  - {link: [s.NO, K1.A1]}
  - {link: [K1.A2, PS1.-]}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NO, saw.L]}
  - {link: [P1.N, saw.N]}
  - {link: [P1.PE, saw.PE]}
intent:
  saw: {runs-on: [s]}
`;
const CONTACT = 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}';
/** A saw behind a relay, called by one input. */
const called = (practice: string, kind: string) =>
  `${HEAD(practice)}  s: {kind: ${kind}, ${CONTACT}}\n${MAINS[practice]}${RUNS}`;

describe.each(['nec', 'iec'])('%s', (practice) => {
  // 29 CFR 1910.213(b)(3), read; IEC 60204-1:2016 7.5, one source
  it('a saw that a stay-put switch holds is a warning, by a button none', () => {
    const [found] = of(called(practice, 'switch'));
    expect(found![0]).toBe('warning');
    expect(found![1]).toContain('a switch that stays put holds it on');
    expect(of(called(practice, 'button'))).toEqual([]);
  });
  it('started by a gate it is a caution, which fails nothing', () =>
    expect(of(called(practice, 'gate'))).toEqual([['caution', 'saw restarts after a power cut']]));
  it('a lamp that comes on again hurts nobody', () =>
    expect(
      of(
        changed(
          called(practice, 'switch'),
          ['kind: motor', 'kind: load, type: lamp'],
          [', protector: manual', ''],
        ).replace(/, locked-rotor: \d+ A/, ''),
      ),
    ).toEqual([]));
});

describe('a start button', () => {
  it('that arms the gates through a relay which holds itself in is the answer', () => {
    expect(of(base('armed'))).toEqual([]);
    expect(verdict(base('armed'))).toBe('pass');
  });
  it('beside which the gate calls the contactor all the same is none', () =>
    expect(of(base('seal-in'))).toEqual([
      ['caution', 'fan restarts after a power cut, and when STOP goes back'],
    ]));
  it('does not help where a battery keeps the relay in through the cut', () => {
    const onBattery = changed(base('armed'), [
      'PS1: {kind: supply, output: 24 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true}',
      'PS1: {kind: battery, output: 24 V DC, capacity: 7 Ah}',
    ]);
    expect(of(onBattery)).toEqual([['caution', 'fan restarts after a power cut']]);
  });
});

it('the finding and the caution say it once', () => {
  for (const name of ['dc-chain', 'armed', 'seal-in', 'battery'])
    expect(reportOf(base(name)).cautions.map((c) => c.id)).not.toContain('C-POWERRETURN');
});

describe('an overload relay that resets by itself', () => {
  const gate = readFileSync(
    new URL('../../../examples/wrong/overload-resets-itself.yaml', import.meta.url),
    'utf8',
  );
  const trips = (text: string) =>
    reportOf(text)
      .findings.filter((f) => f.id === 'motor-unprotected')
      .map((f) => f.severity);
  // NEC 430.43 in two copies; makers: no automatic reset with a maintained contact
  it('starts the fan again where a gate calls for it: reset by hand it does not', () => {
    expect(trips(gate)).toEqual(['warning']);
    expect(trips(changed(gate, ['reset: automatic', 'reset: manual']))).toEqual([]);
    expect(trips(changed(gate, ['    reset: automatic\n', '']))).toEqual(['caution']);
  });
  it('leaves it off where it lets go of a relay that has to be armed again', () =>
    expect(trips(changed(base('armed'), ['reset: manual', 'reset: automatic']))).toEqual([]));
});

describe('a relay that stays put after a pulse', () => {
  // what such a relay is made for: it keeps its position with no power
  it('is as it was when power comes back, whether pressed by hand or set by a gate', () => {
    for (const name of ['slate-quay', 'weir-house']) {
      const text = readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), 'utf8');
      expect(of(text)).toEqual([['caution', 'collector restarts after a power cut']]);
    }
  });
});

// IEC 60204-1:2005 clauses 9.2.5.4.2 and 10.7, from memory, so that it words a caution: letting go of a stop starts nothing
describe('a stop that goes back with a gate open', () => {
  const shop = (name: string) =>
    readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), 'utf8');
  const ESTOP = 'STOP: {kind: cutout, contact: {ratings: [6 A 250 V AC, 3 A 30 V DC]}}';
  /** the stop moved from the line of the arming relay to that of the contactor */
  const late = (text: string) =>
    changed(
      text,
      ['red: [OL.96, STOP.COM], black: [STOP.NC, armed]', 'red: [OL.96, armed]'],
      ['black: [Q1.A1, saw.NO]', 'black: [STOP.COM, saw.NO]'],
      ['intent:', '  - {link: [STOP.NC, Q1.A1]}\n\nintent:'],
      ['stopped-by: [STOP]', 'stopped-by: [OL]'],
    );
  it('starts the collector again: a bin switch and a stop before gates that call by themselves', () => {
    expect(of(shop('osier-yard'))).toEqual([
      ['caution', 'collector restarts after a power cut, and when bin-full goes back'],
    ]);
    expect(of(shop('millrace-joinery'))[0]![1]).toContain('when STOP goes back');
  });
  it('an overload relay that is reset by hand is told of elsewhere, a button pressed by turns is no stop', () => {
    expect(of(shop('kiln-street'))[0]![1]).not.toContain('goes back');
    expect(of(shop('slate-quay'))[0]![1]).not.toContain('goes back');
  });
  it('does not where it lets go of the relay that has to be armed again, but does behind it', () => {
    expect(of(base('armed'))).toEqual([]);
    expect(of(late(base('armed')))).toEqual([['caution', 'fan restarts as soon as STOP goes back']]);
  });
  it('a latching stop is judged as a button is', () => {
    const line = base('armed').match(/STOP: \{.*\}/)![0];
    const latching = (text: string) => text.replace(line, ESTOP);
    expect(of(latching(base('armed')))).toEqual([]);
    expect(of(latching(late(base('armed'))))).toEqual([
      ['caution', 'fan restarts as soon as STOP goes back'],
    ]);
  });
});
