/** A cable: its fields, and what is made of them. */
import * as z from 'zod';
import type { Cable } from './plan.ts';
import * as q from './quantity.ts';
import * as ratings from './rated-quantity.ts';
import { choice, flag, list, number, once, quantity, text } from './schema-fields.ts';
import { withoutUndefined } from './without-undefined.ts';

const STRANDS = ['solid', 'stranded', 'fine'] as const;

export const cableSchema = once(() =>
  z
    .strictObject({
      kind: choice(['cable'], 'A cable.').optional(),
      gauge: quantity(q.gauge, 'Size of each core.'),
      cores: number(q.coreCount, 'Number of cores.'),
      insulation: quantity(ratings.insulationVolts, 'Voltage the insulation is made for.').optional(),
      flexible: flag('true for a cord that is made to be moved; default false.').optional(),
      strands: choice(STRANDS, 'IEC 60228 class 1, 2 or 5; default stranded.').optional(),
      'sheath-colours': list(text('A colour.'), 'Colours of the cores as sold.').optional(),
      rated: quantity(q.celsius, 'Highest temperature the insulation stands.').optional(),
      price: number(q.price, 'Price, for the shopping list.').optional(),
    })
    .describe('A cable by its printed data.'),
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
