/** What is accepted in a plan bears on some answer: each optional field, in a plan where it matters, changes one. */
import { describe, expect, it } from 'vitest';
import { answerThatChanges, type Value } from './changed-plans.ts';
import { kindsIn } from './published-schema.ts';

/** A field's value and the other that is to make a difference; an undefined one leaves the field out. */
type Pair = readonly [Value | undefined, Value];

const CONTACT: Readonly<Record<string, Pair>> = {
  ratings: [
    ['16 A 250 V AC', '3 A 30 V DC'],
    ['0.001 A 250 V AC', '0.001 A 30 V DC'],
  ],
  motor: [
    ['0.1 hp 240 V AC', '0.1 hp 120 V AC'],
    ['20 hp 240 V AC', '20 hp 120 V AC'],
  ],
  'ac-3': ['1 A', '60 A'],
  pilot: ['R300', 'Q300'],
  'ac-15': ['0.001 A', '6 A'],
  'dc-13': ['0.001 A', '6 A'],
  'locked-rotor': ['1 A', '400 A'],
  make: ['1 A', '400 A'],
  resistance: ['1 mohm', '30 ohm'],
  least: ['1 mA 5 V DC', '900 mA 5 V DC'],
  metal: ['silver', 'gold'],
};

/** What else a coil has beside the field in question. */
const DC = { rated: '12 V DC', resistance: '155 ohm' };
const AC = { rated: '24 V AC', power: '6 VA' };
const DC_COIL: Readonly<Record<string, Pair>> = {
  resistance: ['155 ohm', '400 ohm'],
  current: ['0.08 A', '0.02 A'],
  power: ['1 W', '4 W'],
  'pull-in': ['20 %', '99 %'],
  'drop-out': ['1 %', '15 %'],
  most: ['100 %', '200 %'],
  'hot-rise': ['1 K', '90 K'],
  suppressor: ['none', 'varistor'],
  tolerance: ['0 %', '20 %'],
};
const AC_COIL: Readonly<Record<string, Pair>> = {
  frequency: ['50 Hz', '60 Hz'],
  resistance: [undefined, '45 ohm'],
  current: ['0.1 A', '1 A'],
  power: ['1 VA', '90 VA'],
  'power-factor': [0.2, 0.9],
  'inrush-power-factor': [0.2, 0.9],
  'pull-in': ['20 %', '99 %'],
  'drop-out': ['1 %', '15 %'],
  most: ['100 %', '200 %'],
  inrush: ['10 VA', '90 VA'],
  suppressor: ['rc', 'diode'],
};

/** The coil of `base` with one field set; what gives the same figure is left out. */
function coilWith(base: Readonly<Record<string, string>>, field: string, value: Value | undefined): Value {
  const draws = ['resistance', 'current', 'power'];
  const same = (key: string) => draws.includes(key) && draws.includes(field) && value !== undefined;
  const kept = Object.entries(base).filter(([key]) => key !== field && !same(key));
  const coil: Record<string, unknown> = Object.fromEntries(kept);
  if (value !== undefined) coil[field] = value;
  // an AC coil's resistance is its copper and says nothing of its VA
  if (base === AC && field === 'resistance') coil.power = AC.power;
  return coil;
}

const COMMON: Readonly<Record<string, Pair>> = { price: [1, 2] };

const FIELDS: Readonly<Record<string, Pair>> = {
  frequency: ['50 Hz', '60 Hz'],
  regulation: ['regulated', 'unregulated'],
  tolerance: ['0 %', '25 %'],
  'no-load': ['12.5 V', '40 V'],
  'class-2': [true, false],
  'fed-from': ['always-live', 'P1'],
  capacity: ['0.1 Ah', '900 Ah'],
  'internal-resistance': ['0.01 ohm', '60 ohm'],
  lowest: ['6 V', '12 V'],
  highest: ['13 V', '24 V'],
  'pressed-when': ['open', 'shut'],
  terminals: [
    ['COM', 'NO'],
    ['COM', 'NO', 'NC'],
  ],
  rest: ['auto', 'off'],
  technology: ['contact', 'solid-state'],
  polarised: [true, false],
  'off-leakage': ['0.01 mA', '90 mA'],
  isolation: ['reinforced', 'basic'],
  listed: [true, false],
  'input-current': ['0.001 mA', '90 mA'],
  threshold: ['0.5 V', '4.5 V'],
  current: ['0.001 A', '1 A'],
  reverse: ['1 V', '1000 V'],
  zener: ['1 V', '90 V'],
  resistance: ['10 ohm', '3000 ohm'],
  rated: ['3 V DC 1 W', '24 V DC 10 W'],
  forward: ['1.6 V', '3.4 V'],
  pattern: ['NEMA 5-15', 'BS 1363'],
  breaker: ['6 A B', '63 A D'],
  fuse: ['1 A', '13 A'],
  phases: [undefined, 3],
  legs: [undefined, 2],
  power: ['0.1 kW', '4 kW'],
  amps: ['0.5 A', '60 A'],
  class: ['I', 'II'],
  'plugged-into': [undefined, 'X1'],
  'locked-rotor': ['10 A', '900 A'],
  code: ['A', 'V'],
  type: ['capacitor-start', 'universal'],
  protector: ['none', 'manual'],
  'starts-per-hour': [1, 900],
  'service-factor': [1, 1.15],
  setting: ['5 A', '50 A'],
  reset: ['manual', 'automatic'],
  efficiency: ['30 %', '95 %'],
  'power-factor': [0.3, 0.95],
  volume: ['1 in3', '900 in3'],
  metal: [true, false],
  divider: [true, false],
  enclosure: ['IP20', 'IP65'],
  insulation: ['50 V', '1000 V'],
  flexible: [true, false],
  strands: ['solid', 'fine'],
  'terminal-rating': ['60 °C', '75 °C'],
  'sheath-colours': [undefined, ['red', 'white']],
  gauge: ['26 AWG', '10 AWG'],
  input: ['120 V AC', '60 V AC'],
  taps: [undefined, ['208 V AC', '240 V AC']],
  midpoint: ['earthed', 'none'],
  'returns-through': [undefined, 'chassis'],
  shows: ['all gates shut', 'a gate is open'],
  bistable: [undefined, 'toggle'],
  pulse: ['200 ms', 'continuous'],
  supply: ['permanent', 'none'],
  limit: ['10 mA', '5 A'],
  time: ['0 s', '90 s'],
  rating: ['0.1 A', '60 A'],
  volts: ['120 V AC', '240 V AC'],
  'trigger-current': ['0.1 mA', '100 mA'],
  'trigger-resistance': ['0.01 ohm', '300 ohm'],
};
/** Where the name alone does not say which values make sense. */
const OF_KIND: Readonly<Record<string, Pair>> = {
  'load.type': ['heater', 'transformer'],
  'cable.rated': ['60 °C', '105 °C'],
  'led.current': ['0.001 A', '1 A'],
  'fuse.class': ['gG', 'aM'],
  'load.volts': ['120 V AC', '240 V AC'],
};

