/** What keeps a sheet short: clip leads, the dead line with its relay in, mains that must come in. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/machine/read-meter.ts';
import { commission } from '../../src/meter/meter-sheet.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const example = (name: string) =>
  planOf(readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8'), name);
function work(name: string) {
  const plan = example(name);
  const found = commission(Study.of(plan));
  return { plan, ...found, reads: found.sheet.steps.filter((s): s is ReadStep => s.kind === 'read') };
}

const known = new Map<string, ReturnType<typeof work>>();
/** The sheet of an example, worked out once. */
function made(name: string): ReturnType<typeof work> {
  const found = known.get(name) ?? work(name);
  known.set(name, found);
  return found;
}

describe('a clip lead', () => {
  const LED = ['heron-slip', 'tidewater-turners', 'hollin-bank', 'kiln-street'];

  it.each(LED)('joins pins of one plug while mains is out: %s', (name) => {
    const { plan, reads, sheet } = made(name);
    const led = reads.filter((s) => s.clipped.length > 0);
    expect(led.length).toBeGreaterThan(0);
    for (const step of led) {
      expect([step.stage < 3, step.expect.unit]).toEqual([true, 'ohm']);
      expect(step.clipped.length).toBeGreaterThan(1);
      expect(step.clippedAt.length).toBe(step.clipped.length);
      const parts = new Set(step.clippedAt.map((p) => p.part));
      expect([...parts].map((p) => plan.parts.get(p)!.kind)).toEqual(['plug']);
      expect(step.wrong.length).toBeGreaterThan(0);
    }
    const first = sheet.setup.find((s) => s.stage === 1)!.text.join(' ');
    expect(first).toMatch(/No plug goes into the wall and no breaker is switched on while a lead is on/);
    const after = 1 + Math.max(...led.map((s) => s.stage));
    expect(sheet.setup.find((s) => s.stage === after)!.text[0]).toMatch(/Every clip lead is off/);
  });

  it('is not asked for where the sheet is short without it', () => {
    for (const name of ['saltmarsh-lane', 'wren-cellar', 'plover-loft', 'ropewalk-barge', 'nettle-court']) {
      const { reads, sheet } = made(name);
      expect(reads.filter((s) => s.clipped.length > 0)).toEqual([]);
      expect(sheet.setup.flatMap((s) => s.text).join(' ')).not.toMatch(/clip lead/);
    }
  });

  it('that was left on a fixed feed is shown before the feed is switched on, by a reading without it', () => {
    const { plan, reads, faults } = made('kiln-street');
    const led = reads.filter((s) => s.clipped.length > 0);
    expect(led.filter((s) => s.stage !== 1)).toEqual([]);
    const left = faults.filter((f) => f.text.startsWith('the clip lead is still on '));
    expect(left.length).toBe(new Set(led.map((s) => s.clipped.join())).size);
    for (const fault of left) {
      const shown = reads.filter((s) => fault.steps.includes(s.number));
      expect(shown.length).toBeGreaterThan(0);
      for (const step of shown) expect([step.clipped, step.stage < 3]).toEqual([[], true]);
      const last = Math.max(...led.map((s) => s.number));
      expect(Math.min(...fault.steps)).toBeGreaterThan(last);
    }
    expect(plan.parts.get('P1')).toMatchObject({ pattern: 'fixed' });
  });

  it('that was left on a plug keeps it out of the wall by itself', () => {
    const { faults } = made('heron-slip');
    expect(faults.filter((f) => f.text.includes('clip lead'))).toEqual([]);
  });
});

describe('what would be found by a bang', () => {
  it('a core of the motor on the loop is shown before mains is on, though it meets the line through the winding only', () => {
    for (const name of ['kiln-street', 'heron-slip']) {
      const { reads, faults } = made(name);
      const across = faults.filter((f) =>
        /^Q1: the .* core from fan\.L\d is on (A1|A2|OL\.9[56]|feed|call) /.test(f.text),
      );
      expect(across.length, name).toBeGreaterThan(5);
      for (const f of across)
        expect(reads.find((s) => s.number === f.steps[0])?.stage, f.text).toBeLessThan(3);
    }
  });

  it('lines that touch are shown with everything dead, where the loop needs mains in the second stage', () => {
    const { reads, faults } = made('hollin-bank');
    const touch = faults.filter((f) => /^the brown and the blue core .* touch$/.test(f.text));
    expect(touch.length).toBe(3);
    for (const f of touch) expect(reads.find((s) => s.number === f.steps[0])?.stage, f.text).toBe(1);
  });

  it('the fuse of a plug is named where the core behind it reads open', () => {
    const { reads, faults } = made('wren-cellar');
    const fuse = faults.find((f) => f.text === 'P1: its own fuse has blown or is missing')!;
    expect(reads.find((s) => s.number === fuse.steps[0])!.stage).toBeLessThan(3);
  });
});

