/** Fields of the parts on the low-voltage side. Each schema is built when its kind is first met. */
import * as z from 'zod';
import * as q from './quantity.ts';
import {
  choice,
  coil,
  contact,
  flag,
  list,
  marks,
  number,
  once,
  pole,
  quantity,
  text,
} from './schema-fields.ts';

/** Fields every kind has. */
export const common = () => ({
  marks: marks().optional(),
  price: number(q.price, 'Price, for the shopping list.').optional(),
});

const kind = <const K extends string>(name: K, description: string) => z.literal(name).describe(description);

const TABS = ['COM', 'NO', 'NC'] as const;
const switchFields = () => ({
  contact: contact().optional(),
  terminals: list(z.enum(TABS), 'The tabs it has, where one is missing: [COM, NO].').optional(),
  ...common(),
});

export const supply = once(() =>
  z.strictObject({
    kind: kind(
      'supply',
      'A low-voltage supply or control transformer. Terminals + - (DC) or ~1 ~2 (AC), mains L N.',
    ),
    output: quantity(q.voltsFrequency, 'Rated output, with its kind.'),
    limit: quantity(q.supplyLimit, 'The most it gives at its rated output.'),
    frequency: quantity(q.hertz, 'Frequency of an AC output.').optional(),
    regulation: choice(
      ['regulated', 'unregulated', 'transformer'],
      'regulated holds its voltage; unregulated and transformer rise when lightly loaded.',
    ).optional(),
    tolerance: quantity(q.share, 'Tolerance of the rated output.').optional(),
    'no-load': quantity(q.volts, 'Output voltage with nothing connected.').optional(),
    'class-2': flag('true when marked Class 2, LPS or SELV limited.').optional(),
    'fed-from': text(
      'The outlet or plug it is plugged into, or always-live (the default when its mains side is not wired).',
    ).optional(),
    ...common(),
  }),
);

export const battery = once(() =>
  z.strictObject({
    kind: kind('battery', 'A battery. Terminals + and -.'),
    output: quantity(q.voltsKind, 'Nominal voltage.'),
    capacity: quantity(q.ampHours, 'Capacity.').optional(),
    'internal-resistance': quantity(q.resistance0, 'Internal resistance.').optional(),
    lowest: quantity(
      q.volts,
      'Terminal voltage at the end of its life; default 20 % below nominal.',
    ).optional(),
    highest: quantity(q.volts, 'Terminal voltage when fresh; default 10 % above nominal.').optional(),
    ...common(),
  }),
);

export const gate = once(() =>
  z.strictObject({
    kind: kind('gate', 'A blast gate with its snap switch. Terminals COM NO NC.'),
    'pressed-when': choice(
      ['open', 'shut'],
      'The gate position that presses the switch; default open.',
    ).optional(),
    ...switchFields(),
  }),
);
export const handSwitch = once(() =>
  z.strictObject({
    kind: kind('switch', 'A hand switch that stays put. Terminals COM NO NC.'),
    ...switchFields(),
  }),
);
export const button = once(() =>
  z.strictObject({
    kind: kind('button', 'A hand switch that springs back. Terminals COM NO NC.'),
    ...switchFields(),
  }),
);
export const cutout = once(() =>
  z.strictObject({
    kind: kind(
      'cutout',
      'A bin-full, thermal, door, overload or emergency-stop contact. Terminals COM NO NC, or 95 96 (break) 97 98 (make).',
    ),
    ...switchFields(),
  }),
);

export const selector = once(() =>
  z.strictObject({
    kind: kind('selector', 'A hand switch of several positions. Terminals COM and one for each position.'),
    positions: list(text('A position.'), 'Its positions, such as [auto, off, hand]; off joins nothing.'),
    rest: text('The position it is taken to be in; default the first.').optional(),
    contact: contact().optional(),
    ...common(),
  }),
);

