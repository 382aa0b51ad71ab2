/** A command of ours: one of commander's that keeps what stands below its options as data, for its help and the manual. */
import { Command, type CommanderError } from 'commander';
import { wrap } from '../../text/wrap.ts';
import { type Statuses, statusList } from '../status.ts';

/** Columns of help, whatever the terminal has. */
const HELP_WIDTH = 80;

/** What follows the options. */
export interface Ending {
  /** paragraphs on what no option says */
  readonly notes?: readonly string[];
  /** the exit statuses this command can end with, each in its words */
  readonly statuses: Statuses;
  /** command lines that work, for a plan called shop.yaml */
  readonly examples: readonly string[];
}

export class Verb extends Command {
  #ending: Ending | undefined;

  /** Nothing for a command that only holds others. */
  get ending(): Ending | undefined {
    return this.#ending;
  }

  override createCommand(name?: string): Verb {
    return new Verb(name);
  }

  /** The words that call it: `pullin add gate`. */
  get called(): string {
    return this.parent === null ? this.name() : `${(this.parent as Verb).called} ${this.name()}`;
  }

  /** The commands in it, in the order of the help. */
  get verbs(): readonly Verb[] {
    return this.commands as readonly Verb[];
  }

  /** This command, or all in it that do something. */
  leaves(): Verb[] {
    return this.verbs.length === 0 ? [this] : this.verbs.flatMap((verb) => verb.leaves());
  }

  ends(ending: Ending): this {
    this.#ending = ending;
    const { notes = [], statuses, examples } = ending;
    const paragraphs = [...notes, `Exit status: ${statusList(statuses)}.`];
    const lines = paragraphs.flatMap((text) => wrap(text, HELP_WIDTH)).join('\n');
    return this.addHelpText(
      'after',
      `\n${lines}\nExamples:${examples.map((line) => `\n  ${line}`).join('')}`,
    );
  }

  /** What is wrong with the command line, and the one place to look. */
  override error(message: string, options?: Partial<Pick<CommanderError, 'code' | 'exitCode'>>): never {
    const look =
      this.verbs.length > 0
        ? `"${this.called} --help" lists the commands.`
        : `"${this.called} --help" says what it takes.`;
    return super.error(`${message}\n${look}`, options);
  }
}
