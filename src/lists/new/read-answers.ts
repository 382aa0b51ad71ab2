/** Reading single answers: what was typed into figures, or what is wrong with it in plain words. */

import * as q from '../../plan/quantity.ts';
import type { Parsed, Quantity } from '../../plan/quantity-reader.ts';
import * as ratings from '../../plan/rated-quantity.ts';
import { patternsMeant, receptacleByName } from '../../ratings/pattern-names.ts';
import { printable } from '../../text/escape.ts';
import { hint } from '../../text/nearest-name.ts';
import type { Circuit, Distance, Mains, Nameplate } from './answers.ts';
import { Apart } from './taken-apart.ts';

/** Characters that an answer may have; a person types no more, and the patterns here take their time over long ones. */
const LONGEST = 300;
const LONGEST_TITLE = 80;

/** What reads one answer. */
export type Read<T> = Quantity<T>;

/** A reader of answers, of so many characters at most. */
export function reading<T>(
  title: string,
  examples: readonly string[],
  parse: (text: string) => Parsed<T>,
  longest = LONGEST,
): Read<T> {
  const guarded = (text: string): Parsed<T> => {
    if (text.length > longest) return { problem: `is longer than ${longest} characters` };
    const trimmed = text.trim();
    if (trimmed === '')
      return { problem: `found nothing, expected ${title}, such as ${examples.join(' or ')}` };
    return parse(trimmed);
  };
  return { title, units: [], examples, parse: guarded };
}

/** A word for an answer that is left to be chosen, or that is none. */
export const CHOOSE = /^(?:choose(?: for me)?)$/i;
export const NONE = /^(?:none|no|0)$/i;

/** One of some words, also by its number in the list, or by another word that people have for it. */
export function oneOf<const T extends readonly [string, ...string[]]>(
  words: T,
  alsoCalled: ReadonlyMap<string, T[number]> = new Map(),
): Read<T[number]> {
  return reading('one of these words', words.slice(0, 2), (text) => {
    const folded = text.toLowerCase().replace(/\s+/g, ' ');
    const word =
      words.find((w) => w.toLowerCase() === folded) ??
      alsoCalled.get(folded) ??
      words[/^\d$/.test(text) ? Number(text) - 1 : -1];
    if (word !== undefined) return { value: word };
    return {
      problem: `found "${printable(text.slice(0, 40))}", expected ${words.join(', ')}${hint(text, words)}`,
    };
  });
}

type Protector = 'manual' | 'automatic' | 'none';

/** What people call a protector that a button resets, and one that resets itself. */
const PROTECTORS: readonly (readonly [Protector, readonly string[]])[] = [
  ['manual', ['button', 'reset button', 'red button', 'reset', 'manual reset']],
  ['automatic', ['auto', 'automatic reset', 'resets itself']],
  ['none', ['no']],
];

export const readProtector = oneOf(
  ['manual', 'automatic', 'none'],
  new Map(PROTECTORS.flatMap(([word, names]) => names.map((name) => [name, word] as const))),
);

export const readTitle = reading('a name for the shop', ['Back garage'], (text): Parsed<string> => {
  if (text.length > LONGEST_TITLE)
    return { problem: `has ${text.length} characters; expected at most ${LONGEST_TITLE}` };
  if (printable(text) !== text) return { problem: 'has characters that cannot be printed; type it again' };
  return { value: text };
});

/** What a figure reads as, in the words of a plan; a complaint where it cannot be read. */
function figure<T>(of: Quantity<T>, text: string): string | undefined {
  const parsed = of.parse(text);
  return 'problem' in parsed ? parsed.problem : undefined;
}

/** With one space between figure and unit. */
export const spaced = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/(\d)(?=[A-Za-z°Ω%])/g, '$1 ')
    .trim();

export const readMains = reading(
  'the mains of the collector',
  ['120 V', '400 V 3-phase'],
  (text): Parsed<Mains> => {
    const apart = new Apart(text);
    const three = apart.take(/\b((?:3|three)[- ]?(?:phase|ph))\b/i);
    const one = apart.take(/\b((?:1|one|single)[- ]?(?:phase|ph))\b/i);
    // Mains is alternating, so that a bare number of its size is volts of it.
    const volts =
      apart.take(/(\d+(?:\.\d+)?)\s*v(?:olts?)?(?:\s*ac)?\b/i) ??
      apart.take(/(?<![\d.])([1-9]\d\d)(?![\d.]|\s*[a-z])(?:\s*ac\b)?/i) ??
      apart.take(/(?<![\d.])([1-9]\d\d)\s*ac\b/i);
    if (volts === undefined)
      return {
        problem: `found "${printable(text.slice(0, 40))}", expected volts, such as 120 V or 400 V 3-phase`,
      };
    const left = apart.complaint(['3-phase', '1-phase'], '120 V or 400 V 3-phase');
    if (left !== undefined) return { problem: left };
    if (three !== undefined && one !== undefined)
      return { problem: 'says one phase and three; leave one of them out' };
    return { value: { volts: Number(volts), phases: three === undefined ? 1 : 3 } };
  },
);

const PLATE = '1.5 hp 15 A (a vacuum: 11 A), and code K or locked rotor 60 A where the plate says so';

