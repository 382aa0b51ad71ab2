import { describe, expect, it } from 'vitest';
import { cableGroups } from '../../src/bench/cuts.ts';
import { withParts } from '../../src/bench/least.ts';
import { AC3_AMPS, COIL_AMPS, LOOP_AMPS, PLAIN_AMPS, withContact } from '../../src/bench/least-contacts.ts';
import {
  FUSE_AMPS,
  SUPPLY_AMPS,
  SUPPLY_VA,
  sizesOf,
  withCable,
  withLimit,
} from '../../src/bench/least-loop.ts';
import { breakerSizes } from '../../src/bench/least-mains.ts';
import { materials } from '../../src/bench/materials.ts';
import type { LeastRating, MaterialItem } from '../../src/bench/materials-model.ts';
import { check } from '../../src/checks/check.ts';
import type { Contact, CurrentKind, Part, Plan } from '../../src/plan/plan.ts';
import { example, exampleNames } from './example-plans.ts';
import { planOf } from './plan-of.ts';

/** Everything the whole check has against a plan that bears on ratings, findings folded under others included. */
function against(plan: Plan): string[] {
  return check(plan).findings.flatMap((f) => [
    `${f.id} ${f.severity} ${f.parts.join(' ')}`,
    ...f.also.map((a) => `${/\[([a-z0-9-]+)\]$/.exec(a)?.[1]} ${a}`),
  ]);
}

/** Findings of these ids that `plan` has and `before` has not, each once. */
const more = (plan: Plan, before: readonly string[], ids: readonly string[]): string[] => {
  const id = (key: string) => key.split(' ')[0]!;
  const had = new Set(before.map(id));
  return against(plan).filter((key) => ids.includes(id(key)) && !had.has(id(key)));
};

interface Case {
  readonly ids: readonly string[];
  readonly sizes: readonly number[];
  readonly plan: (size: number) => Plan;
}

const CONTACT = [
  'contact-voltage',
  'contact-running',
  'contact-starting',
  'contact-horsepower',
  'contact-not-motor-rated',
];
const SWITCH = ['switch-overloaded', 'switch-kind-unrated'];
const COIL = ['coil-too-low', 'coil-thin-margin', 'coil-drops-at-start'];

function voltsIn(words: string): { volts: number; kind: CurrentKind } {
  const [, volts, kind] = /at ([\d.]+) V (AC|DC)/.exec(words)!;
  return { volts: Number(volts), kind: kind!.toLowerCase() as CurrentKind };
}

/** The ladder a figure was found on, written down once more; undefined where it has no standard sizes. */
function caseOf(plan: Plan, item: MaterialItem, rating: LeastRating): Case | undefined {
  const edit = (change: (p: Part, size: number) => Part) => (size: number) =>
    withParts(plan, item.names, (p) => change(p, size));
  const contact = (make: (size: number) => Contact) => edit((p, size) => withContact(p, make(size)));
  const at = () => voltsIn(rating.words);
  const plain = (amps: number): Contact => ({ ratings: [{ amps, ...at() }], motor: [] });
  switch (rating.what) {
    case 'output':
      return {
        ids: ['supply-overloaded', ...COIL],
        sizes: rating.unit === 'VA' ? SUPPLY_VA : SUPPLY_AMPS,
        plan: edit((p, size) => (p.kind === 'supply' ? withLimit(p, size) : p)),
      };
    case 'AC-3':
      return { ids: CONTACT, sizes: AC3_AMPS, plan: contact((a) => ({ ...plain(a), ac3: a })) };
    case 'AC-15':
      return { ids: CONTACT, sizes: COIL_AMPS, plan: contact((a) => ({ ...plain(a), ac15: a })) };
    case 'DC-13':
      return { ids: CONTACT, sizes: COIL_AMPS, plan: contact((a) => ({ ...plain(a), dc13: a })) };
    case 'making current': {
      const rated = Number(/rated (\d+) A/.exec(rating.words)![1]);
      const sizes = Array.from({ length: 2000 }, (_, i) => i + 1);
      return { ids: CONTACT, sizes, plan: contact((make) => ({ ...plain(rated), make })) };
    }
    case 'contact': {
      const loop = at().volts <= 50;
      return { ids: loop ? SWITCH : CONTACT, sizes: loop ? LOOP_AMPS : PLAIN_AMPS, plan: contact(plain) };
    }
    case 'rating':
      return {
        ids: ['fuse-too-small'],
        sizes: FUSE_AMPS,
        plan: edit((p, size) => (p.kind === 'fuse' ? { ...p, rating: size } : p)),
      };
    case 'breaker':
      return {
        ids: ['circuit-overloaded', 'breaker-may-trip', 'breaker-too-large', 'plug-mismatch'],
        sizes: breakerSizes(plan.practice),
        plan: edit((p, size) => (p.kind === 'plug' ? { ...p, breaker: size } : p)),
      };
    case 'volume': {
      const sizes = [rating.value! - 0.2, rating.value!];
      const volume = (in3: number) => in3 * 0.0254 ** 3;
      return {
        ids: ['box-overfilled'],
        sizes,
        plan: edit((p, in3) => (p.kind === 'box' ? { ...p, volume: volume(in3) } : p)),
      };
    }
    default:
      return undefined;
  }
}

const CHOSEN = [
  'saltmarsh-lane',
  'fallow-rise-school',
  'kiln-street',
  'gorse-barn',
  'millrace-joinery',
  'ropewalk-barge',
];

