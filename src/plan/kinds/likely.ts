/** `likely:` of a part, which weighs the ways it can fail. */
import * as z from 'zod';
import { FAILURE_MODES, type FailureMode } from '../failure-modes.ts';
import * as q from '../quantity.ts';
import { number, once } from '../schema-fields.ts';

const shape = () =>
  Object.fromEntries(
    FAILURE_MODES.map((mode) => [
      mode,
      number(q.times, 'Times as likely as with such parts in general.').optional(),
    ]),
  ) as { [mode in FailureMode]: z.ZodOptional<ReturnType<typeof number>> };

/** `likely:` */
export const likely = once(() =>
  z
    .strictObject(shape())
    .describe(
      'How much likelier than with such parts in general this one fails, by the way to fail: {never-makes: 5}. It orders the suspects of "pullin hunt".',
    ),
);
