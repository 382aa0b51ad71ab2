/** The streams and the surroundings a command runs in; `process` is one. */
import { forTerminal } from '../text/escape.ts';
import type { Stages } from './stages.ts';

export interface OutputStream {
  write(text: string): unknown;
  readonly columns?: number | undefined;
  readonly isTTY?: boolean | undefined;
  on?(event: 'error', listener: (error: NodeJS.ErrnoException) => void): unknown;
}

export interface Io {
  readonly stdin: AsyncIterable<unknown> & { readonly isTTY?: boolean | undefined };
  readonly stdout: OutputStream;
  readonly stderr: OutputStream;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** where relative file names start; default: the process's own directory */
  readonly cwd?: string | (() => string) | undefined;
  /** how a command that goes on and on hears that it is to end */
  once?(event: 'SIGINT' | 'SIGTERM', listener: () => void): unknown;
  off?(event: 'SIGINT' | 'SIGTERM', listener: () => void): unknown;
}

export const COLOUR_CHOICES = ['always', 'never', 'auto'] as const;
export type ColourChoice = (typeof COLOUR_CHOICES)[number];

/** Whether to colour what goes to `stream`: the option first, then FORCE_COLOR, NO_COLOR, and the terminal. */
export function wantsColour(choice: ColourChoice, stream: OutputStream, env: Io['env']): boolean {
  if (choice !== 'auto') return choice === 'always';
  const force = env.FORCE_COLOR;
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false';
  if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false;
  return stream.isTTY === true && env.TERM !== 'dumb';
}

/** Columns to fill: the option, else the terminal's width, else 80. */
export function widthFor(option: number | undefined, stream: OutputStream): number {
  if (option !== undefined) return option;
  return stream.columns !== undefined && stream.columns >= 20 ? stream.columns : 80;
}

/** False on a terminal whose locale is plain ASCII. */
export function wantsUnicode(stream: OutputStream, env: Io['env']): boolean {
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find((v) => v !== undefined && v !== '');
  return !(stream.isTTY === true && (locale === 'C' || locale === 'POSIX'));
}

/** What a message begins with: our name, or a place in a file. */
const BEGINNING = /^(?:pullin:|[^\n]*?:\d+:\d+:)(?= )/gm;
/** Bold, and red where pullin itself speaks. */
const beginningInColour = (word: string): string =>
  word === 'pullin:' ? `\u001b[1;31m${word}\u001b[0m` : `\u001b[1m${word}\u001b[0m`;

/**
 * Output that survives a reader who has gone (`pullin check … | head`): after EPIPE it writes nothing more and says
 * nothing. Any other failure is kept in `failure`.
 */
export class Output {
  readonly stream: OutputStream;
  readonly #guard: 'none' | 'colours' | 'all';
  readonly #coloured: boolean;
  failure: NodeJS.ErrnoException | undefined;
  #closed = false;

  /**
   * `messages`: nothing goes out but plain lines, whoever wrote them, with what they begin with in colour where
   * `coloured` says so. What is printed brings its own colours, and a terminal gets those.
   */
  constructor(stream: OutputStream, messages = false, coloured = false) {
    this.stream = stream;
    this.#coloured = coloured;
    this.#guard = messages ? 'all' : stream.isTTY === true ? 'colours' : 'none';
    stream.on?.('error', (error) => this.#fail(error));
  }

  /** Whether nobody reads any more. */
  get closed(): boolean {
    return this.#closed;
  }

  #fail(error: NodeJS.ErrnoException): void {
    this.#closed = true;
    if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_DESTROYED') this.failure ??= error;
  }

  write(text: string): void {
    const plain = this.#guard === 'none' ? text : forTerminal(text, this.#guard === 'colours');
    this.raw(this.#coloured ? plain.replace(BEGINNING, beginningInColour) : plain);
  }

  /** For what moves the cursor on purpose. */
  raw(text: string): void {
    if (this.#closed || text === '') return;
    try {
      this.stream.write(text);
    } catch (error) {
      this.#fail(error as NodeJS.ErrnoException);
    }
  }
}

/** What a command gets to work with. */
export interface Session {
  readonly io: Io;
  /** what the command line says of colours */
  readonly colour: ColourChoice;
  readonly out: Output;
  readonly err: Output;
  readonly stages: Stages;
  /** sets the exit status the program ends with */
  exit(status: number): void;
}
