/** What the lists say of each kind of part, one row each. */

import { isContactor } from '../circuit/thresholds.ts';
import type { ByKind } from '../plan/by-kind.ts';
import { isFixedFeed } from '../plan/fixed-feed.ts';
import type {
  BoardPart,
  BoxPart,
  ButtonPart,
  CutoutPart,
  DiodePart,
  Feed,
  GatePart,
  LoadPart,
  MotorPart,
  PartByKind,
  PartKind,
  PlugPart,
  RelayPart,
  ResistorPart,
  SupplyPart,
  SwitchPart,
  TimerPart,
} from '../plan/part-types.ts';
import type { Study } from '../study/study.ts';
import type { EndMethod } from './end-methods.ts';
import { leastContacts } from './least-contacts.ts';
import { leastFuse } from './least-fuse.ts';
import { leastSupply } from './least-loop.ts';
import { leastBox, leastPlug } from './least-mains.ts';
import type { LeastRatings } from './materials-model.ts';
import {
  amps,
  coilWords,
  contactWords,
  num,
  ohms,
  poleWords,
  power,
  volts,
  volume,
} from './printed-words.ts';
import type { Section } from './wiring-section.ts';

interface Listed<Part> {
  /** what it is called in a shop */
  readonly noun: string;
  /** keys that say how it is fitted and fed, which a shop does not ask */
  readonly fitted: readonly (keyof Part)[];
  /** whether there is a rating to look for */
  readonly rated: boolean;
  /** the section that a core on it belongs to where no source reaches the core */
  readonly side: Section | 'both';
  /** wiring of this section starts at it */
  readonly startsWiring?: Section;
}

const low = { fitted: [], rated: true, side: 'low voltage' } as const;
const mains = { fitted: [], rated: true, side: 'mains' } as const;

export const LISTED: { readonly [K in PartKind]: Listed<PartByKind[K]> } = {
  supply: { noun: 'supply', fitted: ['fedFrom'], rated: true, side: 'both', startsWiring: 'low voltage' },
  battery: { ...low, noun: 'battery', startsWiring: 'low voltage' },
  gate: { ...low, noun: 'gate switch', fitted: ['pressedWhen'] },
  switch: { ...low, noun: 'switch' },
  button: { ...low, noun: 'button' },
  cutout: { ...low, noun: 'cut-out' },
  selector: { ...low, noun: 'selector' },
  relay: { ...low, noun: 'relay' },
  timer: { ...low, noun: 'timer' },
  board: { ...low, noun: 'board' },
  diode: { ...low, noun: 'diode' },
  led: { ...low, noun: 'light-emitting diode' },
  resistor: { ...low, noun: 'resistor' },
  lamp: { ...low, noun: 'lamp' },
  fuse: { ...low, noun: 'fuse' },
  joint: { ...low, noun: 'joint', rated: false },
  plug: { ...mains, noun: 'plug', startsWiring: 'mains' },
  outlet: { ...mains, noun: 'outlet', rated: false },
  motor: { ...mains, noun: 'motor', fitted: ['pluggedInto', 'startsPerHour'], rated: false },
  load: { ...mains, noun: 'load', fitted: ['pluggedInto'], rated: false },
  box: { ...low, noun: 'box', fitted: ['holds'] },
};

const always = (method: EndMethod) => () => method;

/** How the end of a core is joined to it. Common practice, no source. */
export const END_METHOD: ByKind<[], EndMethod> = {
  supply: always('screw'),
  battery: always('battery'),
  gate: always('tab'),
  switch: always('screw'),
  button: always('screw'),
  cutout: always('screw'),
  selector: always('screw'),
  relay: always('screw'),
  timer: always('screw'),
  board: always('screw'),
  diode: always('lead'),
  led: always('lead'),
  resistor: always('lead'),
  lamp: always('lead'),
  fuse: always('screw'),
  joint: always('splice'),
  plug: (part) => (isFixedFeed(part) ? 'screw' : 'clamp'),
  outlet: always('clamp'),
  motor: always('splice'),
  load: always('splice'),
  box: always('earth'),
};

/** What is printed on it, in the order in which a shop asks for it. */
export const PRINTED: ByKind<[], string[]> = {
  supply: printedSupply,
  battery: ({ output, capacity }) => [volts(output), capacity === undefined ? '' : `${num(capacity)} Ah`],
  gate: printedSwitch,
  switch: printedSwitch,
  button: printedSwitch,
  cutout: (part) => [...overloadWords(part), ...printedSwitch(part)],
  selector: ({ positions, contact }) => [`positions ${positions.join(' ')}`, ...contactWords(contact)],
  relay: printedRelay,
  timer: (part) => [
    `${part.function}${part.time === undefined ? '' : ` ${num(part.time)} s`}`,
    ...printedRelay(part),
  ],
  board: printedBoard,
  diode: printedDiode,
  led: ({ forward, current }) => [forward === undefined ? '' : `${num(forward)} V`, amps(current)],
  resistor: printedResistor,
  lamp: printedResistor,
  fuse: ({ rating }) => [amps(rating)],
  joint: () => [],
  plug: printedPlug,
  outlet: ({ pattern, feed }) => [pattern ?? NO_PATTERN, feedWords(pattern, feed)],
  motor: printedLoad,
  load: printedLoad,
  box: printedBox,
};

