import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { cableGroups } from '../../src/lists/cuts.ts';
import { mostThrough } from '../../src/lists/least-fuse.ts';
import { sizesWithOwn } from '../../src/lists/least-loop.ts';
import { materials } from '../../src/lists/materials.ts';
import type { LeastRating, MaterialItem, Materials } from '../../src/lists/materials-model.ts';
import type { Contact, CurrentKind } from '../../src/plan/device-figures.ts';
import type { Part } from '../../src/plan/part-types.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { withCable, withContact, withLimit, withParts } from '../../src/repair/remedies/put.ts';
import {
  AC3_AMPS,
  breakerSizes,
  COIL_AMPS,
  FUSE_AMPS,
  LOOP_AMPS,
  PLAIN_AMPS,
  SUPPLY_AMPS,
  SUPPLY_VA,
} from '../../src/repair/remedies/series.ts';
import { Study } from '../../src/study/study.ts';
import { example, exampleNames, examplePath, mostExamples } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { sampled, WHOLE } from '../helpers/share.ts';

/** Everything the whole check has against a plan that bears on ratings, findings folded under others included. */
function against(plan: Plan): string[] {
  return judge(Study.of(plan)).findings.flatMap((f) => [
    `${f.id} ${f.severity} ${f.parts.join(' ')}`,
    ...f.also.map((a) => `${a.id} ${a.message}`),
  ]);
}

/**
 * Findings of these ids, and doubts of what is left out, that `plan` has and `before` has not; cautions in `borne` are not
 * counted.
 */
const more = (
  plan: Plan,
  before: readonly string[],
  ids: readonly string[],
  borne: readonly string[] = [],
): string[] => {
  const id = (key: string) => key.split(' ')[0]!;
  const had = new Set(before.map(id));
  const doubted = new Set(before);
  const grave = (key: string) => /^\S+ (danger|warning|fault|doubt) /.test(key);
  const bears = (key: string) => borne.includes(id(key)) && !grave(key);
  // A size that holds only by what is not said is no pass.
  const unsaid = (key: string) => id(key) === 'value-unsaid' && !doubted.has(key);
  return against(plan).filter(
    (key) => unsaid(key) || (ids.includes(id(key)) && !had.has(id(key)) && !bears(key)),
  );
};

/** Where a plan is told to pass with a caution, that caution is there, and no more; and it passes. */
function passesAsTold(
  plan: (size: number) => Plan,
  rating: LeastRating,
  now: readonly string[],
  ids: readonly string[],
) {
  expect(more(plan(rating.value!), now, ids, rating.cautions)).toEqual([]);
  if (rating.without !== null) expect(more(plan(rating.without), now, ids)).toEqual([]);
}

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

const lists = new Map<string, Materials>();
/** The list of an example, made once for all that is asked of it. */
function listOf(name: string): Materials {
  const list = lists.get(name) ?? materials(Study.of(example(name)));
  lists.set(name, list);
  return list;
}

/** Each figure of a list that stands on a ladder of sizes. */
function casesOf(plan: Plan, list = materials(Study.of(plan))) {
  return list.items // one part of several duties has one contact in the whole check, so its figures are not tried one by one
    .filter((i) => new Set(i.least.map((l) => /for the coil|at \d+ V/.exec(l.words)?.[0])).size <= 2)
    .flatMap((i) => i.least.map((l) => ({ item: i, rating: l, own: caseOf(plan, i, l) })))
    .filter((c) => c.own !== undefined)
    .map((c) => ({ ...c, own: c.own!, title: `${c.item.names[0]}: ${c.rating.words}` }));
}

const exampleText = (name: string) => readFileSync(examplePath(name), 'utf8');

/** Figures that a label often lacks. */
const LACKING = [
  ['saltmarsh-lane', 'resistance: 155 ohm'],
  ['saltmarsh-lane', 'amps: 15 A'],
  ['saltmarsh-lane', 'ambient: 35 °C'],
  ['wren-cellar', 'resistance: 80 ohm'],
  ['wren-cellar', 'amps: 7.3 A'],
  ['wren-cellar', 'ambient: 30 °C'],
  ['tidewater-turners', 'pull-in: 17 V'],
  ['tidewater-turners', 'amps: 8.2 A'],
  ['ropewalk-barge', 'resistance: 160 ohm'],
  ['ropewalk-barge', 'amps: 5.2 A'],
] as const;

