/** Shops built in zones: what is near a fault reads as the whole shop does, and the sheet is whole and short. */
import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/machine/read-meter.ts';
import { commission, faultsOf } from '../../src/meter/meter-sheet.ts';
import type { ReadStep } from '../../src/meter/sheet/sheet-model.ts';
import { Subjects } from '../../src/meter/subject.ts';
import { Study } from '../../src/study/study.ts';
import { zonesOf } from '../bench/zones.mjs';
import { planOf } from '../helpers/plan-of.ts';
import { share, WHOLE } from '../helpers/share.ts';

/** Every so many of a list. */
const some = <T>(list: readonly T[], count: number): T[] =>
  list.filter((_, i) => i % Math.max(1, Math.floor(list.length / count)) === 0);

describe('what is near a fault', () => {
  // The whole circuit, built from the plan with the mistake in it, is the oracle: nothing is cut off there.
  it.each([
    ['chain', 'dc', undefined],
    ['ring', 'ac', 'lamp'],
    ['star', 'dc', 'led'],
  ] as const)('reads as the whole shop does: %s, %s, %s', (trunk, current, lamps) => {
    const study = Study.of(planOf(zonesOf(2, 3, { trunk, current, lamps })));
    const subjects = new Subjects(study);
    const { inputs } = subjects.right.circuit;
    const keys = [...study.wired.landed.keys()];
    for (const [n, fault] of some(faultsOf(study), share(240)).entries()) {
      if (fault.untried !== undefined) continue;
      const moved = n % 4 === 0 ? [] : [n % inputs.length];
      const own = [...fault.parts, ...fault.at.map((key) => key.split('.')[0]!)];
      const near = keys.filter((key) => own.includes(key.split('.')[0]!) || key.startsWith('PS1.'));
      const used = new Set([...moved, ...inputs.flatMap((i) => (own.includes(i.part) ? [i.index] : []))]);
      const small = subjects.near([...near, ...fault.at, 'PS1.+', 'PS1.-'], used).build(fault);
      const whole = subjects.build(fault);
      const stance = { key: `/${moved}`, moved, first: [] };
      const relays = whole.loop.relaysAt(stance);
      expect(small.loop.relaysAt(stance), fault.text).toEqual(relays);
      const where = { moved, relays: undefined, clipped: [] };
      for (const a of near)
        for (const b of near.slice(near.indexOf(a) + 1, near.indexOf(a) + 4)) {
          const [x, y] = [small, whole].map((s) => s.dead.readOneOfMany(where, a, b).most) as [
            number,
            number,
          ];
          const [u, v] = [small, whole].map((s) => s.loop.volts(stance, a, b)?.volts ?? Number.NaN) as [
            number,
            number,
          ];
          if (Number.isFinite(y))
            expect(Math.abs(x - y), `${fault.text}: ${a} ${b}`).toBeLessThan(1e-6 * (1 + y));
          else expect(x, `${fault.text}: ${a} ${b}`).toBe(y);
          if (Number.isNaN(v)) expect(u).toBeNaN();
          else expect(Math.abs(u - v), `${fault.text}: ${a} ${b}`).toBeLessThan(1e-6 * (1 + Math.abs(v)));
        }
    }
  });
});

describe('what is said beforehand to change no reading', () => {
  // The whole circuit with the mistake in it is the oracle again: gates of one zone are open, and the probes are there.
  it.each([
    ['chain', 'dc', undefined],
    ['ring', 'ac', 'lamp'],
    ['star', 'dc', 'led'],
  ] as const)('changes none: %s, %s, %s', (trunk, current, lamps) => {
    const study = Study.of(planOf(zonesOf(3, 3, { trunk, current, lamps })));
    const subjects = new Subjects(study);
    const { around, right } = subjects;
    const probes = ['plus2', 'call2', 'minus2', 'z2g2.COM', 'z2g2.NO', 'Z2.A1', 'Q1.A1'];
    const moved = right.circuit.inputs.flatMap((i) => (i.part === 'z2g2' ? [i.index] : []));
    const stance = { key: `/${moved}`, moved, first: [] };
    const live = around.reads(probes, new Set(moved), false);
    const dead = around.reads(probes, new Set(moved), true);
    let spared = 0;
    const faults = faultsOf(study).filter((f) => f.moved && f.change && subjects.isNear(f));
    for (const fault of some(faults, WHOLE ? 900 : 20)) {
      const out = around.cores(fault.moved!);
      const into = fault.change!.joined.map((ends) => around.nets(ends) as [number, number]);
      if (into.some((ends) => ends.length < 2)) continue;
      const whole = subjects.build(fault);
      const where = { moved, relays: undefined, clipped: [] };
      for (const [k, a] of probes.entries())
        for (const b of probes.slice(k + 1)) {
          const [u, v] = [right, whole].map((s) => s.loop.volts(stance, a, b)?.volts ?? Number.NaN);
          if (!live.rewired(out, into)) {
            spared++;
            expect(Math.abs(u! - v!), `${fault.text}: ${a} ${b}`).toBeLessThan(1e-6 * (1 + Math.abs(u!)));
          }
          const [x, y] = [right, whole].map((s) => s.dead.readOneOfMany(where, a, b).most) as [
            number,
            number,
          ];
          if (dead.rewired(out, into)) continue;
          if (Number.isFinite(x)) expect(Math.abs(x - y), fault.text).toBeLessThan(1e-6 * (1 + x));
          else expect(y, fault.text).toBe(x);
        }
    }
    expect(spared).toBeGreaterThan(0);
  });
});

