/** Colours of cores on either side of each rule; the clause stands beside its pair. */
import { describe, expect, it } from 'vitest';
import { colourOfEarth } from '../../../src/findings/apart/colour-of-earth.ts';
import { colourOfNeutral } from '../../../src/findings/apart/colour-of-neutral.ts';
import type { Finding } from '../../../src/findings/report-model.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { type Shop, shop } from './colour-plans.ts';

/** Both checks, none of what they found folded. */
const OF = (text: string): readonly Finding[] => {
  const study = Study.of(planOf(text));
  return [...colourOfEarth.find(study), ...colourOfNeutral.find(study)];
};
const told = (s: Shop): string[] => OF(shop(s)).map((f) => `${f.severity} ${f.id}`);

const EARTH = 'danger colour-of-earth';
const NEUTRAL = 'warning colour-of-neutral';
const cord = 'gauge: 4 mm2, cores: 4, insulation: 600 V, flexible: true';

/** What is told of a plan; the clause by which. Clauses are those of the table in src/ratings/tables/core-colours.json. */
const CASES: readonly (readonly [clause: string, shop: Shop, told: readonly string[]])[] = [
  ['NEC 200.6(A), 250.119: as it should be', { practice: 'nec' }, []],
  ['NEC 200.6(A): grey for white', { practice: 'nec', feed: ['black', 'gray', 'green'] }, []],
  ['NEC 200.6(A): natural gray', { practice: 'nec', feed: ['black', 'natural gray', 'green'] }, []],
  [
    'NEC 200.6(A)(3): white stripes',
    { practice: 'nec', feed: ['red', 'black with white stripe', 'green'] },
    [],
  ],
  ['NEC 200.6(A): a red stripe', { practice: 'nec', feed: ['red', 'black/red', 'green'] }, [NEUTRAL]],
  ['NEC 250.119: green-yellow and bare', { practice: 'nec', feed: ['black', 'white', 'bare'] }, []],
  ['NEC 250.119: green-yellow', { practice: 'nec', feed: ['black', 'white', 'green/yellow'] }, []],
  ['NEC 250.119: earth in red', { practice: 'nec', feed: ['black', 'white', 'red'] }, [EARTH]],
  ['NEC 250.119: line in green', { practice: 'nec', feed: ['green', 'white', 'bare'] }, [EARTH]],
  ['NEC 250.119: switched line in green', { practice: 'nec', switched: 'green-yellow' }, [EARTH]],
  ['NEC 250.119: neutral in green', { practice: 'nec', feed: ['black', 'green', 'bare'] }, [EARTH]],
  ['NEC 200.7(A): line in white', { practice: 'nec', switched: 'white' }, [NEUTRAL]],
  ['NEC 310.6(C): line in blue', { practice: 'nec', switched: 'blue' }, []],
  ['NEC 200.6(A): neutral in red', { practice: 'nec', feed: ['black', 'red', 'green'] }, [NEUTRAL]],
  [
    'NEC 200.6(C): light blue in a fixed cable',
    { practice: 'nec', feed: ['black', 'light blue', 'green'] },
    [NEUTRAL],
  ],
  [
    'NEC 200.6(C): light blue in a cord',
    { practice: 'nec', cable: cord, feed: ['brown', 'light blue', 'green'] },
    [],
  ],
  [
    'NEC 200.7(C)(2), 400.22: white as a line in a cord, whose circuit has a neutral for it',
    { practice: 'nec', cable: cord, switched: 'white' },
    [NEUTRAL],
  ],
  [
    'NEC 200.7(C)(1): white core of a cable marked at both ends',
    { practice: 'nec', feed: ['white', 'grey', 'green'], marks: 'white: black' },
    [],
  ],
  [
    'NEC 200.7(C)(1): marked green, white or gray it is not',
    { practice: 'nec', feed: ['white', 'grey', 'bare'], marks: 'white: gray' },
    [NEUTRAL],
  ],
  [
    'NEC 200.7(C)(1), 250.119: a line marked green is touched as an earth',
    { practice: 'nec', feed: ['white', 'grey', 'bare'], marks: 'white: green' },
    [EARTH],
  ],
  [
    'NEC 200.6(B): 6 AWG marked white at the ends',
    {
      practice: 'nec',
      cable: 'gauge: 6 AWG, cores: 4, insulation: 600 V',
      feed: ['black', 'red', 'green'],
      marks: 'red: white',
    },
    [NEUTRAL],
  ],
  [
    'NEC 200.6(B): 4 AWG marked white at the ends',
    {
      practice: 'nec',
      cable: 'gauge: 4 AWG, cores: 4, insulation: 600 V',
      feed: ['black', 'red', 'green'],
      marks: 'red: white',
    },
    [],
  ],
  [
    'NEC 250.119(A): 6 AWG marked green',
    {
      practice: 'nec',
      cable: 'gauge: 6 AWG, cores: 4, insulation: 600 V',
      feed: ['black', 'white', 'red'],
      marks: 'red: green',
    },
    [EARTH],
  ],
  [
    'NEC 250.119(A): 4 AWG marked green',
    {
      practice: 'nec',
      cable: 'gauge: 4 AWG, cores: 4, insulation: 600 V',
      feed: ['black', 'white', 'red'],
      marks: 'red: green',
    },
    [],
  ],
  [
    'NEC 250.119: no mark makes a line of green',
    { practice: 'nec', feed: ['green', 'white', 'bare'], marks: 'green: black' },
    [EARTH],
  ],
  ['a mark that says neutral of a line', { practice: 'nec', marks: 'black: white' }, [NEUTRAL]],
  ['a mark that says earth of a line', { practice: 'nec', marks: 'black: green' }, [EARTH]],
  ['NEC 250.119 exception: green on 24 V', { practice: 'nec', loop: ['green', 'white'] }, []],
  ['NEC 250.119: green-yellow on 24 V', { practice: 'nec', loop: ['green-yellow', 'white'] }, [EARTH]],
  ['a name is no colour', { practice: 'nec', feed: ['hot', 'n', '3'], switched: '2' }, []],

  ['IEC 60445: as it should be', { practice: 'iec' }, []],
  ['IEC 60445: light blue', { practice: 'iec', feed: ['brown', 'light blue', 'green-yellow'] }, []],
  ['IEC 60445: line in blue', { practice: 'iec', switched: 'blue' }, [NEUTRAL]],
  ['IEC 60445: line in black', { practice: 'iec', switched: 'black' }, []],
  [
    'IEC 60445: line and neutral exchanged',
    { practice: 'iec', feed: ['blue', 'brown', 'green-yellow'] },
    [NEUTRAL, NEUTRAL],
  ],
  ['IEC 60445: neutral in black', { practice: 'iec', feed: ['brown', 'black', 'green-yellow'] }, [NEUTRAL]],
  [
    'AS/NZS 3000: neutral in black in fixed wiring there',
    { practice: 'iec', pattern: 'AS/NZS 3112 15 A', feed: ['red', 'black', 'green-yellow'] },
    [],
  ],
  [
    'AS/NZS 3191: not in a cord',
    { practice: 'iec', pattern: 'AS/NZS 3112 15 A', cable: cord, feed: ['red', 'black', 'green-yellow'] },
    [NEUTRAL],
  ],
  ['IEC 60445: line in green', { practice: 'iec', switched: 'green' }, [EARTH]],
  ['IEC 60445: earth in black', { practice: 'iec', feed: ['brown', 'blue', 'black'] }, [EARTH]],
  [
    'IEC 60445: earth in green alone, as in old work',
    { practice: 'iec', feed: ['brown', 'blue', 'green'] },
    ['warning colour-of-earth'],
  ],
  [
    'BS 7671 514.3: blue core of a cable marked brown',
    { practice: 'iec', feed: ['blue', 'grey', 'green-yellow'], marks: 'blue: brown, grey: blue' },
    [],
  ],
  [
    'BS 7671 514.4.2: no sleeve makes a line of green-and-yellow',
    { practice: 'iec', feed: ['green-yellow', 'blue', 'bare'], marks: 'green-yellow: brown' },
    [EARTH],
  ],
  [
    'BS 7671 514.4.2: black core of a cable marked green-and-yellow',
    { practice: 'iec', feed: ['brown', 'blue', 'black'], marks: 'black: green-yellow' },
    [],
  ],
  ['IEC 60445: green on 24 V', { practice: 'iec', loop: ['green', 'blue'] }, []],
  ['IEC 60445: green-yellow on 24 V', { practice: 'iec', loop: ['yellow-green', 'blue'] }, [EARTH]],
  [
    'no mark makes a loop core of green-and-yellow',
    { practice: 'iec', loop: ['green-yellow', 'blue'], loopMarks: 'green-yellow: red' },
    [EARTH],
  ],
];

