/** The few words on a conductor. */
import type { Core, Plan, Run } from '../plan/plan.ts';
import { drawnInLetters, drawnInWords } from '../text/core-names.ts';
import { printable } from '../text/escape.ts';
import { lengthWords } from '../text/lengths.ts';
import { runMark } from '../text/run-names.ts';

const drawn = (run: Run, { colour }: Core) => ({ run: runMark(run), colour, link: run.link });

/** `3 white`: run and colour. Gauge and length stand in the table of runs. */
export function coreWords(run: Run, core: Core): string {
  return drawnInWords(drawn(run, core));
}

/** `3  20 AWG, 4 m, bell`: the row of a run in the table beside a drawing. */
export function runRow(run: Run): string {
  if (run.link) return `${runMark(run)}  link`;
  const length = run.length === undefined ? '' : lengthWords(run.length, run.unit ?? 'm');
  const name = run.name ?? run.cable?.stock ?? '';
  return printable(
    `${runMark(run)}  ${[run.cable?.gauge ?? '', length, name].filter((w) => w !== '').join(', ')}`,
  );
}

/** `3 WH`: the same for narrow drawings. */
export function coreLetters(run: Run, core: Core): string {
  return drawnInLetters(drawn(run, core));
}

/** `RD red, WH white`: what the letters of a plan's colours stand for, each once. */
export function colourLetters({ runs }: Plan): string {
  const cores = runs.filter(({ link }) => !link).flatMap((run) => run.cores.map((core) => ({ run, core })));
  const words = cores.map(({ run, core }) => `${coreLetters(run, core).replace(/^\S+ /, '')} ${core.colour}`);
  return [...new Set(words)].join(', ');
}