/** Which third of the fields is tried; those of a new kind are tried whole by whoever adds it. */
const FROM = process.env.PULLIN_FIELDS_FROM ?? '0';
const isTurn = (_: unknown, i: number): boolean => FROM === 'all' || i % 3 === Number(FROM);

/** Of fields that several kinds have alike, each kind tries two of three, and each leaves out others than the kind before it. */
const twoOfThree = (kinds: readonly string[], fields: readonly string[]): [string, string][] =>
  kinds.flatMap((kind, k) =>
    fields
      .filter((_, i) => FROM === 'all' || (i + k) % 3 !== 0)
      .map((field): [string, string] => [kind, field]),
  );

/** Every optional field of every kind of part and of a cable, from the published schema of the plan. */
function optionalFields(): [string, string][] {
  const kinds = [...kindsIn('parts'), ...kindsIn('stock').filter(({ kind }) => kind === 'cable')];
  return kinds.flatMap(({ kind, of: s }) => {
    // Of `likely` see tests/meter/faults/modes.test.ts.
    const inner = ['contact', 'coil', 'poles', 'holds', 'likely'];
    return Object.keys(s.properties!)
      .filter((field) => !['kind', 'marks', 'names'].includes(field) && !inner.includes(field))
      .filter((field) => !s.required?.includes(field) && !(kind === 'cable' && field === 'cores'))
      .map((field): [string, string] => [kind, field]);
  });
}

describe('every optional field changes some answer', { timeout: 240_000 }, () => {
  // Each takes its turn: a third in a run. PULLIN_FIELDS_FROM begins with another, all where it is `all`.
  it.each(optionalFields().filter(isTurn))('%s: %s', (kind, field) => {
    const pair = OF_KIND[`${kind}.${field}`] ?? COMMON[field] ?? FIELDS[field];
    expect(pair, 'two values to try').toBeDefined();
    expect(answerThatChanges(kind, [field], ...pair!)).toBeDefined();
  });
  const contacts = ['gate', 'switch', 'button', 'cutout', 'selector', 'relay', 'timer', 'board'];
  it.each(twoOfThree(contacts, Object.keys(CONTACT)))('%s: contact.%s', (kind, field) =>
    expect(answerThatChanges(kind, ['contact', field], ...CONTACT[field]!)).toBeDefined(),
  );
  /** A timer's input is electronic: it has no copper that warms and no armature, and plans may still say so. */
  const isOfWinding = ([kind, field]: readonly [string, string]) =>
    kind === 'timer' && ['hot-rise', 'tolerance', 'power-factor', 'inrush-power-factor'].includes(field);
  it.each(twoOfThree(['relay', 'timer', 'board'], Object.keys(DC_COIL)).filter((c) => !isOfWinding(c)))(
    '%s: coil.%s on DC',
    (kind, field) => {
      const [a, b] = DC_COIL[field]!.map((value) => coilWith(DC, field, value));
      expect(answerThatChanges(kind, ['coil'], a, b!)).toBeDefined();
    },
  );
  it.each(twoOfThree(['relay', 'timer'], Object.keys(AC_COIL)).filter((c) => !isOfWinding(c)))(
    '%s: coil.%s on AC',
    (kind, field) => {
      const [a, b] = AC_COIL[field]!.map((value) => coilWith(AC, field, value));
      expect(answerThatChanges(kind, ['coil'], a, b!)).toBeDefined();
    },
  );
});
