/** What several commands have alike: their arguments and their options. */
import { InvalidArgumentError, Option } from 'commander';
import { PAPER_SIZES } from '../draw/paper-sizes.ts';
import { nearest } from '../text/nearest-name.ts';
import { COLOUR_CHOICES } from './io.ts';

/** The argument of a command that reads one plan. */
export const PLAN = ['<plan>', 'plan file; - is standard input'] as const;

/** Reads the name of a file to write: its ending says what it is. */
export function endingIn(...endings: readonly string[]): (text: string) => string {
  return (text) => {
    if (text !== '-' && !endings.some((end) => text.toLowerCase().endsWith(end)))
      throw new InvalidArgumentError(`It takes a file that ends in ${endings.join(' or ')}, or -.`);
    return text;
  };
}

/** An option with a few values to choose from, which tells the one that was meant. */
export function chosen(option: Option, values: readonly string[]): Option {
  return option.choices(values).argParser((text: string) => {
    if (values.includes(text)) return text;
    const near = nearest(text, values);
    const meant = near === undefined ? '' : ` Did you mean ${near}?`;
    throw new InvalidArgumentError(`Allowed choices are ${values.join(', ')}.${meant}`);
  });
}

/** A width in columns, from the command line. */
function parseWidth(text: string): number {
  const width = Number(text);
  if (!/^\d+$/.test(text) || width < 20 || width > 1000) {
    throw new InvalidArgumentError('It takes a whole number of columns from 20 to 1000.');
  }
  return width;
}

export function widthOption(what = 'fill lines'): Option {
  const words = `${what} to this width (default: the terminal, else 80)`;
  return new Option('--width <columns>', words).argParser(parseWidth);
}

/** Most plans that are checked at the same time. */
const MOST_AT_ONCE = 64;

function parseAtOnce(text: string): number {
  const count = Number(text);
  if (!/^\d+$/.test(text) || count < 1 || count > MOST_AT_ONCE)
    throw new InvalidArgumentError(`It takes a whole number from 1 to ${MOST_AT_ONCE}.`);
  return count;
}

export function atOnceOption(): Option {
  const words = 'plans checked at the same time (default: of few plans one, else what the machine can do)';
  return new Option('--at-once <number>', words).argParser(parseAtOnce);
}

export function formatOption(...forms: readonly string[]): Option {
  return chosen(new Option('--format <format>', 'how to print it'), forms).default('text');
}

/** `what` is printed; `others` cannot be asked for with it. */
export function jsonOption(what: string, ...others: readonly string[]): Option {
  return new Option('--json', `print ${what} as JSON`).conflicts([...others]);
}

/** `--color` and its British twin, as the help has them; `colour.ts` reads them, so only what is typed wrong gets here. */
export function colourOptions(): readonly Option[] {
  const words = 'when to colour text; without one always; --colour does too';
  return [
    chosen(new Option('--color <when>', words), COLOUR_CHOICES),
    chosen(new Option('--colour <when>', words).hideHelp(), COLOUR_CHOICES),
  ];
}

/** The file a command writes; its name ends in one of `endings`. */
export function outputOption(words: string, ...endings: readonly string[]): Option {
  return new Option('-o, --output <file>', words).argParser(endingIn(...endings));
}

/** Gathers an option that may be given again, each as one; a comma may stand in it. */
export const gathered = (text: string, before: readonly string[] = []): string[] => [...before, text];

export function forceOption(): Option {
  return new Option('--force', 'write over a file that exists');
}

export function sizeOption(what: string): Option {
  return chosen(new Option('--size <paper>', what), [...PAPER_SIZES]).default('a4');
}

/** What a list that is made of a wrong plan too ends with. */
export const LISTED = 'listed, whatever the check says of the plan';
/** What a file that is made of a wrong plan too ends with. */
export const MADE = 'made, whatever the check says of the plan';
