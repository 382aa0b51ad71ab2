import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { secondsOfWork } from '../helpers/work.ts';
import { bad, good, plan, RELAY } from './helpers.ts';

const CABLE = 'stock: {bell: {kind: cable, gauge: 20 AWG, cores: 2}}';
const GATES = ['a: {kind: gate}', 'b: {kind: gate}', 'c: {kind: gate}', 'J: {kind: joint}', RELAY];
const along = (fields: string, cores = 'cores: {red: COM, white: NO}') =>
  plan(GATES, [`{cable: bell, ${fields}, ${cores}}`], CABLE);
const named = (...parts: string[]) => plan(parts, [], CABLE);

describe('names', () => {
  const read = good(
    plan(
      ['zone: {kind: gate, pressed-when: shut, names: [a, b]}', 'c: {kind: gate}', RELAY],
      ['{cable: bell, along: [zone, c], length: 2 m, cores: {red: COM}}'],
      `${CABLE}\nintent: {K1: {runs-on: [zone, [c, a]]}}`,
    ),
  );
  it('stand for as many parts of one kind, each at its own place', () => {
    expect([...read.parts.keys()]).toEqual(['a', 'b', 'c', 'K1']);
    expect(read.parts.get('b')).toMatchObject({ pressedWhen: 'shut', at: { line: 3, column: 53 } });
    expect(read.parts.get('b')?.where.get('pressed-when')).toEqual({ line: 3, column: 22 });
  });
  it('make a group that stands for them in along and in an intent', () => {
    expect(read.runs.map((r) => r.cores[0]!.b.written)).toEqual(['b.COM', 'c.COM']);
    expect(read.intents?.[0]?.runsOn.map((e) => e.map((i) => i.part))).toEqual([['a'], ['b'], ['c', 'a']]);
  });
});

describe('along', () => {
  it('makes one run a piece, with its length and its places', () => {
    const { runs } = good(along('along: [a, b, c], lengths: [4 m, 3 ft], name: trunk'));
    expect(runs).toMatchObject([
      { index: 0, entry: 1, piece: 1, pieces: 2, length: 4, name: 'trunk piece 1' },
      { index: 1, entry: 1, piece: 2, pieces: 2, length: expect.closeTo(0.9144), name: 'trunk piece 2' },
    ]);
    expect(runs[1]!.cores[1]).toMatchObject({
      run: 1,
      colour: 'white',
      a: { part: 'b', terminal: 'NO', written: 'b.NO', at: { line: 9, column: 30 } },
      b: { part: 'c', terminal: 'NO', written: 'c.NO', at: { line: 9, column: 33 } },
      at: { line: 9 },
    });
  });
  it('may end where it began, which is a ring', () => {
    expect(good(along('along: [a, b, c, a], length: 1 m')).runs).toHaveLength(3);
  });
  it('counts runs as the file does', () => {
    const { runs } = good(
      plan(
        GATES,
        [
          '{cable: bell, along: [a, b, c], length: 1 m, cores: {red: COM}}',
          '{cable: bell, length: 1 m, cores: {red: [c.NO, K1.A1]}}',
        ],
        CABLE,
      ),
    );
    expect(runs.map(({ entry, piece }) => [entry, piece])).toEqual([
      [1, 1],
      [1, 2],
      [2, undefined],
    ]);
  });
});

