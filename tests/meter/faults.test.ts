/** Which faults a sheet knows of, and which terminals and hands it counts on. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { symbolSpecs } from '../../src/draw/layout/symbol-specs.ts';
import { Measurer } from '../../src/meter/measurer.ts';
import { commission, faultsOf } from '../../src/meter/meter-sheet.ts';
import { probePairs } from '../../src/meter/probe-pairs.ts';
import { terminalsOf } from '../../src/meter/probe-terminals.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import { Subjects } from '../../src/meter/subject.ts';
import { Study } from '../../src/study/study.ts';
import { across, planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

const folder = new URL('../../examples/', import.meta.url);
const file = (name: string) => planOf(readFileSync(new URL(name, folder), 'utf8'), name);
const examples = ['', 'wrong/'].flatMap((sub) =>
  readdirSync(new URL(`./${sub}`, folder)).flatMap((n) => (n.endsWith('.yaml') ? [`${sub}${n}`] : [])),
);
const readsOf = (made: ReturnType<typeof commission>) =>
  made.sheet.steps.filter((s): s is ReadStep => s.kind === 'read');

describe('terminals', () => {
  it('are those that a drawing of the plan shows', () => {
    for (const name of sampled(examples)) {
      const plan = file(name);
      const drawn = symbolSpecs(plan).flatMap((s) => s.terminals.map((t) => t.key));
      const there = terminalsOf(plan);
      const own = [...plan.parts.keys()].flatMap((part) =>
        there(part).map((t) => (t === '' ? part : `${part}.${t}`)),
      );
      expect(own.sort(), name).toEqual([...new Set(drawn)].sort());
    }
  });

  it('are all that faults and probes are on', () => {
    const larger = ['harrow-sheds.yaml', 'kiln-street.yaml', 'heron-slip.yaml'];
    for (const name of [...(WHOLE ? larger : []), 'plover-loft.yaml']) {
      const plan = file(name);
      const drawn = new Set(symbolSpecs(plan).flatMap((s) => s.terminals.map((t) => t.key)));
      for (const fault of faultsOf(Study.of(plan)).filter((f) => f.plan !== undefined))
        for (const core of fault.plan!(plan).runs.flatMap((r) => r.cores))
          for (const { part, terminal } of [core.a, core.b])
            expect(drawn, fault.text).toContain(terminal === '' ? part : `${part}.${terminal}`);
      for (const { a, b } of probePairs(plan)) expect([drawn.has(a), drawn.has(b)]).toEqual([true, true]);
    }
  });
});

describe('cores of different cables', () => {
  const plan = file('saltmarsh-lane.yaml');

  it.runIf(WHOLE)('changed over at the coil are shown', () => {
    const { faults, sheet } = commission(Study.of(plan));
    const text =
      'K1: the white core from PS1.- on K1.A2 and the white core from bandsaw.NO on K1.A1 are changed over';
    expect(faults.find((f) => f.text === text)?.steps.length).toBeGreaterThan(0);
    expect(sheet.silent.map((s) => s.fault)).not.toContain(text);
  });

  it('are told apart, and their number grows with the gates', () => {
    const faults = faultsOf(Study.of(plan));
    const swaps = faults.filter((f) => /^bandsaw: .* on bandsaw\..* are changed over$/.test(f.text));
    // Two cores on COM and two on NO, each pair but the two of one cable.
    expect(swaps).toHaveLength(2);
    expect(new Set(faults.map((f) => f.text)).size).toBe(faults.length);
  });
});

const loop = (supply: string, indicator = '') => `title: one gate
parts:
  S1: ${supply}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, tolerance: 10 %}, contact: {ratings: [5 A 30 V DC]}}
  gate: {kind: gate, pressed-when: open, contact: {ratings: [5 A 30 V DC], resistance: 0 ohm}}
  L1: {kind: led, current: 10 mA${indicator}}
  R1: {kind: resistor, resistance: 1000 ohm}
runs:
  - {link: [S1.+, gate.COM]}
  - {link: [gate.NO, K1.A1]}
  - {link: [S1.-, K1.A2]}
  - {link: [R1.1, K1.A1]}
  - {link: [R1.2, L1.A]}
  - {link: [L1.K, K1.A2]}
intent:
  K1: {runs-on: [gate]}
`;

describe('a supply whose volts fall under load', () => {
  const battery = '{kind: battery, output: 12 V DC}';
  const fixed = '{kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}';
  const loose = '{kind: supply, output: 12 V DC, no-load: 16 V, limit: 0.5 A, regulation: unregulated}';
  it.each([battery, fixed, loose])('%s has its volts at rest and half of them with the coil on', (supply) => {
    const plan = planOf(loop(supply));
    const fault = faultsOf(Study.of(plan)).find((f) => f.text.startsWith('S1 lets its volts fall'))!;
    const weak = fault.plan!(plan);
    // The meter itself draws a microampere.
    const rest = across(plan, 'S1.+', 'S1.-').volts!;
    expect(across(weak, 'S1.+', 'S1.-').volts!).toBeCloseTo(rest, 2);
    const loaded = across(weak, 'S1.+', 'S1.-', ['gate']).volts!;
    // The indicator beside the coil draws a little more.
    expect(loaded).toBeLessThan(0.5 * rest);
    expect(loaded).toBeGreaterThan(0.45 * rest);
  });

  it.runIf(WHOLE)('is shown by the live loop with the gate open, and by nothing else', () => {
    const made = commission(Study.of(planOf(loop(fixed))));
    const weak = made.faults.find((f) => f.text.startsWith('S1 lets its volts fall'))!;
    const steps = readsOf(made).filter((s) => weak.steps.includes(s.number));
    expect(steps.length).toBeGreaterThan(0);
    for (const s of steps) expect([s.stage, s.moved, s.expect.kind]).toEqual([2, [0], 'dc']);
  });
});

describe('an indicator', () => {
  const supply = '{kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 0 %}';
  /** What is expected across the resistor with the gate open. */
  const left = (indicator: string) => {
    const plan = planOf(loop(supply, indicator));
    const pair = { a: 'R1.1', b: 'R1.2', cost: 1, far: false, main: false };
    const open = { key: '/0', moved: [0], first: [] };
    return new Measurer(Study.of(plan), new Subjects(Study.of(plan))).at(2, open, [pair])[0]!.expect;
  };

  it('of unknown forward volts leaves the resistor what 1.6 V to 3.6 V leave of 12 V', () => {
    const { low, high, nominal } = left('');
    // Its own resistance at 10 mA takes up to a tenth of its volts in line with 1000 ohm.
    expect(low!).toBeGreaterThan((12 - 3.6) * 0.97);
    expect(low!).toBeLessThan(12 - 3.6);
    expect(high!).toBeGreaterThan((12 - 1.6) * 0.97);
    expect(high!).toBeLessThan(12 - 1.6);
    expect(nominal!).toBeGreaterThan(low!);
    expect(nominal!).toBeLessThan(high!);
  });

  it('of known forward volts has no such band', () => {
    const { low, high } = left(', forward: 2 V');
    expect(high! - low!).toBeLessThan(0.1);
  });
});

