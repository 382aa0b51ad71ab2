/** A command line: arguments in, exit status out. */
import { CommanderError } from 'commander';
import pkg from '../../package.json' with { type: 'json' };
import { printable, printableLines } from '../text/escape.ts';
import type { CheckStages } from './check-stages.ts';
import { type Io, Output, type Session, wantsColour, widthFor } from './io.ts';
import { refuseUnknown, withHelpLast, withoutColour } from './line/typed.ts';
import { Verb } from './line/verb.ts';
import { colourOptions } from './options.ts';
import { ownMistake, Problem, STATUS, worse } from './status.ts';

/** What a command line can do. */
export interface CommandLine<S extends CheckStages> {
  /** in the order of the help */
  readonly commands: readonly ((program: Verb, session: Session<S>) => void)[];
  readonly stages: S;
  /** what is done to the arguments, and to the program, before they are read */
  readonly words?: (argv: readonly string[]) => readonly string[];
  readonly ready?: (program: Verb, words: readonly string[]) => Promise<void>;
}

/** What commander says of the command line, as everything else here is said. */
function asOurs(text: string): string {
  const own = text.replace(/^error: /, 'pullin: ');
  const plan = /^(pullin: unknown command '(.+\.ya?ml)')/i.exec(own);
  return plan === null ? own : `${plan[1]}\nTo check that plan: pullin check ${plan[2]}\n`;
}

export function buildProgram<S extends CheckStages>(
  session: Session<S>,
  commands: CommandLine<S>['commands'],
): Verb {
  const { io, out, err } = session;
  const program = new Verb('pullin');
  program
    .description(pkg.description)
    .version(pkg.version, '--version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => out.write(text),
      writeErr: (text) => err.write(text),
      // What was typed is repeated in these messages, so it is made printable.
      outputError: (text, write) => write(printableLines(asOurs(text))),
      getOutHelpWidth: () => widthFor(undefined, io.stdout),
      getErrHelpWidth: () => widthFor(undefined, io.stderr),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    });
  for (const add of commands) add(program, session);
  for (const verb of program.leaves()) for (const option of colourOptions()) verb.addOption(option);
  return program;
}

function statusAfter(error: unknown, session: Session<unknown>): number {
  // Commander has printed its message by now; help and version end with 0, all else is a wrong command line.
  if (error instanceof CommanderError) return error.exitCode === 0 ? STATUS.pass : STATUS.unreadable;
  if (error instanceof Problem) {
    session.err.write(`pullin: ${printable(error.message)}\n`);
    return error.status;
  }
  session.err.write(ownMistake(error, session.io.env));
  return STATUS.internal;
}

/**
 * Runs the command line `argv` (without `node` and the script) and resolves to the exit status: 0 nothing failed,
 * 1 something failed, 3 cannot tell, 2 input or command line cannot be read, 70 internal error. Never rejects.
 */
export async function run<S extends CheckStages>(
  argv: readonly string[],
  io: Io,
  { commands, stages, words: asWords = (typed) => typed, ready }: CommandLine<S>,
): Promise<number> {
  let status: number = STATUS.pass;
  const { words, colour } = withoutColour(asWords(withHelpLast(argv)));
  const session: Session<S> = {
    io,
    colour,
    out: new Output(() => io.stdout),
    err: new Output(
      () => io.stderr,
      true,
      (stream) => wantsColour(colour, stream, io.env),
    ),
    stages,
    exit: (next) => {
      status = worse(status, next);
    },
  };
  try {
    const program = buildProgram(session, commands);
    await ready?.(program, words);
    refuseUnknown(program, words);
    await program.parseAsync(words, { from: 'user' });
  } catch (error) {
    status = worse(status, statusAfter(error, session));
  }
  // A stream tells its failure on the next turn.
  await new Promise((done) => setImmediate(done));
  if (session.out.failure !== undefined) {
    session.err.write(`pullin: the output could not be written (${session.out.failure.code ?? 'unknown'})\n`);
    status = worse(status, STATUS.unreadable);
  }
  return status;
}