/** name, text, words of the one error expected */
const cases: [string, string, RegExp][] = [
  [
    'names of one',
    named('g: {kind: gate, names: a}'),
    /^g: names: found "a", expected a list of the parts' names/,
  ],
  ['no names', named('g: {kind: gate, names: []}'), /^g: names: found none, expected at least one/],
  ['a list in names', named('g: {kind: gate, names: [a, [b]]}'), /^g: names: found a list, expected a name/],
  [
    'nothing in names',
    named('g: {kind: gate, names: [a, ]}', 'h: {kind: gate, names: [~]}'),
    /found nothing, expected a name/,
  ],
  [
    'a name twice',
    named('g: {kind: gate, names: [a, b, a]}'),
    /^g: names: "a" stands twice; the other is at line 3, column 27/,
  ],
  [
    'a part again',
    named('a: {kind: gate}', 'g: {kind: gate, names: [a]}'),
    /"a" stands twice; the other is at line 3, column 3/,
  ],
  ['the group itself', named('g: {kind: gate, names: [g, h]}'), /"g" names a group of parts already/],
  [
    '__proto__',
    named('g: {kind: gate, names: [__proto__, b]}'),
    /^part: the name "__proto__" must start with a letter/,
  ],
  ['a bad group name', named('g.1: {kind: gate, names: [b]}'), /"g.1" holds a dot/],
  [
    'names that differ in case',
    named('g: {kind: gate, names: [ab, aB]}'),
    /differ only in case: if they are two things, call this one otherwise, such as aB-2/,
  ],
  [
    'a wrong field, once for all',
    named('g: {kind: gate, pressed-when: opne, names: [a, b, c]}'),
    /^a: pressed-when: found "opne"/,
  ],
  [
    'names in stock',
    `${named('a: {kind: gate}')}`.replace('{bell:', '{s: {kind: gate, names: [a]}, bell:'),
    /unknown key "names"/,
  ],
  ['along one', along('along: [a], length: 1 m'), /^run 1: along: found one part, expected at least two/],
  ['along a text', along('along: a, length: 1 m'), /^run 1: along: found "a", expected a list of parts/],
  ['along a map', along('along: {a: b}, length: 1 m'), /along: found a map/],
  [
    'a list in along',
    along('along: [a, [b], c], length: 1 m'),
    /along: found a list, expected the name of a part/,
  ],
  ['along a part twice', along('along: [a, b, b, c], length: 1 m'), /^run 1: along: "b" stands twice/],
  ['there and back', along('along: [a, b, a], length: 1 m'), /along: "a" stands twice/],
  [
    'along an unknown part',
    along('along: [a, bb, c], length: 1 m'),
    /^run 1 piece 1: along: no part is called "bb"; did you mean b\?/,
  ],
  ['along __proto__', along('along: [a, __proto__, c], length: 1 m'), /no part is called "__proto__"/],
  ['along a joint', along('along: [a, J], length: 1 m', 'cores: {red: COM}'), /a joint has no terminals/],
  [
    'a wrong terminal, once for all',
    along('along: [a, b, c], length: 1 m', 'cores: {red: CON}'),
    /^run 1 piece 1: found "a.CON": a has no terminal "CON"; did you mean COM\?/,
  ],
  [
    'a terminal with its part',
    along('along: [a, b], length: 1 m', 'cores: {red: a.COM}'),
    /cores.red: found "a.COM", expected one terminal name, such as COM.*write "COM" alone/,
  ],
  [
    'two terminals',
    along('along: [a, b], length: 1 m', 'cores: {red: [a.COM, b.COM]}'),
    /cores.red: found a list, expected one terminal name/,
  ],
  ['no cores', along('along: [a, b], length: 1 m', 'name: x'), /^run 1 piece 1: a run needs cores/],
  [
    'too few lengths',
    along('along: [a, b, c], lengths: [1 m]'),
    /^run 1: lengths: found 1 length, expected 2: one for each piece/,
  ],
  ['too many lengths', along('along: [a, b], lengths: [1 m, 2 m]'), /lengths: found 2 lengths, expected 1/],
  ['no lengths', along('along: [a, b], lengths: []'), /lengths: found 0 lengths, expected 1/],
  ['a length of lengths', along('along: [a, b], lengths: 1 m'), /lengths: found "1 m", expected a list/],
  ['length and lengths', along('along: [a, b], length: 1 m, lengths: [1 m]'), /lengths: not with length/],
  ['no length', along('along: [a, b], name: x'), /a run needs length or lengths/],
  [
    'a bare length',
    along('along: [a, b, c], lengths: [1 m, 2]'),
    /^run 1 piece 2: length: found "2", a bare number/,
  ],
  [
    'lengths alone',
    plan(GATES, ['{cable: bell, length: 1 m, lengths: [1 m], cores: {red: [a.NO, b.NO]}}'], CABLE),
    /lengths: only with along/,
  ],
  ['a link along', plan(GATES, ['{link: [a.NO, b.NO], along: [a, b]}'], CABLE), /link: not with along/],
  ['an unknown key', along('along: [a, b], length: 1 m, lenght: 2 m'), /unknown key "lenght"/],
  [
    'a group as a part',
    plan(['g: {kind: gate, names: [a, b]}', 'c: {kind: gate}'], ['{link: [g.NO, c.NO]}']),
    /no part is called "g", it stands for the parts a, b: name one of them/,
  ],
];

