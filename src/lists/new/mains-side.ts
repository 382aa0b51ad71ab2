/** The mains side of a design: plug or fixed feed, switch, motor, box. */
import { type Design, needsOverload } from './design.ts';
import { lowRuns } from './low-runs.ts';
import {
  coilsWithDiode,
  type Laid,
  ordinary,
  overloadName,
  type Told,
  usualLengths,
  wiredPoles,
} from './told.ts';
import type { Value } from './yaml-lines.ts';

export const isFixed = ({ circuit }: Design): boolean => circuit.pattern === 'fixed';

/** Names of the live conductors and the neutral that the switch may break, in order. */
function conductors({ answers }: Design): readonly string[] {
  const { mains, practice } = answers;
  if (mains.phases === 3) return ['L1', 'L2', 'L3'];
  return practice === 'nec' && mains.volts > 200 ? ['L1', 'L2'] : ['L', 'N'];
}

/** A colour a conductor, the earth last, as cords and wires are sold and core-colour rules ask. */
function colours(d: Design): readonly string[] {
  const { practice, mains } = d.answers;
  if (practice === 'iec')
    return mains.phases === 3
      ? ['brown', 'black', 'grey', 'green-yellow']
      : ['brown', 'blue', 'green-yellow'];
  if (mains.phases === 3)
    return isFixed(d) ? ['black', 'red', 'blue', 'green'] : ['black', 'red', 'white', 'green'];
  if (conductors(d).includes('N')) return ['black', 'white', 'green'];
  return isFixed(d) ? ['black', 'red', 'green'] : ['black', 'white', 'green'];
}

const feedFields = (d: Design): Record<string, Value | undefined> => {
  const { mains, practice } = d.answers;
  return {
    pattern: d.circuit.pattern,
    phases: mains.phases === 3 ? '3' : undefined,
    legs: mains.phases === 1 && conductors(d).includes('L2') ? '2' : undefined,
    breaker: d.circuit.breaker,
    fuse: d.circuit.fuse,
    volts: `${mains.volts} V AC`,
    frequency: practice === 'nec' ? '60 Hz' : '50 Hz',
  };
};

export function mainsParts(d: Design): Told[] {
  const { answers } = d;
  const { motor, mains, type, protector } = answers;
  const fixed = isFixed(d);
  const plug: Told = {
    comment: fixed
      ? [
          `The circuit that feeds the collector, wired in: a breaker of ${d.circuit.breaker}. This part is for an electrician.`,
        ]
      : [
          `The plug that feeds the collector, on a circuit with a breaker of ${d.circuit.breaker}, and the socket that is switched.`,
        ],
    name: 'P1',
    fields: { kind: 'plug', ...feedFields(d) },
  };
  const outlet: Told = { comment: [], name: 'X1', fields: { kind: 'outlet', pattern: d.circuit.pattern } };
  const machine: Told = {
    comment: [
      'The collector: copied from its nameplate. Compare each figure with the plate before you build.',
    ],
    name: 'collector',
    fields: {
      kind: 'motor',
      type,
      phases: mains.phases === 3 ? '3' : undefined,
      power: motor.power,
      volts: `${mains.volts} V AC`,
      amps: motor.amps,
      code: motor.code,
      'locked-rotor': motor['locked-rotor'],
      protector,
      'plugged-into': fixed ? undefined : 'X1',
    },
  };
  const { joints } = lowRuns(d);
  const holds = [
    ...(d.between === 'none' ? [] : [d.between === 'timer' ? 'KT1' : 'K1']),
    'Q1',
    ...(needsOverload(answers) ? [overloadName] : []),
    ...coilsWithDiode(d).map((_, i) => `D${i + 1}`),
    ...joints,
    ...(passed(d).length > 0 ? ['neutral'] : []),
  ];
  const box: Told = {
    comment: [
      'One closed metal box for all of this, with a barrier between mains and low voltage, joined to earth.',
      `Take one of ${d.volume} or more, and as much again as the relay itself needs.`,
    ],
    name: 'B1',
    fields: { kind: 'box', holds, volume: d.volume, metal: 'true', divider: 'true' },
  };
  return [plug, ...(fixed ? [] : [outlet]), machine, box];
}

/** Conductors that go past the switch: the neutral of one with a single pole. */
const passed = (d: Design): readonly string[] => conductors(d).slice(wiredPoles(d));

/** Joints of the mains side. */
export const mainsJoints = (d: Design): readonly string[] => (passed(d).length > 0 ? ['neutral'] : []);

export function mainsRuns(d: Design): Laid[] {
  const names = conductors(d);
  const hues = colours(d);
  const usual = usualLengths(d.answers);
  const poles = wiredPoles(d);
  const [common, make] = ['COM', 'NO'];
  const inOf = (i: number) => (i >= poles ? 'neutral' : poles === 1 ? `Q1.${common}` : `Q1.${2 * i + 1}`);
  const outOf = (i: number) => (i >= poles ? 'neutral' : poles === 1 ? `Q1.${make}` : `Q1.${2 * i + 2}`);
  const fixed = isFixed(d);
  const load = fixed ? 'collector' : 'X1';
  const earth = hues.at(-1)!;
  const cores = (
    ends: (name: string, i: number) => readonly [string, string],
    last: readonly [string, string],
  ) =>
    Object.fromEntries([
      ...names.map((name, i) => [hues[i]!, ends(name, i)] as const),
      [earth, last] as const,
    ]);
  return [
    {
      cable: 'mains',
      length: fixed ? usual.feed : usual.cord,
      cores: cores((name, i) => [`P1.${name}`, inOf(i)], ['P1.PE', 'B1.PE']),
    },
    {
      cable: 'mains',
      length: fixed ? usual.machine : usual.tail,
      cores: cores((name, i) => [outOf(i), `${load}.${name}`], ['B1.PE', `${load}.PE`]),
    },
  ];
}

/** The cable of the mains side as stock. */
export function mainsCable(d: Design): Record<string, Value | undefined> {
  const kind = isFixed(d) ? 'wire' : 'cord';
  return {
    kind: 'cable',
    gauge: d.circuit.gauge,
    cores: `${conductors(d).length + 1}`,
    ...ordinary(`${kind}-${d.answers.practice}`),
  };
}
