/** The ways to fail that a plan can weigh for a part by `likely`. */
import * as z from 'zod';
import * as q from '../quantity.ts';
import { number, once } from '../schema-fields.ts';

export const FAILURE_MODES = [
  'never-makes',
  'never-breaks',
  'poor-contact',
  'lever-not-reached',
  'blade-not-home',
  'wrong-way-round',
  'core-open',
  'core-poor',
  'cores-touch',
  'tab-loose',
  'wrong-terminal',
  'changed-over',
  'blown',
  'reversed',
  'diode-open',
  'diode-shorted',
  'coil-open',
  'coil-shorted',
  'coil-part-shorted',
  'stays-out',
  'stays-in',
  'mistimed',
  'supply-dead',
  'supply-weak',
  'poles-changed',
  'wrong-volts',
  'wrong-kind',
  'feed-dead',
  'unplugged',
  'tripped',
  'dark',
  'does-not-turn',
  'meets-mains',
  'meets-earth',
] as const;
export type FailureMode = (typeof FAILURE_MODES)[number];

/** Times as likely as usual, by the way to fail. */
export type Likely = { readonly [mode in FailureMode]?: number | undefined };

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