describe.each(sampled(LACKING, 5))('the least ratings for %s without %s', (name, figure) => {
  const text = exampleText(name);
  const plan = planOf(text.replace(new RegExp(`(, *|\\n *)?${figure}`), ''));
  const now = against(plan);

  it('hold at both ends of what it may be, in the whole check', () => {
    expect(text).toContain(figure);
    const cases = casesOf(plan);
    expect(cases.length).toBeGreaterThan(2);
    for (const { rating, own } of cases) passesAsTold(own.plan, rating, now, own.ids);
  });
});

describe('what a label lacks', () => {
  const without = (figure: string) =>
    materials(Study.of(planOf(exampleText('wren-cellar').replace(new RegExp(`(, *|\\n *)?${figure}`), ''))));
  const leastOf = (list: ReturnType<typeof materials>, part: string) =>
    list.items.find((i) => i.names.includes(part))!;

  it('makes the least supply larger where it is the resistance of the coil', () => {
    // 12 V over 80 ohm are 0.15 A; what coils of 12 V of that size may take at most, the table of what is usual says.
    const told = (list: ReturnType<typeof materials>) => leastOf(list, 'PS1').least[0]!.value!;
    expect(told(materials(Study.of(example('wren-cellar'))))).toBe(0.2);
    expect(told(without('resistance: 80 ohm'))).toBeGreaterThanOrEqual(0.2);
  });

  it('is named where no breaker can be told without it', () => {
    const { least, untold } = leastOf(without('ambient: 30 °C'), 'P1');
    expect(least.map((l) => l.what)).not.toContain('breaker');
    expect(untold.join()).toMatch(/is not stated/);
  });
});

describe.each(sampled(CHOSEN, 3))('the least ratings for %s', (name) => {
  const plan = example(name);
  const list = listOf(name);
  const now = against(plan);
  const cases = casesOf(plan, list);

  it.each(cases)('$title passes the whole check, and the size below does not', ({ rating, own }) => {
    passesAsTold(own.plan, rating, now, own.ids);
    const below = own.sizes.filter((s) => s < rating.value!).at(-1);
    if (below !== undefined) expect(more(own.plan(below), now, own.ids, rating.cautions)).not.toEqual([]);
  });

  it('and the thinnest wire likewise', () => {
    for (const group of cableGroups(plan)) {
      const found = list.cables.find((c) => c.name === group.name)!.least[0];
      if (found === undefined) continue;
      const sizes = sizesWithOwn(group.cable);
      const sizeOf = (value: number) =>
        sizes.findIndex((c) => (c.awg ?? Number((c.area * 1e6).toPrecision(4))) === value);
      const index = sizeOf(found.value!);
      const ids = ['wire-overloaded', 'drop-large', 'cord-too-thin', 'conductor-unprotected', ...COIL];
      const runs = new Set(group.runs.map((r) => r.index));
      const at = (i: number) => withCable(plan, runs, sizes[i]!);
      passesAsTold((value) => at(sizeOf(value)), found, now, ids);
      // A size that only cautions stand against is told with them.
      if (index > 0) expect(more(at(index - 1), now, ids, found.cautions)).not.toEqual([]);
    }
  });
});

