/**
 * Relay logic printed in an open textbook, written out as plans, with the printed tables.
 * Source of all: T. R. Kuphaldt, Lessons In Electric Circuits, Volume IV - Digital, 4th edition,
 * 1 November 2007 (Design Science License), chapter 6, "Ladder logic".
 *
 * The book's rails L1 and L2 are the poles of a 24 V DC supply here; a lamp or siren of the book is a relay
 * of that name, so that whether it is lit reads as whether it is pulled in. Intents name what to observe;
 * where the book's function is not one an intent can state (NAND, NOT), the intent is deliberately unmet.
 */

export interface PublishedState {
  inputs: Record<string, string>;
  target: string;
  runs: boolean;
}

export interface PublishedStep {
  /** the inputs that move, with their new positions */
  move: Record<string, string>;
  expect: Record<string, boolean>;
}

export interface Published {
  id: string;
  source: string;
  plan: string;
  /** printed states; inputs not named stand at rest */
  expect: PublishedState[];
  /** a printed sequence, from rest, each step from where the one before ended */
  steps?: PublishedStep[];
}

const BOOK = 'Lessons In Electric Circuits, Vol. IV - Digital, 4th ed., 2007, ch. 6';

type Join = [string, string];

/** A plan from its parts and two-terminal joins; every join is one core of one cable. */
function plan(title: string, parts: string[], joins: Join[], intent: string[]): string {
  return [
    'format: 1',
    `title: ${title}`,
    'stock:',
    '  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}',
    '  small:',
    '    kind: relay',
    '    coil: {rated: 24 V DC, resistance: 600 ohm, suppressor: none}',
    '    contact: {ratings: [5 A 30 V DC]}',
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    ...parts.map((p) => `  ${p}`),
    'runs:',
    ...joins.map(([a, b]) => `  - {cable: bell, length: 1 m, cores: {red: [${a}, ${b}]}}`),
    'intent:',
    ...intent.map((i) => `  ${i}`),
    '',
  ].join('\n');
}

const MAKE = '{form: make, marks: [13, 14]}';
const BREAK = '{form: break, marks: [21, 22]}';
const bit = (x: string): boolean => x === '1';

/** Rows such as `01 1`: inputs in the order of `names` (1 is actuated), then the targets in order. */
function rows(names: string[], targets: string[], table: string[], on = 'on', off = 'off'): PublishedState[] {
  return table.flatMap((row) => {
    const [left = '', right = ''] = row.split(' ');
    const inputs = Object.fromEntries(names.map((n, i) => [n, bit(left[i]!) ? on : off]));
    return targets.map((target, i) => ({ inputs, target, runs: bit(right[i]!) }));
  });
}

/** Steps such as `forward:pressed 10`: what moves, then the targets in order. */
function steps(targets: string[], list: string[]): PublishedStep[] {
  return list.map((s) => {
    const [moves = '', right = ''] = s.split(' ');
    const pairs = moves.split(',').map((m) => m.split(':'));
    return {
      move: Object.fromEntries(pairs.filter((p) => p.length === 2)),
      expect: Object.fromEntries(targets.map((t, i) => [t, bit(right[i]!)])),
    };
  });
}

const AB = ['A: {kind: switch}', 'B: {kind: switch}'];
const nand = (coil: string): Join[] => [
  ['PS1.+', 'A.COM'],
  ['A.COM', 'B.COM'],
  ['A.NC', 'B.NC'],
  ['B.NC', `${coil}.A1`],
  [`${coil}.A2`, 'PS1.-'],
];

const ALARM = [1, 2, 3, 4].map((i) => `switch${i}`);

/** Four alarm switches side by side; `cut` leaves out the wire at one of them. */
function alarm(cut: string): string {
  const joins: Join[] = [
    ...ALARM.map((s): Join => ['PS1.+', `${s}.COM`]),
    ...ALARM.filter((s) => s !== cut).map((s): Join => [`${s}.NO`, 'siren.A1']),
    ['siren.A2', 'PS1.-'],
  ];
  return plan(
    cut ? `Alarm, wire open at ${cut}` : 'Alarm',
    [...ALARM.map((s) => `${s}: {kind: switch}`), 'siren: {from: small}'],
    joins,
    [`siren: {runs-on: [${ALARM.join(', ')}]}`],
  );
}

