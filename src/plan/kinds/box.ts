/** Enclosures. */
import * as z from 'zod/mini';
import type { BoxPart } from '../part-types.ts';
import * as q from '../quantity.ts';
import { flag, list, once, optional, quantity, text } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { common, kind, kindRow } from './kind-row.ts';

const boxSchema = once(() =>
  z.strictObject({
    kind: kind('box', 'One enclosure. Terminal PE where it is metal.'),
    holds: optional(list(text('A part.'), 'The parts inside.')),
    volume: optional(quantity(q.cubicMetres, 'Inside volume.')),
    metal: optional(flag('true when it is metal and must be earthed.')),
    divider: optional(flag('true when a barrier parts mains from low voltage.')),
    enclosure: optional(text('Degree of protection as printed, such as IP54 or NEMA 12.')),
    ...common('box'),
  }),
);

export const box = kindRow<BoxPart>()({
  schema: boxSchema,
  terminals: () => shared('box', () => new Terminals(['PE'])),
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      holds: fields.holds ?? [],
      volume: fields.volume,
      metal: fields.metal ?? false,
      divider: fields.divider,
      enclosure: fields.enclosure,
    }),
  passes: false,
  intent: [],
});
