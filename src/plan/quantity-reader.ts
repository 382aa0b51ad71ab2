/** Reading numbers and units from what a person typed. */
import { quoted } from './errors.ts';

export type Parsed<T> = { readonly value: T } | { readonly problem: string };

/** A kind of quantity: how it is called, what units it takes, and how it is read into SI. */
export interface Quantity<T> {
  readonly title: string;
  readonly units: readonly string[];
  readonly examples: readonly string[];
  readonly parse: (text: string) => Parsed<T>;
}

/** A problem worth its own words. */
export class Problem {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

const SPACE = /[\s\u00a0\u2007\u2009\u202f]/;
const NO_UNIT = /[\s\d/@,;()+\u00a0\u2007\u2009\u202f]/;

/** Reads a text from left to right. Every method that finds nothing leaves the place where it was. */
export class Reader {
  readonly text: string;
  at = 0;

  constructor(text: string) {
    this.text = text.replaceAll('\u2212', '-');
  }

  space(): void {
    while (this.at < this.text.length && SPACE.test(this.text[this.at]!)) this.at++;
  }

  ended(): boolean {
    this.space();
    return this.at >= this.text.length;
  }

  /** Takes one of the given characters or words, ignoring case. */
  take(...words: readonly string[]): string | undefined {
    this.space();
    for (const word of words) {
      if (this.text.slice(this.at, this.at + word.length).toLowerCase() !== word.toLowerCase()) continue;
      this.at += word.length;
      return word;
    }
    return undefined;
  }

  #digits(): string {
    const start = this.at;
    while (this.at < this.text.length && this.text[this.at]! >= '0' && this.text[this.at]! <= '9') this.at++;
    return this.text.slice(start, this.at);
  }

  /** `12`, `-3.5`, `.5`, and shop fractions: `1/2`, `1 1/2`, `1-1/2`. */
  number(): number | undefined {
    this.space();
    const start = this.at;
    const sign = this.text[this.at] === '-' ? -1 : 1;
    if (this.text[this.at] === '-' || this.text[this.at] === '+') this.at++;
    const whole = this.#digits();
    if (this.text[this.at] === '.') {
      this.at++;
      const rest = this.#digits();
      if (whole === '' && rest === '') return this.#back(start);
      return this.#finite(sign * Number(`${whole === '' ? '0' : whole}.${rest === '' ? '0' : rest}`), start);
    }
    if (whole === '') return this.#back(start);
    const fraction = this.#fraction(whole);
    return this.#finite(sign * (fraction ?? Number(whole)), start);
  }

  #fraction(whole: string): number | undefined {
    const start = this.at;
    let base = 0;
    let upper = whole;
    if (this.text[this.at] === ' ' || this.text[this.at] === '-') {
      this.at++;
      base = Number(whole);
      upper = this.#digits();
    }
    if (upper !== '' && this.text[this.at] === '/') {
      this.at++;
      const lower = this.#digits();
      // Only the fractions of a rule: 125/250 is two voltages and 300/500 a cable's pair of ratings.
      if (['2', '3', '4', '6', '8', '16', '32', '64'].includes(lower) && Number(upper) < Number(lower)) {
        return base + Number(upper) / Number(lower);
      }
    }
    this.at = start;
    return undefined;
  }

  #back(start: number): undefined {
    this.at = start;
    return undefined;
  }

  #finite(value: number, start: number): number | undefined {
    return Number.isFinite(value) ? value : this.#back(start);
  }

  /** The run of characters that can be a unit, such as `mA`, `°C`, `mm2` or `"`. */
  word(): string {
    this.space();
    const start = this.at;
    while (this.at < this.text.length && !NO_UNIT.test(this.text[this.at]!)) this.at++;
    const text = this.text.slice(start, this.at);
    const next = this.text[this.at];
    if ((next === '2' || next === '3') && /^(mm|cm|dm|m|in)\^?$/i.test(text)) this.at++;
    return this.text.slice(start, this.at);
  }

  /** Takes a unit of the table and returns its factor. Case counts only where it changes the meaning. */
  unit(table: ReadonlyMap<string, number>): number | undefined {
    const start = this.at;
    const word = this.word();
    const factor = table.get(word) ?? loose(word, table);
    if (factor === undefined) this.at = start;
    return factor;
  }
}

/** A unit typed in the wrong case, unless that turns milli into mega. */
function loose(word: string, table: ReadonlyMap<string, number>): number | undefined {
  if (word === '' || word.length > 10) return undefined;
  for (const [name, factor] of table) {
    if (name.toLowerCase() !== word.toLowerCase()) continue;
    const milli = name.length > 1 && name[0] === 'm' && name !== 'min' && word[0] === 'M';
    if (!milli) return factor;
  }
  return undefined;
}

const LONGEST = 200;

/** `V, mV or kV` */
export function either(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** Says what is wrong with a text that could not be read. */
function problem(text: string, title: string, units: readonly string[], examples: readonly string[]): string {
  const such = `such as ${either(examples.slice(0, 2))}`;
  const trimmed = text.trim();
  if (trimmed === '') return `found nothing, expected ${title}, ${such}`;
  const found = quoted(text);
  if (text.length <= LONGEST && /\d,\d/.test(text)) {
    return `found ${found}: a decimal comma; write ${text.replace(/(\d),(?=\d)/g, '$1.').trim()}`;
  }
  if (units.length > 0 && trimmed.length < 30 && /^[-+]?(\d+\.?\d*|\.\d+)$/.test(trimmed)) {
    return `found ${found}, a bare number; expected its unit too (${either(units)}), ${such}`;
  }
  const takes = units.length > 0 ? ` in ${either(units)}` : '';
  return `found ${found}, expected ${title}${takes}, ${such}`;
}

/** Makes a quantity of a reading function, which returns undefined for what it does not understand. */
export function define<T>(
  title: string,
  units: readonly string[],
  examples: readonly string[],
  read: (reader: Reader) => T | Problem | undefined,
): Quantity<T> {
  const parse = (text: string): Parsed<T> => {
    if (text.length > LONGEST) return { problem: problem(text, title, units, examples) };
    const reader = new Reader(text);
    const value = read(reader);
    if (value instanceof Problem) return { problem: `found ${quoted(text)}, ${value.text}` };
    if (value === undefined || !reader.ended()) return { problem: problem(text, title, units, examples) };
    return { value };
  };
  return { title, units, examples, parse };
}
