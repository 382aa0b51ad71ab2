/**
 * What `pullin new` asks, in order: one row a question. Flags, keys of an answers file, prompts and help all come from
 * these rows, and so does the schema that reads them.
 */
import * as z from 'zod/mini';
import { unitTyped } from '../../plan/length-unit.ts';
import { once, optional, quantity } from '../../plan/schema-fields.ts';
import { isOfSystem, receptacleByName } from '../../ratings/pattern-names.ts';
import { FOOT } from '../../text/lengths.ts';
import type { Answers, Key, Placed } from './answers.ts';
import { MOTOR_KINDS } from './answers.ts';
import { isReserved } from './part-names.ts';
import {
  oneOf,
  type Read,
  readCircuit,
  readDistance,
  readHand,
  readMains,
  readNameplate,
  readProtector,
  readRunOn,
  readTitle,
  spaced,
} from './read-answers.ts';
import { readCutouts, readGates, readRelay, readSupply } from './read-loop.ts';

export type { Key };

/** What is answered so far. */
export type Known = Partial<Answers>;

/** An answer that is taken where none is given, and why that one. */
export interface Usual {
  /** the answer */
  readonly text: string;
  /** why that one */
  readonly because: string;
}

export interface Question<T> {
  /** the question, as a person would put it */
  readonly ask: string;
  /** how to answer, and what to look at first; for prompts */
  readonly about: string;
  /** what stands for the answer in the help */
  readonly placeholder: string;
  readonly read: Read<T>;
  /** words to choose from, where there are only these */
  readonly choices?: readonly string[];
  /** undefined where there is no usual answer, so that it has to be given */
  readonly usual?: (known: Known) => Usual | undefined;
  /** whether it is asked at all; where not, `otherwise` is the answer */
  readonly when?: (known: Known) => boolean;
  readonly otherwise?: T;
  /** in words, when it is asked */
  readonly onlyFor?: string;
  /** what is wrong with it beside the other answers */
  readonly clash?: (value: T, known: Known) => string | undefined;
}

const inFeet = ({ gates }: Known): boolean => unitTyped(gates?.[0]?.length.text ?? 'm') === 'ft';

/** m as a length in the unit of the gates. */
const asTyped = (metres: number, known: Known): string =>
  spaced(inFeet(known) ? `${Math.ceil(metres / FOOT)} ft` : `${Number(metres.toFixed(1))} m`);

function taken(list: readonly Placed[], others: readonly Placed[] = []): string | undefined {
  const names = new Set(others.map((o) => o.name.toLowerCase()));
  const own = list.find((p) => isReserved(p.name));
  if (own !== undefined)
    return `${own.name} is what a part of the plan is called; call it otherwise, such as my-${own.name}`;
  const twin = list.find((p) => names.has(p.name.toLowerCase()));
  return twin === undefined ? undefined : `${twin.name} is the name of a gate already; call it otherwise`;
}

/** V of mains that collectors are made for, by practice and phases, as ranges; common practice, no source. */
const SYSTEMS = {
  nec: {
    1: [
      [100, 130],
      [200, 250],
    ],
    3: [
      [200, 250],
      [440, 480],
    ],
  },
  iec: { 1: [[220, 250]], 3: [[380, 415]] },
} as const;

