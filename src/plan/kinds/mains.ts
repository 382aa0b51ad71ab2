/** The mains side: plugs, outlets, motors and other loads. */
import * as z from 'zod/mini';
import { fuseRating } from '../fuse-quantity.ts';
import { loadVolts, mainsVolts } from '../mains-quantity.ts';
import type { Feed, LoadPart, MotorPart, OutletPart, PartKind, PlugPart } from '../part-types.ts';
import * as q from '../quantity.ts';
import { define } from '../quantity-reader.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, number, once, optional, quantity, text } from '../schema-fields.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { type Add, common, type FedBy, kind, kindRow } from './kind-row.ts';
import {
  builtFeed,
  checkFeed,
  feed,
  feedOfFields,
  feedOfMarks,
  mainsTerminals,
  takenVolts,
  usualFeed,
  usualVolts,
} from './mains-feed.ts';

/** Code letters of NEMA MG 1 for locked-rotor kVA per horsepower: A to V without I, O and Q. */
const codeLetter = define('a code letter', [], ['K', 'G'], (reader) => {
  const letter = reader.word().toUpperCase();
  return /^[A-HJ-NPR-V]$/.test(letter) ? letter : undefined;
});

const PATTERN =
  'Pattern of the plug or outlet, such as NEMA 5-20, CEE 7/4, BS 1363, AS/NZS 3112, IEC 60309 16 A blue 2P+E, or its everyday name; fixed when hard-wired.';
const pattern = () => text(PATTERN);

const terminalRating = (whose: string) =>
  quantity(
    q.celsius,
    `Temperature that ${whose} marked for, such as 75 °C; if left out, 60 °C at an nec plug, that of the plug at an outlet.`,
  );

const midpoint = () =>
  optional(
    choice(
      ['earthed', 'none'],
      'Of two live legs: whether the middle between them is earthed, so that each leg has half the volts to earth. Default earthed for nec at 208 and 240 V; else nothing is taken.',
    ),
  );

const BREAKER = 'The breaker or fuse of its circuit, with the curve letter if it has one.';
const plugSchema = once(() =>
  z.strictObject({
    kind: kind(
      'plug',
      'The plug or hard-wired supply that feeds the plan. Terminals L N PE, L1 L2 PE N or L1 L2 L3 PE N.',
    ),
    volts: optional(
      quantity(
        mainsVolts,
        'Mains voltage; between the legs or phases where there are several. If left out, that of the practice.',
      ),
    ),
    pattern: optional(pattern()),
    breaker: optional(quantity(ratings.breaker, BREAKER)),
    frequency: optional(quantity(q.hertz, 'Mains frequency.')),
    fuse: optional(quantity(fuseRating, 'The fuse in the plug, with its class if one is printed on it.')),
    'terminal-rating': optional(terminalRating('the terminals of its circuit are')),
    midpoint: midpoint(),
    ...feed(),
    ...common('plug'),
  }),
);
const outletSchema = once(() =>
  z.strictObject({
    kind: kind('outlet', 'An outlet. Terminals as a plug; takes after what feeds it.'),
    pattern: optional(pattern()),
    'terminal-rating': optional(terminalRating('its terminals are')),
    midpoint: midpoint(),
    ...feed(),
    ...common('outlet'),
  }),
);
const consumer = (of: PartKind) => ({
  power: optional(quantity(ratings.motorPower, 'Rated power; without it and amps the motor is a doubt.')),
  amps: optional(
    quantity(q.amps, 'Current on the nameplate; if left out, judged at both ends of what the power allows.'),
  ),
  class: optional(choice(['I', 'II'], 'II: double-insulated, needs no PE.')),
  'plugged-into': optional(text('The outlet it is plugged into; instead of runs of its own.')),
  'returns-through': optional(
    text(
      'The joint that is the metal of the vehicle or machine, such as chassis: the minus of a DC load goes there with no core of its own.',
    ),
  ),
  ...feed(),
  ...common(of),
});
const motorSchema = once(() =>
  z.strictObject({
    kind: kind('motor', 'A motor. Terminals as a plug, or plugged-into an outlet; on DC + and -.'),
    volts: optional(
      quantity(
        loadVolts,
        'Rated voltage; with V DC its terminals are + and -. Default that of the plug, and then a doubt.',
      ),
    ),
    ...consumer('motor'),
    'locked-rotor': optional(quantity(q.amps, 'Current at standstill.')),
    code: optional(quantity(codeLetter, 'Code letter on the nameplate (NEMA MG 1), A to V.')),
    type: optional(
      choice(
        ['capacitor-start', 'split-phase', 'permanent-split', 'universal', 'three-phase'],
        'How the motor is made.',
      ),
    ),
    protector: optional(
      choice(['none', 'manual', 'automatic'], 'Overload protector in the motor, by how it resets.'),
    ),
    'service-factor': optional(
      number(
        q.serviceFactor,
        'Service factor on the nameplate, such as 1.15; with it an overload relay may be set higher (nec).',
      ),
    ),
    'starts-per-hour': optional(number(q.startsPerHour, 'Starts in an hour at the busiest.')),
    efficiency: optional(quantity(q.share, 'Efficiency at full load.')),
    'power-factor': optional(number(q.ratio, 'Power factor at full load, 0 to 1.')),
  }),
);
const loadSchema = once(() =>
  z.strictObject({
    kind: kind('load', 'Any other load. Terminals as a plug, or plugged-into an outlet; on DC + and -.'),
    volts: optional(
      quantity(loadVolts, 'Rated voltage; with V DC its terminals are + and -. Default that of the plug.'),
    ),
    ...consumer('load'),
    type: optional(
      choice(['lamp', 'heater', 'transformer', 'electronic'], 'What it is; decides its starting current.'),
    ),
  }),
);
type MotorFields = z.output<ReturnType<typeof motorSchema>>;
type LoadFields = z.output<ReturnType<typeof loadSchema>>;

