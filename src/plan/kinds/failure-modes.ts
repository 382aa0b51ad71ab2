/** The ways to fail that are told apart, and how a plan weighs them. */
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

/** A way in which a part or a joint fails. */
export type FailureMode = (typeof FAILURE_MODES)[number];

/** Times as likely as usual, by the way to fail. */
export type Likely = { readonly [mode in FailureMode]?: number | undefined };
