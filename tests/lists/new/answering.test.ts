import { describe, expect, it } from 'vitest';
import { answersOf, answerTo } from '../../../src/lists/new/answering.ts';
import { newPlan } from '../../../src/lists/new/new-plan.ts';
import { isReserved } from '../../../src/lists/new/part-names.ts';
import { answersSchema, flagOf, KEYS, type Key, QUESTIONS } from '../../../src/lists/new/questions.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { WHOLE } from '../../helpers/share.ts';
import { answerSet, numbers } from './answer-sets.ts';

const readAs = (key: Key, text: string, known = {}) => {
  const answer = answerTo(key, text, known);
  return 'value' in answer ? answer.value : `! ${answer.problem}`;
};

describe('answers are read as a person types them', () => {
  it.each([
    'coil 24 V DC 640 ohm pull-in 75 % drop-out 10 %',
    'coil 24 V DC 640 ohm drop-out 10 % pull-in 75 %',
    '24 V DC coil, 640 ohm, 75 % pull-in, 10 % drop-out',
    '24 V DC coil 640 ohm 75 % pull-in 10 % drop-out',
    '10 % drop-out, 75 % pull-in, 24 V DC coil, 640 ohm',
    '640 ohm 24 V DC coil pull-in at 75 %, drop-out: 10 %',
  ])('no figure of a coil gets the word of another: %s', (text) => {
    expect(readAs('relay', text)).toMatchObject({
      volts: 24,
      coil: { resistance: '640 ohm', 'pull-in': '75 %', 'drop-out': '10 %' },
    });
  });

  it.each<[Key, string, unknown]>([
    ['mains', '120V', { volts: 120, phases: 1 }],
    ['mains', '120', { volts: 120, phases: 1 }],
    ['mains', '120 AC', { volts: 120, phases: 1 }],
    ['mains', '400, 3-phase', { volts: 400, phases: 3 }],
    ['mains', '230 VAC single phase', { volts: 230, phases: 1 }],
    ['protector', 'button', 'manual'],
    ['protector', 'Reset  button', 'manual'],
    ['protector', 'auto', 'automatic'],
    [
      'relay',
      '12 V DC coil with 155 ohm, 75 % pull-in; contact rated 30 A 240 V AC',
      {
        volts: 12,
        kind: 'dc',
        coil: { resistance: '155 ohm', 'pull-in': '75 %' },
        ratings: ['30 A 240 V AC'],
        motor: [],
        ac3: undefined,
        poles: 1,
      },
    ],
    ['mains', '400 V three-phase', { volts: 400, phases: 3 }],
    [
      'motor',
      '1 1/2 HP, 15A',
      { power: '1 1/2 HP', amps: '15 A', code: undefined, 'locked-rotor': undefined },
    ],
    [
      'motor',
      '7.3 amps 1.1kW LRA 44',
      { power: '1.1 kW', amps: '7.3 A', code: undefined, 'locked-rotor': '44 A' },
    ],
    ['motor', '3/4 hp 10 A code l', { power: '3/4 hp', amps: '10 A', code: 'L', 'locked-rotor': undefined }],
    ['circuit', 'choose for me', { pattern: undefined, breaker: undefined }],
    ['circuit', 'fixed, 30 A', { pattern: 'fixed', breaker: '30 A' }],
    ['circuit', 'CEE 7/4 16 A C', { pattern: 'CEE 7/4', breaker: '16 A C' }],
    ['circuit', 'nema 5-20 with a 20 A breaker', { pattern: 'NEMA 5-20', breaker: '20 A' }],
    ['circuit', 'IEC 60309 16 A blue 2P+E', { pattern: 'IEC 60309 16 A blue 2P+E', breaker: undefined }],
    ['layout', '3', 'ring'],
    ['lever', 'SHUT', 'shut'],
    [
      'gates',
      'saw 6 ft 2 in; table saw 2: 3',
      [
        { name: 'saw', length: { text: '6 ft 2 in', metres: 6 * 0.3048 + 2 * 0.0254 } },
        { name: 'table-saw-2', length: { text: '3 ft', metres: 3 * 0.3048 } },
      ],
    ],
    [
      'gates',
      '2 x 3m',
      [
        { name: 'gate-1', length: { text: '3 m', metres: 3 } },
        { name: 'gate-2', length: { text: '3 m', metres: 3 } },
      ],
    ],
    [
      'supply',
      '12VDC 500mA regulated, Class II',
      {
        volts: 12,
        kind: 'dc',
        limit: '500 mA',
        regulation: 'regulated',
        class2: true,
        'no-load': undefined,
        tolerance: undefined,
      },
    ],
    [
      'supply',
      '24 V AC',
      {
        volts: 24,
        kind: 'ac',
        limit: undefined,
        regulation: 'transformer',
        class2: false,
        'no-load': undefined,
        tolerance: undefined,
      },
    ],
    [
      'relay',
      'coil 24 V DC 640 ohm pull-in 75 % drop-out 10 %, 20 A 240 V AC, 1 hp 120 V AC, AC-3 9 A, 2 poles',
      {
        volts: 24,
        kind: 'dc',
        coil: { resistance: '640 ohm', 'pull-in': '75 %', 'drop-out': '10 %' },
        ratings: ['20 A 240 V AC'],
        motor: ['1 hp 120 V AC'],
        ac3: '9 A',
        poles: 2,
      },
    ],
    [
      'relay',
      'coil 24VDC, 25 A 240VAC, AC-3 12 A 230 VAC',
      {
        volts: 24,
        kind: 'dc',
        coil: {},
        ratings: ['25 A 240 V AC'],
        motor: [],
        ac3: '12 A 230 V AC',
        poles: 1,
      },
    ],
    ['cutouts', 'none', []],
    ['hand', 'no', undefined],
    ['run-on', '20s', 20],
  ])('%s: %s', (key, text, value) => {
    expect(readAs(key, text)).toEqual(value);
  });

  it.each<[Key, string, string, object?]>([
    ['practice', 'nce', 'did you mean nec?'],
    ['mains', '12', 'expected volts'],
    ['mains', '1200', 'expected volts'],
    ['mains', '120 Hz', 'expected volts'],
    ['relay', '12 V DC coil foo', 'is not understood'],
    ['relay', '10 % drop-out 75 % pull-in 24 V DC coil 640 ohm', 'is not understood'],
    ['protector', 'buton', 'expected manual'],
    ['mains', '300 V', 'with nec', { practice: 'nec' }],
    ['motor', '1.5 hp', 'no amps in it'],
    ['motor', '1,5 hp 15 A', 'is not understood'],
    ['motor', '1 hp 15 A code I', 'A to V without I, O and Q'],
    ['circuit', 'NEMA 5-21', 'did you mean NEMA'],
    ['circuit', 'NEMA 5-20', '240 V', { mains: { volts: 240, phases: 1 } }],
    ['gates', 'saw', 'has no length'],
    ['gates', 'saw 6', 'with its unit'],
    ['gates', 'saw 6 ft, Saw 3 ft', 'stands twice'],
    ['gates', 's.w 6 ft', 'a dot'],
    ['gates', 'call 6 ft', 'what a part of the plan is called'],
    ['gates', '9999 x 3 m', 'expected 1 to 300'],
    ['gates', 'saw 0 m', 'has no length'],
    ['supply', '12 V', 'DC or AC'],
    ['supply', '12 V DC 1 A regulatd', 'is not understood'],
    ['supply', '15 V DC', 'add what it gives'],
    ['relay', '30 A 240 V AC', 'no volts of the coil'],
    ['relay', 'coil 12 V, 30 A 240 V AC', 'volts of a coil without DC or AC'],
    ['relay', 'coil 12 V DC', 'the supply gives 24 V DC', { supply: { volts: 24, kind: 'dc' } }],
    ['cutouts', 'saw 3 m', 'name of a gate', { gates: [{ name: 'Saw' }] }],
    ['run-on', '2 min 3', 'a time'],
    ['run-on', '3600 s', 'expected 1 s to 600 s'],
    ['title', 'x'.repeat(81), 'at most 80'],
  ])('%s: %s is refused', (key, text, problem, known = {}) => {
    expect(readAs(key, text, known)).toContain(problem);
    expect(readAs(key, text, known)).toMatch(/^! /);
  });

  it('of any length and make-up take no time to refuse', () => {
    const started = process.cpuUsage();
    for (const key of KEYS)
      for (const piece of ['a', '1 ', '1 hp ', ', ', 'x 3 ', '-', '1 A 1 V AC ', '3-', '/1'])
        readAs(key, piece.repeat(5_000));
    // Longer than a person waits; a pattern that backtracks without end takes minutes.
    expect(process.cpuUsage(started).user / 1e6).toBeLessThan(20);
  });
});

