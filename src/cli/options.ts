/** What several commands have alike: their arguments, their options, and how their help ends. */
import { InvalidArgumentError, Option } from 'commander';
import { PAPER_SIZES } from '../draw/paper-sizes.ts';
import { wrap } from '../text/wrap.ts';
import { endingIn } from './made.ts';

/** The argument of a command that reads one plan. */
export const PLAN = ['<plan>', 'plan file; - is standard input'] as const;

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
  return new Option('--format <format>', 'how to print it').choices(forms).default('text');
}

/** `what` is printed; `others` cannot be asked for with it. */
export function jsonOption(what: string, ...others: readonly string[]): Option {
  return new Option('--json', `print ${what} as JSON`).conflicts([...others]);
}

export function colourOption(what: string): Option {
  return new Option('--color <when>', `colour ${what}`).choices(['always', 'never', 'auto']).default('auto');
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
  return new Option('--size <paper>', what).choices([...PAPER_SIZES]).default('a4');
}

/** Columns of help, whatever the terminal has. */
const HELP_WIDTH = 80;

/** Paragraphs below the options of a command. */
export function helpEnd(...paragraphs: readonly string[]): string {
  return `\n${paragraphs.flatMap((text) => wrap(text, HELP_WIDTH)).join('\n')}`;
}

/** Command lines that work, with which every help ends. */
export function examples(...lines: readonly string[]): string {
  return `\nExamples:${lines.map((line) => `\n  ${line}`).join('')}`;
}

const OWN_MISTAKE = '70 a mistake in pullin';
export const LISTED = 'listed, whatever the check says of the plan';

/** What a command that prints ends with, such as `0 listed`. */
export function exitStatus(...statuses: readonly string[]): string {
  return `Exit status: ${[...statuses, OWN_MISTAKE].join('; ')}.`;
}

/** What a command that makes something ends with, whatever the check says of the plan. */
export function madeStatus(
  what: string,
  unless: string,
  whether = ', not whether the plan is right',
): string {
  return `The exit status says whether the ${what} was made${whether}: 0 made, 2 ${unless}, ${OWN_MISTAKE}.`;
}
