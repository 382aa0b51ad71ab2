import { describe, expect, it, test } from 'vitest';
import { formatPlanErrors } from '../../src/plan/errors.ts';
import { readPlan } from '../../src/plan/read.ts';
import { secondsOfWork } from '../helpers/work.ts';
import { bad, plan, RELAY } from './helpers.ts';

const coil = (fields: string) => `K1: {kind: relay, coil: {${fields}}, contact: {ratings: [5 A 250 V AC]}}`;
const gates = ['g1: {kind: gate}', 'M: {kind: motor, volts: 120 V AC, amps: 9 A}'];
const intent = (fields: string) => plan(gates, [], `intent: {M: {${fields}}}`);

/** name, text, words of the one error expected */
const cases: [string, string, string][] = [
  ['empty', '', 'empty'],
  ['comment only', '# nothing\n', 'empty'],
  ['a list', '- a\n', 'a list'],
  ['binary', 'format: 1\0', 'binary'],
  ['control character', 'format: 1\u001b', 'control character "\\x1b"'],
  ['tab', 'format: 1\nparts:\n\tg: {kind: gate}\n', 'a tab indents'],
  ['open bracket', 'format: [1', 'missing'],
  ['second document', `${plan(gates)}---\nformat: 1\n`, 'second document'],
  ['other format', 'format: 2\nparts: {}\n', 'this version reads format 1'],
  ['alias to nothing', 'format: *x\n', 'alias'],
  ['duplicate key', `${plan(gates)}title: a\ntitle: b\n`, 'stands twice'],
  ['unknown kind', plan(['g: {kind: gat}']), 'did you mean gate?'],
  ['no kind', plan(['g: {contact: {ratings: [5 A 250 V AC]}}']), 'neither kind nor from'],
  ['cable as a part', plan(['w: {kind: cable, gauge: 18 AWG, cores: 2}']), 'stands in stock'],
  ['__proto__', plan(['__proto__: {kind: joint}', 'a: {kind: joint}']), '__proto__'],
  ['dot in a name', plan(['a.b: {kind: joint}']), 'a dot'],
  ['space in a name', plan(['a b: {kind: joint}']), 'white space'],
  ['long name', plan([`${'a'.repeat(41)}: {kind: joint}`]), 'at most 40'],
  ['case twins', plan(['aa: {kind: joint}', 'Aa: {kind: joint}']), 'call this one otherwise, such as Aa-2'],
  ['unknown key', plan(['g: {kind: gate, pressed: open}']), 'unknown key "pressed"'],
  ['misspelt required key', plan(['F: {kind: fuse, ratting: 1 A}']), 'did you mean rating?'],
  ['missing field', plan(['B: {kind: battery}']), 'a battery needs output'],
  ['bare number', plan(['F: {kind: fuse, rating: 1}']), 'bare number'],
  ['decimal comma in a map', plan(['F: {kind: fuse, rating: 1,5 A}']), 'write 1.5 A'],
  ['decimal comma in block style', plan(['F:', '  kind: fuse', '  rating: 1,5 A']), 'write 1.5 A'],
  ['empty value', plan(['F: {kind: fuse, rating: }']), 'found nothing'],
  ['enum', plan(['g: {kind: gate, pressed-when: opne}']), 'did you mean open?'],
  [
    'coil disagrees',
    plan([coil('rated: 12 V DC, resistance: 155 ohm, power: 2 W')]),
    'disagree by more than 10 %',
  ],
  ['drop-out', plan([coil('rated: 12 V DC, power: 1 W, pull-in: 50 %, drop-out: 7 V')]), 'not below pull-in'],
  [
    'pole marks',
    plan([
      'K1: {kind: relay, coil: {rated: 12 V DC, power: 1 W}, contact: {ratings: [5 A 250 V AC]}, poles: [{form: make, marks: [1]}]}',
    ]),
    'expected 2',
  ],
  [
    'pole marks twice',
    plan([
      'K1: {kind: relay, coil: {rated: 12 V DC, power: 1 W}, contact: {ratings: [5 A 250 V AC]}, poles: [{form: make, marks: [1, A1]}]}',
    ]),
    'stands twice',
  ],
  ['DC mains', plan(['P: {kind: plug, volts: 120 V DC}']), 'alternating'],
  ['phases', plan(['P: {kind: plug, volts: 120 V AC, phases: 2}']), 'expected 1 or 3'],
  ['selector rest', plan(['S: {kind: selector, positions: [a, b, c], rest: d}']), 'one of its positions'],
  ['tabs', plan(['g: {kind: gate, terminals: [NO, NC]}']), 'expected COM'],
  ['marks', plan(['g: {kind: gate, marks: {1: CON}}']), 'did you mean COM?'],
  ['marks over plain names', plan(['g: {kind: gate, marks: {NO: NC}}']), 'plain name of another'],
  ['box', plan(['B: {kind: box, holds: [K9]}', RELAY]), 'no part is called "K9"'],
  ['two boxes', plan(['B: {kind: box, holds: [K1]}', 'C: {kind: box, holds: [K1]}', RELAY]), 'already'],
  [
    'plugged in nowhere',
    plan(['M: {kind: motor, volts: 120 V AC, amps: 9 A, plugged-into: X}']),
    'no part is called "X"',
  ],
  [
    'plugged in and wired',
    plan(
      [
        'X: {kind: outlet}',
        'J: {kind: joint}',
        'M: {kind: motor, volts: 120 V AC, amps: 9 A, plugged-into: X}',
      ],
      ['{link: [M.L, J]}'],
    ),
    'runs of its own',
  ],
  [
    'fed twice',
    plan(
      [
        'J: {kind: joint}',
        'X: {kind: outlet}',
        'S: {kind: supply, output: 12 V DC, limit: 1 A, fed-from: X}',
      ],
      ['{link: [S.L, J]}'],
    ),
    'wired by runs as well',
  ],
  ['unknown part', plan(gates, ['{link: [g1.COM, g9.NO]}']), 'no part is called "g9"'],
  ['unknown terminal', plan(gates, ['{link: [g1.COM, g1.N0]}']), 'it has COM, NO, NC'],
  ['no terminal', plan(gates, ['{link: [g1.COM, g1]}']), 'without a terminal'],
  [
    'joint with a terminal',
    plan(['J: {kind: joint}', RELAY], ['{link: [K1.A1, J.1]}']),
    'a joint has no terminals',
  ],
  ['one terminal twice', plan([RELAY], ['{link: [K1.A1, K1.86]}']), 'both ends are on the terminal K1.A1'],
  ['three ends', plan([RELAY], ['{link: [K1.A1, K1.A2, K1.NO]}']), 'expected two'],
  ['long link', plan([RELAY], ['{link: [K1.A1, K1.NO], length: 1 m}']), 'up to 20 cm'],
  ['link and cable', plan([RELAY], ['{link: [K1.A1, K1.NO], slack: 10 %}']), 'not with link'],
  [
    'no length',
    plan([RELAY], ['{cable: {gauge: 18 AWG, cores: 2}, cores: {red: [K1.A1, K1.NO]}}']),
    'needs length',
  ],
  [
    'unknown cable',
    plan([RELAY], ['{cable: bell, length: 1 m, cores: {red: [K1.A1, K1.NO]}}']),
    'stock has no cable',
  ],
  [
    'too many cores',
    plan(
      [RELAY],
      ['{cable: {gauge: 18 AWG, cores: 1}, length: 1 m, cores: {red: [K1.A1, K1.NO], blue: [K1.A2, K1.NC]}}'],
    ),
    'found 2 cores',
  ],
  [
    'colour twice',
    plan(
      [RELAY],
      ['{cable: {gauge: 18 AWG, cores: 2}, length: 1 m, cores: {red: [K1.A1, K1.NO], red: [K1.A2, K1.NC]}}'],
    ),
    'stands twice',
  ],
  ['from nothing', plan(['g: {from: snap}']), 'the plan has no stock'],
  ['from in stock', plan(gates, [], 'stock: {a: {kind: gate}, b: {from: a}}'), 'cannot take from another'],
  ['intent for nothing', plan(gates, [], 'intent: {N: {runs-on: [g1]}}'), 'loads and relays are M'],
  ['intent for a gate', plan(gates, [], 'intent: {g1: {runs-on: [g1]}}'), 'g1 is a gate'],
  ['runs on nothing', intent('runs-on: [g2]'), 'did you mean g1?'],
  ['runs on a motor', intent('runs-on: [M]'), 'M is a motor'],
  ['blocked by a gate', intent('runs-on: [g1], blocked-by: [g1]'), 'g1 is a gate'],
  ['stays on after a gate', intent('runs-on: [g1], stays-on-after: g1'), 'expected a button'],
  ['gate with a position', intent('runs-on: [g1.NO]'), 'expected g1 alone'],
  [
    'a rating for a contact',
    plan(['g: {kind: gate, contact: 30A 240VAC}']),
    'such as contact: {ratings: [30A 240VAC]}',
  ],
  [
    'a word for a contact',
    plan(['g: {kind: gate, contact: big}']),
    'such as contact: {ratings: [5 A 250 V AC]}',
  ],
  [
    'a list for a contact',
    plan(['g: {kind: gate, contact: [5 A]}']),
    'found a list, expected a map such as contact:',
  ],
  [
    'a rating for a coil',
    plan(['K: {kind: relay, coil: 12 V DC, contact: {ratings: [5 A 250 V AC]}}']),
    'such as coil: {rated: 12 V DC, resistance: 155 ohm}',
  ],
  ['parts as a list', 'format: 1\nparts: [a]\nruns: []\n', 'such as parts: {bandsaw: {kind: gate}}'],
  ['merge key', plan(['g: {kind: gate, <<: a}']), 'use from: with stock'],
];

