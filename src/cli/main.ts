/**
 * The command line, arguments in and exit status out: this folder knows options, files, streams and statuses, and must
 * not know how anything is found or worded.
 */
import { Command, CommanderError } from 'commander';
import pkg from '../../package.json' with { type: 'json' };
import { printable, printableLines } from '../text/escape.ts';
import { addCheck } from './check.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { addFaults } from './faults.ts';
import { addGrowing, withWholeLengths } from './grow.ts';
import { addHunt } from './hunt.ts';
import { type Io, Output, type Session, widthFor } from './io.ts';
import { addMaterials } from './materials.ts';
import { addMend } from './mend.ts';
import { addMeter } from './meter.ts';
import { addNew, withQuestions } from './new.ts';
import { addPage } from './page.ts';
import { addRead } from './read.ts';
import { addSheet } from './sheet.ts';
import { addSize } from './size.ts';
import { STAGES, type Stages } from './stages.ts';
import { ownMistake, Problem, STATUS, worse } from './status.ts';
import { addTable } from './table.ts';
import { addWireList } from './wirelist.ts';

/** In the order of the help. */
const COMMANDS: readonly ((program: Command, session: Session) => void)[] = [
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
];

/** What commander says of the command line, as everything else here is said. */
function asOurs(text: string): string {
  const own = text.replace(/^error: /, 'pullin: ');
  const plan = /^pullin: unknown command '(.+\.ya?ml)'/i.exec(own)?.[1];
  return plan === undefined ? own : `${own.trimEnd()}\nTo check that plan: pullin check ${plan}\n`;
}

function buildProgram(session: Session): Command {
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
  for (const add of COMMANDS) add(program, session);
  return program;
}

function statusAfter(error: unknown, session: Session): number {
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
export async function main(argv: readonly string[], io: Io, stages: Stages = STAGES): Promise<number> {
  let status: number = STATUS.pass;
  const session: Session = {
    io,
    out: new Output(io.stdout),
    err: new Output(io.stderr, true),
    stages,
    exit: (next) => {
      status = worse(status, next);
    },
  };
  try {
    const program = buildProgram(session);
    await withQuestions(program, argv);
    await program.parseAsync(withWholeLengths(argv), { from: 'user' });
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