export const readNameplate = reading(
  'the nameplate',
  ['1.5 hp 15 A', '1.1 kW 7.3 A', '11 A'],
  (text): Parsed<Nameplate> => {
    const apart = new Apart(text);
    const locked = apart.take(/\b(?:locked[- ]rotor|LRA)\s*:?\s*(\d+(?:\.\d+)?)\s*A?\b/i);
    const code = apart.take(/\bcode\s*:?\s*([A-Za-z])\b/i)?.toUpperCase();
    const power = apart.take(/((?:\d+(?:\.\d+)?|\d*\.\d+)(?:[ -]\d+\/\d+|\/\d+)?\s*(?:hp|kW|W))\b/i);
    const amps = apart.take(/(\d+(?:\.\d+)?)\s*(?:A|amps?)\b/i);
    if (amps === undefined) return { problem: `no amps in it; write ${PLATE}` };
    const left = apart.complaint(['code', 'locked rotor'], PLATE);
    if (left !== undefined) return { problem: left };
    const plate = { power: power === undefined ? undefined : spaced(power), amps: `${amps} A` };
    const wrong =
      (plate.power === undefined ? undefined : figure(ratings.motorPower, plate.power)) ??
      figure(q.amps, plate.amps) ??
      (code !== undefined && !/^[A-HJ-NPR-V]$/.test(code)
        ? `code letter ${code}: NEMA MG 1 has A to V without I, O and Q`
        : undefined);
    if (wrong !== undefined) return { problem: wrong };
    return { value: { ...plate, code, 'locked-rotor': locked === undefined ? undefined : `${locked} A` } };
  },
);

const SUCH_CIRCUIT = 'choose, fixed, fixed 30 A, NEMA 5-20, or CEE 7/4 with a 16 A C breaker';

export const readCircuit = reading(
  'what the collector is connected by',
  ['choose', 'fixed', 'NEMA 5-20'],
  (text): Parsed<Circuit> => {
    if (CHOOSE.test(text)) return { value: { pattern: undefined, breaker: undefined } };
    // A breaker is what follows the pattern: amperes are part of some patterns' names.
    const [, before = '', amps] =
      /^(.*?)(?:,|\bwith\b|\bon\b)?\s*(?:an?\s+)?(\d+(?:\.\d+)?\s*A?\s*(?:[BCD])?)?\s*(?:breaker)?$/i.exec(
        text,
      ) ?? [];
    for (const [name, breaker] of [
      [text, undefined],
      [before.trim(), amps],
    ] as const) {
      const pattern = /^fixed$/i.test(name) ? 'fixed' : knownPattern(name);
      if (pattern === undefined) continue;
      return circuit(pattern, breaker);
    }
    const meant = patternsMeant(before.trim() || text);
    const such = meant.length > 0 ? `; did you mean ${meant[0]}?` : '';
    return {
      problem: `found "${printable(text.slice(0, 50))}", which is no plug that the tables have${such || `; write ${SUCH_CIRCUIT}`}`,
    };
  },
);

function circuit(pattern: string, breaker: string | undefined): Parsed<Circuit> {
  if (breaker === undefined) return { value: { pattern, breaker: undefined } };
  const curve = /[BCD]$/i.exec(breaker)?.[0]?.toUpperCase();
  const amps = /[\d.]+/.exec(breaker)![0];
  const words = curve === undefined ? `${amps} A` : `${amps} A ${curve}`;
  const wrong = figure(ratings.breaker, words);
  return wrong === undefined ? { value: { pattern, breaker: words } } : { problem: wrong };
}

/** The proper name of a pattern, where its name settles it. */
function knownPattern(name: string): string | undefined {
  if (name === '') return undefined;
  return receptacleByName(name)?.names[0];
}

/** `6 ft`, with the unit of the length before it where it has none. */
export function distanceOf(text: string, unit?: string): Parsed<Distance> {
  const whole = /^[\d./ -]+$/.test(text) && unit !== undefined ? `${text.trim()} ${unit}` : text;
  const parsed = q.metres.parse(whole);
  if ('problem' in parsed) return parsed;
  if (!(parsed.value > 0)) return { problem: `found "${printable(text)}", expected more than nothing` };
  return { value: { text: spaced(whole), metres: parsed.value } };
}

export const readDistance = reading('a length', ['3 m', '10 ft'], (text) => distanceOf(text));

/** A length, or none. */
export const readHand = reading(
  'none, or the length of its cable',
  ['none', '6 ft'],
  (text): Parsed<Distance | undefined> => (NONE.test(text) ? { value: undefined } : distanceOf(text)),
);

/** s beyond which no timer of this kind goes. */
const MOST_SECONDS = 600;

export const readRunOn = reading('none, or a time', ['none', '20 s'], (text): Parsed<number> => {
  if (NONE.test(text)) return { value: 0 };
  const parsed = q.seconds.parse(text);
  if ('problem' in parsed) return parsed;
  return parsed.value >= 1 && parsed.value <= MOST_SECONDS
    ? { value: parsed.value }
    : { problem: `found "${printable(text)}", expected 1 s to ${MOST_SECONDS} s` };
});