const REVERSING = ['forward: {kind: button}', 'reverse: {kind: button}', 'OL: {kind: cutout}'];
const MM = ['M1', 'M2'].map((m) => `${m}: {from: small, poles: [${MAKE}, ${BREAK}]}`);
const sealed = (feed: string): Join[] => [
  [feed, 'forward.COM'],
  [feed, 'reverse.COM'],
  ['forward.COM', 'M1.13'],
  ['forward.NO', 'M1.14'],
  ['M1.14', 'M2.21'],
  ['M2.22', 'M1.A1'],
  ['reverse.COM', 'M2.13'],
  ['reverse.NO', 'M2.14'],
  ['M2.14', 'M1.21'],
  ['M1.22', 'M2.A1'],
  ['M1.A2', 'OL.COM'],
  ['M2.A2', 'OL.COM'],
  ['OL.NC', 'PS1.-'],
];

/** Start button and seal-in round M1, a stop button with an NC contact; `cut` leaves the stop wire out. */
function ncStop(cut: boolean): string {
  const joins: Join[] = [
    ['PS1.+', 'stop.COM'],
    ['stop.NC', 'start.COM'],
    ['start.COM', 'M1.COM'],
    ['start.NO', 'M1.NO'],
    ['start.NO', 'M1.A1'],
    ['M1.A2', 'PS1.-'],
  ];
  return plan(
    'NC stop',
    ['stop: {kind: button}', 'start: {kind: button}', 'M1: {from: small}'],
    joins.filter((_, i) => !(cut && i === 1)),
    ['M1: {runs-on: [start], stays-on-after: start, stopped-by: stop}'],
  );
}

/** The same with an NO stop button that drives a relay CRS whose NC contact breaks the seal. */
function noStop(cut: boolean): string {
  const joins: Join[] = [
    ['PS1.+', 'start.COM'],
    ['start.COM', 'M1.COM'],
    ['start.NO', 'M1.NO'],
    ['start.NO', 'CRS.COM'],
    ['CRS.NC', 'M1.A1'],
    ['M1.A2', 'PS1.-'],
    ['PS1.+', 'stop.COM'],
    ['stop.NO', 'CRS.A1'],
    ['CRS.A2', 'PS1.-'],
  ];
  return plan(
    'NO stop',
    ['stop: {kind: button}', 'start: {kind: button}', 'M1: {from: small}', 'CRS: {from: small}'],
    joins.filter((_, i) => !(cut && i === 7)),
    ['M1: {runs-on: [start], stays-on-after: start, stopped-by: stop}'],
  );
}

