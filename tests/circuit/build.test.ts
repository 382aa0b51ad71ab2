import { describe, expect, it } from 'vitest';
import { buildCircuit } from '../../src/circuit/build.ts';
import type { Circuit, Condition } from '../../src/circuit/circuit.ts';
import { conductorNames, endKey } from '../../src/circuit/nets.ts';
import { planOf } from '../logic/product.ts';

/** A plan of the given parts and joins; each join is a cable of one core. */
const plan = (parts: string[], joins: [string, string][]) =>
  planOf(
    [
      'format: 1',
      'stock: {wire: {kind: cable, gauge: 14 AWG, cores: 3, insulation: 600 V}}',
      'parts:',
      ...parts.map((p) => `  ${p}`),
      'runs:',
      ...joins.map(([a, b]) => `  - {cable: wire, length: 1 m, cores: {red: [${a}, ${b}]}}`),
      '',
    ].join('\n'),
  );
const built = (parts: string[], joins: [string, string][]): Circuit => buildCircuit(plan(parts, joins));

/** What closes between two terminals of a part, in words. */
function when(c: Circuit, part: string, a: string, b: string): string[] {
  const say = (w: Condition): string =>
    w.by === 'always'
      ? 'always'
      : `${w.by === 'input' ? c.inputs[w.input]!.part : c.relays[w.relay]!.part} ${w.value}`;
  return c.contacts
    .filter((x) => x.part === part && x.terminals[0] === a && x.terminals[1] === b)
    .map((x) => say(x.when));
}
const joined = (c: Circuit, a: string, b: string): boolean => c.netOf.get(a) === c.netOf.get(b);

const PS = 'PS: {kind: supply, output: 12 V DC, limit: 1 A}';
const K =
  'K: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [10 A 240 V AC]}}';

describe('nets', () => {
  const c = built(
    [PS, 'j: {kind: joint}', 'a: {kind: gate}', 'b: {kind: gate}'],
    [
      ['PS.+', 'j'],
      ['j', 'a.COM'],
      ['b.COM', 'j'],
      ['a.NO', 'b.NO'],
    ],
  );
  it('join everything on one joint, and nothing else', () => {
    for (const t of ['PS.+', 'a.COM', 'b.COM']) expect(joined(c, t, 'j')).toBe(true);
    expect(joined(c, 'a.NO', 'b.NO')).toBe(true);
    expect(joined(c, 'a.NO', 'a.COM')).toBe(false);
    expect(joined(c, 'PS.-', 'j')).toBe(false);
  });
  it('list their terminals and count the cores landed on each', () => {
    expect([...c.terminals[c.netOf.get('j')!]!].sort()).toEqual(['PS.+', 'a.COM', 'b.COM', 'j']);
    expect(c.landed.get('j')).toBe(3);
    expect(c.landed.get('a.NO')).toBe(1);
    expect(c.landed.has('a.NC')).toBe(false);
    expect(c.netCount).toBeGreaterThanOrEqual(new Set(c.netOf.values()).size);
  });
  it('keep a fuse as something that always conducts', () => {
    const f = built(['F: {kind: fuse, rating: 1 A}', PS], [['PS.+', 'F.1']]);
    expect(when(f, 'F', '1', '2')).toEqual(['always']);
    expect(joined(f, 'F.1', 'F.2')).toBe(false);
  });
  it('are the same numbers every time', () => {
    const again = built([PS, K], [['PS.+', 'K.A1']]);
    expect([...again.netOf]).toEqual([...built([PS, K], [['PS.+', 'K.A1']]).netOf]);
  });
});

describe('switches', () => {
  it('a gate, pressed when open or when shut', () => {
    const c = built(['a: {kind: gate}', 'b: {kind: gate, pressed-when: shut}'], [['a.COM', 'b.COM']]);
    expect(when(c, 'a', 'COM', 'NO')).toEqual(['a true']);
    expect(when(c, 'a', 'COM', 'NC')).toEqual(['a false']);
    expect(when(c, 'b', 'COM', 'NO')).toEqual(['b false']);
    expect(when(c, 'b', 'COM', 'NC')).toEqual(['b true']);
  });
  it.each(['switch', 'button', 'cutout'])('a %s closes NO in its working position', (kind) => {
    const c = built([`s: {kind: ${kind}}`, PS], [['PS.+', 's.COM']]);
    expect(c.inputs).toEqual([{ index: 0, part: 's', kind }]);
    expect(when(c, 's', 'COM', 'NO')).toEqual(['s true']);
    expect(when(c, 's', 'COM', 'NC')).toEqual(['s false']);
  });
  it('an overload relay has its break and its make contact', () => {
    const c = built(['OL: {kind: cutout}', PS], [['PS.+', 'OL.95']]);
    expect(when(c, 'OL', '95', '96')).toEqual(['OL false']);
    expect(when(c, 'OL', '97', '98')).toEqual(['OL true']);
  });
  it('a selector has one input for each position but the resting one, which is none of them', () => {
    const c = built(
      ['m: {kind: selector, positions: [auto, off, hand], rest: auto}', PS],
      [['PS.+', 'm.COM']],
    );
    expect(c.inputs.map((i) => i.position)).toEqual(['off', 'hand']);
    expect(when(c, 'm', 'COM', 'hand')).toEqual(['m true']);
    expect(when(c, 'm', 'COM', 'off')).toEqual([]);
    const chain = c.contacts.filter((x) => x.part === 'm' && x.terminals[1] === 'auto');
    expect(chain.map((x) => x.when)).toEqual([
      { by: 'input', input: 0, value: false },
      { by: 'input', input: 1, value: false },
    ]);
    expect([chain[0]!.a, chain[1]!.b]).toEqual([c.netOf.get('m.COM'), c.netOf.get('m.auto')]);
    expect(chain[0]!.b).toBe(chain[1]!.a);
  });
  it('a selector that rests on off joins nothing there', () => {
    const c = built(['m: {kind: selector, positions: [off, low, high], rest: off}', PS], [['PS.+', 'm.COM']]);
    expect(c.contacts.map((x) => x.terminals[1])).toEqual(['low', 'high']);
  });
});