describe('what is not answered', () => {
  it('is taken with its reason, and asked for where nothing is usual', () => {
    const none = answersOf(new Map());
    expect(none.problems?.map((p) => p.key)).toEqual(['practice', 'motor', 'gates', 'lever']);
    const some = answersOf(
      new Map<Key, string>([
        ['practice', 'iec'],
        ['motor', '1 kW 6 A'],
        ['gates', 'saw 3 ft'],
        ['lever', 'open'],
        ['layout', 'ring'],
      ]),
    );
    expect(some.problems).toBeUndefined();
    expect(some).toMatchObject({ answers: { mains: { volts: 230 }, return: { text: '3 ft' } } });
  });

  it('has every question with words, a flag and a key of the file', () => {
    expect(Object.keys(answersSchema().shape)).toEqual(KEYS);
    for (const key of KEYS) {
      expect(QUESTIONS[key].ask).toMatch(/\?$/);
      expect(flagOf(key)).toMatchObject({
        placeholder: expect.stringMatching(/^<.+>$/),
        words: expect.stringContaining(QUESTIONS[key].ask),
      });
    }
  });
});

it.runIf(WHOLE)('no gate can have the name of a part that any plan of new has', () => {
  for (const seed of [1, 14, 18, 100]) {
    const texts = answerSet(numbers(seed)) as Map<Key, string>;
    for (const key of ['supply', 'relay', 'circuit'] as const) texts.delete(key);
    const made = newPlan(texts);
    if ('problems' in made) throw new Error(JSON.stringify(made.problems));
    const read = readPlan(made.text, 'x');
    if (!read.ok) throw new Error(made.text);
    const own = [...read.plan.parts.values()]
      .filter((p) => p.kind !== 'gate' && p.kind !== 'cutout')
      .map((p) => p.name);
    expect(own.filter((name) => !isReserved(name))).toEqual([]);
  }
  expect(isReserved('OL1')).toBe(true);
});