describe('colours on either side of each rule', () => {
  it.each(CASES)('%s', (_, s, wanted) => {
    expect(told(s).sort()).toEqual([...wanted].sort());
  });
});

/** A switch loop: the cable holds the feed to the contact and the way back, and no neutral. */
const switchLoop = (feed: string, back: string, marks: string): string =>
  shop({ practice: 'nec' })
    .replace('black: [P1.L, K1.COM], white', 'black: [P1.L, nut], white')
    .replace('black: [K1.NO, lamps.L]', 'black: [back, lamps.L]')
    .replace('  B1:', '  nut: {kind: joint}\n  back: {kind: joint}\n  B1:')
    .replace(
      'intent:',
      `  - {cable: {gauge: 4 mm2, cores: 2, insulation: 600 V}, length: 2 m, cores: {${feed}: [nut, K1.COM], ${back}: [K1.NO, back]}, marked-as: {${marks}}}\nintent:`,
    );

it('a white core marked in a switch loop is the feed and not the way back, NEC 200.7(C)(1)', () => {
  expect(OF(switchLoop('white', 'black', 'white: black'))).toEqual([]);
  const [f, ...more] = OF(switchLoop('black', 'white', 'white: red'));
  expect(more).toEqual([]);
  expect(f).toMatchObject({ id: 'colour-of-neutral', severity: 'warning' });
  expect(f!.fix).not.toContain('marked-as');
});