describe.each(CHOSEN)('the least ratings for %s', (name) => {
  const plan = example(name);
  const list = materials(plan);
  const now = against(plan);
  const cases = list.items
    // one part of several duties has one contact in the whole check, so its figures are not tried one by one
    .filter((i) => new Set(i.least.map((l) => /for the coil|at \d+ V/.exec(l.words)?.[0])).size <= 2)
    .flatMap((i) => i.least.map((l) => ({ item: i, rating: l, own: caseOf(plan, i, l) })))
    .filter((c) => c.own !== undefined)
    .map((c) => ({ ...c, own: c.own!, title: `${c.item.names[0]}: ${c.rating.words}` }));

  it.each(cases)('$title passes the whole check, and the size below does not', ({ rating, own }) => {
    const index = own.sizes.indexOf(rating.value!);
    expect(index).toBeGreaterThanOrEqual(0);
    expect(more(own.plan(rating.value!), now, own.ids)).toEqual([]);
    if (index > 0) expect(more(own.plan(own.sizes[index - 1]!), now, own.ids)).not.toEqual([]);
  });

  it('and the thinnest wire likewise', () => {
    for (const group of cableGroups(plan)) {
      const found = list.cables.find((c) => c.name === group.name)!.least[0];
      if (found === undefined) continue;
      const sizes = sizesOf(group.cable);
      const index = sizes.findIndex((c) => (c.awg ?? Number((c.area * 1e6).toPrecision(4))) === found.value);
      const ids = ['wire-overloaded', 'drop-large', 'cord-too-thin', ...COIL];
      const runs = new Set(group.runs.map((r) => r.index));
      expect(index).toBeGreaterThanOrEqual(0);
      expect(more(withCable(plan, runs, sizes[index]!), now, ids)).toEqual([]);
      if (index > 0) expect(more(withCable(plan, runs, sizes[index - 1]!), now, ids)).not.toEqual([]);
    }
  });
});

describe.each([...exampleNames(), ...exampleNames('wrong')])('the materials of %s', (name) => {
  const plan = example(name);
  const list = materials(plan);

  it('have every part, joint and cable once', () => {
    const named = [...list.items, ...list.joints].flatMap((i) => i.names);
    expect(named.sort()).toEqual([...plan.parts.keys()].sort());
    for (const i of list.items) expect(i.count).toBe(i.names.length);
    expect(list.cables.map((c) => c.name)).toEqual(cableGroups(plan).map((g) => g.name));
    for (const c of list.cables) expect(c.feet * 0.3048).toBeCloseTo(c.metres, 1);
  });

  it('say of each rated part what is least, or why that cannot be told', () => {
    const rated = list.items.filter((i) => !['motor', 'load', 'outlet'].includes(i.kind));
    for (const i of [...rated, ...list.cables]) expect(i.least.length + i.untold.length).toBeGreaterThan(0);
  });

  it('sum nothing where nothing has a price', () => {
    expect(list.total).toBeNull();
    expect(list.unpriced).toEqual(expect.arrayContaining([...plan.parts.keys()]));
  });
});

describe('grouping and prices', () => {
  const plan = planOf(`stock:
  snap: {kind: gate, contact: {ratings: [5 A 30 V DC]}, price: 2.35}
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V, strands: solid, price: 0.40}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, price: $9.99}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
  a: {from: snap}
  b: {from: snap, pressed-when: shut}
  c: {from: snap, price: 3}
  j: {kind: joint}
runs:
  - {cable: bell, length: 9 m, slack: 10 %, cores: {red: [PS1.+, j], white: [PS1.-, K1.A2]}}
  - {cable: bell, length: 1 m, slack: 0 %, cores: {red: [j, a.COM], white: [a.NO, K1.A1]}}
  - {link: [j, b.COM]}
`);
  const list = materials(plan);

  it('put together what is the same thing to buy, however it is fitted', () => {
    expect(list.items.filter((i) => i.kind === 'gate').map((i) => [i.names, i.price, i.sum])).toEqual([
      [['a', 'b'], 2.35, 4.7],
      [['c'], 3, 3],
    ]);
  });

  it('sum what has a price and name what has none', () => {
    expect(list.cables[0]).toMatchObject({ metres: 10.9, sum: 4.36 });
    expect(list.total).toBe(22.05);
    expect(list.unpriced.slice(0, 2)).toEqual(['K1', 'j']);
    expect(list.unpriced).not.toContain('PS1');
  });

  it('count the wires of a joint and the small parts', () => {
    expect(list.joints).toEqual([{ wires: '2 x 20 AWG + 1 x bare link', count: 1, names: ['j'] }]);
    expect(Object.fromEntries(list.small.map((s) => [s.what, s.count]))).toEqual({
      'quick-connect tabs (none where soldered), 20 AWG': 2,
      'bare links, from off-cuts of wire': 1,
      'wire labels': 8,
    });
  });

  it('leave open what nothing can settle', () => {
    const unknown = materials(
      planOf(`parts:
  T1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
  g: {kind: gate}
runs:
  - {cable: {gauge: 20 AWG, cores: 2}, length: 2 m, cores: {red: [T1.+, g.COM], white: [T1.-, K1.A2]}}
  - {cable: {gauge: 20 AWG, cores: 2}, length: 2 m, cores: {red: [g.NO, K1.A1]}}
`),
    );
    // half its volts do not pull the coil in, however large the supply and thick the wire
    expect(unknown.items[0]!.least).toEqual([]);
    expect(unknown.items[0]!.untold.join()).toMatch(/K1/);
    expect(unknown.cables[0]!.least).toEqual([]);
  });
});
