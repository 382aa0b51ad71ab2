/** Corners of the logic that no whole plan shows by its verdict. */
import { describe, expect, it } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
import { follow } from '../../src/logic/follow.ts';
import { relaysAt, runsAt, verify } from '../../src/logic/verify.ts';
import { readPlan } from '../../src/plan/read.ts';

function verified(text: string) {
  const read = readPlan(text, 'edges.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return verify(buildCircuit(read.plan));
}

describe('a relay fed through its own break contact', () => {
  // The trembler bell: the coil opens its own circuit, so it has no position to settle in.
  const v = verified(`format: 1
title: Bell
practice: nec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  g: {kind: gate}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [PS1.+, g.COM]}
  - {link: [g.NO, K1.COM]}
  - {link: [K1.NC, K1.A1]}
  - {link: [K1.A2, PS1.-]}
intent:
  K1: {runs-on: [g]}
`);

  it('has no position while the gate is open, and counts as out', () => {
    expect(runsAt(v, 'K1', [0])).toBeUndefined();
    expect(relaysAt(v, [0])).toEqual([false]);
  });

  it('is out at rest', () => {
    expect(runsAt(v, 'K1', [])).toBe(false);
    expect(v.chatter).not.toBe(0);
  });
});

describe('a supply for 120 V whose winding a switch puts on 24 V', () => {
  // A fifth of what it is wired for pulls in nothing behind it: common practice, no source.
  const v = verified(`format: 1
title: Changed over
practice: nec
parts:
  P1: {kind: plug, volts: 120 V AC, pattern: NEMA 5-15}
  T1: {kind: supply, output: 24 V AC, limit: 20 VA}
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  s: {kind: switch}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [P1.L, s.NO]}
  - {link: [T1.~1, s.NC]}
  - {link: [s.COM, PS1.L]}
  - {link: [P1.N, PS1.N]}
  - {link: [T1.~2, PS1.N]}
  - {link: [PS1.+, K1.A1]}
  - {link: [PS1.-, K1.A2]}
`);

  it('is dead on the 24 V and alive on the 120 V', () => {
    expect(runsAt(v, 'K1', [])).toBe(false);
    expect(runsAt(v, 'K1', [0])).toBe(true);
  });
});

describe('two coils in series between two diodes', () => {
  // Kirchhoff: each of two equal coils gets half of what the diodes leave of 24 V, some 11.3 V of its 12 V.
  const v = verified(`format: 1
title: Series
practice: nec
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated}
  g: {kind: gate}
  D1: {kind: diode}
  D2: {kind: diode}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}}
  K2: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [PS1.+, g.COM]}
  - {link: [g.NO, D1.A]}
  - {link: [D1.K, K1.A1]}
  - {link: [K1.A2, K2.A1]}
  - {link: [K2.A2, D2.A]}
  - {link: [D2.K, PS1.-]}
`);

  it('pull in', () => {
    expect(relaysAt(v, [0])).toEqual([true, true]);
    expect(relaysAt(v, [])).toEqual([false, false]);
  });
});

describe('a button whose release does not stop the load', () => {
  const v = verified(`format: 1
title: Held
practice: nec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  START: {kind: button}
  STOP: {kind: button}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [PS1.+, STOP.COM]}
  - {link: [STOP.NC, START.COM]}
  - {link: [START.NO, K1.A1]}
  - {link: [START.COM, K1.COM]}
  - {link: [K1.NO, K1.A1]}
  - {link: [K1.A2, PS1.-]}
intent:
  K1: {runs-on: [START], stays-on-after: START, stopped-by: [STOP]}
`);
  const wantedAfter = (...steps: readonly number[][]) => follow(v, steps).wanted().get('K1');

  it('leaves it wanted until it is stopped', () => {
    expect(wantedAfter([])).toBe(false);
    expect(wantedAfter([0])).toBe(true);
    expect(wantedAfter([0], [])).toBe(true);
    expect(wantedAfter([0], [1], [])).toBe(false);
  });
});

describe('a start button that is remembered and that no entry of the intent names', () => {
  // It may start the load by itself, beside the gates, or arm it for them: the trade does both; common practice, no source.
  const v = (gate: string) =>
    verified(`format: 1
title: By hand or by a gate
practice: nec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  START: {kind: button}
  STOP: {kind: button}
  g: {kind: gate}
  CR: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, poles: [{form: make, marks: [13, 14]}, {form: make, marks: [23, 24]}], contact: {ratings: [5 A 30 V DC]}}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm}, contact: {ratings: [5 A 30 V DC]}}
runs:
  - {link: [PS1.+, STOP.COM]}
  - {link: [STOP.NC, START.COM]}
  - {link: [START.NO, CR.A1]}
  - {link: [START.COM, CR.13]}
  - {link: [CR.14, CR.A1]}
  - {link: [CR.A2, PS1.-]}
  - {link: [START.COM, CR.23]}
${gate}
  - {link: [K1.A2, PS1.-]}
intent:
  K1: {runs-on: [g], stays-on-after: START, stopped-by: [STOP]}
`);

  it.each([
    ['beside the gate', ['[CR.24, K1.A1]', '[START.COM, g.COM]', '[g.NO, K1.A1]']],
    ['ahead of it', ['[CR.24, g.COM]', '[g.NO, K1.A1]']],
  ])('is as meant %s', (_, links) => {
    expect(v(links.map((l) => `  - {link: ${l}}`).join('\n')).deviations).toEqual([]);
  });
});