it('nor is a white core marked where nothing else that is live lies in its cable one way back of a switch loop', () => {
  const text = shop({ practice: 'nec', switched: 'white' }).replace(
    '[B1.PE, lamps.PE]}',
    '[B1.PE, lamps.PE]}, marked-as: {white: red}',
  );
  expect(text).toContain('white: red');
  expect(OF(text)).toEqual([]);
});

/** Two legs to a motor: white in a cable has to be marked, in a cord it has not. */
const legs = (cable: string, marks: string): string =>
  shop({ practice: 'nec', cable })
    .replace('volts: 120 V AC}\n  lamps', 'volts: 240 V AC, legs: 2}\n  lamps')
    .replace('volts: 120 V AC}', 'volts: 240 V AC}')
    .replace('coil: {', 'poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}], coil: {')
    .replace('black: [P1.L, K1.COM], white: [P1.N, lamps.N]', 'black: [P1.L1, K1.1], white: [P1.L2, K1.3]')
    .replace('[P1.PE, B1.PE]}', `[P1.PE, B1.PE]}${marks}`)
    .replace('black: [K1.NO, lamps.L]', 'black: [K1.2, lamps.L1], red: [K1.4, lamps.L2]');

it('a white core that feeds the second leg is marked in a cable, and may be as it is in a cord: NEC 200.7(C)(1), (2)', () => {
  const cable = 'gauge: 4 mm2, cores: 4, insulation: 600 V';
  expect(OF(legs(cable, ', marked-as: {white: red}'))).toEqual([]);
  expect(OF(legs(cord, ''))).toEqual([]);
  expect(OF(legs(cable, '')).map((f) => f.id)).toEqual(['colour-of-neutral']);
});

it('a single white wire stays a neutral whatever it is marked as, NEC 200.7(C)(1)', () => {
  const wire = (cores: number) =>
    shop({ practice: 'nec' })
      .replace('{black: [P1.L, K1.COM], white: [P1.N', '{white: [P1.N')
      .replace(
        'intent:',
        `  - {cable: {gauge: 4 mm2, cores: ${cores}, insulation: 600 V}, length: 2 m, cores: {white: [P1.L, K1.COM]}, marked-as: {white: black}}\nintent:`,
      );
  expect(OF(wire(2))).toEqual([]);
  expect(OF(wire(1)).map((f) => f.id)).toEqual(['colour-of-neutral']);
});

/** Three phases with a neutral for the coil, or without. */
const phases = (third: string, neutral: string): string =>
  shop({ practice: 'iec' })
    .replace('volts: 230 V AC}\n  lamps', 'volts: 400 V AC, phases: 3}\n  lamps')
    .replace(
      'kind: load, type: heater, power: 0.3 kW, volts: 230 V AC',
      'kind: motor, phases: 3, power: 1 kW, volts: 400 V AC',
    )
    .replace(
      'coil: {',
      'poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}, {form: make, marks: [5, 6]}], coil: {',
    )
    .replace(
      'brown: [P1.L, K1.COM], blue: [P1.N, lamps.N]',
      `brown: [P1.L1, K1.1], black: [P1.L2, K1.3], ${third}: [P1.L3, K1.5]${neutral}`,
    )
    .replace('cores: 4', 'cores: 5')
    .replace(
      'brown: [K1.NO, lamps.L]',
      'brown: [K1.2, lamps.L1], black: [K1.4, lamps.L2], grey: [K1.6, lamps.L3]',
    )
    .replace('  B1:', '  n: {kind: joint}\n  B1:');

it('IEC 60445: blue may be a phase in a cable without neutral, and not beside one', () => {
  expect(OF(phases('grey', ''))).toEqual([]);
  expect(OF(phases('blue', ''))).toEqual([]);
  expect(OF(phases('blue', ', white: [P1.N, n]')).map((f) => f.id)).toEqual([
    'colour-of-neutral',
    'colour-of-neutral',
  ]);
  expect(OF(phases('grey', ', blue: [P1.N, n]'))).toEqual([]);
});
