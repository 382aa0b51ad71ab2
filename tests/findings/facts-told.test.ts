/** What a finding or a caution claims of the plan has to hold for that plan and not for its neighbour. */
import { describe, expect, it } from 'vitest';
import { reportOf } from './contact-plans.ts';
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