export const QUESTIONS: { readonly [K in Key]: Question<Answers[K]> } = {
  title: {
    ask: 'What is the shop called?',
    about: 'It stands at the head of the plan, and the file is named after it.',
    placeholder: '<name>',
    read: readTitle,
    usual: () => ({ text: 'My shop', because: 'any name will do' }),
  },
  practice: {
    ask: 'Whose tables apply: nec for North America, iec for most other places?',
    about: 'Your local code has the last word over both.',
    placeholder: '<tables>',
    read: oneOf(['nec', 'iec']),
    choices: ['nec', 'iec'],
  },
  mains: {
    ask: 'What mains does the collector run on?',
    about: 'Volts between its conductors, as on its plate: 120 V, 240 V, 230 V, 400 V 3-phase.',
    placeholder: '<volts>',
    read: readMains,
    usual: ({ practice }) =>
      practice === undefined
        ? undefined
        : practice === 'nec'
          ? { text: '120 V', because: 'most small collectors there plug into it' }
          : { text: '230 V', because: 'most small collectors plug into it' },
    clash: ({ volts, phases }, { practice }) => {
      if (practice === undefined) return undefined;
      const ranges: readonly (readonly [number, number])[] = SYSTEMS[practice][phases];
      if (ranges.some(([low, high]) => volts >= low && volts <= high)) return undefined;
      const words = ranges.map(([low, high]) => `${low} to ${high} V`).join(' or ');
      return `with ${practice} ${phases === 3 ? 'three-phase' : 'single-phase'} mains is ${words}`;
    },
  },
  motor: {
    ask: "What does the collector's nameplate say: power and amps?",
    about:
      'Such as 1.5 hp 15 A, or 1.1 kW 7.3 A; a shop vacuum mostly has amps alone, 11 A. Add code K or locked rotor 60 A where the plate has it.',
    placeholder: '<plate>',
    read: readNameplate,
  },
  type: {
    ask: 'What kind of motor is it?',
    about: 'capacitor-start has a hump or a can on it; a shop vacuum is universal.',
    placeholder: '<kind>',
    read: oneOf(MOTOR_KINDS),
    choices: MOTOR_KINDS.filter((k) => k !== 'three-phase'),
    when: ({ mains }) => mains?.phases !== 3,
    otherwise: 'three-phase',
    onlyFor: 'single-phase',
    usual: () => ({
      text: 'capacitor-start',
      because: 'most single-phase collectors have one, and it calls for the most care',
    }),
    clash: (value, { mains }) =>
      value === 'three-phase' && mains?.phases === 1
        ? 'a three-phase motor on single-phase mains; add 3-phase to the mains'
        : undefined,
  },
  protector: {
    ask: 'Has the motor an overload protector of its own?',
    about:
      'manual: a button on it resets it. automatic: it starts again by itself. Look for "thermally protected".',
    placeholder: '<protector>',
    read: readProtector,
    choices: ['manual', 'automatic', 'none'],
    usual: () => ({
      text: 'none',
      because: 'what the plate does not promise is not counted on; an overload relay then stands in',
    }),
  },
  circuit: {
    ask: 'How is the collector connected?',
    about:
      'choose; or its plug, such as NEMA 6-20 or BS 1363; or fixed where it is wired in. A breaker may follow: fixed 30 A, CEE 7/4 16 A C.',
    placeholder: '<plug>',
    read: readCircuit,
    usual: () => ({
      text: 'choose',
      because: 'the least plug and circuit that carry the motor are then told',
    }),
    clash: ({ pattern }, { mains }) => {
      const row = pattern === undefined ? undefined : receptacleByName(pattern, mains);
      if (row === undefined || mains === undefined) return undefined;
      if (row.phases === mains.phases && isOfSystem(mains.volts, row)) return undefined;
      return `${pattern} is for ${row.nominal} V${row.phases === 3 ? ' 3-phase' : ''}, and the mains is ${mains.volts} V${mains.phases === 3 ? ' 3-phase' : ''}`;
    },
  },
  layout: {
    ask: 'How does the gate cable run: chain, star or ring?',
    about:
      'chain: from gate to gate. star: each gate has a cable from the box. ring: a chain that comes back to the box.',
    placeholder: '<layout>',
    read: oneOf(['chain', 'star', 'ring']),
    choices: ['chain', 'star', 'ring'],
    usual: () => ({ text: 'chain', because: 'it takes the least cable, along the duct' }),
  },
  gates: {
    ask: 'Which gates are there, and how far is each?',
    about:
      'In the order of the duct, with commas: saw 6 ft, planer 4 ft. Each from the one before, the first from the box; in a star each from the box. 12 x 3 m makes twelve.',
    placeholder: '<gates>',
    read: readGates,
    clash: (value) => taken(value),
  },
  return: {
    ask: 'How long is the cable from the last gate back to the box?',
    about: 'Along the wall, not as the crow flies.',
    placeholder: '<length>',
    read: readDistance,
    when: ({ layout }) => layout === 'ring',
    otherwise: undefined,
    onlyFor: 'a ring',
    usual: (known) =>
      known.gates === undefined
        ? undefined
        : {
            text: asTyped(
              known.gates.reduce((sum, g) => sum + g.length.metres, 0),
              known,
            ),
            because: 'the whole way back beside the other cable, which is the longest it can be',
          },
  },
  lever: {
    ask: 'Which gate presses the lever of its switch, the open one or the shut one?',
    about: 'Try one by hand: slide the gate and listen for the click.',
    placeholder: '<position>',
    read: oneOf(['open', 'shut']),
    choices: ['open', 'shut'],
  },
  supply: {
    ask: 'What low-voltage supply is at hand?',
    about: 'choose; only its volts, such as 24 V AC; or all that is printed: 12 V DC 1 A regulated class 2.',
    placeholder: '<supply>',
    read: readSupply,
    usual: () => ({ text: 'choose', because: 'the smallest that does it is then told; they cost little' }),
    clash: (value) =>
      value === undefined || value.limit !== undefined || CHOOSABLE.includes(`${value.volts} ${value.kind}`)
        ? undefined
        : 'only 12 V DC, 24 V DC and 24 V AC are chosen by their volts; add what it gives, such as 1 A or 40 VA',
  },
  relay: {
    ask: 'What relay or contactor is at hand?',
    about:
      'choose; or all that is printed: coil 12 V DC 155 ohm pull-in 75 %, 30 A 240 V AC, 1.5 hp 120 V AC, 2 poles.',
    placeholder: '<relay>',
    read: readRelay,
    usual: () => ({ text: 'choose', because: 'the least that starts the motor is then told' }),
    clash: (value, { supply }) =>
      value === undefined ||
      supply === undefined ||
      (value.kind === supply.kind && value.volts === supply.volts)
        ? undefined
        : `its coil is for ${value.volts} V ${value.kind.toUpperCase()} and the supply gives ${supply.volts} V ${supply.kind.toUpperCase()}; answer choose to one of them`,
  },
  cutouts: {
    ask: 'What must be able to stop the collector, such as a bin-full switch?',
    about: 'none; or names with the length of the cable from the box: bin-full 6 ft. Each opens as it trips.',
    placeholder: '<switches>',
    read: readCutouts,
    usual: () => ({ text: 'none', because: 'none is taken that was not named' }),
    clash: (value, { gates }) => taken(value, gates),
  },
  hand: {
    ask: 'Is there to be a hand switch that runs the collector with all gates shut?',
    about: 'none; or the length of its cable from the box.',
    placeholder: '<length>',
    read: readHand,
    usual: () => ({ text: 'none', because: 'any open gate does the same' }),
  },
  'run-on': {
    ask: 'How long is the collector to run on after the last gate is shut?',
    about: 'none; or a time of 1 s to 600 s, such as 20 s. It takes a timer.',
    placeholder: '<time>',
    read: readRunOn,
    usual: () => ({
      text: 'none',
      because: 'with every gate shut little air moves, and a timer is one part more',
    }),
  },
};

/** Supplies that are chosen by their volts alone. */
const CHOOSABLE: readonly string[] = ['12 dc', '24 dc', '24 ac'];

export const KEYS: readonly Key[] = Object.keys(QUESTIONS) as readonly (keyof Answers)[];

/** The answers as they are typed, each read on its own: the schema of an answers file. */
export const answersSchema = once(() =>
  z.strictObject(
    Object.fromEntries(
      KEYS.map((key) => {
        const { read, ask } = QUESTIONS[key] as Question<unknown>;
        return [key, optional(quantity(read, ask))];
      }),
    ),
  ),
);

/** A question as a flag: what stands for its answer, and its words in the help. */
export function flagOf(key: Key): { readonly placeholder: string; readonly words: string } {
  const { ask, about, placeholder, usual, onlyFor } = QUESTIONS[key];
  const own = usual?.({});
  const only = onlyFor === undefined ? '' : ` Only for ${onlyFor}.`;
  const left = own === undefined ? '' : ` (usual: ${own.text})`;
  return { placeholder, words: `${ask} ${about}${only}${left}` };
}
