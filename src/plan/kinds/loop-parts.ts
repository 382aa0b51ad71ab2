/** Parts with two ends and no setting: diodes, lamps, resistors and fuses; and joints. */
import * as z from 'zod/mini';
import { FUSE_CLASSES } from '../fuse-quantity.ts';
import type { DiodePart, FusePart, JointPart, LedPart, PartKind, ResistorPart } from '../part-types.ts';
import * as q from '../quantity.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, once, optional, quantity, text } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { common, kind, kindRow } from './kind-row.ts';

const shows = () =>
  optional(
    text('What its light tells the person who sees it, in free words; reports and drawings carry them.'),
  );

const diodeSchema = once(() =>
  z.strictObject({
    kind: kind('diode', 'A diode. Terminals A (anode) and K (cathode, the band).'),
    current: optional(quantity(q.amps, 'Rated forward current.')),
    reverse: optional(quantity(ratings.volts, 'Rated reverse voltage.')),
    zener: optional(quantity(ratings.volts, 'Zener voltage, for a zener diode.')),
    ...common('diode'),
  }),
);
const ledSchema = once(() =>
  z.strictObject({
    kind: kind('led', 'A light-emitting diode. Terminals A and K.'),
    forward: optional(quantity(ratings.volts, 'Forward voltage.')),
    current: optional(quantity(q.amps, 'Rated current.')),
    shows: shows(),
    ...common('led'),
  }),
);
const resistive = (of: PartKind) => ({
  resistance: optional(quantity(q.ohms, 'Resistance.')),
  rated: optional(quantity(ratings.lampRating, 'Rated voltage, with its power or current.')),
  ...common(of),
});
const resistorSchema = once(() =>
  z.strictObject({ kind: kind('resistor', 'A resistor. Terminals 1 and 2.'), ...resistive('resistor') }),
);
const lampSchema = once(() =>
  z.strictObject({
    kind: kind('lamp', 'An indicator lamp. Terminals 1 and 2.'),
    shows: shows(),
    ...resistive('lamp'),
  }),
);
const fuseSchema = once(() =>
  z.strictObject({
    kind: kind('fuse', 'A fuse. Terminals 1 and 2.'),
    rating: optional(quantity(q.amps, 'Rated current; if left out, asked for.')),
    class: optional(
      choice(
        FUSE_CLASSES,
        'How it opens: gG (general, IEC 60269), aM (short circuit only), time-delay or fast.',
      ),
    ),
    ...common('fuse'),
  }),
);
const jointSchema = once(() =>
  z.strictObject({
    kind: kind(
      'joint',
      'A splice, terminal strip or wire nut; everything on it is connected. Written by its name alone.',
    ),
    ...common('joint'),
  }),
);

const polar = () => shared('A K', () => new Terminals(['A', 'K']));
const twoEnds = () => shared('1 2', () => new Terminals(['1', '2']));

export const diode = kindRow<DiodePart>()({
  schema: diodeSchema,
  terminals: polar,
  build: ({ kind: own, current, reverse, zener }, base) =>
    withoutUndefined({ ...base, kind: own, current, reverse, zener }),
  passes: false,
  intent: [],
});

export const led = kindRow<LedPart>()({
  schema: ledSchema,
  terminals: polar,
  build: ({ kind: own, forward, current, shows: told }, base) =>
    withoutUndefined({ ...base, kind: own, forward, current, shows: told }),
  passes: false,
  intent: ['lamp'],
});

export const resistor = kindRow<ResistorPart>()({
  schema: resistorSchema,
  terminals: twoEnds,
  build: ({ kind: own, resistance, rated }, base) =>
    withoutUndefined({ ...base, kind: own, resistance, rated }),
  passes: false,
  intent: [],
});

export const lamp = kindRow<ResistorPart>()({
  schema: lampSchema,
  terminals: twoEnds,
  build: ({ kind: own, resistance, rated, shows: told }, base) =>
    withoutUndefined({ ...base, kind: own, resistance, rated, shows: told }),
  passes: false,
  intent: ['lamp'],
});

export const fuse = kindRow<FusePart>()({
  schema: fuseSchema,
  terminals: twoEnds,
  build: ({ kind: own, rating, class: opens }, base) =>
    withoutUndefined({ ...base, kind: own, rating, class: opens }),
  passes: true,
  intent: [],
});

export const joint = kindRow<JointPart>()({
  schema: jointSchema,
  terminals: () => shared('joint', () => new Terminals([''])),
  build: ({ kind: own }, base) => withoutUndefined({ ...base, kind: own }),
  passes: true,
  intent: [],
});
