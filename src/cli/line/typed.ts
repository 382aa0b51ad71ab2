/**
 * The command line as somebody typed it, before it is taken apart: this folder knows words, commands and their options,
 * and must not know what a command does.
 */
import { nearest } from '../../text/nearest-name.ts';
import { COLOUR_CHOICES, type ColourChoice } from '../io.ts';
import type { Verb } from './verb.ts';

const isChoice = (text: string | undefined): text is ColourChoice =>
  COLOUR_CHOICES.some((choice) => choice === text);

/**
 * Takes `--color[=when]` and `--colour[=when]` out of the words, wherever they stand: for what is printed and for what is
 * said on standard error there is one rule. Without `when` it is `always`; of several the last counts. One that is typed
 * wrong stays in, for the command to refuse.
 */
export function withoutColour(argv: readonly string[]): {
  readonly words: readonly string[];
  readonly colour: ColourChoice;
} {
  const words: string[] = [];
  let colour: ColourChoice = 'auto';
  const end = argv.indexOf('--');
  for (let i = 0; i < argv.length; i++) {
    const word = argv[i]!;
    const [, own] = (end < 0 || i < end ? /^--colou?r(?:=(.*))?$/s.exec(word) : undefined) ?? [word, word];
    if (own === word) words.push(word);
    else if (isChoice(own)) colour = own;
    else if (own === undefined && isChoice(argv[i + 1])) colour = argv[++i] as ColourChoice;
    // `--color alwasy` is meant for a choice, `--color shop.yaml` is not.
    else if (own === undefined && nearest(argv[i + 1] ?? '', COLOUR_CHOICES) === undefined) colour = 'always';
    else words.push(word);
  }
  return { words, colour };
}

/** `help add gate` is `add gate --help`. */
export function withHelpLast(argv: readonly string[]): readonly string[] {
  return argv[0] === 'help' && argv.length > 1 ? [...argv.slice(1), '--help'] : argv;
}

/** Refuses a command that is not there, also where its help is asked for. */
export function refuseUnknown(program: Verb, argv: readonly string[]): void {
  let verb = program;
  for (const word of argv) {
    if (verb.verbs.length === 0 || word.startsWith('-')) return;
    const next = verb.verbs.find((one) => one.name() === word);
    if (next === undefined && !(verb === program && word === 'help')) {
      const near = nearest(
        word,
        verb.verbs.map((one) => one.name()),
      );
      const meant = near === undefined ? '' : `\n(Did you mean ${near}?)`;
      verb.error(`error: unknown command '${word}'${meant}`, { code: 'commander.unknownCommand' });
    }
    if (next === undefined) return;
    verb = next;
  }
}
