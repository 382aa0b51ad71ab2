/**
 * The command line, arguments in and exit status out: this folder knows options, files, streams and statuses, and must
 * not know how anything is found or worded.
 */

import pkg from '../../package.json' with { type: 'json' };
import { addCheck } from './check.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { addFaults } from './faults.ts';
import { addGrowing, withWholeLengths } from './grow.ts';
import { addHunt } from './hunt.ts';
import { type Io, Output } from './io.ts';
import { addMaterials } from './materials.ts';
import { addMend } from './mend.ts';
import { addMeter } from './meter.ts';
import { addNew, withQuestions } from './new.ts';
import { addPage } from './page.ts';
import { buildProgram, type CommandLine, run } from './program.ts';
import { addRead } from './read.ts';
import { addCompletion } from './self/completion.ts';
import { addSchema } from './self/schema.ts';
import { addSheet } from './sheet.ts';
import { addSize } from './size.ts';
import { STAGES, type Stages } from './stages.ts';
import { addTable } from './table.ts';
import { addWireList } from './wirelist.ts';

/** In the order of the help. */
const COMMANDS: CommandLine<Stages>['commands'] = [
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

/** Runs the command line `argv` with every command, and resolves to the exit status; see `run`. */
export function main(argv: readonly string[], io: Io, stages: Stages = STAGES): Promise<number> {
  return run(argv, io, {
    commands: COMMANDS,
    stages,
    words: withWholeLengths,
    ready: withQuestions,
  });
}

/** The manual page in the man macros, for the build: the program is put together, and none of its commands is called. */
export async function manual(): Promise<string> {
  const { manualPage } = await import('./self/manual.ts');
  const silent = { write: () => true };
  const out = new Output(() => silent);
  const io = { stdin: (async function* () {})(), stdout: silent, stderr: silent, env: {} };
  const session = { io, colour: 'never' as const, out, err: out, stages: STAGES, exit: () => {} };
  const program = buildProgram(session, COMMANDS);
  await withQuestions(program, ['new']);
  return manualPage(program, pkg.version);
}
