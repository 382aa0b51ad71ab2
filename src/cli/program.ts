/** A command line: arguments in, exit status out. */
import { Command, CommanderError } from 'commander';
import pkg from '../../package.json' with { type: 'json' };
import { printable, printableLines } from '../text/escape.ts';
import type { CheckStages } from './check-stages.ts';
import { type Io, Output, type Session, widthFor } from './io.ts';
import { Problem, STATUS, worse } from './status.ts';

/** What a command line can do. */
export interface CommandLine<S extends CheckStages> {
  /** in the order of the help */
  readonly commands: readonly ((program: Command, session: Session<S>) => void)[];
  readonly stages: S;
  /** what is done to program and arguments before they are read */
  readonly ready?: (program: Command, argv: readonly string[]) => Promise<readonly string[]>;
}

/** What commander says of the command line, as everything else here is said. */
function asOurs(text: string): string {
  const own = text.replace(/^error: /, 'pullin: ');
  const plan = /^pullin: unknown command '(.+\.ya?ml)'/i.exec(own)?.[1];
  return plan === undefined ? own : `${own.trimEnd()}\nTo check that plan: pullin check ${plan}\n`;
}

function buildProgram<S extends CheckStages>(
  session: Session<S>,
  commands: CommandLine<S>['commands'],
): Command {
  const { io, out, err } = session;
  const program = new Command('pullin');
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
  return program;
}

function reportInternal(error: unknown, session: Session<unknown>): void {
  const what = error instanceof Error ? error.message : String(error);
  session.err.write(
    `pullin stopped because of a mistake of its own, not of your plan's: ${printable(what)}. Please report it to ` +
      'whoever you have pullin from, with the plan, the command as you typed it, and the versions: ' +
      `pullin ${pkg.version}, Node ${process.versions.node}. With PULLIN_DEBUG=1 set it also prints where it stopped.\n`,
  );
  if (session.io.env.PULLIN_DEBUG === '1' && error instanceof Error) {
    session.err.write(`${printableLines(error.stack ?? '')}\n`);
  }
}

function statusAfter(error: unknown, session: Session<unknown>): number {
  // Commander has printed its message by now; help and version end with 0, all else is a wrong command line.
  if (error instanceof CommanderError) return error.exitCode === 0 ? STATUS.pass : STATUS.unreadable;
  if (error instanceof Problem) {
    session.err.write(`pullin: ${printable(error.message)}\n`);
    return error.status;
  }
  reportInternal(error, session);
  return STATUS.internal;
}

/**
 * Runs the command line `argv` (without `node` and the script) and resolves to the exit status: 0 nothing failed,
 * 1 something failed, 3 cannot tell, 2 input or command line cannot be read, 70 internal error. Never rejects.
 */
export async function run<S extends CheckStages>(
  argv: readonly string[],
  io: Io,
  { commands, stages, ready }: CommandLine<S>,
): Promise<number> {
  let status: number = STATUS.pass;
  const session: Session<S> = {
    io,
    out: new Output(() => io.stdout),
    err: new Output(() => io.stderr, true),
    stages,
    exit: (next) => {
      status = worse(status, next);
    },
  };
  try {
    const program = buildProgram(session, commands);
    await program.parseAsync((await ready?.(program, argv)) ?? argv, { from: 'user' });
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