test.each(cases)('%s', (_name, text, words) => {
  const errors = bad(text);
  const printed = formatPlanErrors(errors);
  expect(printed).toContain(words);
  const others = errors.filter((error) => !error.message.includes(words)).map((error) => error.message);
  expect(text.includes('parts:') || errors.length === 1 ? others : []).toEqual([]);
});

describe('everyday words for terminals lead to those that the part has', () => {
  const parts = [
    RELAY,
    'J: {kind: joint}',
    'g: {kind: gate}',
    'D: {kind: diode}',
    'S: {kind: supply, output: 12 V DC, limit: 1 A}',
    'T: {kind: supply, output: 24 V AC, limit: 1 A}',
    'P: {kind: plug, volts: 120 V AC}',
    'P2: {kind: plug, volts: 240 V AC, legs: 2}',
    'P3: {kind: plug, volts: 400 V AC, phases: 3}',
    'U: {kind: board, supply: 5 V DC, input: low, contact: {ratings: [5 A 250 V AC]}}',
  ];
  test.each([
    ['K1.coil', 'did you mean A1 or A2?'],
    ['K1.Coil+', 'did you mean A1?'],
    ['K1.common', 'did you mean COM?'],
    ['g.closed', 'did you mean NC?'],
    ['P.hot', 'did you mean L?'],
    ['P2.HOT', 'did you mean L1 or L2?'],
    ['P3.phase', 'did you mean L1, L2 or L3?'],
    ['P.neutral', 'did you mean N?'],
    ['P.ground', 'did you mean PE?'],
    ['P2.earth', 'did you mean PE?'],
    ['U.ground', 'did you mean GND?'],
    ['S.positive', 'did you mean +?'],
    ['S.gnd', 'did you mean -?'],
    ['D.cathode', 'did you mean K?'],
    // never from the earth to the minus of a supply, nor from what a part has not to what looks like it
    ['S.ground', 'no terminal "ground"; it has'],
    ['g.hot', 'no terminal "hot"; it has'],
    ['K1.neutral', 'no terminal "neutral"; it has'],
    ['g.C0M', 'did you mean COM?'],
  ])('%s', (typed, words) => {
    const errors = bad(plan(parts, [`{link: [${typed}, J]}`]));
    expect(errors.map((e) => e.message)).toEqual([expect.stringContaining(words)]);
  });
});

