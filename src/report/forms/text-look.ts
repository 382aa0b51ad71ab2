/** What a terminal can show: its width, its letters, its colours. */
import { Chalk } from 'chalk';
import { ascii, printable } from '../../text/escape.ts';
import type { Tone } from '../blocks.ts';

/** Width, letters and colours of a text. */
export interface TextLook {
  /** columns to fill */
  readonly width: number;
  /** false: ASCII alone */
  readonly unicode?: boolean;
  /** colours of the terminal, on words that say the same; default false */
  readonly colour?: boolean;
}

/** Text of a plan in the letters this terminal has. */
export function cleaner({ unicode = true }: TextLook): (text: string) => string {
  return unicode ? printable : (text) => ascii(printable(text));
}

/** Colours are a second carrier only: every one of them stands on a word that says the same. */
export function painter({ colour = false }: TextLook): (text: string, tone: Tone | undefined) => string {
  const chalk = new Chalk({ level: colour ? 1 : 0 });
  const paints: Readonly<Record<Tone, (text: string) => string>> = {
    danger: chalk.bold.red,
    warning: chalk.red,
    fault: chalk.magenta,
    caution: chalk.yellow,
    doubt: chalk.cyan,
    notice: chalk.blue,
    yes: chalk.green,
    no: chalk.bold.red,
    'cannot tell': chalk.cyan,
    'not applicable': chalk.dim,
    strong: chalk.bold,
    faint: chalk.dim,
  };
  return (text, tone) => (tone === undefined ? text : paints[tone](text));
}