describe('each slip is one error that names the run, its piece and the place', () => {
  test.each(cases)('%s', (_, text, words) => {
    const errors = bad(text);
    expect(errors.map((e) => e.message)).toEqual([expect.stringMatching(words)]);
    expect(errors[0]!.position.line).toBeGreaterThan(2);
  });
});

describe('a plan from a stranger', () => {
  const many = (count: number, letter: string) =>
    `[${Array.from({ length: count }, (_, i) => `${letter}${i}`).join(', ')}]`;
  it('cannot make more parts than a file could hold', () => {
    const text = named(...['p', 'q', 'r'].map((l) => `${l}: {kind: joint, names: ${many(4000, l)}}`));
    expect(bad(text).map((e) => e.message)).toEqual([
      expect.stringMatching(/stand for more than 10000 parts or 100000 ends/),
    ]);
  });
  it('cannot make more pieces by repeating one list', () => {
    const runs = Array.from({ length: 60 }, () => '{cable: bell, along: z, length: 1 m, cores: {red: COM}}');
    const text = plan([`z: {kind: gate, names: ${many(2000, 'g')}}`], runs, CABLE);
    const told = () => bad(text).map((e) => e.message);
    const expected = [expect.stringMatching(/short forms stand for more/)];
    expect(secondsOfWork(() => expect(told()).toEqual(expected))).toBeLessThan(5);
  });
  it('cannot do so in its intents, nor by aliases', () => {
    const intent = (list: string) => `intent: {K1: {runs-on: [${list}]}}`;
    const z = `z: {kind: gate, names: ${many(3000, 'g')}}`;
    const often = Array.from({ length: 200 }, () => 'z').join(', ');
    expect(bad(plan([z, RELAY], [], intent(often))).map((e) => e.message)).toEqual([
      expect.stringMatching(/short forms stand for more/),
    ]);
    const aliases = Array.from({ length: 300 }, (_, i) => `x${i}: {kind: joint, names: *n}`);
    expect(bad(plan([z.replace('[', '&n ['), ...aliases])).at(0)?.message).toMatch(/aliases repeat more/);
  });
});

it('types sixty gates in six zones in at most sixty short lines, runs and intent included', () => {
  const url = new URL('../../examples/large/brackwater-college.yaml', import.meta.url);
  const text = readFileSync(url, 'utf8');
  const { parts, runs, intents } = good(text);
  expect([...parts.values()].filter((p) => p.kind === 'gate')).toHaveLength(60);
  expect(runs.filter((r) => r.piece !== undefined)).toHaveLength(54);
  expect(intents![0]!.runsOn).toHaveLength(60);
  const lines = text.split('\n');
  const from = (words: string) => lines.findIndex((l) => l.includes(words));
  const gates = lines.slice(from('# six zones') + 1, from('barA: {kind: joint}'));
  const wired = lines.slice(from('# low voltage') + 1, from('# the contactor'));
  expect(gates.length + wired.length).toBe(27);
  expect(Math.max(...[...gates, ...wired].map((l) => l.length))).toBeLessThanOrEqual(100);
});