test('the number of errors stands at their end, those left out included', () => {
  const ends = (text: string) => formatPlanErrors(bad(text)).split('\n').at(-2);
  expect(ends(plan(['g: {kind: gat}']))).toBe('1 error; the plan was not checked');
  expect(ends(plan(['g: {kind: gat}', 'h: {kind: gat}']))).toBe('2 errors; the plan was not checked');
  const many = Array.from({ length: 1500 }, (_, i) => `g${i}: {kind: gat}`);
  expect(ends(plan(many))).toBe('1500 errors; the plan was not checked');
});

describe('a selector', () => {
  const parts = [...gates, 'mode: {kind: selector, positions: [auto, off, hand]}'];
  test.each([
    ['mode', 'mode.auto, mode.off, mode.hand'],
    ['mode.hnad', 'did you mean hand?'],
  ])('%s', (input, words) => {
    const [error] = bad(plan(parts, [], `intent: {M: {runs-on: [${input}]}}`));
    expect(error?.message).toContain(words);
  });
});

describe('all errors together', () => {
  const errors = bad(
    plan(
      ['K1: {kind: rely}', 'g1: {kind: gate, presed-when: open}', 'B: {kind: box, holds: [K1, zz]}'],
      ['{link: [K1.A1, g1.N0]}', '{link: [K1.A1, K1.A9]}'],
    ),
  );
  test('stand in file order, with nothing said of the part of unknown kind', () => {
    expect(errors.map((error) => `${error.position.line}:${error.position.column}`)).toEqual([
      '3:14',
      '4:20',
      '5:30',
      '7:20',
    ]);
  });
});

