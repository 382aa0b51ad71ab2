/** Corners of the logic that no whole plan shows by its verdict. */
import { describe, expect, it } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
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
