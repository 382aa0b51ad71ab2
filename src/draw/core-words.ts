/** The few words on a conductor. */
import type { Core, Run } from '../plan/plan.ts';
import { drawnInLetters, drawnInWords } from '../text/core-names.ts';
import { lengthWords } from '../text/lengths.ts';
import { runMark } from '../text/run-names.ts';

const drawn = (run: Run, { colour }: Core) => ({ run: runMark(run), colour, link: run.link });

/** `3 white 20 AWG 4 m`: run, colour, gauge and length. */
export function coreWords(run: Run, core: Core): string {
  const length = run.length === undefined ? '' : lengthWords(run.length, run.unit ?? 'm');
  return drawnInWords(drawn(run, core), run.cable?.gauge ?? '', length);
}

/** `3 WH`: run and colour alone, for narrow drawings. */
export function coreLetters(run: Run, core: Core): string {
  return drawnInLetters(drawn(run, core));
}