export const published: Published[] = [
  {
    id: 'or',
    source: `${BOOK}, "Digital logic functions", OR`,
    plan: plan(
      'OR',
      [...AB, 'lamp: {from: small}'],
      [
        ['PS1.+', 'A.COM'],
        ['A.COM', 'B.COM'],
        ['A.NO', 'B.NO'],
        ['B.NO', 'lamp.A1'],
        ['lamp.A2', 'PS1.-'],
      ],
      ['lamp: {runs-on: [A, B]}'],
    ),
    expect: rows(['A', 'B'], ['lamp'], ['00 0', '01 1', '10 1', '11 1']),
  },
  {
    id: 'nand',
    source: `${BOOK}, "Digital logic functions", NAND`,
    plan: plan('NAND', [...AB, 'lamp: {from: small}'], nand('lamp'), ['lamp: {runs-on: [A, B]}']),
    expect: rows(['A', 'B'], ['lamp'], ['00 1', '01 1', '10 1', '11 0']),
  },
  {
    id: 'not',
    source: `${BOOK}, "Digital logic functions", NOT`,
    plan: plan(
      'NOT',
      ['A: {kind: switch}', 'lamp: {from: small}'],
      [
        ['PS1.+', 'A.COM'],
        ['A.NC', 'lamp.A1'],
        ['lamp.A2', 'PS1.-'],
      ],
      ['lamp: {runs-on: [A]}'],
    ),
    expect: rows(['A'], ['lamp'], ['0 1', '1 0']),
  },
  {
    id: 'relay-inverter',
    source: `${BOOK}, "Digital logic functions", relay inverter`,
    plan: plan(
      'Relay inverter',
      ['A: {kind: switch}', 'CR1: {from: small}', 'lamp: {from: small}'],
      [
        ['PS1.+', 'A.COM'],
        ['A.NO', 'CR1.A1'],
        ['CR1.A2', 'PS1.-'],
        ['PS1.+', 'CR1.COM'],
        ['CR1.NC', 'lamp.A1'],
        ['lamp.A2', 'PS1.-'],
      ],
      ['CR1: {runs-on: [A]}', 'lamp: {runs-on: [A]}'],
    ),
    expect: rows(['A'], ['CR1', 'lamp'], ['0 01', '1 10']),
  },
  {
    id: 'relay-nand-to-and',
    source: `${BOOK}, "Digital logic functions", relay turning NAND into AND`,
    plan: plan(
      'NAND into AND',
      [...AB, 'CR1: {from: small}', 'lamp: {from: small}'],
      [...nand('CR1'), ['PS1.+', 'CR1.COM'], ['CR1.NC', 'lamp.A1'], ['lamp.A2', 'PS1.-']],
      ['CR1: {runs-on: [A, B]}', 'lamp: {runs-on: [[A, B]]}'],
    ),
    expect: rows(['A', 'B'], ['CR1', 'lamp'], ['00 10', '01 10', '10 10', '11 01']),
  },
  {
    id: 'permissive-string',
    source: `${BOOK}, "Permissive and interlock circuits", burner permissive string`,
    plan: plan(
      'Burner permissive string',
      [
        'low_fuel: {kind: switch}',
        'high_fuel: {kind: cutout}',
        'air_flow: {kind: switch}',
        'damper: {kind: switch}',
        `CR1: {from: small, poles: [${MAKE}, ${BREAK}]}`,
        'green: {from: small}',
        'red: {from: small}',
      ],
      [
        ['PS1.+', 'low_fuel.COM'],
        ['low_fuel.NO', 'high_fuel.COM'],
        ['high_fuel.NC', 'air_flow.COM'],
        ['air_flow.NO', 'damper.COM'],
        ['damper.NO', 'CR1.A1'],
        ['CR1.A2', 'PS1.-'],
        ['PS1.+', 'CR1.13'],
        ['CR1.14', 'green.A1'],
        ['green.A2', 'PS1.-'],
        ['PS1.+', 'CR1.21'],
        ['CR1.22', 'red.A1'],
        ['red.A2', 'PS1.-'],
      ],
      [
        'CR1: {runs-on: [[low_fuel, air_flow, damper]], blocked-by: [high_fuel]}',
        'green: {runs-on: [[low_fuel, air_flow, damper]], blocked-by: [high_fuel]}',
        'red: {runs-on: [high_fuel]}',
      ],
    ),
    expect: [
      ...rows(
        ['low_fuel', 'air_flow', 'damper'],
        ['CR1', 'green', 'red'],
        ['111 110', '011 001', '101 001', '110 001'],
      ),
      ...['CR1', 'green', 'red'].map((target, i) => ({
        inputs: { low_fuel: 'on', air_flow: 'on', damper: 'on', high_fuel: 'tripped' },
        target,
        runs: i === 2,
      })),
    ],
  },
  {
    id: 'reversing-no-interlock',
    source: `${BOOK}, "Permissive and interlock circuits", reversing control without interlock`,
    plan: plan(
      'Reversing without interlock',
      [...REVERSING, 'M1: {from: small}', 'M2: {from: small}'],
      [
        ['PS1.+', 'forward.COM'],
        ['forward.COM', 'reverse.COM'],
        ['forward.NO', 'M1.A1'],
        ['reverse.NO', 'M2.A1'],
        ['M1.A2', 'OL.COM'],
        ['M2.A2', 'OL.COM'],
        ['OL.NC', 'PS1.-'],
      ],
      ['M1: {runs-on: [forward], blocked-by: [OL]}', 'M2: {runs-on: [reverse], blocked-by: [OL]}'],
    ),
    expect: [
      ...rows(['forward', 'reverse'], ['M1', 'M2'], ['10 10', '11 11', '00 00'], 'pressed', 'released'),
      { inputs: { forward: 'pressed', OL: 'tripped' }, target: 'M1', runs: false },
      { inputs: { forward: 'pressed', OL: 'tripped' }, target: 'M2', runs: false },
    ],
  },
  {
    id: 'seal-in-without-stop',
    source: `${BOOK}, "Motor control circuits", seal-in contacts, no stop button`,
    plan: plan('Seal-in without stop', [...REVERSING, ...MM], sealed('PS1.+'), [
      'M1: {runs-on: [forward], stays-on-after: forward, blocked-by: [OL]}',
      'M2: {runs-on: [reverse], stays-on-after: reverse, blocked-by: [OL]}',
    ]),
    expect: rows(['forward', 'reverse'], ['M1', 'M2'], ['00 00', '10 10'], 'pressed', 'released'),
    steps: steps(
      ['M1', 'M2'],
      [
        'idle 00',
        'forward:pressed 10',
        'forward:released 10',
        'reverse:pressed 10',
        'OL:tripped,reverse:released 00',
      ],
    ),
  },
  {
    id: 'start-stop-seal-in',
    source: `${BOOK}, "Motor control circuits", forward, reverse and NC stop`,
    plan: plan(
      'Start, seal in, stop',
      ['stop: {kind: button}', ...REVERSING, ...MM],
      [['PS1.+', 'stop.COM'], ...sealed('stop.NC')],
      [
        'M1: {runs-on: [forward], stays-on-after: forward, stopped-by: stop, blocked-by: [OL]}',
        'M2: {runs-on: [reverse], stays-on-after: reverse, stopped-by: stop, blocked-by: [OL]}',
      ],
    ),
    expect: rows(['forward', 'reverse'], ['M1', 'M2'], ['00 00', '10 10', '01 01'], 'pressed', 'released'),
    steps: steps(
      ['M1', 'M2'],
      [
        'idle 00',
        'forward:pressed 10',
        'forward:released 10',
        'stop:pressed 00',
        'stop:released 00',
        'reverse:pressed 01',
        'reverse:released 01',
        'forward:pressed 01',
        'forward:released,stop:pressed 00',
      ],
    ),
  },
  {
    id: 'nc-stop',
    source: `${BOOK}, "Programmable logic controllers", closing discussion of the stop input, NC stop`,
    plan: ncStop(false),
    expect: rows(['start'], ['M1'], ['0 0', '1 1'], 'pressed', 'released'),
    steps: steps(['M1'], ['start:pressed 1', 'start:released 1', 'stop:pressed 0', 'stop:released 0']),
  },
  {
    id: 'nc-stop-wire-open',
    source: `${BOOK}, "Programmable logic controllers", closing discussion of the stop input, NC stop, wire open`,
    plan: ncStop(true),
    expect: rows(['start'], ['M1'], ['0 0', '1 0'], 'pressed', 'released'),
  },
  {
    id: 'no-stop-wire-open',
    source: `${BOOK}, "Programmable logic controllers", closing discussion of the stop input, NO stop, wire open`,
    plan: noStop(true),
    expect: rows(['start'], ['M1'], ['0 0', '1 1'], 'pressed', 'released'),
    steps: steps(['M1'], ['start:pressed 1', 'start:released 1', 'stop:pressed 1', 'stop:released 1']),
  },
  {
    id: 'no-stop',
    source: `${BOOK}, "Programmable logic controllers", closing discussion of the stop input, NO stop`,
    plan: noStop(false),
    expect: rows(['start'], ['M1'], ['0 0', '1 1'], 'pressed', 'released'),
    steps: steps(['M1'], ['start:pressed 1', 'start:released 1', 'stop:pressed 0', 'stop:released 0']),
  },
  {
    id: 'alarm',
    source: `${BOOK}, "Fail-safe design", four parallel NO alarm switches`,
    plan: alarm(''),
    expect: rows(ALARM, ['siren'], ['0000 0', '0100 1']),
  },
  {
    id: 'alarm-wire-open',
    source: `${BOOK}, "Fail-safe design", four parallel NO alarm switches, wire open at switch 2`,
    plan: alarm('switch2'),
    expect: rows(ALARM, ['siren'], ['0100 0', '0010 1']),
  },
];
