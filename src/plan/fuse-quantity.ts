/** The current of a fuse with its class. */
import type { FuseClass } from './part-types.ts';
import { define, Problem } from './quantity-reader.ts';
import { AMP } from './quantity-units.ts';

export const FUSE_CLASSES = ['gG', 'aM', 'time-delay', 'fast'] as const satisfies readonly FuseClass[];

/** `10 A`; `10 A gG` with the class printed on it. */
export const fuseRating = define(
  "the fuse's current",
  ['A'],
  ['13 A', '10 A gG'],
  (reader): { amps: number; class?: FuseClass } | Problem | undefined => {
    const value = reader.number();
    const factor = value === undefined ? undefined : reader.unit(AMP);
    if (value === undefined || factor === undefined) return undefined;
    if (value <= 0) return new Problem('expected more than zero amperes');
    const opens = reader.take(...FUSE_CLASSES) as FuseClass | undefined;
    return { amps: value * factor, ...(opens !== undefined && { class: opens }) };
  },
);
