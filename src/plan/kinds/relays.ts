/** Relays, timer relays and relay boards. */
import * as z from 'zod';
import type { BoardPart, RelayPart, TimerPart } from '../part-types.ts';
import * as q from '../quantity.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, flag, list, once, quantity } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { buildCoil, checkCoil, coil } from './coil.ts';
import { buildContact, contact } from './contact.ts';
import { type Add, common, kind, kindRow } from './kind-row.ts';
import { buildPoles, checkPoles, pole, poleNames } from './poles.ts';

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

const relaySchema = once(() =>
  z.strictObject({
    kind: kind('relay', 'A relay or contactor. Coil A1 A2; contact COM NO NC unless poles says otherwise.'),
    ...coilDevice(),
  }),
);
const timerSchema = once(() =>
  z.strictObject({
    kind: kind('timer', 'A timer relay. Coil A1 A2, dry trigger T1 T2, contact COM NO NC (15 18 16).'),
    function: choice(['off-delay', 'on-delay'], 'off-delay lets go late; on-delay pulls in late.'),
    time: quantity(q.seconds, 'The delay it is set to.').optional(),
    ...coilDevice(),
  }),
);
const boardSchema = once(() =>
  z.strictObject({
    kind: kind('board', 'A relay on a small circuit board. Terminals VCC GND IN, contact COM NO NC.'),
    supply: quantity(ratings.voltsKind, 'Voltage the board is fed with between VCC and GND.'),
    input: choice(['low', 'high'], 'The level at IN that makes it pull in.'),
    'input-current': quantity(q.amps, 'Current at IN.').optional(),
    threshold: quantity(
      ratings.volts,
      'Voltage at IN where it changes over; default half the supply.',
    ).optional(),
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

const COIL = ['A1', 'A2'] as const;
/** DIN 72552, as on automotive relays */
const COIL_ALIASES = [
  ['86', 'A1'],
  ['85', 'A2'],
] as const;

type DeviceFields = z.output<ReturnType<typeof relaySchema>> | z.output<ReturnType<typeof timerSchema>>;

function terminals(fields: DeviceFields): Terminals {
  const timer = fields.kind === 'timer';
  const make = (): Terminals => {
    const { names, aliases } = poleNames(fields.poles, timer);
    const contacts = names.flatMap((one) =>
      [one.common, one.make, one.break].filter((name) => name !== undefined),
    );
    const trigger = timer ? ['T1', 'T2'] : [];
    return new Terminals([...new Set([...COIL, ...trigger, ...contacts])], [...COIL_ALIASES, ...aliases]);
  };
  return fields.poles === undefined ? shared(fields.kind, make) : make();
}

function check(fields: DeviceFields, add: Add): void {
  if (fields.coil !== undefined) checkCoil(fields.coil, add);
  checkPoles(fields, add);
}

const device = (fields: DeviceFields) => ({
  coil: buildCoil(fields.coil),
  poles: buildPoles(fields, fields.kind === 'timer'),
  technology: fields.technology ?? ('contact' as const),
  polarised: fields.polarised,
  off_leakage: fields['off-leakage'],
  isolation: fields.isolation,
  listed: fields.listed,
});

export const relay = kindRow<RelayPart>()({
  schema: relaySchema,
  terminals,
  check,
  build: (fields, base) => withoutUndefined({ ...base, kind: fields.kind, ...device(fields) }),
  passes: true,
  intent: ['target'],
});

export const timer = kindRow<TimerPart>()({
  schema: timerSchema,
  terminals,
  check,
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      ...device(fields),
      function: fields.function,
      time: fields.time,
    }),
  passes: true,
  intent: ['target'],
});

export const board = kindRow<BoardPart>()({
  schema: boardSchema,
  terminals: () => shared('board', () => new Terminals(['VCC', 'GND', 'IN', 'COM', 'NO', 'NC'])),
  check: (fields, add) => {
    if (fields.coil !== undefined) checkCoil(fields.coil, add);
  },
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      supply: fields.supply,
      input: fields.input,
      inputCurrent: fields['input-current'],
      threshold: fields.threshold,
      coil: fields.coil === undefined ? undefined : buildCoil(fields.coil),
      poles: [{ index: 1, common: 'COM', make: 'NO', break: 'NC', contact: buildContact(fields.contact) }],
      technology: fields.technology ?? ('contact' as const),
      isolation: fields.isolation,
      listed: fields.listed,
    }),
  passes: true,
  intent: ['target'],
});
