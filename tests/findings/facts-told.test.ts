/** What a finding or a caution claims of the plan has to hold for that plan and not for its neighbour. */
import { describe, expect, it } from 'vitest';
import { contactFindings, motorPlan, reportOf } from './contact-plans.ts';
import { shop } from './mains-plans.ts';
import { findings, loop } from './threshold-plans.ts';

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

describe('sides-share-box', () => {
  const box = (holds: string) => shop({ box: `holds: [${holds}], volume: 400 in3` });

  // NEC 725.136(A): what has to be parted is Class 2 wiring and mains; a box with one of them holds nothing to part.
  it.each([
    ['K1', true],
    ['g', false],
    ['PS1', false],
    ['M', false],
    ['g, M', true],
  ])('a box without divider that holds %s', (holds, expected) => {
    expect(findings(box(holds)).some((f) => f.id === 'sides-share-box')).toBe(expected);
  });
});

describe('plug-mismatch', () => {
  // Common practice: a machine of 115 V runs on 120 V; one made for half or double is the wrong machine.
  it.each([
    [230, true],
    [115, false],
    [120, false],
    [60, true],
  ])('a motor made for %s V on a circuit of 120 V', (volts, expected) => {
    const text = shop({ motor: `power: 0.5 hp, volts: ${volts} V AC, amps: 8 A, protector: manual` });
    const found = findings(text).find((f) => f.id === 'plug-mismatch' && f.parts[0] === 'M');
    expect(found?.severity).toBe(expected ? 'danger' : undefined);
  });
});

describe('earth-broken', () => {
  // NEC 250.124(B): nothing that switches or blows lies in a protective conductor.
  it.each([
    ['E: {kind: switch}', 'E.COM', 'E.NO'],
    ['E: {kind: fuse, rating: 5 A}', 'E.1', 'E.2'],
  ])('names what the earth passes: %s', (part, from, to) => {
    const text = shop({ parts: [part] })
      .replace(', pe: [P1.PE, M.PE]', '')
      .replace('intent:', `  - {link: [P1.PE, ${from}]}\n  - {link: [${to}, M.PE]}\nintent:`);
    const found = findings(text).find((f) => f.id === 'earth-broken');
    expect(found?.parts).toEqual(['M', 'E']);
    expect(found?.why).toContain('passes E');
  });
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
