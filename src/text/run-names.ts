/** What runs of cable are called, in running text. */
import { listOf } from './word-list.ts';

/** `run 3`, `runs 3 to 6`, `runs 1, 3 to 6 and 9`, by their numbers from one; beyond four stretches, how many there are. */
export function runsText(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  if (sorted.length === 1) return `run ${sorted[0]}`;
  const stretches: [number, number][] = [];
  for (const n of sorted) {
    const last = stretches.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else stretches.push([n, n]);
  }
  const parts = stretches.flatMap(([a, b]) =>
    a === b ? [`${a}`] : b === a + 1 ? [`${a}`, `${b}`] : [`${a} to ${b}`],
  );
  return parts.length > MOST_STRETCHES
    ? `${sorted.length} runs from ${sorted[0]} to ${sorted.at(-1)}`
    : `runs ${listOf(parts)}`;
}
const MOST_STRETCHES = 6;
