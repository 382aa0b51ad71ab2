/** What a finding or a caution claims of the plan has to hold for that plan and not for its neighbour. */
import { describe, expect, it } from 'vitest';
import { contactFindings, motorPlan, reportOf } from './contact-plans.ts';
import { shop } from './mains-plans.ts';
import { findings, loop } from './threshold-plans.ts';

/** Gates g and h side by side, each on a tab, with a core of its own to the coil. */
const pair = (g: string, h: string) =>
  loop({
    parts: ['h: {kind: gate, contact: {ratings: [5 A 30 V DC]}}'],
    runs: [
      '{link: [PS1.+, g.COM]}',
      '{link: [g.COM, h.COM]}',
      `{link: [K1.A1, g.${g}]}`,
      `{link: [K1.A1, h.${h}]}`,
      '{link: [K1.A2, PS1.-]}',
    ],
    runsOn: 'g, h',
  });

describe('gate-on-wrong-tab', () => {
  const wrong = (text: string) => findings(text).filter((f) => f.id === 'gate-on-wrong-tab');

  // Common practice: the coil is fed while a gate is open, so both cores belong on the tab that is made then.
  it('two gates on the wrong tab: neither change is said to be enough by itself', () => {
    const found = wrong(pair('NC', 'NC'));
    expect(found.map((f) => f.parts[0]).sort()).toEqual(['g', 'h']);
    for (const f of found) expect(f.why).not.toContain('that one change');
  });

  it('one gate on the wrong tab: the one change is enough', () => {
    const found = wrong(pair('NO', 'NC'));
    expect(found.map((f) => f.parts[0])).toEqual(['h']);
    expect(found[0]?.why).toContain('that one change');
  });
});

describe('contact findings', () => {
  // 11 A on a contact of 10 A is too much whether or not it may switch a motor.
  it('a doubt hides no warning', () => {
    const found = contactFindings(
      motorPlan({ volts: 120, contact: 'ratings: [10 A 250 V AC]', motor: 'amps: 11 A, locked-rotor: 12 A' }),
    );
    expect(found.map((f) => [f.id, f.severity]).sort()).toEqual([
      ['contact-not-motor-rated', 'doubt'],
      ['contact-running', 'warning'],
    ]);
  });

  // One relay is changed as a whole, so the second pole of unlike rating adds nothing to do.
  it('a relay with two unlike poles that are too small is named once for each finding', () => {
    const text = shop({
      plug: 'pattern: fixed, legs: 2, breaker: 20 A, volts: 240 V AC',
      motor: 'power: 3 hp, legs: 2, volts: 240 V AC, amps: 17 A, protector: manual',
    })
      .replace('90 A 600 V AC', '10 A 250 V AC')
      .replace('marks: [3, 4]', 'marks: [3, 4], contact: {ratings: [12 A 250 V AC]}');
    const ids = findings(text)
      .flatMap((f) => [f.id, ...f.also.map((a) => a.id)])
      .filter((id) => id.startsWith('contact-'));
    expect(ids.sort()).toEqual(['contact-not-motor-rated', 'contact-running']);
  });
});

// Common practice: a core that ends at a coil is no core that ends nowhere, with or without a diode on that coil.
it.each(['', ', suppressor: diode'])('a dead gate that leads to another coil%s has an open loop', (more) => {
  const text = loop({
    parts: [
      'h: {kind: gate, contact: {ratings: [5 A 30 V DC]}}',
      `K2: {kind: relay, coil: {rated: 12 V DC, resistance: 120 ohm${more}}, contact: {ratings: [5 A 30 V DC]}}`,
    ],
    more: ['{link: [g.COM, h.COM]}', '{link: [h.NO, K2.A1]}'],
    runsOn: 'g, h',
  });
  const dead = findings(text).find((f) => f.id === 'gate-dead');
  expect(dead?.parts[0]).toBe('h');
  expect(dead?.message).toContain('the loop is open');
});

// Nothing to start is a question without an answer, and that is no pass.
it('a plan without load, outlet and intent leaves it undecided whether a gate starts anything', () => {
  const told = loop({});
  expect(findings(told).some((f) => f.id === 'intent-missing')).toBe(false);
  const untold = findings(told.slice(0, told.indexOf('intent:')));
  expect(untold.filter((f) => f.id === 'intent-missing').map((f) => f.severity)).toEqual(['doubt']);
});

describe('cautions', () => {
  const given = (text: string, id: string) => reportOf(text).cautions.some((c) => c.id === id);
  const box = 'B1: {kind: box, holds: [g], volume: 60 in3}';

  // NEC 725.136 parts the loop from mains; without a relay or timer the plan has no part where the two could meet.
  it('a shared box asks for a relay in the plan', () => {
    const withRelay = loop({ parts: [box] });
    expect(given(withRelay, 'C-SHAREDBOX')).toBe(true);
    const lampOnly = withRelay
      .split('\n')
      .filter((line) => !line.startsWith('intent:') && !line.startsWith('  K1: {runs-on'))
      .map((line) =>
        line.startsWith('  K1: ') ? '  K1: {kind: lamp, rated: 12 V DC 1 W}' : line.replace('K1.A', 'K1.'),
      )
      .join('\n');
    expect(given(lampOnly, 'C-SHAREDBOX')).toBe(false);
  });
});