describe('the line with its relay in', () => {
  it.each(['wren-cellar', 'heron-slip', 'osier-yard'])('is read in ohms before mains: %s', (name) => {
    const { plan, reads, sheet } = made(name);
    const line = reads.filter((s) => s.stage === 2 && s.expect.unit === 'ohm');
    expect(line.filter((s) => s.moved.length > 0).length).toBeGreaterThan(0);
    const low = [...plan.parts.values()].filter((p) => ['gate', 'supply', 'led', 'diode'].includes(p.kind));
    for (const s of line)
      for (const p of s.between) {
        expect(low.map((x) => x.name)).not.toContain(p.part);
        expect(['A1', 'A2']).not.toContain(p.terminal);
      }
    expect(sheet.setup.find((s) => s.stage === 2)!.text.at(-1)).toMatch(/line is still dead/);
  });

  it('is not, where the loop gets its power through the plug', () => {
    const { reads } = made('hollin-bank');
    expect(reads.filter((s) => s.stage === 2 && s.expect.unit === 'ohm')).toEqual([]);
  });

  it('shows before mains is on that a contact never makes', () => {
    for (const name of ['wren-cellar', 'heron-slip', 'saltmarsh-lane']) {
      const { reads, faults } = made(name);
      const never = faults.filter((f) => /: contact .* never makes$/.test(f.text) && f.detectable);
      expect(never.length).toBeGreaterThan(3);
      for (const f of never) expect(reads.find((s) => s.number === f.steps[0])!.stage).toBeLessThan(3);
    }
  });

  it('reads a three-phase winding alike between any two lines, under what the rating plate allows', () => {
    const { reads } = made('heron-slip');
    const winding = reads.filter((s) => s.expect.shows === 'below');
    expect(winding.length).toBe(2);
    // 4 kW at 400 V and 8.2 A: less than 2 V/(√3 I) between two lines, and the cores on either side.
    const most = (2 / Math.sqrt(3)) * (400 / 8.2);
    for (const { expect: want } of winding) {
      expect([want.nominal, want.low]).toEqual([null, null]);
      expect(want.high!).toBeGreaterThan(most);
      expect(want.high!).toBeLessThan(most + 1);
    }
  });

  it('tells nothing through a solid-state output that is on', () => {
    const plan = planOf(`title: solid-state
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %}
  K1: {kind: relay, technology: solid-state, coil: {rated: 12 V DC, current: 10 mA}, contact: {ratings: [25 A 240 V AC], motor: [1 hp 120 V AC]}}
  saw: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 1 mA 5 V DC}}
  P1: {kind: plug, pattern: NEMA 5-15, breaker: 15 A, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-15}
  fan: {kind: motor, type: universal, power: 400 W, volts: 120 V AC, plugged-into: X1}
  B1: {kind: box, holds: [K1], volume: 100 in3, divider: true}
runs:
  - {link: [PS1.+, saw.COM]}
  - {link: [saw.NO, K1.A1]}
  - {link: [PS1.-, K1.A2]}
  - {link: [P1.L, K1.COM]}
  - {link: [K1.NO, X1.L]}
  - {link: [P1.N, X1.N]}
  - {link: [P1.PE, X1.PE]}
intent:
  fan: {runs-on: [saw]}
`);
    const { sheet } = commission(Study.of(plan));
    const ohms = sheet.steps.filter(
      (s): s is ReadStep => s.kind === 'read' && s.expect.unit === 'ohm' && s.moved.length > 0,
    );
    const line = (s: ReadStep) => s.between.map((p) => `${p.part}.${p.terminal}`);
    const through = ohms.filter(
      (s) =>
        line(s).some((k) => ['P1.L', 'K1.COM'].includes(k)) &&
        line(s).some((k) => ['X1.L', 'K1.NO'].includes(k)),
    );
    expect(through).toEqual([]);
    expect(sheet.steps.length).toBeGreaterThan(5);
  });
});

describe('mains that does not come in', () => {
  it('is shown by the last stage, line by line', () => {
    for (const [name, lines] of [
      ['saltmarsh-lane', 1],
      ['tidewater-turners', 1],
      ['heron-slip', 3],
      ['kiln-street', 3],
    ] as const) {
      const { reads, faults } = made(name);
      const dead = faults.filter((f) => /^P1: no volts come in/.test(f.text));
      expect(dead.length, name).toBe(lines);
      for (const f of dead) {
        expect(f.steps.length).toBeGreaterThan(0);
        for (const n of f.steps) expect(reads.find((s) => s.number === n)!.stage).toBe(3);
      }
    }
  });
});

it('a supply in a socket of the plan is unplugged for the first stage, since its winding joins the lines', () => {
  const { sheet } = made('hollin-bank');
  expect(sheet.setup[0]!.text).toContain("Unplug PS1 from X0 and take the loop's cores off its output.");
  expect(sheet.setup[1]!.text).toContain('Put the cores back on PS1 and plug it into X0.');
});

it('a supply fed from a plug lies across its pins, so nothing is told between them', () => {
  const fed = example('saltmarsh-lane');
  const parts = new Map(fed.parts);
  const supply = parts.get('PS1')!;
  if (supply.kind !== 'supply') throw new Error('PS1 is a supply');
  parts.set('PS1', { ...supply, fedFrom: 'P1' });
  const plan = { ...fed, parts };
  const { steps } = commission(Study.of(plan)).sheet;
  const pins = steps.filter(
    (s) =>
      s.kind === 'read' && s.stage === 1 && s.between.every((p) => p.part === 'P1' && p.terminal !== 'PE'),
  );
  expect(pins).toEqual([]);
  const read = readMeter(Study.of(plan), {
    moved: [],
    dead: true,
    between: [
      { part: 'P1', terminal: 'L' },
      { part: 'P1', terminal: 'N' },
    ],
  });
  expect([read.through, read.ohms]).toEqual([null, null]);
  expect(steps.length).toBeGreaterThan(10);
});
