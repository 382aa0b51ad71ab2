import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { planJsonSchema } from '../../src/plan/editor/editor-schema.ts';
import { formatPlanErrors } from '../../src/plan/errors.ts';
import { secondsOfWork } from '../helpers/work.ts';
import { bad, example, good, plan, RELAY } from './helpers.ts';

describe('the example of the format', () => {
  const read = good(example);
  test('is read whole', () => {
    expect([...read.parts.keys()].join(' ')).toBe('PS1 K1 D1 bandsaw planer router P1 X1 collector B1');
    expect(read.runs).toHaveLength(7);
    expect(read).toMatchObject({ format: 1, practice: 'nec', ambient: 35, defaults: [] });
    expect(read.intents?.[0]).toMatchObject({ target: 'collector', ifSupplyFails: 'stopped' });
    expect(read.intents?.[0]?.runsOn.map((entry) => entry.map((input) => input.part))).toEqual([
      ['bandsaw'],
      ['planer'],
      ['router'],
    ]);
  });
  test('takes parts from stock with their positions', () => {
    expect(read.parts.get('bandsaw')).toMatchObject({
      kind: 'gate',
      tabs: ['COM', 'NO', 'NC'],
      at: { line: 24, column: 3 },
    });
    expect(read.parts.get('bandsaw')?.where.get('contact.least')).toEqual({ line: 8, column: 91 });
  });
  test('gives cables and cores', () => {
    expect(read.runs[0]).toMatchObject({
      length: 2,
      link: false,
      cable: { stock: 'bell', awg: 20, cores: 2, flexible: false },
    });
    expect(read.runs[5]?.cores[0]).toMatchObject({
      colour: 'black',
      a: { part: 'P1', terminal: 'L' },
      b: { terminal: 'COM' },
    });
  });
});

test('the JSON Schema accepts the example and explains it', () => {
  const schema = planJsonSchema();
  const validate = new Ajv2020({ strict: false }).compile(schema);
  expect(validate(parse(example)) || validate.errors).toBe(true);
  expect(validate(parse(example.replace('limit: 1 A', 'limt: 1 A')))).toBe(false);
  expect(JSON.stringify(schema)).toContain('"examples":["12 V DC"');
});

describe('stock', () => {
  test('maps merge key by key, lists are replaced', () => {
    const read = good(
      `${plan(['K1: {from: ice, coil: {pull-in: 80 %}, contact: {ratings: [5 A 30 V DC]}}'])}
stock: {ice: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [30 A 240 V AC], make: 60 A}}}`,
    );
    expect(read.parts.get('K1')).toMatchObject({
      coil: { resistance: 155, pullIn: { fraction: 0.8 } },
      poles: [{ contact: { ratings: [{ amps: 5, volts: 30, kind: 'dc' }], make: 60 } }],
    });
  });
});

test('names of built-in properties are good names', () => {
  const read = good(
    plan(
      ['constructor: {kind: joint}', 'toString: {kind: joint}', 'NO: {kind: joint}'],
      ['{link: [constructor, toString]}'],
    ),
  );
  expect(read.runs[0]?.cores[0]).toMatchObject({
    a: { part: 'constructor', terminal: '' },
    b: { part: 'toString' },
  });
});

