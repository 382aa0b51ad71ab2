/** Relays, timer relays and relay boards. */
import * as z from 'zod/mini';
import type { BoardPart, PartKind, RelayPart, TimerPart } from '../part-types.ts';
import * as q from '../quantity.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, flag, list, once, optional, quantity } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { buildCoil, checkCoil, coil } from './coil.ts';
import { buildContact, contact } from './contact.ts';
import { type Add, common, kind, kindRow } from './kind-row.ts';
import { buildPoles, checkPoles, pole, poleNames } from './poles.ts';

const technology = () =>
  optional(
    choice(['contact', 'solid-state'], 'How it switches: with a contact (default) or a semiconductor.'),
  );
const coilDevice = (of: PartKind) => ({
  coil: coil(),
  contact: optional(contact()),
  poles: optional(list(pole(), 'Its contacts, where it has other than one changeover contact.')),
  technology: technology(),
  polarised: optional(flag('true when A1 must be positive; default true only with a built-in diode.')),
  'off-leakage': optional(quantity(q.amps, 'Current a solid-state output passes while off.')),
  isolation: optional(
    choice(
      ['reinforced', 'basic', 'functional'],
      'Insulation between coil and contacts, where the data state it; of a timer also between its supply and T1 T2.',
    ),
  ),
  listed: optional(flag('true when it carries the mark of a testing laboratory.')),
  ...common(of),
});

const relaySchema = once(() =>
  z.strictObject({
    kind: kind('relay', 'A relay or contactor. Coil A1 A2; contact COM NO NC unless poles says otherwise.'),
    bistable: optional(
      choice(
        ['toggle', 'set-reset'],
        'It stays put after a pulse: toggle changes over at each, set-reset goes in on A1 A2 and out on B1 B2.',
      ),
    ),
    pulse: optional(
      quantity(
        q.pulse,
        'Longest time its coil may stay fed, or continuous where it may for good. Asked for where a contact that stays put feeds the coil of a bistable relay.',
      ),
    ),
    ...coilDevice('relay'),
  }),
);
const timerSchema = once(() =>
  z.strictObject({
    kind: kind('timer', 'A timer relay. Coil A1 A2, dry trigger T1 T2, contact COM NO NC (15 18 16).'),
    function: choice(['off-delay', 'on-delay'], 'off-delay lets go late; on-delay pulls in late.'),
    time: optional(quantity(q.delay, 'The delay it is set to.')),
    supply: optional(
      choice(
        ['permanent', 'none'],
        'What it works from while it times. permanent: A1 A2 have to stay fed, and T1 T2 trigger it; the default where T1 or T2 is used. none: from what it stored, so that it is started and stopped by its supply.',
      ),
    ),
    'trigger-current': optional(
      quantity(q.amps, 'Current that the timer itself sends through a dry contact on T1 T2.'),
    ),
    'trigger-resistance': optional(
      quantity(q.ohms, 'Resistance of the loop on T1 T2 up to which the timer surely takes it as closed.'),
    ),
    ...coilDevice('timer'),
  }),
);
const boardSchema = once(() =>
  z.strictObject({
    kind: kind('board', 'A relay on a small circuit board. Terminals VCC GND IN, contact COM NO NC.'),
    supply: quantity(ratings.voltsKind, 'Voltage the board is fed with between VCC and GND.'),
    input: choice(['low', 'high'], 'The level at IN that makes it pull in.'),
    'input-current': optional(quantity(q.amps, 'Current at IN.')),
    threshold: optional(
      quantity(ratings.volts, 'Voltage at IN where it changes over; default half the supply.'),
    ),
    coil: optional(coil()),
    contact: optional(contact()),
    technology: technology(),
    isolation: optional(
      choice(['reinforced', 'basic', 'functional'], 'Insulation between input and contact.'),
    ),
    listed: optional(flag('true when it carries the mark of a testing laboratory.')),
    ...common('board'),
  }),
);

const COIL = ['A1', 'A2'] as const;
/** the coil that lets a bistable relay go */
const RESET = ['B1', 'B2'] as const;
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
    const more = timer ? ['T1', 'T2'] : hasReset(fields) ? RESET : [];
    return new Terminals([...new Set([...COIL, ...more, ...contacts])], [...COIL_ALIASES, ...aliases]);
  };
  const name = hasReset(fields) ? 'relay set-reset' : fields.kind;
  return fields.poles === undefined ? shared(name, make) : make();
}

const hasReset = (fields: DeviceFields): boolean =>
  fields.kind === 'relay' && fields.bistable === 'set-reset';

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
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      ...device(fields),
      bistable: fields.bistable,
      pulse: fields.pulse,
    }),
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
      supplied: fields.supply,
      triggerCurrent: fields['trigger-current'],
      triggerResistance: fields['trigger-resistance'],
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