describe('relays', () => {
  it('poles by form, marked or numbered, with their number', () => {
    const c = built(
      [
        'C: {kind: relay, coil: {rated: 24 V AC, power: 8 VA}, contact: {ratings: [10 A 240 V AC]}, poles: [{form: make, marks: [1, 2]}, {form: break, marks: [21, 22]}, {form: changeover, marks: [31, 32, 34]}]}',
        'R: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [10 A 240 V AC]}, poles: [{form: make}, {form: changeover}]}',
      ],
      [['C.A1', 'R.A1']],
    );
    expect(when(c, 'C', '1', '2')).toEqual(['C true']);
    expect(when(c, 'C', '21', '22')).toEqual(['C false']);
    expect(when(c, 'C', '31', '32')).toEqual(['C false']);
    expect(when(c, 'C', '31', '34')).toEqual(['C true']);
    expect(when(c, 'R', '2.COM', '2.NC')).toEqual(['R false']);
    expect(c.contacts.filter((x) => x.part === 'R').map((x) => x.pole)).toEqual([1, 2, 2]);
  });
  it('a coil senses its own volts: printed limits, or the usual ones', () => {
    const c = built(
      [
        'P: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 8 V, drop-out: 20 %}, contact: {ratings: [10 A 240 V AC]}}',
        'D: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm, suppressor: diode}, contact: {ratings: [10 A 240 V AC]}}',
        'A: {kind: relay, coil: {rated: 24 V AC, power: 8 VA}, contact: {ratings: [10 A 240 V AC]}}',
      ],
      [
        ['P.A1', 'D.A1'],
        ['P.A2', 'A.A1'],
      ],
    );
    const sense = (i: number) => c.relays[i]!.senses[0]!;
    expect(sense(0)).toMatchObject({ pullIn: 8, polarised: false, what: 'coil' });
    expect(sense(0)).toHaveProperty('dropOut', expect.closeTo(2.4));
    expect(sense(1)).toMatchObject({ pullIn: 9, polarised: true });
    expect(sense(1)).toHaveProperty('dropOut', expect.closeTo(1.2));
    expect(sense(2)).toHaveProperty('pullIn', expect.closeTo(19.2));
    expect(sense(2)).toHaveProperty('dropOut', expect.closeTo(7.2));
    expect(c.diodes).toMatchObject([
      { part: 'D', builtIn: true, anode: c.netOf.get('D.A2'), cathode: c.netOf.get('D.A1') },
    ]);
  });
  it('a timer with a wired dry trigger needs that too', () => {
    const timer =
      'T: {kind: timer, function: off-delay, time: 10 s, coil: {rated: 24 V AC, power: 2 VA}, contact: {ratings: [10 A 240 V AC]}}';
    expect(built([timer, PS], [['PS.+', 'T.A1']]).relays[0]!.senses).toHaveLength(1);
    const c = built(
      [timer, 'a: {kind: gate}'],
      [
        ['T.T1', 'a.COM'],
        ['a.NO', 'T.T2'],
      ],
    );
    expect(c.relays[0]!.senses[1]).toEqual({ by: 'joined', a: c.netOf.get('T.T1'), b: c.netOf.get('T.T2') });
  });
  it.each([
    ['low', 'VCC', 'IN'],
    ['high', 'IN', 'GND'],
  ])('a board with input %s looks from %s to %s', (input, from, to) => {
    const c = built(
      [`M: {kind: board, supply: 5 V DC, input: ${input}, contact: {ratings: [10 A 240 V AC]}}`, PS],
      [['PS.+', 'M.VCC']],
    );
    const [supply, signal] = c.relays[0]!.senses;
    expect(supply).toMatchObject({
      what: 'supply',
      polarised: true,
      a: c.netOf.get('M.VCC'),
      b: c.netOf.get('M.GND'),
    });
    expect(signal).toMatchObject({
      what: 'input',
      pullIn: 2.5,
      a: c.netOf.get(`M.${from}`),
      b: c.netOf.get(`M.${to}`),
    });
  });
});