describe.each(sampled(mostExamples(), 10))('the materials of %s', (name) => {
  const plan = example(name);
  const list = listOf(name);

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

describe.each(sampled(exampleNames(), 6))('no least figure of %s', (name) => {
  const plan = example(name);
  const list = listOf(name);

  it('is above what the plan itself passes with', () => {
    if (list.check.verdict !== 'pass') return;
    for (const group of cableGroups(plan)) {
      const found = list.cables.find((c) => c.name === group.name)!.least[0];
      const sizes = sizesWithOwn(group.cable);
      const least = sizes.find((c) => (c.awg ?? Number((c.area * 1e6).toPrecision(4))) === found?.value);
      if (least !== undefined) expect(least.area).toBeLessThanOrEqual(group.cable.area * 1.01);
    }
    for (const item of list.items)
      for (const least of item.least) {
        const part = plan.parts.get(item.names[0]!)!;
        if (least.what === 'breaker' && part.kind === 'plug')
          expect(least.value).toBeLessThanOrEqual(part.breaker!);
        if (least.what === 'rating' && part.kind === 'fuse')
          expect(least.value).toBeLessThanOrEqual(part.rating!);
        if (least.what === 'output' && part.kind === 'supply')
          expect(least.value).toBeLessThanOrEqual(part.limit!.value * 1.001);
      }
  });
});

/** A plan of one gate with a low pull-in margin: thin wire has a caution and passes. */
const THIN = (gauge: string) =>
  planOf(`practice: nec
ambient: 40 °C
stock:
  bell: {kind: cable, gauge: ${gauge}, cores: 2, insulation: 150 V}
  cord: {kind: cable, gauge: 12 AWG, cores: 3, insulation: 600 V, flexible: true, rated: 90 °C}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 5 %, class-2: true}
  K1:
    kind: relay
    coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %, tolerance: 10 %, hot-rise: 30 K, suppressor: diode}
    contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}
  lathe: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], resistance: 0.1 ohm}}
  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}
  M1: {kind: motor, power: 1 hp, volts: 120 V AC, amps: 13 A, protector: manual}
runs:
  - {cable: bell, length: 6 m, cores: {red: [PS1.+, lathe.COM], white: [lathe.NO, K1.A1]}}
  - {cable: bell, length: 1 m, cores: {white: [PS1.-, K1.A2]}}
  - {cable: cord, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, M1.N], green: [P1.PE, M1.PE]}}
  - {cable: cord, length: 10 cm, cores: {black: [K1.NO, M1.L]}}
intent: {M1: {runs-on: [lathe]}}
`);

describe('a caution', () => {
  it.each(['18 AWG', '20 AWG', '24 AWG'])(
    'does not fail %s; what avoids it is told beside the least',
    (gauge) => {
      const plan = THIN(gauge);
      expect(judge(Study.of(plan)).verdict).toBe('pass');
      const bell = materials(Study.of(plan)).cables.find((c) => c.name === 'bell')!;
      expect(bell.least).toEqual([
        {
          ...{ what: 'gauge', value: 24, unit: 'AWG', cautions: ['coil-thin-margin'], without: 18 },
          words: '24 AWG with the caution coil-thin-margin; 18 AWG or thicker without it',
        },
      ]);
    },
  );

  it.runIf(WHOLE)('has the plan keep a gauge that is thinner than the tables', () => {
    const bell = materials(Study.of(THIN('28 AWG'))).cables.find((c) => c.name === 'bell')!;
    expect(bell.least[0]).toMatchObject({ value: 28, without: 18 });
    const alarm = materials(Study.of(example('ferrier-mews'))).cables.find((c) => c.name === 'alarm')!;
    expect(alarm.least.map((l) => [l.value, l.unit])).toEqual([[0.22, 'mm2']]);
  });

  it('counts connectors at the leads of a motor, and one for the cores on one blade', () => {
    const { small } = materials(Study.of(THIN('18 AWG')));
    expect(Object.fromEntries(small.map((x) => [x.what, x.count]))).toMatchObject({
      'wire nuts or splicing connectors at the leads of a motor or load, 12 AWG': 2,
      'ring tongues for earth, 12 AWG': 1,
    });
    const lane = materials(Study.of(example('saltmarsh-lane'))).small;
    expect(lane.filter((x) => x.what.startsWith('quick-connect')).map((x) => [x.what, x.count])).toEqual([
      ['quick-connect tabs (none where soldered), 2 x 20 AWG', 4],
      ['quick-connect tabs (none where soldered), 20 AWG', 2],
    ]);
  });
});

describe('a mains cable', () => {
  // VDE 0298-4 Table 11, single cores in air, times 0.94 in air of 35 °C: 1 mm2 bears 17.9 A, 0.75 mm2 14.1 A.
  it('is as thick as the breaker ahead asks for, whatever it carries', () => {
    const panel = materials(Study.of(example('ferrier-mews'))).cables.find((c) => c.name === 'panel')!;
    expect(panel.least.map((l) => l.words)).toEqual([
      '0.75 mm2 with the caution conductor-unprotected; 1 mm2 or thicker without it',
    ]);
  });
});

describe('a fuse on the mains', () => {
  // BS 7671 Table 4F3A: 0.75 mm2 carries 6 A; a gG fuse of at most 6 / 1.31 A protects it (IEC 60364-4-43 clause 433.1).
  it('is told from what it carries to what its wire may have ahead', () => {
    const plan = planOf(`practice: iec
ambient: 30 °C
parts:
  P1: {kind: plug, volts: 230 V AC, breaker: 16 A C, pattern: fixed}
  F1: {kind: fuse, rating: 4 A, class: gG}
  S1: {kind: switch, contact: {ratings: [16 A 250 V AC]}}
  heat: {kind: load, type: heater, volts: 230 V AC, amps: 2.4 A}
runs:
  - {cable: {gauge: 2.5 mm2, cores: 3, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [P1.L, S1.COM], 2: [P1.N, heat.N], 3: [P1.PE, heat.PE]}}
  - {link: [S1.NO, F1.1]}
  - {cable: {gauge: 0.75 mm2, cores: 2, insulation: 750 V, flexible: true, rated: 60 °C}, length: 2 m, cores: {1: [F1.2, heat.L]}}
intent:
  heat: {runs-on: [S1]}
`);
    const fuse = materials(Study.of(plan)).items.find((i) => i.kind === 'fuse')!;
    expect(fuse.least.map((l) => l.words)).toEqual(['2.5 A', 'at most 4 A']);
  });
});

describe('a fuse', () => {
  const plan = planOf(`practice: iec
parts:
  B1: {kind: battery, output: 12 V DC, capacity: 7 Ah}
  F1: {kind: fuse, rating: 1 A}
  lid: {kind: switch, contact: {ratings: [3 A 30 V DC]}}
  lamp: {kind: lamp, rated: 12 V DC 2 W}
runs:
  - {cable: {gauge: 0.5 mm2, cores: 2}, length: 1 m, cores: {red: [B1.+, F1.1], white: [B1.-, lamp.2]}}
  - {cable: {gauge: 0.5 mm2, cores: 2}, length: 1 m, cores: {red: [F1.2, lid.COM], white: [lid.NO, lamp.1]}}
`);

  it('bears what is read through it in the worst position', () => {
    const most = mostThrough(Study.of(plan), ['F1'])!;
    // 2 W at 12 V, less what the wire takes.
    expect(most).toBeGreaterThan(0.16);
    expect(most).toBeLessThan(2 / 12 + 1e-9);
    const [least] = materials(Study.of(plan)).items.find((i) => i.kind === 'fuse')!.least;
    expect(least).toMatchObject({ what: 'rating', unit: 'A' });
    expect(least!.value).toBe(FUSE_AMPS.find((a) => a >= most));
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
  const list = materials(Study.of(plan));

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
      Study.of(
        planOf(`practice: nec
parts:
  T1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
  g: {kind: gate, pressed-when: open}
runs:
  - {cable: {gauge: 20 AWG, cores: 2}, length: 2 m, cores: {red: [T1.+, g.COM], white: [T1.-, K1.A2]}}
  - {cable: {gauge: 20 AWG, cores: 2}, length: 2 m, cores: {red: [g.NO, K1.A1]}}
`),
      ),
    );
    // half its volts do not pull the coil in, however large the supply and thick the wire
    expect(unknown.items[0]!.least).toEqual([]);
    expect(unknown.items[0]!.untold.join()).toMatch(/fails its check/);
    expect(unknown.cables[0]!.least).toEqual([]);
  });
});
