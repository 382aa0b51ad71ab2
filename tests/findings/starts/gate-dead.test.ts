/** Why a gate does nothing: each cause by its own words, the terminals it lies at, and gates dead of one cause together. */
import { describe, expect, it } from 'vitest';
import { findings, type Loop, loop } from '../threshold-plans.ts';

const gate = (name: string, more = '') =>
  `${name}: {kind: gate, ${more}contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}`;
const dead = (plan: Loop) => findings(loop(plan)).filter((f) => f.id === 'gate-dead');

/** g works; h is wired as told. */
const h = (...runs: string[]): Loop => ({
  parts: [gate('h')],
  more: runs.map((r) => `{link: [${r}]}`),
  runsOn: 'g, h',
});

describe('one dead gate beside one that works', () => {
  it.each([
    ['COM is empty', ['PS1.+, h.NC', 'h.NO, K1.A1'], ['h.NO', 'h.NC']],
    ['both its cores are on one conductor', ['PS1.+, h.COM', 'PS1.+, h.NO'], ['h.COM', 'h.NO']],
    ['only COM is wired', ['PS1.+, h.COM'], ['h.COM']],
    ['it has no feed', ['h.NO, K1.A1', 'h.COM, x'], ['h.COM', 'h.NO']],
    ['its return core leads nowhere', ['PS1.+, h.COM', 'h.NO, x'], ['h.COM', 'h.NO']],
  ])('%s', (what, runs, terminals) => {
    const plan = h(...runs);
    const found = dead({ ...plan, parts: [...plan.parts!, 'x: {kind: joint}'] });
    expect(found.map((f) => f.parts[0])).toEqual(['h']);
    expect(found[0]?.message).toBe(`opening the h gate does nothing: ${what}`);
    expect([...found[0]!.terminals].sort()).toEqual([...terminals].sort());
  });

  it('in line with another', () => {
    const plan: Loop = {
      parts: [gate('h'), gate('i')],
      more: ['{link: [PS1.+, h.COM]}', '{link: [h.NO, i.COM]}', '{link: [i.NO, K1.A1]}'],
      runsOn: 'g, h, i',
    };
    expect(dead(plan).map((f) => [f.message, f.parts])).toEqual([
      ['opening the h gate does nothing: it lies in line with i', ['h', 'i', 'K1']],
      ['opening the i gate does nothing: it lies in line with h', ['i', 'h', 'K1']],
    ]);
  });

  it('the return of a coil on another supply', () => {
    const plan: Loop = {
      parts: [
        gate('h'),
        'PS2: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}',
      ],
      more: ['{link: [PS2.+, h.COM]}', '{link: [h.NO, K1.A1]}'],
      runsOn: 'g, h',
    };
    const [found] = dead(plan);
    expect(found?.message).toContain('the return of K1 does not come back to PS2');
    expect(found?.parts).toEqual(['h', 'K1', 'PS2']);
  });
});

it('gates dead of one cause are named together, those of two causes apart', () => {
  const same: Loop = {
    parts: [gate('h'), gate('i'), 'x: {kind: joint}'],
    more: ['{link: [h.COM, x]}', '{link: [i.COM, x]}', '{link: [h.NO, K1.A1]}', '{link: [i.NO, K1.A1]}'],
    runsOn: 'g, h, i',
  };
  const [found, more] = dead(same);
  expect(found?.parts).toEqual(['h', 'i', 'K1']);
  expect(found?.message).toBe('opening the h gate does nothing: it has no feed; likewise i');
  expect(more).toBeUndefined();
  const other = { ...same, more: ['{link: [h.COM, x]}', '{link: [h.NO, K1.A1]}', '{link: [PS1.+, i.COM]}'] };
  expect(
    dead(other)
      .map((f) => f.parts[0])
      .sort(),
  ).toEqual(['h', 'i']);
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
