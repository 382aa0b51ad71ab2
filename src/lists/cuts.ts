/**
 * Cutting cable: how long each piece is, and how pieces come out of reels. Lengths are whole centimetres, or whole inches
 * where the plan has feet, so that what is told of the pieces sums up to what is told of all.
 */
import type { Cable, Plan, Run } from '../plan/plan.ts';

/** What is added to a run that states no slack; common practice, no source. */
const DEFAULT_SLACK = { share: 0.1, leastCm: 20 } as const;

/** Rounding in unit conversion must not add a centimetre. */
const ROUNDING = 1e-6;

const INCH = 2.54;
/** Sums of inches in cm, without the tail that they get as binary fractions. */
export const exactCm = (cm: number): number => Math.round(cm * 100) / 100;

/** cm to cut for a run, rounded up to the cm, or to the inch; undefined where the plan gives no length. */
export function pieceCm({ length, slack, unit }: Pick<Run, 'length' | 'slack' | 'unit'>): number | undefined {
  if (length === undefined) return undefined;
  const planned = length * 100;
  const more =
    slack === undefined ? Math.max(planned * DEFAULT_SLACK.share, DEFAULT_SLACK.leastCm) : planned * slack;
  const all = planned + more - ROUNDING;
  return unit === 'ft' ? exactCm(Math.ceil(all / INCH) * INCH) : Math.ceil(all);
}

/** One piece of cable; all cores of a run are in it. */
export interface Piece {
  /** run, counted from 1 */
  readonly run: number;
  readonly cm: number | undefined;
  readonly colours: readonly string[];
  /** cores of the cable that the run leaves unused */
  readonly spare: number;
}

/** All the pieces of one cable. */
export interface CableGroup {
  /** stock name, else gauge and number of cores; no two groups have the same */
  readonly name: string;
  readonly cable: Cable;
  readonly runs: readonly Run[];
  readonly pieces: readonly Piece[];
}

/** Runs by the cable they are cut from, in the order of the plan. Links are cut from no cable. */
export function cableGroups(plan: Plan): CableGroup[] {
  const groups = new Map<string, { cable: Cable; runs: Run[] }>();
  for (const run of plan.runs) {
    if (run.cable === undefined) continue;
    const key = JSON.stringify(run.cable, Object.keys(run.cable).sort());
    const known = groups.get(key);
    if (known) known.runs.push(run);
    else groups.set(key, { cable: run.cable, runs: [run] });
  }
  const taken = new Set<string>();
  return [...groups.values()].map(({ cable, runs }) => {
    const name = freeName(cable.stock ?? `${cable.gauge} ${cable.cores}-core`, taken);
    return { name, cable, runs, pieces: runs.map((run) => pieceOf(run, cable)) };
  });
}

function pieceOf(run: Run, cable: Cable): Piece {
  return {
    run: run.index + 1,
    cm: pieceCm(run),
    colours: run.cores.map((c) => c.colour),
    spare: Math.max(0, cable.cores - run.cores.length),
  };
}

function freeName(wanted: string, taken: Set<string>): string {
  let name = wanted;
  for (let n = 2; taken.has(name); n++) name = `${wanted} (${n})`;
  taken.add(name);
  return name;
}

/** One reel with the pieces that come out of it, by index into the list of lengths. */
export interface CutReel {
  readonly cm: number;
  readonly pieces: readonly number[];
  readonly wasteCm: number;
}

/** How all pieces come out of reels, or the index of the first piece that is longer than any reel. */
export type Cutting = { readonly reels: readonly CutReel[] } | { readonly tooLong: number };

/**
 * Cuts pieces (cm) out of reels of the sizes given (cm), of each as many as it takes: the longest piece first, each into
 * the first reel that has room (first-fit decreasing; with one size never more than 11/9 of the fewest reels and 6/9 of
 * one more, Dósa 2007). Reels are opened in the largest size; at the end each becomes the smallest size that holds its pieces.
 */
export function cutFromReels(pieces: readonly number[], sizes: readonly number[]): Cutting {
  const largest = Math.max(...sizes);
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[b]! - pieces[a]! || a - b);
  const first = order[0];
  if (first !== undefined && pieces[first]! > largest) return { tooLong: first };
  const open: { used: number; pieces: number[] }[] = [];
  for (const i of order) {
    const cm = pieces[i]!;
    const reel = open.find((r) => exactCm(r.used + cm) <= largest);
    if (reel) {
      reel.used = exactCm(reel.used + cm);
      reel.pieces.push(i);
    } else open.push({ used: cm, pieces: [i] });
  }
  return {
    reels: open.map(({ used, pieces: own }) => {
      const cm = Math.min(...sizes.filter((s) => s >= used));
      return { cm, pieces: own, wasteCm: exactCm(cm - used) };
    }),
  };
}
