/** A cable: its fields, and what is made of them. */
import * as z from 'zod/mini';
import type { Cable } from './plan.ts';
import * as q from './quantity.ts';
import * as ratings from './rated-quantity.ts';
import { choice, described, flag, list, number, once, optional, quantity, text } from './schema-fields.ts';
import { withoutUndefined } from './without-undefined.ts';

const STRANDS = ['solid', 'stranded', 'fine'] as const;

export const cableSchema = once(() =>
  described(
    z.strictObject({
      kind: optional(choice(['cable'], 'A cable.')),
      gauge: quantity(q.gauge, 'Size of each core.'),
      cores: number(q.coreCount, 'Number of cores.'),
      insulation: optional(quantity(ratings.insulationVolts, 'Voltage the insulation is made for.')),
      flexible: optional(flag('true for a cord that is made to be moved; default false.')),
      strands: optional(choice(STRANDS, 'IEC 60228 class 1, 2 or 5; default stranded.')),
      'sheath-colours': optional(list(text('A colour.'), 'Colours of the cores as sold.')),
      rated: optional(quantity(q.celsius, 'Highest temperature the insulation stands.')),
      price: optional(number(q.price, 'Price, for the shopping list.')),
    }),
    'A cable by its printed data.',
  ),
);

/** `stock` is the name it has there. */
export function buildCable(
  fields: z.output<ReturnType<typeof cableSchema>>,
  stock: string | undefined,
): Cable {
  return withoutUndefined({
    stock,
    gauge: fields.gauge.gauge,
    area: fields.gauge.area,
    awg: fields.gauge.awg,
    cores: fields.cores,
    insulation: fields.insulation,
    flexible: fields.flexible ?? false,
    strands: fields.strands ?? 'stranded',
    sheathColours: fields['sheath-colours'],
    rated: fields.rated,
    price: fields.price,
  });
}
