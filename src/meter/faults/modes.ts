/** The ways in which a part or a core fails: what each is called, and what is done about it. Knows no plan and no circuit. */

import type { FailureMode as Weighed } from '../../plan/kinds/failure-modes.ts';

/** A clip lead left on is no failure of the plan's own parts. */
export type FailureMode = Weighed | 'lead-left';

/** One way to fail. */
interface ModeWords {
  /** as a column of a table has it */
  readonly name: string;
  /** what to do about it, after `CURE` is filled with the item */
  readonly cure: string;
}

/** `%` stands for the item that fails. */
const MODES = {
  'never-makes': {
    name: 'does not make',
    cure: 'Change the contact of %, or clear dust and film from it; prove it with the meter before it goes back.',
  },
  'never-breaks': {
    name: 'does not break (stuck or welded)',
    cure: 'Change %: a contact that has welded once welds again. Look for what welded it before the new one is in.',
  },
  'poor-contact': {
    name: 'makes badly',
    cure: 'Change the contact of %, or one made for so little current.',
  },
  'lever-not-reached': {
    name: 'lever not reached when open',
    cure: 'Move the switch of % until it clicks well before the gate is fully open.',
  },
  'blade-not-home': {
    name: 'lever held when shut',
    cure: 'Clear the slot of %, free the lever, and push the gate home until the switch clicks.',
  },
  'wrong-way-round': {
    name: 'mounted the wrong way round',
    cure: 'Turn the switch of % round, or move its cores to the other contact and say so in the plan.',
  },
  'core-open': { name: 'open', cure: 'Find the break in %, or run that core anew.' },
  'core-poor': {
    name: 'bad joint (many ohm)',
    cure: 'Make both ends of % anew: bare copper, screw tight, tug test.',
  },
  'cores-touch': {
    name: 'short between cores',
    cure: 'Look along % for a staple, a crushed place or bare copper, and run that piece anew.',
  },
  'tab-loose': {
    name: 'terminal loose',
    cure: 'Make the terminal %: push the tab home or tighten it, then tug at it.',
  },
  'wrong-terminal': { name: 'on another terminal', cure: 'Put % where the plan has it.' },
  'changed-over': { name: 'changed over', cure: 'Change % over at that end, as the plan has them.' },
  blown: {
    name: 'blown or out',
    cure: 'Find out why % opened before a new one of the same rating goes in; never one of a higher rating.',
  },
  reversed: { name: 'the wrong way round', cure: 'Turn % round, its band to the side the plan has for K.' },
  'diode-open': { name: 'open', cure: 'Change %.' },
  'diode-shorted': {
    name: 'shorted',
    cure: 'Change %; one that shorted was too small, or was once the wrong way round.',
  },
  'coil-open': { name: 'coil open', cure: 'Change %.' },
  'coil-shorted': { name: 'coil shorted', cure: 'Change %, and look for what overheated its coil.' },
  'coil-part-shorted': {
    name: 'coil part-shorted',
    cure: 'Change %, and look for what overheated its coil.',
  },
  'stays-out': { name: 'does not pull in', cure: 'Change %, or free what jams it.' },
  'stays-in': { name: 'does not let go', cure: 'Change %.' },
  mistimed: { name: 'wrong time', cure: 'Set the time of % anew and try it by the clock.' },
  'supply-dead': { name: 'gives nothing', cure: 'Look whether % has what feeds it; if it has, change it.' },
  'supply-weak': {
    name: 'sags under load',
    cure: 'Change % for one of the same volts and kind that gives what the plan says.',
  },
  'poles-changed': { name: 'poles changed over', cure: 'Change the two leads of % over.' },
  'wrong-volts': {
    name: 'other volts than printed in the plan',
    cure: 'Put the supply of the plan in the place of this %.',
  },
  'wrong-kind': {
    name: 'AC for DC, or DC for AC',
    cure: 'Put the supply of the plan in the place of this %.',
  },
  'feed-dead': {
    name: 'no mains comes in (breaker or fuse)',
    cure: 'Find out why the breaker or fuse ahead of % opened before it goes back on; if it opens again, leave it off and call an electrician.',
  },
  unplugged: { name: 'out of its socket', cure: 'Plug % in.' },
  tripped: {
    name: 'has tripped',
    cure: 'Find out why % tripped, put that right, and only then reset it.',
  },
  dark: { name: 'open', cure: 'Change %.' },
  'does-not-turn': {
    name: 'fed, but does not turn',
    cure: 'Unplug, and have the motor of % looked at: protector, start capacitor, start switch, bearings.',
  },
  'meets-mains': {
    name: 'loop touches mains',
    cure: 'Leave it off and unplugged. Part mains and loop in % again, renew what was damaged, and have it looked at.',
  },
  'meets-earth': {
    name: 'loop touches earth',
    cure: 'Find where a core of the loop touches earthed metal in %.',
  },
  'lead-left': { name: 'clip lead left on', cure: 'Take the clip lead off.' },
} as const satisfies Record<FailureMode, ModeWords>;

/** What is done about a failure of an item, as a sentence. */
export function cureOf(mode: FailureMode, item: string): string {
  return MODES[mode].cure.replace('%', () => item);
}