const NO_PATTERN = 'pattern not stated';

/** A pattern says itself for how many live conductors it is. */
function feedWords(pattern: string | undefined, feed: Feed): string {
  if (pattern !== undefined && pattern !== 'fixed') return '';
  return { single: '', 'two-leg': 'two live legs', 'three-phase': 'three phases', dc: '' }[feed];
}

function printedSupply({ limit, output, regulation, class2 }: SupplyPart): string[] {
  const most =
    limit === undefined
      ? ''
      : limit.printed === 'A'
        ? amps(limit.value)
        : `${num(limit.value)} ${limit.printed}`;
  return [volts(output), most, regulation ?? '', class2 === true ? 'Class 2' : ''];
}

function printedSwitch(part: GatePart | SwitchPart | ButtonPart | CutoutPart): string[] {
  const { contact, tabs } = part;
  if ('throws' in part && part.throws) return poleWords(part.throws);
  return [...contactWords(contact), `tabs ${tabs.join(' ')}`];
}

/** What an overload relay is asked for by. */
function overloadWords({ setting, reset }: CutoutPart): string[] {
  if (setting === undefined) return [];
  return [
    'overload relay',
    `dial that takes in ${num(setting)} A`,
    reset === undefined ? '' : `${reset} reset`,
  ];
}

function printedRelay(part: RelayPart | TimerPart): string[] {
  const { coil, technology, poles } = part;
  return [
    part.kind === 'relay' && isContactor(part) ? 'contactor' : '',
    ...coilWords(coil),
    technology === 'solid-state' ? technology : '',
    ...poleWords(poles),
    ...barrierWords(part),
  ];
}

function printedBoard(part: BoardPart): string[] {
  const { supply, input, inputCurrent, threshold, coil, poles } = part;
  return [
    volts(supply),
    `input ${input}`,
    amps(inputCurrent),
    threshold === undefined ? '' : `changes over at ${num(threshold)} V`,
    ...(coil === undefined ? [] : coilWords(coil)),
    ...poleWords(poles),
    ...barrierWords(part),
  ];
}

/** What keeps mains off the loop inside a relay, and who vouches for it. */
function barrierWords({ isolation, listed }: RelayPart | TimerPart | BoardPart): string[] {
  return [
    isolation === undefined ? '' : `${isolation} insulation`,
    listed === undefined
      ? ''
      : listed
        ? 'marked by a testing laboratory'
        : 'not marked by a testing laboratory',
  ];
}

function printedDiode({ current, reverse, zener }: DiodePart): string[] {
  return [
    amps(current),
    reverse === undefined ? '' : `${num(reverse)} V reverse`,
    zener === undefined ? '' : `zener ${num(zener)} V`,
  ];
}

function printedResistor({ resistance, rated }: ResistorPart): string[] {
  return [
    ohms(resistance),
    rated === undefined ? '' : volts(rated),
    rated?.watts === undefined ? amps(rated?.amps) : `${num(rated.watts)} W`,
  ];
}

function printedPlug(part: PlugPart): string[] {
  const { pattern, feed, breaker, curve, fuse } = part;
  return [
    pattern ?? NO_PATTERN,
    feedWords(pattern, feed),
    volts(part.volts),
    breaker === undefined ? '' : `on a ${amps(breaker)} ${curve ?? ''} breaker`.replace('  ', ' '),
    fuse === undefined ? '' : `fuse ${amps(fuse)}`,
  ];
}

function printedLoad(part: MotorPart | LoadPart): string[] {
  return [power(part.power), amps(part.amps), volts(part.volts), part.type ?? ''];
}

function printedBox(part: BoxPart): string[] {
  const { metal, divider, enclosure } = part;
  return [
    metal ? 'metal' : 'plastic',
    volume(part.volume),
    divider === true ? 'with divider' : '',
    enclosure ?? '',
  ];
}

const nothing = (): LeastRatings => ({ least: [], untold: [] });
const notJudged = (): LeastRatings => ({ least: [], untold: ['no check looks at its ratings'] });

/** The least ratings that would still pass, of all parts that are the same thing to buy. */
export const LEAST: ByKind<[study: Study, names: readonly string[]], LeastRatings> = {
  supply: (part, study, names) => leastSupply(study, names, part),
  battery: notJudged,
  gate: leastContact,
  switch: leastContact,
  button: leastContact,
  cutout: leastContact,
  selector: leastContact,
  relay: leastContact,
  timer: leastContact,
  board: leastContact,
  diode: notJudged,
  led: notJudged,
  resistor: notJudged,
  lamp: notJudged,
  fuse: (part, study, names) => leastFuse(study, names, part),
  joint: nothing,
  plug: (part, study, names) => leastPlug(study, names, part),
  outlet: nothing,
  motor: nothing,
  load: nothing,
  box: (_part, study, names) => leastBox(study, names),
};

function leastContact(_part: object, study: Study, names: readonly string[]): LeastRatings {
  const found = leastContacts(study, names);
  return found.least.length + found.untold.length === 0 ? notJudged() : found;
}
