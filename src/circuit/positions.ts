/**
 * Where a relay goes next by what its coil sees: one rule for every machine here, in truth values as in functions of
 * inputs.
 */
import type { Relay } from './circuit.ts';

/** Truth values, or functions that have them. */
export interface Truths<T> {
  and(a: T, b: T): T;
  or(a: T, b: T): T;
  not(a: T): T;
}

export const BOOLEANS: Truths<boolean> = {
  and: (a, b) => a && b,
  or: (a, b) => a || b,
  not: (a) => !a,
};

/** Whether all that it senses is enough to pull in, and whether some of it is so little that it lets go. */
export interface Sensing<T> {
  readonly on: T;
  readonly off: T;
  /** a timer with a dry trigger has no supply to time by */
  readonly lost?: T;
}

/**
 * In from pull-in on, out from drop-out down, between the two as it was. A set-reset relay goes in while its first coil
 * alone is fed and out while its second alone is; with both fed nothing is sure, and it is left as it was. A toggling
 * relay goes to where its cam is not while its coil is in, and the cam follows while its coil is out.
 */
export function nextPosition<T>(
  { and, or, not }: Truths<T>,
  relay: Relay,
  sensing: (relay: number) => Sensing<T>,
  now: (relay: number) => T,
): T {
  const choose = (when: T, yes: T, no: T) => or(and(when, yes), and(not(when), no));
  const { index, latch, of: owner } = relay;
  const was = now(index);
  if (owner !== undefined && relay.senses.length === 0) return choose(sensing(owner).off, now(owner), was);
  const { on, off } = sensing(index);
  if (latch?.by === 'cam') return choose(on, not(now(latch.relay)), was);
  if (latch?.by === 'reset') {
    const back = sensing(latch.relay).on;
    return or(and(on, not(back)), and(was, or(on, not(back))));
  }
  return or(on, and(was, not(off)));
}

/** Whether a relay is one of the plan's, and no cam or second coil of another. */
export const isOwn = (relay: Relay): boolean => relay.of === undefined;

/** Relays that move late. */
export const timersOf = (relays: readonly Relay[]): Relay[] =>
  relays.filter((r) => r.delay !== undefined && r.delay.seconds > 0);