describe('bytes', () => {
  test('invalid UTF-8', () => {
    const [error] = bad(new Uint8Array([0x66, 0x6f, 0x0a, 0x61, 0xff]));
    expect(error).toMatchObject({
      position: { line: 2, column: 2 },
      message: expect.stringContaining('UTF-8'),
    });
  });
  test('UTF-16', () => expect(bad(new Uint8Array([0xff, 0xfe, 0x66, 0]))[0]?.message).toContain('UTF-16'));
  test('over 5 MB', () => expect(bad(new Uint8Array(5_000_001))[0]?.message).toContain('5 MB'));
});

describe('hostile text ends soon', () => {
  const letters = [...'abcdefghi'];
  const bomb = letters.map(
    (l, i) =>
      `${l}: &${l} [${Array(9)
        .fill(i === 0 ? 'x' : `*${letters[i - 1]}`)
        .join(', ')}]`,
  );
  test.each([
    ['alias bomb', bomb.join('\n'), 'aliases repeat'],
    ['an alias in itself', 'a: &a [*a]', 'hold itself'],
    ['deep list', '['.repeat(50_000), 'nested too deeply'],
    ['deeper list', `${'['.repeat(100)}${']'.repeat(100)}`, 'nested too deeply'],
    ['100,000 lists', '['.repeat(100_000), 'nested too deeply to read'],
    ['maps in brackets', '{a: '.repeat(60_000), 'nested too deeply to read'],
    ['lists on one line', `${'- '.repeat(100_000)}x`, 'nested too deeply to read'],
    ['maps on one line', `${'? '.repeat(100_000)}x`, 'nested too deeply to read'],
    [
      'maps in maps',
      Array.from({ length: 2000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      'nested too deeply to read',
    ],
    ['brackets without end', '['.repeat(4_900_000), 'no plan needs so many'],
    [
      'many unknown keys',
      Array.from({ length: 50_000 }, (_, i) => `k${i}: 1`).join('\n'),
      'more unknown keys',
    ],
    [
      'many unknown parts',
      plan(
        gates,
        Array.from({ length: 5000 }, (_, i) => `{link: [a${i}.L, b${i}.L]}`),
      ),
      'no part is called',
    ],
  ])('%s', (_name, text, words) => {
    const judged = () => {
      const errors = bad(text);
      expect(errors.some((error) => error.message.includes(words))).toBe(true);
      expect(errors.length).toBeLessThan(1100);
    };
    expect(secondsOfWork(judged)).toBeLessThan(5);
  });
});

describe('a word of the shop where a kind belongs', () => {
  const told = (text: string) => {
    const read = readPlan(`format: 1\nparts: {${text}}\nruns: []\n`, 'x.yaml');
    return read.ok ? '' : read.errors.map((e) => e.message).join('\n');
  };
  it.each([
    ['A: {kind: float}', 'is a cutout'],
    ['A: {kind: limit-switch}', 'is a cutout'],
    ['A: {kind: Float Switch}', 'is a cutout'],
    ['A: {kind: contactor}', 'a contactor is a relay'],
    ['A: {kind: transformer}', 'it is a supply'],
    ['A: {kind: microswitch}', 'the snap switch of a blast gate is a gate'],
    ['A: {kind: gaet}', 'did you mean gate?'],
  ])('%s', (text, words) => {
    expect(told(text)).toContain(words);
  });
  it('is not taken for a load by its letters', () => {
    expect(told('A: {kind: float}')).not.toContain('did you mean load');
  });
  it('run-on with a list of gates is told of runs-on', () => {
    const read = readPlan(
      'format: 1\nparts: {g: {kind: gate}, M: {kind: motor}}\nruns: []\nintent: {M: {run-on: [g]}}\n',
      'x.yaml',
    );
    expect(read.ok ? '' : read.errors[0]!.message).toContain('runs-on, did you mean that?');
  });
});
