/**
 * Lamps with an intent, loads for direct current and legs with an earthed middle: product against the enumeration, in
 * every state of the shops that have them and of small shops made for it.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { readMeter } from '../../src/machine/read-meter.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { Machine } from './brute-machine.ts';

const shop = (name: string) => readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const base = (name: string) =>
  readFileSync(new URL(`../findings/bases/${name}.yaml`, import.meta.url), 'utf8');

function studyOf(text: string): Study {
  const read = readPlan(text, 'shop.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return Study.of(read.plan);
}

/** Every position of the inputs, which are two-valued in these shops. */
function everyState(m: Machine): number[][] {
  return m.circuit.inputs.reduce<number[][]>(
    (all) =>
      all.flatMap((at) => [
        [...at, 0],
        [...at, 1],
      ]),
    [[]],
  );
}

interface LampIntent {
  readonly lamp: string;
  readonly when: string | readonly string[];
}

/** By the words of the format: whether the lamp shows what it is meant to in every state. */
function lampIsRight(m: Machine, { lamp, when }: LampIntent): boolean {
  return everyState(m).every((at) => {
    const open = m.circuit.inputs.some((x, i) => x.kind === 'gate' && at[i] === 1);
    const named = (name: string) => at[m.circuit.inputs.findIndex((x) => x.name === name)] === 1;
    const { ends } = m.settle(at, 0);
    return ends.every((bits) => {
      const byInputs = when === 'any-open' ? open : when === 'all-shut' ? !open : undefined;
      const meant = byInputs ?? (typeof when === 'string' ? m.on(when, at, bits) : when.some(named));
      return m.lit(lamp, at, bits) === meant;
    });
  });
}

const LAMP_SHOPS: [string, string, LampIntent[]][] = [
  [
    'the right shop',
    'larch-hall',
    [
      { lamp: 'ready', when: 'all-shut' },
      { lamp: 'runs', when: 'any-open' },
    ],
  ],
  [
    'ready on the make tab',
    'wrong/ready-lamp-on-make-tab',
    [
      { lamp: 'ready', when: 'all-shut' },
      { lamp: 'runs', when: 'any-open' },
    ],
  ],
  [
    'run on the break tab',
    'wrong/run-lamp-on-break-tab',
    [
      { lamp: 'ready', when: 'all-shut' },
      { lamp: 'runs', when: 'any-open' },
    ],
  ],
];

describe('lamps with an intent', () => {
  it.each(LAMP_SHOPS)('%s: the same lamps mislead', (_, name, lamps) => {
    const text = shop(name);
    const m = new Machine(text);
    const wrong = lamps.filter((l) => !lampIsRight(m, l)).map((l) => l.lamp);
    const found = judge(studyOf(text))
      .findings.filter((f) => f.id === 'lamp-misleads')
      .map((f) => f.parts[0]);
    expect(found.sort()).toEqual(wrong.sort());
  });

  /** Where the lamp's other end may lie, and what it may be meant to show. */
  const ENDS = ['K2.NC', 'K2.NO', 'feed', 'call', 'bandsaw.NO', 'router.COM', 'K1.A1'];
  const WHEN = ['any-open', 'all-shut', '[planer]', '[bandsaw, router]', 'K1', 'K2', 'collector'];
  const cases = ENDS.flatMap((end) => WHEN.map((when) => [end, when] as const));
  it.each(cases)('a lamp on %s, meant to be lit by %s', (end, when) => {
    const text = base('lamps')
      .replace('red: [K2.NC, ready.1]', `red: [${end}, ready.1]`)
      .replace('ready: {lit-when: all-shut}', `ready: {lit-when: ${when}}`);
    const m = new Machine(text);
    const meant = when.startsWith('[') ? when.slice(1, -1).split(', ') : when;
    const misleads = judge(studyOf(text)).findings.some(
      (f) =>
        (f.id === 'lamp-misleads' && f.parts[0] === 'ready') || f.also.some((a) => a.id === 'lamp-misleads'),
    );
    expect(misleads).toBe(!lampIsRight(m, { lamp: 'ready', when: meant }));
  });
});

describe('loads for direct current', () => {
  const plus = 'red: [K1.NO, fan.+]';
  const variants: [string, string, string][] = [
    ['as it should be', plus, plus],
    ['on the break contact', plus, 'red: [K1.NC, fan.+]'],
    ['ahead of the contact', plus, 'red: [K1.COM, fan.+]'],
    ['behind the gates', plus, 'red: [saw.NO, fan.+]'],
    ['on the chassis at both ends', plus, 'red: [chassis, fan.+]'],
    ['with a gate in its line', 'red: [saw.COM, sander.COM]', 'red: [K1.NO, sander.COM]'],
  ];
  it.each(variants)('%s: it runs in the same states', (_, right, wired) => {
    const text = base('dc-load').replace(right, wired);
    const m = new Machine(text);
    const study = studyOf(text);
    const table = study.truthTable({ all: true });
    expect(table.rows).toHaveLength(2 ** m.circuit.inputs.length);
    for (const row of table.rows) {
      const at = m.circuit.inputs.map((x) => x.words.indexOf(row.inputs[x.name]!));
      const { ends } = m.settle(at, 0);
      expect([at, row.loads.fan === 'runs']).toEqual([at, m.on('fan', at, ends[0]!)]);
    }
  });
});

describe('two legs with an earthed middle', () => {
  const pairs: [string, string][] = [
    ['P1.L1', 'P1.PE'],
    ['P1.L2', 'P1.PE'],
    ['P1.L1', 'P1.L2'],
    ['Q1.1', 'B1.PE'],
    ['Q1.3', 'B1.PE'],
  ];
  it.each(pairs)('%s to %s reads what the enumeration has', (a, b) => {
    const text = shop('tidewater-turners');
    const m = new Machine(text);
    const rest = m.circuit.inputs.map(() => 0);
    const [red, black] = [a, b].map((key) => ({ part: key.split('.')[0]!, terminal: key.split('.')[1]! }));
    const read = readMeter(studyOf(text), { moved: [], dead: false, between: [red!, black!] });
    expect(read.volts).toBeCloseTo(Math.abs(m.volts(rest, 0, a, b)), 6);
  });

  // Published: a 120/240 V service has 120 V from either leg to the earthed midpoint (NEC 250.26); with one pole of a
  // 240 V motor open each of its leads still has 120 V to earth and nothing lies between the two (common practice).
  it('has 120 V at both leads of a motor with one pole open, and none between them', () => {
    const text = shop('wrong/one-leg-switched');
    const at = (terminal: string, other: string) =>
      readMeter(studyOf(text), {
        moved: [],
        dead: false,
        between: [
          { part: 'X1', terminal },
          { part: other === 'PE' ? 'P1' : 'X1', terminal: other },
        ],
      }).volts;
    expect([at('L1', 'PE'), at('L2', 'PE')].map((v) => Math.round(v!))).toEqual([120, 120]);
    expect(at('L1', 'L2')).toBeCloseTo(0, 6);
  });

  it('knows no volts to earth where the plan says that no middle is earthed', () => {
    const text = shop('tidewater-turners').replace('legs: 2,', 'legs: 2, midpoint: none,');
    const between = [
      { part: 'P1', terminal: 'L1' },
      { part: 'P1', terminal: 'PE' },
    ] as const;
    expect(readMeter(studyOf(text), { moved: [], dead: false, between }).volts).toBeNull();
  });
});