describe('terminals', () => {
  const ends = (parts: string[], ...marks: string[]) =>
    good(
      plan(
        ['J: {kind: joint}', ...parts],
        marks.map((mark) => `{link: [J, ${mark}]}`),
      ),
    ).runs.map((run) => run.cores[0]?.b.terminal);
  test('of a relay', () => {
    expect(ends([RELAY], 'K1.86', 'K1.85', 'K1.30', 'K1.87', 'K1.87a', 'K1.11', 'K1.14', 'K1.12')).toEqual([
      'A1',
      'A2',
      'COM',
      'NO',
      'NC',
      'COM',
      'NO',
      'NC',
    ]);
  });
  test('of several poles', () => {
    const poles = (list: string) => RELAY.replace('coil:', `poles: [${list}], coil:`);
    expect(ends([poles('{form: changeover}, {form: make}')], 'K1.1.COM', 'K1.2.NO')).toEqual([
      '1.COM',
      '2.NO',
    ]);
    const contactor = poles(
      '{form: make, marks: [1, 2]}, {form: break, marks: [21, 22]}, {form: changeover, marks: [11, 12, 14]}',
    );
    const read = good(plan([contactor]));
    expect(read.parts.get('K1')).toMatchObject({
      poles: [
        { common: '1', make: '2' },
        { common: '21', break: '22' },
        { common: '11', break: '12', make: '14' },
      ],
    });
    expect(ends([contactor], 'K1.1', 'K1.1.NO', 'K1.14')).toEqual(['1', '2', '14']);
  });
  test('of a timer, a cut-out, a selector and a supply', () => {
    const timer = RELAY.replace('relay', 'timer, function: off-delay, time: 5 s');
    expect(ends([timer], 'K1.15', 'K1.18', 'K1.16', 'K1.T1')).toEqual(['COM', 'NO', 'NC', 'T1']);
    expect(ends(['C: {kind: cutout}'], 'C.95', 'C.NO')).toEqual(['95', 'NO']);
    expect(ends(['S: {kind: selector, positions: [auto, off, hand]}'], 'S.hand')).toEqual(['hand']);
    expect(ends(['T: {kind: supply, output: 24 V AC, limit: 20 VA}'], 'T.~1', 'T.L')).toEqual(['~1', 'L']);
  });
  test('by the marks moulded on a part', () => {
    expect(ends(['g: {kind: gate, marks: {1: COM, 2: NC, 3: NO}}'], 'g.1', 'g.3', 'g.NO')).toEqual([
      'COM',
      'NO',
      'NO',
    ]);
  });
});

describe('feeds', () => {
  const feed = (part: string, parts: string[], runs: string[] = []) => {
    const found = good(plan(['J: {kind: joint}', ...parts], runs)).parts.get(part);
    return found !== undefined && 'feed' in found ? found.feed : undefined;
  };
  const plug = (pattern: string) => `P: {kind: plug, volts: 240 V AC, pattern: ${pattern}}`;
  test.each([
    ['NEMA 5-20', 'single'],
    ['NEMA 6-20', 'two-leg'],
    ['NEMA L6-30', 'two-leg'],
    ['IEC 60309 16 A red 3P+E', 'three-phase'],
    ['CEE 7/4', 'single'],
    ['fixed', 'single'],
  ])('%s is %s', (pattern, kind) => expect(feed('P', [plug(pattern)])).toBe(kind));
  const motor = 'M: {kind: motor, volts: 240 V AC, amps: 9 A, plugged-into: X}';
  test('a motor takes after its outlet', () => {
    expect(feed('M', [motor, 'X: {kind: outlet}', plug('NEMA 6-20')], ['{link: [P.L1, X.L1]}'])).toBe(
      'two-leg',
    );
    expect(feed('M', [motor, 'X: {kind: outlet, phases: 3}'])).toBe('three-phase');
  });
  test('a run that uses L2 gives two legs', () =>
    expect(feed('X', ['X: {kind: outlet}'], ['{link: [X.L2, J]}'])).toBe('two-leg'));
});

test('what reading chose is listed', () => {
  expect(good(plan(['S: {kind: selector, positions: [auto, off, hand]}'])).defaults).toEqual([
    'S names no rest: it is taken to rest in auto.',
  ]);
});

test('an error is shown with its line and a caret, whatever the line holds', () => {
  const errors = bad(
    plan([`"x\\u202e": {kind: joint}`, `F: {kind: fuse, rating: 1}   # ${'x'.repeat(200)}\t`]),
  );
  const printed = formatPlanErrors(errors);
  expect(printed).toContain('plan.yaml:4:27: F: rating: found "1"');
  const [, line, caret] = printed.split('\n\n')[1]!.split('\n');
  expect(line!.indexOf('rating: 1}') + 8).toBe(caret!.indexOf('^'));
  expect(line!.length).toBeLessThan(120);
  expect(printed).not.toContain('\u202e');
});

test('a thousand gates take well under half a second', () => {
  const parts = Array.from({ length: 1000 }, (_, i) => `g${i}: {from: snap}`);
  const runs = Array.from({ length: 1000 }, (_, i) => `{link: [g${i}.NO, J]}`);
  const text = plan(
    ['J: {kind: joint}', ...parts],
    runs,
    'stock: {snap: {kind: gate, contact: {ratings: [5 A 250 V AC]}}}',
  );
  good(text);
  expect(secondsOfWork(() => good(text))).toBeLessThan(2);
});
