/** The streams and the surroundings a command runs in; `process` is one. */
import { forTerminal } from '../text/escape.ts';
import type { Stages } from './stages.ts';

export interface OutputStream {
  write(text: string): unknown;
  readonly columns?: number | undefined;
  readonly isTTY?: boolean | undefined;
  on?(event: 'error', listener: (error: NodeJS.ErrnoException) => void): unknown;
  once?(event: 'drain', listener: () => void): unknown;
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
  readonly #open: () => OutputStream;
  readonly #messages: boolean;
  readonly #coloured: (stream: OutputStream) => boolean;
  #stream: OutputStream | undefined;
  failure: NodeJS.ErrnoException | undefined;
  #closed = false;
  #full = false;
  #wake: () => void = () => undefined;

  /**
   * `open` gives the stream, and is asked only when there is something to write: Node takes its time to make one.
   * `messages`: nothing goes out but plain lines, whoever wrote them, with what they begin with in colour where
   * `coloured` says so. What is printed brings its own colours, and a terminal gets those.
   */
  constructor(
    open: () => OutputStream,
    messages = false,
    coloured: (stream: OutputStream) => boolean = () => false,
  ) {
    this.#open = open;
    this.#messages = messages;
    this.#coloured = coloured;
  }

  #opened(): OutputStream {
    if (this.#stream === undefined) {
      this.#stream = this.#open();
      this.#stream.on?.('error', (error) => this.#fail(error));
    }
    return this.#stream;
  }

  /** Whether nobody reads any more. */
  get closed(): boolean {
    return this.#closed;
  }

  #fail(error: NodeJS.ErrnoException): void {
    this.#closed = true;
    this.#wake();
    if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_DESTROYED') this.failure ??= error;
  }

  write(text: string): void {
    const isTerminal = !this.#messages && this.#opened().isTTY === true;
    const plain = this.#messages || isTerminal ? forTerminal(text, isTerminal) : text;
    const begins = this.#messages && this.#coloured(this.#opened());
    this.raw(begins ? plain.replace(BEGINNING, beginningInColour) : plain);
  }

  /** Once the reader has taken what was written, or has gone: what is written before that fills the memory. */
  async taken(): Promise<void> {
    if (!this.#full || this.#closed || this.#stream?.once === undefined) return;
    await new Promise<void>((done) => {
      this.#wake = done;
      this.#stream?.once?.('drain', done);
    });
    this.#full = false;
  }

  /** For what moves the cursor on purpose. */
  raw(text: string): void {
    if (this.#closed || text === '') return;
    try {
      this.#full = this.#opened().write(text) === false;
    } catch (error) {
      this.#fail(error as NodeJS.ErrnoException);
    }
  }
}

/** What a command gets to work with. */
export interface Session<S = Stages> {
  readonly io: Io;
  /** what the command line says of colours */
  readonly colour: ColourChoice;
  readonly out: Output;
  readonly err: Output;
  readonly stages: S;
  /** sets the exit status the program ends with */
  exit(status: number): void;
}
