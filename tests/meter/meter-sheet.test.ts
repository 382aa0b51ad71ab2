import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
import { judge } from '../../src/findings/judge.ts';
import { readMeter } from '../../src/machine/read-meter.ts';
import { commission, faultsOf } from '../../src/meter/meter-sheet.ts';
import { searchReadings } from '../../src/meter/search.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import { unplugged } from '../../src/meter/unplugged.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { notFinite, planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

const folder = new URL('../../examples/', import.meta.url);
const file = (name: string) => planOf(readFileSync(new URL(name, folder), 'utf8'), name);
const examples = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
/** Many states and relays: a sample of their faults is tried. */
const SLOW = ['millrace-joinery.yaml', 'osier-yard.yaml'];
const quick = examples.filter((name) => !SLOW.includes(name));
/** One small shop in the short run. */
const tried = WHOLE ? quick.filter((_, i) => i % 3 === 0) : ['plover-loft.yaml'];

const known = new Map<string, ReturnType<typeof commission>>();
/** The sheet of an example, worked out once. */
function worked(name: string): ReturnType<typeof commission> {
  const found = known.get(name) ?? commission(Study.of(file(name)));
  known.set(name, found);
  return found;
}

const readsOf = (name: string) => worked(name).sheet.steps.filter((s): s is ReadStep => s.kind === 'read');

const kinds = (plan: Plan, kind: string) => [...plan.parts.values()].filter((p) => p.kind === kind).length;

describe.each(tried)('%s', (name) => {
  const plan = file(name);

  it('has every single fault that can be told shown by a step', () => {
    const { sheet, faults } = worked(name);
    expect(sheet.detected).toBe(sheet.detectable);
    expect(faults.filter((f) => f.detectable && f.steps.length === 0)).toEqual([]);
    expect(faults.filter((f) => f.detectable).length).toBe(sheet.detectable);
    expect(sheet.silent.length).toBe(faults.length - sheet.detectable);
    expect(sheet.silent.filter((s) => s.why.length < 20)).toEqual([]);
  });

  it('has no step that could be left out', () => {
    const { faults } = worked(name);
    const reads = readsOf(name);
    const needless = reads.filter(
      (s) => s.alone === null && !faults.some((f) => f.steps.length === 1 && f.steps[0] === s.number),
    );
    expect(needless.map((s) => s.number)).toEqual([]);
  });

  it('expects what the meter is said to read', () => {
    const reads = readsOf(name);
    for (const step of reads) {
      if (step.first.length > 0 || step.alone !== null) continue;
      const dead = step.expect.unit === 'ohm';
      expect(dead || step.stage > 1).toBe(true);
      const { moved, between, clippedAt: clipped } = step;
      const options = { moved, dead, loop: dead && step.stage === 2, clipped, between };
      const read = readMeter(Study.of(dead ? unplugged(plan) : plan), options);
      const value = dead ? read.ohms : read.volts;
      // A plugged-in collector's winding is all that the plan as it stands may add to what is told with it out.
      const whole = readMeter(Study.of(plan), options);
      if (dead && whole.through !== null && whole.ohms !== null) expect(whole.ohms).toBe(value);
      expect(step.expect.nominal, `step ${step.number}`).toBe(value);
      if (step.expect.shows === 'open') expect(read.through).toBe(false);
      if (step.expect.shows === 'beeps') expect(read.beeps).toBe(true);
      if (step.expect.shows === 'below') expect([read.through, read.ohms]).toEqual([true, null]);
      if (step.expect.low === null || value === null) continue;
      expect(value).toBeGreaterThanOrEqual(step.expect.low);
      expect(value).toBeLessThanOrEqual(step.expect.high!);
    }
  });

  it('reads each supply and battery that is not wired to the mains by itself, as the first with power', () => {
    const reads = readsOf(name);
    const loose = buildCircuit(plan).sources.filter(
      (s) => !s.mains && plan.parts.get(s.part)!.kind !== 'plug' && s.feed.by !== 'nets',
    );
    expect(new Set(reads.flatMap((s) => s.alone ?? []))).toEqual(new Set(loose.map((s) => s.part)));
    const live = reads.filter((s) => s.stage > 1).map((s) => s.alone !== null);
    expect(live).toEqual([...live].sort((a, b) => Number(b) - Number(a)));
    for (const step of reads.filter((s) => s.alone !== null)) {
      const part = plan.parts.get(step.alone!)!;
      if (part.kind !== 'supply' && part.kind !== 'battery') throw new Error(step.alone!);
      expect(step.range).toMatch(/V (DC|AC)$/);
      if (step.expect.shows === 'nothing') continue;
      // Rated volts, or as many as it gives with nothing on it where the plan states that.
      const volts = 'noLoad' in part ? (part.noLoad ?? part.output.volts) : part.output.volts;
      if (part.kind === 'battery' || part.regulation === 'regulated' || 'noLoad' in part)
        expect(step.expect.nominal).toBeCloseTo(volts, 6);
      expect(step.expect.kind).toBe(part.output.kind);
    }
  });

  it('has the relay pull in for the first time on the live loop, with mains still out', () => {
    const { sheet, faults } = worked(name);
    const reads = readsOf(name);
    const live = reads.filter((s) => s.stage === 2);
    // A supply whose output is mains comes in with mains.
    const sources = buildCircuit(plan).sources.filter((s) => !s.mains).length;
    if (sources === 0) return;
    expect(live.filter((s) => s.moved.length + s.movedFirst.length > 0).length).toBeGreaterThan(0);
    const weak = faults.filter((f) => f.text.includes('lets its volts fall under load'));
    expect(weak.length).toBe(sources);
    for (const f of weak) for (const number of f.steps) expect(sheet.steps[number - 1]!.stage).toBe(2);
    expect(weak.filter((f) => f.steps.length === 0)).toEqual([]);
  });

  it('has every supply and battery give nothing, whichever side it feeds', () => {
    const { faults } = worked(name);
    for (const { part } of buildCircuit(plan).sources) {
      const dead = faults.filter((f) => f.text === `${part} gives nothing`);
      expect(dead.length, part).toBe(plan.parts.get(part)!.kind === 'plug' ? 0 : 1);
      for (const f of dead) expect(f.steps.length, part).toBeGreaterThan(0);
    }
  });

  it('has no probe on the pins of a plug that is in the wall', () => {
    const reads = readsOf(name);
    const inWall = new Set(
      [...plan.parts.values()].flatMap((p) => (p.kind === 'plug' && p.pattern !== 'fixed' ? [p.name] : [])),
    );
    const parts = reads.filter((s) => s.stage === 3).flatMap((s) => s.between.map((p) => p.part));
    expect(parts.filter((part) => inWall.has(part))).toEqual([]);
  });

  it('goes from dead to mains, numbered, each gate adjusted once', () => {
    const { sheet } = worked(name);
    expect(sheet.steps.map((s) => s.number)).toEqual(sheet.steps.map((_, i) => i + 1));
    const stages = sheet.steps.map((s) => s.stage);
    expect(stages).toEqual([...stages].sort((a, b) => a - b));
    const gates = [...plan.parts.values()].filter((p) => p.kind === 'gate').map((p) => p.name);
    // Once for each gate: with the first reading that opens it, or on its own before all readings.
    const said = sheet.steps.flatMap((s) => (s.kind === 'check' ? [s.text] : s.adjust));
    for (const gate of gates)
      expect(said.filter((t) => t.startsWith(`Move the slide of ${gate} slowly`))).toHaveLength(1);
    for (const s of sheet.steps)
      if (s.kind === 'read' && s.adjust.length > 0) expect(s.moved.length).toBeGreaterThan(0);
    expect(notFinite(sheet)).toBeUndefined();
  });
});

describe('a loop with one relay', () => {
  const oneRelay = quick.filter((name) => {
    const plan = file(name);
    return kinds(plan, 'relay') + kinds(plan, 'board') + kinds(plan, 'timer') === 1;
  });

  it('stands in most of the examples', () => {
    expect(oneRelay.length).toBeGreaterThan(10);
  });

  it.each(oneRelay.filter((name) => tried.includes(name)))(
    '%s has at most twice as many steps as gates and twelve, besides those of a supply by itself',
    (name) => {
      const { steps } = worked(name).sheet;
      expect(steps.filter((s) => s.kind === 'check' || s.alone === null).length).toBeLessThanOrEqual(
        2 * kinds(file(name), 'gate') + 12,
      );
    },
  );
});

describe('a plan that puts somebody in danger', () => {
  const wrong = new URL('wrong/', folder);

  it('has nothing to measure or to power', () => {
    const names = readdirSync(wrong).filter((name) => name.endsWith('.yaml'));
    let dangerous = 0;
    for (const name of sampled(names)) {
      const plan = planOf(readFileSync(new URL(name, wrong), 'utf8'), name);
      const danger = judge(Study.of(plan)).findings.find((f) => f.severity === 'danger');
      if (danger === undefined) continue;
      dangerous++;
      const { sheet, faults } = commission(Study.of(plan));
      expect([sheet.setup, sheet.steps, sheet.silent, faults]).toEqual([[], [], [], []]);
      expect([sheet.detectable, sheet.detected, sheet.check.verdict]).toEqual([0, 0, 'fail']);
      expect(sheet.check.finding).toBe(danger.message);
    }
    expect(dangerous).toBeGreaterThan(WHOLE ? 5 : 0);
  });

  it.runIf(WHOLE)('keeps its readings where only the loop is wrong, and says so', () => {
    const plan = planOf(readFileSync(new URL('planer-on-break-tab.yaml', wrong), 'utf8'));
    const { sheet } = commission(Study.of(plan));
    expect(sheet.check.verdict).toBe('fail');
    expect(sheet.steps.length).toBeGreaterThan(5);
  });
});

it.each(WHOLE ? SLOW : [])('%s: a sample of its faults is shown, each step needed', (name) => {
  const plan = file(name);
  const study = Study.of(plan);
  const faults = faultsOf(study).filter((_, i) => i % 8 === 0);
  const found = searchReadings(study, faults);
  const by = (i: number) => found.wrong.filter((w) => w.get(i) !== undefined).length;
  const shown = faults.flatMap((_, i) => (by(i) > 0 ? [i] : []));
  expect([...found.detectable].sort((a, b) => a - b)).toEqual(shown);
  expect(shown.length).toBeGreaterThan(0.8 * faults.length);
  for (const w of found.wrong)
    expect(faults.some((_, i) => by(i) === 1 && w.get(i) !== undefined)).toBe(true);
});

it.runIf(WHOLE)('tells how far it is', () => {
  const told: [number, number][] = [];
  commission(Study.of(file('plover-loft.yaml')), (done, of) => told.push([done, of]));
  expect(told.map(([done]) => done)).toEqual(told.map((_, i) => i + 1));
  expect(told.at(-1)![0]).toBe(told.at(-1)![1]);
});
