/** Low-voltage supplies and batteries. */
import * as z from 'zod/mini';
import type { Volts } from '../device-figures.ts';
import type { BatteryPart, SupplyPart } from '../part-types.ts';
import * as q from '../quantity.ts';
import * as ratings from '../rated-quantity.ts';
import { choice, flag, list, once, optional, quantity, text } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { common, kind, kindRow } from './kind-row.ts';
import { feedOfMarks } from './mains-feed.ts';

const supplySchema = once(() =>
  z.strictObject({
    kind: kind(
      'supply',
      'A supply or control transformer. Terminals + - (DC) or ~1 ~2 (AC), mains L N, or 0 and the volts of its taps.',
    ),
    output: quantity(ratings.voltsFrequency, 'Rated output, with its kind.'),
    input: optional(
      quantity(
        ratings.voltsKind,
        'What its mains side is made for; of a transformer the winding that is in use, unless taps say more.',
      ),
    ),
    taps: optional(
      list(
        quantity(ratings.voltsKind, 'A tap.'),
        'Taps of the primary winding; its mains terminals are then 0 and the volts of each tap, such as 208 and 240.',
      ),
    ),
    limit: optional(
      quantity(
        ratings.supplyLimit,
        'The most it gives at its rated output; if left out, judged at both ends of what such supplies give.',
      ),
    ),
    frequency: optional(quantity(q.hertz, 'Frequency of an AC output.')),
    regulation: optional(
      choice(
        ['regulated', 'unregulated', 'transformer'],
        'regulated holds its voltage; unregulated and transformer rise when lightly loaded. If left out of a DC supply, judged as both.',
      ),
    ),
    tolerance: optional(quantity(q.share, 'Tolerance of the rated output.')),
    'no-load': optional(quantity(ratings.volts, 'Output voltage with nothing connected.')),
    'class-2': optional(flag('true when marked Class 2, LPS or SELV limited.')),
    'fed-from': optional(
      text(
        'The outlet or plug it is plugged into, or always-live (the default when its mains side is not wired).',
      ),
    ),
    ...common('supply'),
  }),
);
const batterySchema = once(() =>
  z.strictObject({
    kind: kind('battery', 'A battery. Terminals + and -.'),
    output: quantity(ratings.voltsKind, 'Nominal voltage.'),
    capacity: optional(quantity(q.ampHours, 'Capacity.')),
    'internal-resistance': optional(quantity(q.resistance0, 'Internal resistance.')),
    lowest: optional(
      quantity(ratings.volts, 'Terminal voltage at the end of its life; default 20 % below nominal.'),
    ),
    highest: optional(quantity(ratings.volts, 'Terminal voltage when fresh; default 10 % above nominal.')),
    ...common('battery'),
  }),
);

type SupplyFields = z.output<ReturnType<typeof supplySchema>>;

/** V of the taps, the lowest first. */
const tapVolts = ({ taps }: Pick<SupplyFields, 'taps'>): number[] =>
  [...new Set((taps ?? []).map((t) => t.volts))].sort((a, b) => a - b);

function buildLimit(limit: NonNullable<SupplyFields['limit']>, output: Volts) {
  return { amps: limit.printed === 'A' ? limit.value : limit.value / output.volts, ...limit };
}

export const supply = kindRow<SupplyPart>()({
  schema: supplySchema,
  terminals: (fields, feed) => {
    const output = fields.output?.kind === 'ac' ? ['~1', '~2'] : ['+', '-'];
    const plain = feed === 'single' ? ['L', 'N'] : ['L1', 'L2'];
    const mains = fields.taps === undefined ? plain : ['0', ...tapVolts(fields).map(String)];
    return shared(`supply ${output[0]} ${mains.join()}`, () => new Terminals([...output, ...mains]));
  },
  terminalsFrom: 'output',
  check: (fields, add) => {
    const { taps, input } = fields;
    if (taps === undefined) return;
    const volts = taps.map((t) => t.volts);
    if (taps.length === 0)
      add(['taps'], 'taps: found none, expected the volts of each, such as [208 V AC, 240 V AC]');
    if (taps.some((t) => t.kind === 'dc')) add(['taps'], 'taps: found V DC; a winding with taps is for V AC');
    if (new Set(volts).size < volts.length) add(['taps'], 'taps: one voltage stands twice');
    if (input !== undefined && !volts.includes(input.volts))
      add(['input'], `input: found ${input.volts} V, expected one of the taps: ${volts.join(', ')} V`);
  },
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      output: { volts: fields.output.volts, kind: fields.output.kind },
      frequency: fields.frequency ?? fields.output.frequency,
      input: fields.input,
      taps: fields.taps === undefined ? undefined : tapVolts(fields),
      limit: fields.limit === undefined ? undefined : buildLimit(fields.limit, fields.output),
      regulation: fields.regulation,
      tolerance: fields.tolerance,
      noLoad: fields['no-load'],
      class2: fields['class-2'],
      fedFrom: fields['fed-from'],
    }),
  // It has no third phase, and takes after no plug.
  feed: (_fields, marks) => feedOfMarks(new Set([...marks].filter((mark) => mark !== 'L3'))) ?? 'single',
  passes: false,
  intent: [],
  fedBy: ({ 'fed-from': name, taps }) =>
    name === undefined
      ? undefined
      : {
          key: 'fed-from',
          name: name === 'always-live' ? undefined : name,
          kinds: ['outlet', 'plug'],
          marks: new Set(
            taps === undefined ? ['L', 'N', 'L1', 'L2'] : ['0', ...tapVolts({ taps }).map(String)],
          ),
          clash: () => 'fed-from: its mains side is wired by runs as well; keep one of the two',
        },
});

export const battery = kindRow<BatteryPart>()({
  schema: batterySchema,
  terminals: () => shared('battery', () => new Terminals(['+', '-'])),
  check: ({ lowest, highest }, add) => {
    if (lowest !== undefined && highest !== undefined && lowest > highest)
      add(['lowest'], 'lowest is above highest; expected the lower voltage here');
  },
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      output: fields.output,
      capacity: fields.capacity,
      internalResistance: fields['internal-resistance'],
      lowest: fields.lowest,
      highest: fields.highest,
    }),
  passes: false,
  intent: [],
});
