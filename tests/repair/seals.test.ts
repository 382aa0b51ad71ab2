/** A start button and a stop whose relay holds itself in through gates in line: each single mistake has its one repair. */
import { describe, expect, it } from 'vitest';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const RIGHT = `
format: 1
practice: iec
ambient: 30 °C
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [2 A 30 V DC], least: 5 mA 12 V DC, resistance: 50 mohm}}
  two: {kind: cable, gauge: 0.75 mm2, cores: 2, insulation: 300 V}
  flex: {kind: cable, gauge: 2.5 mm2, cores: 3, insulation: 500 V, flexible: true}
parts:
  PS: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true, tolerance: 2 %}
  STOP: {kind: button, contact: {ratings: [2 A 30 V DC], resistance: 50 mohm}}
  START: {kind: button, contact: {ratings: [2 A 30 V DC], resistance: 50 mohm}}
  K: {kind: relay, coil: {rated: 24 V DC, power: 3 W, pull-in: 80 %, drop-out: 15 %, most: 115 %, suppressor: varistor, hot-rise: 30 K}, poles: [{form: make, marks: [1, 2], contact: {ratings: [25 A 400 V AC], ac-3: 12 A}}, {form: make, marks: [3, 4], contact: {ratings: [25 A 400 V AC], ac-3: 12 A}}, {form: make, marks: [13, 14], contact: {ratings: [6 A 30 V DC], resistance: 50 mohm}}]}
  g1: {from: snap}
  g2: {from: snap}
  P: {kind: plug, pattern: IEC 60309 16 A blue 2P+E, volts: 230 V AC, breaker: 16 A C, frequency: 50 Hz}
  fan: {kind: motor, power: 1.1 kW, volts: 230 V AC, amps: 7 A, locked-rotor: 40 A, type: capacitor-start, protector: manual}
runs:
  - {cable: flex, length: 2 m, cores: {brown: [P.L, K.1], blue: [P.N, K.3], green-yellow: [P.PE, fan.PE]}}
  - {cable: flex, length: 4 m, cores: {brown: [K.2, fan.L], blue: [K.4, fan.N]}}
  - {cable: two, length: 2 m, cores: {red: [PS.+, STOP.COM], black: [PS.-, K.A2]}}
  - {cable: two, length: 1 m, cores: {red: [STOP.NC, START.COM], black: [START.NO, g1.COM]}}
  - {cable: two, length: 2 m, cores: {red: [START.COM, K.13], black: [START.NO, K.14]}}
  - {cable: two, along: [g1, g2], length: 6 m, cores: {red: COM, black: NO}}
  - {cable: two, length: 6 m, cores: {black: [g1.NO, K.A1]}}
intent:
  fan: {runs-on: [[START, g1], [START, g2]], stays-on-after: START, stopped-by: STOP, blocked-by: [STOP]}
`;

const study = (text: string) => Study.of(planOf(text));
const likely = (text: string) =>
  mend(study(text))
    .repairs.filter((r) => r.asLikely)
    .map((r) => r.words.join(' '));

describe('a seal with gates in line', () => {
  it('is right as it stands', () => {
    expect(check(study(RIGHT)).questions.map((q) => q.answer)).toEqual(
      Array.from({ length: 7 }, () => 'yes'),
    );
  });

  it.each([
    [
      'the seal goes round the gates',
      'black: [START.NO, K.14]',
      'black: [g1.NO, K.14]',
      /^Move the black core .*K\.14.* from g1\.NO to START\.NO\.$/,
    ],
    [
      'START is on its break contact',
      'black: [START.NO, g1.COM]',
      'black: [START.NC, g1.COM]',
      /^Move the black core .*g1\.COM.* from START\.NC to START\.NO\.$/,
    ],
    [
      'both cores of a gate are on one conductor',
      'along: [g1, g2], length: 6 m, cores: {red: COM, black: NO}',
      'length: 6 m, cores: {red: [g1.COM, g2.COM], black: [START.NO, g2.NO]}',
      /^Move the black core .*g2\.NO.* from START\.NO to g1\.NO\.$/,
    ],
    [
      'a gate is on its break contact',
      'along: [g1, g2], length: 6 m, cores: {red: COM, black: NO}',
      'length: 6 m, cores: {red: [g1.COM, g2.COM], black: [g1.NO, g2.NC]}',
      /^Move the black core .*g2\.NC.* from g2\.NC to g2\.NO\.$/,
    ],
    [
      'the stop is gone round',
      'red: [START.COM, K.13]',
      'red: [STOP.COM, K.13]',
      /^Move the red core .*K\.13.* from STOP\.COM to START\.COM\.$/,
    ],
  ])('%s', (_, right, wrong, repair) => {
    const text = RIGHT.replace(right, wrong);
    expect(text).not.toBe(RIGHT);
    const found = likely(text);
    expect(
      found.some((words) => repair.test(words)),
      found.join('\n'),
    ).toBe(true);
  });

  it('nobody is told to wire the start beside a gate', () => {
    const text = RIGHT.replace(
      'along: [g1, g2], length: 6 m, cores: {red: COM, black: NO}',
      'length: 6 m, cores: {red: [g1.COM, g2.COM], black: [START.NO, g2.NO]}',
    );
    const { findings } = check(study(text));
    expect(findings.map((f) => f.message)).toContain(
      'opening the g2 gate with START does nothing: both its cores are on one conductor',
    );
    for (const f of findings) expect(f.fix).not.toMatch(/side by side/);
  });
});

describe('gates behind a key', () => {
  const keyed = (wrong: boolean) => {
    const gates = Array.from({ length: 12 }, (_, i) => `g${i + 1}`);
    const pieces = gates.slice(1).map((g, i) => {
      const black = wrong && i === 5 ? '' : `, black: [${gates[i]}.NO, ${g}.NO]`;
      return `  - {cable: two, length: 6 m, cores: {red: [${gates[i]}.COM, ${g}.COM]${black}}}`;
    });
    return RIGHT.replace(
      / {2}g1: .*\n {2}g2: .*\n/,
      `${gates.map((g) => `  ${g}: {from: snap}`).join('\n')}\n`,
    )
      .replace(
        / {2}START: .*\n/,
        '  KEY: {kind: switch, contact: {ratings: [2 A 30 V DC], resistance: 50 mohm}}\n',
      )
      .replace(
        'red: [STOP.NC, START.COM], black: [START.NO, g1.COM]',
        'red: [STOP.NC, KEY.COM], black: [KEY.NO, g1.COM]',
      )
      .replace(/ {2}- .*K\.13.*\n/, '')
      .replace(/ {2}- .*along.*\n/, `${pieces.join('\n')}\n`)
      .replace(
        / {2}fan: \{runs-on.*/,
        `  fan: {runs-on: [${gates.map((g) => `[KEY, ${g}]`).join(', ')}], blocked-by: [STOP]}`,
      );
  };

  it('one core not carried on is found though many changes let the key alone start the fan', () => {
    expect(check(study(keyed(false))).verdict).toBe('pass');
    expect(likely(keyed(true))[0]).toMatch(/^Join g6\.NO to g7\.NO with a new core /);
  });
});