describe.runIf(WHOLE)('the sheet of a shop in zones', () => {
  const zones = 3;
  const gates = 5;
  const plan = planOf(zonesOf(zones, gates));
  let made: ReturnType<typeof commission> | undefined;
  const worked = () => {
    made ??= commission(Study.of(plan));
    return made;
  };
  const reads = () => worked().sheet.steps.filter((s): s is ReadStep => s.kind === 'read');

  it('shows every fault that can be told, with no step that could be left out', () => {
    const { sheet, faults } = worked();
    expect(sheet.detected).toBe(sheet.detectable);
    expect(sheet.detectable).toBeGreaterThan(0.9 * faults.length);
    for (const step of reads())
      if (step.alone === null)
        expect(faults.some((f) => f.steps.length === 1 && f.steps[0] === step.number)).toBe(true);
  });

  it('has no more steps than twice the gates, six a zone and twelve', () => {
    expect(worked().sheet.steps.length).toBeLessThanOrEqual(2 * zones * gates + 6 * zones + 12);
  });

  it('takes one zone after another, each by itself, and then the trunk, stage by stage', () => {
    // The generator names the parts of zone 3 Z3, plus3, z3g1: the number is the zone.
    const number = (part: string) => Number(/\d+/.exec(part)?.[0] ?? 0);
    const order = reads().filter((s) => s.clipped.length === 0 && s.alone === null);
    const at = order.map((s) => 1000 * s.stage + (s.zone === null ? 999 : number(s.zone)));
    expect(at).toEqual([...at].sort((a, b) => a - b));
    const own = order.filter((s) => s.zone !== null);
    expect(new Set(own.map((s) => s.zone)).size).toBe(zones);
    for (const s of own) {
      const gates = s.positions.map((p) => p.split(' ')[0]!);
      for (const part of [...gates, ...s.between.map((p) => p.part)])
        expect(number(part), `step ${s.number}: ${part}`).toBe(number(s.zone!));
    }
  });

  it('expects with everything dead what the meter reads there', () => {
    const dead = { ...plan, parts: new Map([...plan.parts].filter(([name]) => name !== 'collector')) };
    for (const { stage, moved, clippedAt: clipped, between, expect: want } of reads()) {
      if (stage !== 1) continue;
      const read = readMeter(Study.of(dead), { moved, dead: true, clipped, between });
      expect(read.through !== false).toBe(want.shows !== 'open');
    }
  });

  it('lets a builder with one mistake fail first at a step that names it', () => {
    const { sheet } = worked();
    const silent = new Set(sheet.silent.map((s) => s.fault));
    const wired = faultsOf(Study.of(plan)).filter(
      (f) => f.plan !== undefined && f.moved && !silent.has(f.text),
    );
    for (const fault of some(wired, WHOLE ? 60 : 5)) {
      const built = fault.plan!(plan);
      const dead = { ...built, parts: new Map([...built.parts].filter(([name]) => name !== 'collector')) };
      const first = reads().find((step) => {
        if (step.stage !== 1) return true;
        const read = readMeter(Study.of(dead), {
          moved: step.moved,
          dead: true,
          clipped: step.clippedAt,
          between: step.between,
        });
        const want = step.expect;
        if (want.shows === 'open') return read.through === true && (read.ohms ?? 0) < 20_000;
        if (want.shows === 'beeps') return read.beeps === false;
        if (read.through === false) return true;
        return (
          read.ohms !== null && (read.ohms > want.high! * 1.02 + 0.5 || read.ohms < want.low! * 0.98 - 0.5)
        );
      })!;
      if (first.stage === 1)
        expect(
          first.wrong.flatMap((w) => w.faults),
          fault.text,
        ).toContain(fault.text);
    }
  });
});
