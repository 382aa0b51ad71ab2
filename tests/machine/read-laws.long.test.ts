import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCircuit, buildWiredCircuit } from '../../src/circuit/build.ts';
import { islandOf } from '../../src/electric/island.ts';
import { judge } from '../../src/findings/judge.ts';
import { readMeter } from '../../src/machine/read-meter.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { notFinite, planOf } from '../helpers/plan-of.ts';

const folder = new URL('../../examples/', import.meta.url);
const load = (under: string) =>
  readdirSync(new URL(under, folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => {
      const plan = planOf(readFileSync(new URL(under + name, folder), 'utf8'), name);
      const { inputs, netOf, diodes, passives } = buildCircuit(plan);
      const across = (a: number, b: number) =>
        passives.some((p) => (p.a === a && p.b === b) || (p.a === b && p.b === a));
      const linear = diodes.every((d) => across(d.anode, d.cathode));
      const terminals = [...netOf.keys()].map((key) => {
        const dot = key.indexOf('.');
        return dot < 0
          ? { part: key, terminal: '' }
          : { part: key.slice(0, dot), terminal: key.slice(dot + 1) };
      });
      return { name, plan, inputs, terminals, linear };
    });
const good = load('');
const all = [...good, ...load('wrong/')];

type Example = (typeof all)[number];

/** At most one position of each selector, as a person can set them. */
function states({ inputs }: Example): fc.Arbitrary<number[]> {
  return fc
    .subarray(inputs.map((i) => i.index))
    .map((list) => list.filter((i, k) => !list.slice(0, k).some((j) => inputs[j]!.part === inputs[i]!.part)));
}

/** A name, inputs moved and three terminals; the plan itself stays out, for it would fill the page on a failure. */
const spotIn = (examples: readonly Example[]) =>
  fc.constantFrom(...examples).chain((example) =>
    fc.record({
      name: fc.constant(example.name),
      moved: states(example),
      ends: fc.array(fc.constantFrom(...example.terminals), { minLength: 3, maxLength: 3 }),
    }),
  );
const spot = spotIn(all);
const planCalled = (name: string): Plan => all.find((x) => x.name === name)!.plan;

type Probe = Example['terminals'][number] | undefined;
const read = (plan: Plan, moved: number[], dead: boolean, a: Probe, b: Probe) =>
  readMeter(Study.of(plan), { moved, dead, between: [a!, b!] });

describe('laws of a meter, over every example and any state', () => {
  it('swapping the probes turns the sign of DC and nothing else; ohms do not care', () => {
    fc.assert(
      fc.property(spot, ({ name, moved, ends: [a, b] }) => {
        const plan = planCalled(name);
        const [r, s] = [read(plan, moved, false, a, b), read(plan, moved, false, b, a)];
        expect([s.kind, s.state, s.notes]).toEqual([r.kind, r.state, r.notes]);
        if (r.volts === null) expect(s.volts).toBeNull();
        else expect(s.volts).toBeCloseTo(r.kind === 'ac' ? r.volts : -r.volts, 6);
        const [p, q] = [read(plan, moved, true, a, b), read(plan, moved, true, b, a)];
        expect([q.through, q.beeps, q.notes]).toEqual([p.through, p.beeps, p.notes]);
        if (p.ohms === null) expect(q.ohms).toBeNull();
        else expect(Math.abs(q.ohms! - p.ohms)).toBeLessThanOrEqual(1e-6 * p.ohms);
        for (const x of [r, s, p, q]) expect(notFinite(x)).toBeUndefined();
      }),
      { numRuns: 150 },
    );
  });

  // Kirchhoff's voltage law, where no diode lies in line: there the meter decides whether it conducts. The meter itself takes a part in ten thousand at a coil of a kilohm. AC magnitudes and
  // resistances obey the triangle rule.
  it('volts round three terminals come to nothing', () => {
    let told = 0;
    fc.assert(
      fc.property(spotIn(all.filter((x) => x.linear)), ({ name, moved, ends: [a, b, c] }) => {
        const plan = planCalled(name);
        const three = [[a, b] as const, [b, c] as const, [a, c] as const].map(([x, y]) =>
          read(plan, moved, false, x, y),
        );
        if (three.some((r) => r.volts === null)) return;
        // A terminal that hangs loose stands where the meter puts it.
        const { nets } = readMeter(Study.of(plan), { moved, dead: false });
        const held = three.flatMap((r) => r.between!).map((t) => nets.find((n) => n.terminals.includes(t)));
        if (held.some((n) => !n || n.volts === null || n.against !== held[0]!.against)) return;
        const [ab, bc, ac] = three.map((r) => r.volts!) as [number, number, number];
        const slack = 1e-3 * Math.max(...[ab, bc, ac].map(Math.abs)) + 2e-4;
        if (three.some((r) => r.kind === 'ac')) {
          expect(ac).toBeLessThanOrEqual(ab + bc + slack);
          expect(Math.abs(ab - bc)).toBeLessThanOrEqual(ac + slack);
        } else expect(Math.abs(ab + bc - ac)).toBeLessThanOrEqual(slack);
        told++;
      }),
      { numRuns: 500 },
    );
    expect(told).toBeGreaterThan(40);
  });

  it('ohms round three terminals obey the triangle rule', () => {
    fc.assert(
      fc.property(spot, ({ name, moved, ends: [a, b, c] }) => {
        const plan = planCalled(name);
        const [ab, bc, ac] = [[a, b] as const, [b, c] as const, [a, c] as const].map(
          ([x, y]) => read(plan, moved, true, x, y).ohms,
        );
        if (ab === null || bc === null || ac === null) return;
        expect(ac!).toBeLessThanOrEqual((ab! + bc!) * (1 + 1e-6));
      }),
      { numRuns: 150 },
    );
  });
});

const hasDcLoad = (plan: Plan): boolean =>
  [...plan.parts.values()].some((p) => (p.kind === 'motor' || p.kind === 'load') && p.volts.kind === 'dc');

/** Whether a contact of the relay lies in what hangs on its coil's source. */
function feedsOwnSource(plan: Plan, name: string): boolean {
  const circuit = buildWiredCircuit(plan);
  const relay = circuit.relays.find((r) => r.part === name)!;
  const nets = relay.senses.flatMap((s) => [s.a, s.b]);
  return islandOf(circuit, nets).contacts.some(
    ({ when }) => when.by === 'relay' && circuit.relays[when.relay]!.part === name,
  );
}

describe('every example', () => {
  it.each(all)('$name: every number is a number, at rest and with each input moved', ({ plan, inputs }) => {
    for (const moved of [[], ...inputs.map((i) => [i.index])]) {
      const r = readMeter(Study.of(plan), { moved, dead: false });
      expect(notFinite(r)).toBeUndefined();
      expect(JSON.parse(JSON.stringify(r))).toEqual(r);
      expect(r.cores.length).toBe(plan.runs.reduce((n, run) => n + (run.link ? 0 : run.cores.length), 0));
    }
  });

  // Kirchhoff's current law at every joint that cores alone reach.
  it.each(good)('$name: what flows into a joint flows out of it', ({ plan, inputs }) => {
    for (const moved of [[], ...inputs.map((i) => [i.index])]) {
      const t = readMeter(Study.of(plan), { moved, dead: false });
      for (const net of t.nets) {
        if (net.kind !== 'dc' || !net.terminals.every((x) => !x.includes('.'))) continue;
        const sum = t.cores.reduce(
          (s, c) =>
            s + (net.terminals.includes(c.to) ? c.amps! : 0) - (net.terminals.includes(c.from) ? c.amps! : 0),
          0,
        );
        expect(Math.abs(sum)).toBeLessThan(1e-6);
      }
    }
  });

  it.each(good)('$name: a DC coil reads what the check says it gets', ({ plan, inputs }) => {
    for (const row of judge(Study.of(plan)).coils) {
      const part = plan.parts.get(row.relay);
      // A row without a gate is the worst of several states.
      if (!row.gate || part?.kind !== 'relay' || part.coil.rated.kind !== 'dc') continue;
      const moved = inputs.filter((i) => i.part === row.gate).map((i) => i.index);
      const r = read(
        plan,
        moved,
        false,
        { part: row.relay, terminal: 'A1' },
        { part: row.relay, terminal: 'A2' },
      );
      // Only where that input alone feeds the coil; a row may need others moved with it.
      if (r.state.relays[row.relay] !== 'in' || row.volts.nominal === null) continue;
      // the report rounds to four digits
      const seen = Number(Math.abs(r.volts!).toPrecision(4));
      // The row is of the moment before the relay pulls in. A DC load or a coil that its contact then puts on the
      // coil's own source takes volts from it.
      const { relays } = r.state;
      const others = Object.keys(relays).some((name) => name !== row.relay && relays[name] === 'in');
      if (hasDcLoad(plan) || (others && feedsOwnSource(plan, row.relay)))
        expect(seen).toBeLessThanOrEqual(row.volts.nominal);
      else expect([row.gate, seen]).toEqual([row.gate, row.volts.nominal]);
    }
  });
});
