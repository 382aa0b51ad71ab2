/**
 * The command line, arguments in and exit status out: this folder knows options, files, streams and statuses, and must
 * not know how anything is found or worded.
 */
import { CommanderError } from 'commander';
import pkg from '../../package.json' with { type: 'json' };
import { printable, printableLines } from '../text/escape.ts';
import { addCheck } from './check.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { addFaults } from './faults.ts';
import { addGrowing, withWholeLengths } from './grow.ts';
import { addHunt } from './hunt.ts';
import { type Io, Output, type Session, wantsColour, widthFor } from './io.ts';
import { refuseUnknown, withHelpLast, withoutColour } from './line/typed.ts';
import { Verb } from './line/verb.ts';
import { addMaterials } from './materials.ts';
import { addMend } from './mend.ts';
import { addMeter } from './meter.ts';
import { addNew, withQuestions } from './new.ts';
import { colourOptions } from './options.ts';
import { addPage } from './page.ts';
import { addRead } from './read.ts';
import { addCompletion } from './self/completion.ts';
import { addSchema } from './self/schema.ts';
import { addSheet } from './sheet.ts';
import { addSize } from './size.ts';
import { STAGES, type Stages } from './stages.ts';
import { Problem, STATUS, worse } from './status.ts';
import { addTable } from './table.ts';
import { addWireList } from './wirelist.ts';

/** In the order of the help. */
const COMMANDS: readonly ((program: Verb, session: Session) => void)[] = [
  addNew,
  addCheck,
  addTable,
  addRead,
  addMend,
  addGrowing,
  addMeter,
  addFaults,
  addHunt,
  addDraw,
  addWireList,
  addMaterials,
  addSize,
  addPage,
  addSheet,
  addExplain,
  addSchema,
  addCompletion,
];

/** What commander says of the command line, as everything else here is said. */
function asOurs(text: string): string {
  const own = text.replace(/^error: /, 'pullin: ');
  const plan = /^(pullin: unknown command '(.+\.ya?ml)')/i.exec(own);
  return plan === null ? own : `${plan[1]}\nTo check that plan: pullin check ${plan[2]}\n`;
}

function buildProgram(session: Session): Verb {
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
  for (const add of COMMANDS) add(program, session);
  for (const verb of program.leaves()) for (const option of colourOptions()) verb.addOption(option);
  return program;
}

function reportInternal(error: unknown, session: Session): void {
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

function statusAfter(error: unknown, session: Session): number {
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
export async function main(argv: readonly string[], io: Io, stages: Stages = STAGES): Promise<number> {
  let status: number = STATUS.pass;
  const { words, colour } = withoutColour(withWholeLengths(withHelpLast(argv)));
  const session: Session = {
    io,
    colour,
    out: new Output(io.stdout),
    err: new Output(io.stderr, true, wantsColour(colour, io.stderr, io.env)),
    stages,
    exit: (next) => {
      status = worse(status, next);
    },
  };
  try {
    const program = buildProgram(session);
    await withQuestions(program, words);
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

/** The manual page in the man macros, for the build: the program is put together, and none of its commands is called. */
export async function manual(): Promise<string> {
  const { manualPage } = await import('./self/manual.ts');
  const silent = { write: () => true };
  const out = new Output(silent);
  const io = { stdin: (async function* () {})(), stdout: silent, stderr: silent, env: {} };
  const program = buildProgram({ io, colour: 'never', out, err: out, stages: STAGES, exit: () => {} });
  await withQuestions(program, ['new']);
  return manualPage(program, pkg.version);
}