const builtConsumer = (fields: MotorFields | LoadFields) => ({
  power: fields.power,
  amps: fields.amps,
  class2Insulated: fields.class === 'II',
  pluggedInto: fields['plugged-into'],
  returnsThrough: fields['returns-through'],
});

/** By its volts; where they are not stated, what returns through metal or has poles is for DC. */
const isDc = (
  { volts, 'returns-through': metal }: MotorFields | LoadFields,
  marks: ReadonlySet<string> = new Set(),
): boolean =>
  volts === undefined ? metal !== undefined || marks.has('+') || marks.has('-') : volts.kind === 'dc';

const feedOf = (fields: MotorFields | LoadFields, marks: ReadonlySet<string>): Feed | undefined =>
  isDc(fields, marks) ? 'dc' : (feedOfFields(fields) ?? feedOfMarks(marks));

const RETURNS_ON_DC = 'returns-through: only a load for V DC returns through metal; its volts are AC';

/** What only mains has, and what only direct current has. */
function checkConsumer(fields: MotorFields | LoadFields, add: Add): void {
  checkFeed(fields, add);
  if (!isDc(fields)) {
    if (fields['returns-through'] !== undefined) add(['returns-through'], RETURNS_ON_DC);
    return;
  }
  for (const key of ['phases', 'legs', 'plugged-into'] as const)
    if (fields[key] !== undefined)
      add([key], `${key}: not with V DC; a DC load has the terminals + and -, wired by runs`);
}

/** The metal that it returns through, or the outlet that it is plugged into. */
function fedThrough(fields: MotorFields | LoadFields): FedBy | undefined {
  const name = fields['returns-through'];
  if (name === undefined || !isDc(fields)) return pluggedIn(fields);
  return {
    key: 'returns-through',
    name,
    kinds: ['joint'],
    marks: new Set(['-']),
    clash: (shown) => `returns-through: a run goes to ${shown}.- as well; keep one of the two`,
  };
}

const pluggedIn = ({ 'plugged-into': name }: MotorFields | LoadFields): FedBy | undefined =>
  name === undefined
    ? undefined
    : {
        key: 'plugged-into',
        name,
        kinds: ['outlet'],
        clash: (shown) => `plugged-into: ${shown} also has runs of its own; keep one of the two`,
      };

export const plug = kindRow<PlugPart>()({
  schema: plugSchema,
  terminals: (_fields, of) => mainsTerminals(of),
  check: checkFeed,
  build: (fields, base, around) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      volts: fields.volts ?? usualVolts(around),
      pattern: fields.pattern,
      breaker: fields.breaker?.amps,
      curve: fields.breaker?.curve,
      frequency: fields.frequency,
      fuse: fields.fuse?.amps,
      fuseClass: fields.fuse?.class,
      terminalRating: fields['terminal-rating'],
      midpoint: fields.midpoint,
      ...builtFeed(fields, around.feed),
    }),
  assumed: (fields, shown, fed) =>
    takenVolts(
      fields,
      shown,
      usualVolts({
        feed: feedOfFields(fields, fields.pattern) ?? usualFeed(fields.pattern) ?? 'single',
        fedVolts: fed,
      }),
    ),
  feed: (fields, marks) =>
    feedOfFields(fields, fields.pattern) ?? feedOfMarks(marks) ?? usualFeed(fields.pattern) ?? 'single',
  passes: false,
  intent: [],
});

export const outlet = kindRow<OutletPart>()({
  schema: outletSchema,
  terminals: (_fields, of) => mainsTerminals(of),
  check: checkFeed,
  build: (fields, base, around) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      pattern: fields.pattern,
      terminalRating: fields['terminal-rating'],
      midpoint: fields.midpoint,
      ...builtFeed(fields, around.feed),
    }),
  feed: (fields, marks) => feedOfFields(fields, fields.pattern) ?? feedOfMarks(marks),
  passes: true,
  intent: ['target'],
});

export const motor = kindRow<MotorPart>()({
  schema: motorSchema,
  terminals: (_fields, of) => mainsTerminals(of),
  check: (fields, add) => {
    checkConsumer(fields, add);
    if (fields.type === 'three-phase' && fields.phases === 1)
      add(['phases'], 'phases: found 1, but type is three-phase; expected 3');
  },
  build: (fields, base, around) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      volts: fields.volts ?? around.fedVolts,
      ...builtConsumer(fields),
      lockedRotor: fields['locked-rotor'],
      code: fields.code,
      type: fields.type,
      protector: fields.protector,
      serviceFactor: fields['service-factor'],
      startsPerHour: fields['starts-per-hour'],
      efficiency: fields.efficiency,
      powerFactor: fields['power-factor'],
      ...builtFeed(fields, around.feed),
    }),
  assumed: takenVolts,
  feed: (fields, marks) =>
    fields.type === 'three-phase' && !isDc(fields, marks) ? 'three-phase' : feedOf(fields, marks),
  passes: false,
  intent: ['target'],
  fedBy: fedThrough,
});

export const load = kindRow<LoadPart>()({
  schema: loadSchema,
  terminals: (_fields, of) => mainsTerminals(of),
  check: checkConsumer,
  build: (fields, base, around) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      volts: fields.volts ?? around.fedVolts,
      ...builtConsumer(fields),
      type: fields.type,
      ...builtFeed(fields, around.feed),
    }),
  assumed: takenVolts,
  feed: feedOf,
  passes: false,
  intent: ['target'],
  fedBy: fedThrough,
});