const technology = () =>
  choice(
    ['contact', 'solid-state'],
    'How it switches: with a contact (default) or a semiconductor.',
  ).optional();
const coilDevice = () => ({
  coil: coil(),
  contact: contact().optional(),
  poles: list(pole(), 'Its contacts, where it has other than one changeover contact.').optional(),
  technology: technology(),
  polarised: flag('true when A1 must be positive; default true only with a built-in diode.').optional(),
  'off-leakage': quantity(q.amps, 'Current a solid-state output passes while off.').optional(),
  isolation: choice(
    ['reinforced', 'basic', 'functional'],
    'Insulation between coil and contacts, where the data state it.',
  ).optional(),
  listed: flag('true when it carries the mark of a testing laboratory.').optional(),
  ...common(),
});

export const relay = once(() =>
  z.strictObject({
    kind: kind('relay', 'A relay or contactor. Coil A1 A2; contact COM NO NC unless poles says otherwise.'),
    ...coilDevice(),
  }),
);
export const timer = once(() =>
  z.strictObject({
    kind: kind('timer', 'A timer relay. Coil A1 A2, dry trigger T1 T2, contact COM NO NC (15 18 16).'),
    function: choice(['off-delay', 'on-delay'], 'off-delay lets go late; on-delay pulls in late.'),
    time: quantity(q.seconds, 'The delay it is set to.'),
    ...coilDevice(),
  }),
);
export const board = once(() =>
  z.strictObject({
    kind: kind('board', 'A relay on a small circuit board. Terminals VCC GND IN, contact COM NO NC.'),
    supply: quantity(q.voltsKind, 'Voltage the board is fed with between VCC and GND.'),
    input: choice(['low', 'high'], 'The level at IN that makes it pull in.'),
    'input-current': quantity(q.amps, 'Current at IN.').optional(),
    threshold: quantity(q.volts, 'Voltage at IN where it changes over; default half the supply.').optional(),
    coil: coil().optional(),
    contact: contact().optional(),
    technology: technology(),
    isolation: choice(
      ['reinforced', 'basic', 'functional'],
      'Insulation between input and contact.',
    ).optional(),
    listed: flag('true when it carries the mark of a testing laboratory.').optional(),
    ...common(),
  }),
);

export const diode = once(() =>
  z.strictObject({
    kind: kind('diode', 'A diode. Terminals A (anode) and K (cathode, the band).'),
    current: quantity(q.amps, 'Rated forward current.').optional(),
    reverse: quantity(q.volts, 'Rated reverse voltage.').optional(),
    zener: quantity(q.volts, 'Zener voltage, for a zener diode.').optional(),
    ...common(),
  }),
);
export const led = once(() =>
  z.strictObject({
    kind: kind('led', 'A light-emitting diode. Terminals A and K.'),
    forward: quantity(q.volts, 'Forward voltage.').optional(),
    current: quantity(q.amps, 'Rated current.').optional(),
    ...common(),
  }),
);
const resistive = () => ({
  resistance: quantity(q.ohms, 'Resistance.').optional(),
  rated: quantity(q.lampRating, 'Rated voltage, with its power or current.').optional(),
  ...common(),
});
export const resistor = once(() =>
  z.strictObject({ kind: kind('resistor', 'A resistor. Terminals 1 and 2.'), ...resistive() }),
);
export const lamp = once(() =>
  z.strictObject({ kind: kind('lamp', 'An indicator lamp. Terminals 1 and 2.'), ...resistive() }),
);
export const fuse = once(() =>
  z.strictObject({
    kind: kind('fuse', 'A fuse. Terminals 1 and 2.'),
    rating: quantity(q.amps, 'Rated current.'),
    ...common(),
  }),
);
export const joint = once(() =>
  z.strictObject({
    kind: kind(
      'joint',
      'A splice, terminal strip or wire nut; everything on it is connected. Written by its name alone.',
    ),
    ...common(),
  }),
);
