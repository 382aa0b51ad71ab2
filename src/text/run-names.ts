/** What runs of cable are called, in running text and in few letters. */
import { listOf } from './word-list.ts';

/** A run by its place in the file's list, from one, and its piece where it goes along several parts. */
export interface NumberedRun {
  readonly entry: number;
  readonly piece?: number;
  readonly pieces?: number;
}

/** `run 3`, `run 3 piece 2`. */
export function runText(run: NumberedRun): string {
  return run.piece === undefined ? `run ${run.entry}` : `run ${run.entry} piece ${run.piece}`;
}

/** `3`, `3.2`: for tables, labels and drawings. */
export function runMark(run: NumberedRun): string {
  return run.piece === undefined ? `${run.entry}` : `${run.entry}.${run.piece}`;
}

/** Numbers, sorted, each once, in stretches of neighbours. */
function stretched(numbers: readonly number[]): [number, number][] {
  const stretches: [number, number][] = [];
  for (const n of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = stretches.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else stretches.push([n, n]);
  }
  return stretches;
}

const words = (stretches: readonly [number, number][]): string[] =>
  stretches.flatMap(([a, b]) => (a === b ? [`${a}`] : b === a + 1 ? [`${a}`, `${b}`] : [`${a} to ${b}`]));

const counted = (word: string, stretches: readonly [number, number][]): string =>
  `${word}${stretches.length === 1 && stretches[0]![0] === stretches[0]![1] ? '' : 's'} ${listOf(words(stretches))}`;

/**
 * `run 3`, `runs 3 to 6`, `runs 1, 3 to 6 and 9`, `run 3 pieces 1 to 4`; a run of which all pieces are meant is told as one.
 * Beyond six stretches, how many there are.
 */
export function runsText(runs: readonly NumberedRun[]): string {
  const pieces = new Map<number, Set<number>>();
  const whole: number[] = [];
  for (const { entry, piece } of runs) {
    if (piece === undefined) whole.push(entry);
    else pieces.set(entry, (pieces.get(entry) ?? new Set()).add(piece));
  }
  const parts = new Map<number, Set<number>>();
  for (const [entry, own] of pieces) {
    if (own.size === runs.find((r) => r.entry === entry)!.pieces) whole.push(entry);
    else parts.set(entry, own);
  }
  const stretches = stretched(whole);
  const some = [...parts]
    .sort(([a], [b]) => a - b)
    .map(([entry, own]) => ({ entry, stretches: stretched([...own]) }));
  const count = words(stretches).length + some.reduce((sum, s) => sum + words(s.stretches).length, 0);
  if (count > MOST_STRETCHES) {
    const entries = runs.map((r) => r.entry);
    const least = entries.reduce((a, b) => Math.min(a, b));
    const most = entries.reduce((a, b) => Math.max(a, b));
    const size = new Set(runs.map(runMark)).size;
    return least === most ? `${size} pieces of run ${least}` : `${size} runs from ${least} to ${most}`;
  }
  return listOf([
    ...(stretches.length > 0 ? [counted('run', stretches)] : []),
    ...some.map((s) => `run ${s.entry} ${counted('piece', s.stretches)}`),
  ]);
}
const MOST_STRETCHES = 6;