/** A button that seals in, on a battery, and a load that is wired in. */
const LATCH = `title: latch
parts:
  B1: {kind: battery, output: 12 V DC}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, poles: [{form: make, marks: [11, 14], contact: {ratings: [30 A 240 V AC]}}, {form: make, marks: [21, 24], contact: {ratings: [5 A 30 V DC]}}]}
  stop: {kind: button, contact: {ratings: [5 A 30 V DC]}}
  start: {kind: button, contact: {ratings: [5 A 30 V DC]}}
  P1: {kind: plug, pattern: fixed, breaker: 20 A, volts: 120 V AC}
  collector: {kind: motor, power: 1 hp, volts: 120 V AC, amps: 12 A}
runs:
  - {link: [B1.+, stop.COM]}
  - {link: [B1.-, K1.A2]}
  - {link: [stop.NC, start.COM]}
  - {link: [start.NO, K1.A1]}
  - {link: [start.COM, K1.21]}
  - {link: [start.NO, K1.24]}
  - {cable: {kind: cable, gauge: 12 AWG, cores: 3, strands: fine, insulation: 600 V}, length: 2 m, cores: {black: [P1.L, K1.11], white: [P1.N, collector.N], green: [P1.PE, collector.PE]}}
  - {cable: {kind: cable, gauge: 12 AWG, cores: 3, strands: fine, insulation: 600 V}, length: 2 m, cores: {black: [K1.14, collector.L]}}
intent:
  collector: {runs-on: [start], stays-on-after: [start], stopped-by: [stop]}
`;

describe('a circuit that seals in', () => {
  let worked: ReturnType<typeof commission> | undefined;
  const latch = () => {
    worked ??= commission(Study.of(planOf(LATCH)));
    return worked;
  };

  it.runIf(WHOLE)('is read on mains with the button let go of', () => {
    const last = readsOf(latch()).filter((s) => s.stage === 3);
    expect(last.length).toBeGreaterThan(0);
    for (const s of last) expect(s.positions).not.toContain('start pressed');
    expect(last.some((s) => s.first.includes('start pressed'))).toBe(true);
  });

  it('names the buttons that a hand has to hold', () => {
    for (const s of readsOf(latch()))
      expect(s.held).toEqual(['stop', 'start'].filter((b) => s.positions.includes(`${b} pressed`)));
    expect(readsOf(latch()).some((s) => s.held.length > 0)).toBe(true);
  });

  it('has words for a battery, a feed and a load that are wired in', () => {
    const text = latch()
      .sheet.setup.flatMap((s) => s.text)
      .join('\n');
    expect(text).toMatch(/cores off the poles of B1/);
    expect(text).toMatch(/P1 stays dead, the breaker off and locked/);
    expect(text).toMatch(/collector is wired in/);
    expect(text).not.toMatch(/[Ss]witch off B1|switch it on|[Uu]nplug/);
  });
});
