/** The command line where it is `check`, with nothing in it that other commands need: it starts the sooner. */
import { addCheck } from './check.ts';
import { CHECK_STAGES } from './check-stages.ts';
import type { Io } from './io.ts';
import { run } from './program.ts';

/** Runs the command line `argv`, which begins with `check`, and resolves to the exit status; see `run`. */
export function main(argv: readonly string[], io: Io): Promise<number> {
  return run(argv, io, { commands: [addCheck], stages: CHECK_STAGES });
}
