/**
 * The command line, arguments in and exit status out: this folder knows options, files, streams and statuses, and must
 * not know how anything is found or worded.
 */
import { addCheck } from './check.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { addFaults } from './faults.ts';
import { addGrowing, withWholeLengths } from './grow.ts';
import { addHunt } from './hunt.ts';
import type { Io } from './io.ts';
import { addMaterials } from './materials.ts';
import { addMend } from './mend.ts';
import { addMeter } from './meter.ts';
import { addNew, withQuestions } from './new.ts';
import { addPage } from './page.ts';
import { type CommandLine, run } from './program.ts';
import { addRead } from './read.ts';
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
];

/** Runs the command line `argv` with every command, and resolves to the exit status; see `run`. */
export function main(argv: readonly string[], io: Io, stages: Stages = STAGES): Promise<number> {
  return run(argv, io, {
    commands: COMMANDS,
    stages,
    ready: async (program) => {
      await withQuestions(program, argv);
      return withWholeLengths(argv);
    },
  });
}
