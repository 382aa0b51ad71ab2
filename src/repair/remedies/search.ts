/** The least change, or the least set of changes, after which a finding is gone and nothing as grave has come. */
import type { FindingId } from '../../findings/finding-ids.ts';
import type { Finding } from '../../findings/report-model.ts';
import { Bench, type Outcome } from './bench.ts';
import { type Change, overlap } from './change.ts';
import { bisected } from './ladder.ts';

/** One thing that could be changed: its sizes, the least change first. */
export interface Option {
  readonly sizes: readonly (readonly Change[])[];
  /** a larger size may be wrong where a smaller one is right, so each is tried from the first */
  readonly scan?: boolean;
  /** whether a size does away with the finding, where that is known without judging */
  readonly serves?: (index: number) => boolean;
}

export interface Way {
  readonly changes: readonly Change[];
  readonly leaves: readonly FindingId[];
}

/** What could be changed for a finding. */
export type Options = (bench: Bench, finding: Finding) => readonly Option[];

/** Findings one after the other that may be mended for one. */
export const DEPTH = 2;
/** Sizes beyond the first that serves which are judged in whole. */
const MORE = 2;

/** All ways that were found, one an option, those of one change first; `holds` may take one out or tell what more it leaves. */
export function waysOf(
  bench: Bench,
  finding: Finding,
  options: Options,
  depth = DEPTH,
  holds: (way: Way) => Way | undefined = (way) => way,
): Way[] {
  const ways = options(bench, finding).flatMap((o) => {
    const way = leastWay(bench, finding, o, options, depth);
    return (way && holds(way)) ?? [];
  });
  const weight = (w: Way) => w.leaves.length * 10 + w.changes.length;
  // Where one change does it, a set of them is not worth telling.
  const least = Math.min(...ways.map(weight));
  const clean = ways.some((w) => w.leaves.length === 0);
  return ways
    .filter((w) => (clean ? w.leaves.length === 0 : weight(w) === least))
    .filter((w) => w.changes.length === 1 || weight(w) === least)
    .map((way, i) => ({ way, i }))
    .sort((a, b) => weight(a.way) - weight(b.way) || a.i - b.i)
    .map(({ way }) => way);
}

function leastWay(
  bench: Bench,
  finding: Finding,
  { sizes, scan, serves }: Option,
  options: Options,
  depth: number,
): Way | undefined {
  const gone = serves ?? ((i: number) => bench.isGone(finding, sizes[i]!));
  const first = firstOf(sizes.length, gone, scan === true);
  if (first === undefined) return undefined;
  const outcomes = new Map<number, Outcome | undefined>();
  const at = (i: number) => {
    if (!outcomes.has(i)) outcomes.set(i, bench.outcome(finding, sizes[i]!));
    return outcomes.get(i);
  };
  const way = (i: number): Way => ({ changes: sizes[i]!, leaves: at(i)!.fresh.map((f) => f.id) });
  if (at(first)?.clean) return way(first);
  const clean = cleanBeyond(first, sizes.length, (i) => at(i)?.clean === true, scan === true);
  if (clean !== undefined) return way(clean);
  const bare = [...outcomes.keys()].sort((a, b) => a - b).find((i) => at(i)?.passes);
  if (bare !== undefined) return way(bare);
  return at(first) && depth > 0
    ? chained(bench, finding, sizes[first]!, at(first)!, options, depth)
    : undefined;
}

function firstOf(count: number, good: (i: number) => boolean, scan: boolean): number | undefined {
  if (count === 0) return undefined;
  if (!scan) return good(count - 1) ? bisected(0, count - 1, good) : undefined;
  for (let i = 0; i < count; i++) if (good(i)) return i;
  return undefined;
}

function cleanBeyond(
  first: number,
  count: number,
  clean: (i: number) => boolean,
  scan: boolean,
): number | undefined {
  const last = count - 1;
  if (!scan && last > first && clean(last)) return bisected(first + 1, last, clean);
  for (let i = first + 1; i <= Math.min(last, first + MORE); i++) if (clean(i)) return i;
  return undefined;
}

/** What came with a change is mended in turn, in the plan that has it. */
function chained(
  bench: Bench,
  finding: Finding,
  changes: readonly Change[],
  outcome: Outcome,
  options: Options,
  depth: number,
): Way | undefined {
  const next = outcome.fresh[0];
  if (!next) return undefined;
  const inner = new Bench(bench.after(changes), bench.purse);
  for (const way of waysOf(inner, next, options, depth - 1)) {
    if (way.changes.some((c) => changes.some((own) => overlap(own, c)))) continue;
    const all = [...changes, ...way.changes];
    const result = bench.outcome(finding, all);
    if (result?.passes) return { changes: all, leaves: result.fresh.map((f) => f.id) };
    const further = result && depth > 1 && chained(bench, finding, all, result, options, depth - 1);
    if (further) return further;
  }
  return undefined;
}