describe('mains parts', () => {
  it('what is plugged in shares every conductor with its outlet', () => {
    const c = built(
      [
        'P: {kind: plug, volts: 120 V AC}',
        'X: {kind: outlet}',
        'm: {kind: motor, amps: 5 A, volts: 120 V AC, plugged-into: X}',
        'l: {kind: load, amps: 1 A, volts: 120 V AC, plugged-into: X}',
      ],
      [
        ['P.L', 'X.L'],
        ['P.N', 'X.N'],
        ['P.PE', 'X.PE'],
      ],
    );
    for (const t of ['L', 'N', 'PE'])
      for (const part of ['m', 'l']) expect(joined(c, `${part}.${t}`, `P.${t}`)).toBe(true);
    expect(c.consumers.map((x) => [x.part, x.kind, [...x.nets.keys()].join()])).toEqual([
      ['X', 'outlet', 'L,N'],
      ['m', 'motor', 'L,N'],
      ['l', 'load', 'L,N'],
    ]);
  });
  it('three phases stand 120 degrees apart, two legs half each way', () => {
    const c = built(
      [
        'P3: {kind: plug, volts: 400 V AC, phases: 3}',
        'P2: {kind: plug, volts: 240 V AC, legs: 2}',
        'm3: {kind: motor, power: 3 kW, volts: 400 V AC, phases: 3}',
        'm2: {kind: motor, power: 1 kW, volts: 240 V AC, legs: 2}',
      ],
      [
        ['P3.L1', 'm3.L1'],
        ['P3.L2', 'm3.L2'],
        ['P3.L3', 'm3.L3'],
        ['P2.L1', 'm2.L1'],
        ['P2.L2', 'm2.L2'],
      ],
    );
    const [three, two] = c.sources;
    const apart = (s: typeof three, i: number, k: number): number =>
      Math.hypot(s!.rails[i]!.re - s!.rails[k]!.re, s!.rails[i]!.im - s!.rails[k]!.im);
    expect([apart(three, 0, 1), apart(three, 1, 2), apart(three, 0, 2)].map((x) => Math.round(x))).toEqual([
      400, 400, 400,
    ]);
    expect(apart(two, 0, 1)).toBeCloseTo(240);
    expect([...c.consumers[0]!.nets.keys()]).toEqual(['L1', 'L2', 'L3']);
    expect(conductorNames('two-leg')).toEqual(['L1', 'L2']);
  });
  it('a supply is fed for ever, from a part, or over its own terminals', () => {
    const mains = ['P: {kind: plug, volts: 120 V AC}', 'X: {kind: outlet}'];
    const feed = (extra: string, joins: [string, string][]) =>
      built(
        [...mains, `PS: {kind: supply, output: 12 V DC, limit: 1 A${extra}}`],
        [['P.L', 'X.L'], ...joins],
      ).sources.find((s) => s.part === 'PS')!.feed;
    expect(feed('', [])).toEqual({ by: 'always' });
    expect(feed(', fed-from: always-live', [])).toEqual({ by: 'always' });
    expect(feed(', fed-from: X', [])).toEqual({ by: 'part', part: 'X' });
    expect(
      feed('', [
        ['P.L', 'PS.L'],
        ['P.N', 'PS.N'],
      ]),
    ).toMatchObject({ by: 'nets' });
  });
  it('a supply has its printed volts, an AC one no polarity', () => {
    const c = built(
      [PS, 'T: {kind: supply, output: 24 V AC, limit: 40 VA}', 'B: {kind: battery, output: 18 V DC}'],
      [['PS.+', 'B.+']],
    );
    expect(
      c.sources.map((s) => [s.part, s.kind, s.rails[0]!.terminal, s.rails[0]!.re - s.rails[1]!.re]),
    ).toEqual([
      ['PS', 'dc', '+', 12],
      ['T', 'ac', '~1', 24],
      ['B', 'dc', '+', 18],
    ]);
  });
});

it('a core end can be taken as lying on another terminal', () => {
  const p = plan(
    [PS, 'a: {kind: gate}', K],
    [
      ['PS.+', 'a.COM'],
      ['a.NC', 'K.A1'],
    ],
  );
  const moved = buildCircuit(p, { moves: new Map([[endKey(1, 0, 'a'), 'a.NO']]) });
  expect(joined(buildCircuit(p), 'a.NC', 'K.A1')).toBe(true);
  expect(joined(moved, 'a.NO', 'K.A1')).toBe(true);
  expect(joined(moved, 'a.NC', 'K.A1')).toBe(false);
});
