/** What question 1 does not tell apart yet, each with the smallest plan that shows it. */
import { describe, expect, it } from 'vitest';
import { base, lacks, link, PRACTICES, put, severityOf, withParts, withRuns } from './apart-plans.ts';

const GATE = 'g2: {kind: gate, contact: {ratings: [5 A 250 V AC]}}';
const LAMP = 'H1: {kind: lamp, rated: 120 V AC 3 W}';
const COIL = 'K2: {kind: relay, contact: {ratings: [5 A 250 V AC]}, coil: {rated: 120 V AC, power: 3 VA}}';
const SWITCH = '{kind: switch, contact: {ratings: [5 A 250 V AC]}}';

describe.each(PRACTICES)('%s: what the program does not tell apart yet', (practice) => {
  const plan = base(practice);
  const loose = 'output: 12 V DC, limit: 1 A, regulation: regulated';

  // A net one contact away from the neutral is looked at, and no further.
  it.fails('neutral joined to earth by two switches in line', () => {
    const both = withRuns(
      withParts(plan, `S1: ${SWITCH}`, `S2: ${SWITCH}`),
      link('X1.N', 'S1.COM'),
      link('S1.NO', 'S2.COM'),
      link('S2.NO', 'X1.PE'),
    );
    expect(severityOf(both, 'neutral-earthed')).toBe('danger');
  });

  // Earth reaches no further than wires alone.
  it.fails('a lamp between line and earth with a switch behind it', () => {
    const lamp = withRuns(
      withParts(plan, LAMP, `S1: ${SWITCH}`),
      link('X1.L', 'H1.1'),
      link('H1.2', 'S1.COM'),
      link('S1.NO', 'X1.PE'),
    );
    expect(severityOf(lamp, 'earth-as-return')).toBe('danger');
  });

  // Mains reaches no further than contacts, so not past the lamp.
  it.fails('a gate between a mains lamp and a mains coil', () => {
    const gate = withRuns(
      withParts(plan, GATE, LAMP, COIL),
      link('P1.L', 'H1.1'),
      link('H1.2', 'g2.COM'),
      link('g2.NO', 'K2.A1'),
      link('K2.A2', 'P1.N'),
    );
    expect(severityOf(gate, 'mains-through-gate')).toBe('danger');
  });

  // Without `no-load` a transformer of 28 VA gives a fifth more, and without `highest` a battery a tenth more.
  it.fails('a 28 V AC transformer with no-load volts that are not stated', () => {
    const ac = put(
      plan,
      [loose, 'output: 28 V AC, limit: 1 A, regulation: transformer'],
      ['rated: 12 V DC, resistance: 120 ohm, suppressor: diode', 'rated: 24 V AC, power: 6 VA'],
      ['PS1.+', 'PS1.~1'],
      ['PS1.-', 'PS1.~2'],
    );
    expect(severityOf(ac, 'supply-over-limits')).toBe('danger');
  });

  it.fails('a battery of 55 V DC with no highest volts stated: 60.5 V', () => {
    const battery = put(plan, [`kind: supply, ${loose}, class-2: true`, 'kind: battery, output: 55 V DC']);
    expect(severityOf(battery, 'supply-over-limits')).toBe('danger');
  });

  it.fails('12 V of insulation on a supply that gives 17 V with no load', () => {
    const open = put(
      plan,
      ['regulated', 'unregulated, no-load: 17 V'],
      ['insulation: 150 V', 'insulation: 12 V'],
    );
    expect(severityOf(open, 'insulation-too-low')).toBe('danger');
  });

  // Every cable is held against the highest volts in the plan, not of its own circuit.
  it.fails('300 V of insulation on 120 V, beside a plug of 400 V', () => {
    const thin = put(plan, ['insulation: 750 V', 'insulation: 300 V']);
    lacks(withParts(thin, 'P2: {kind: plug, phases: 3, volts: 400 V AC}'), 'insulation-too-low');
  });

  it.fails('30 V of insulation on 12 V, beside a supply of 48 V', () => {
    const thin = put(plan, ['insulation: 150 V', 'insulation: 30 V']);
    const other = 'PS2: {kind: supply, output: 48 V DC, limit: 1 A, class-2: true}';
    lacks(withParts(thin, other), 'insulation-too-low');
  });
});

// An earthed pole makes the green core count as a core of the loop.
describe('nec: an earthed loop', () => {
  const earthed = withRuns(base('nec'), link('PS1.-', 'B1.PE'));

  it.fails('does not make a shared cable of every cord with a green core', () => {
    lacks(earthed, 'sides-share-cable');
  });

  it.fails('does not make a shared box of one with an outlet alone', () => {
    lacks(withParts(earthed, 'B2: {kind: box, holds: [X1], volume: 60 in3}'), 'sides-share-box');
  });
});
