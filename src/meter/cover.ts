/** Choosing few readings that together show every fault that some reading shows, and leaving out what is not needed. */

import { push } from '../plan/map-entries.ts';

export interface Option {
  readonly cost: number;
  /** faults it shows, by number */
  readonly shows: readonly number[];
}

/** Greedy: the option that shows most new faults for its cost, again and again; numbers of the options, in that order. */
export function chooseFew(options: readonly Option[]): number[] {
  const covered = new Set<number>();
  const by = new Map<number, number[]>();
  const counts = options.map((o, i) => {
    for (const fault of o.shows) push(by, fault, i);
    return o.shows.length;
  });
  const chosen: number[] = [];
  for (;;) {
    let best = -1;
    let most = 0;
    for (let i = 0; i < options.length; i++) {
      const value = counts[i]! / options[i]!.cost;
      if (value > most * (1 + 1e-9)) {
        most = value;
        best = i;
      }
    }
    if (best < 0) return chosen;
    chosen.push(best);
    for (const fault of options[best]!.shows) {
      if (covered.has(fault)) continue;
      covered.add(fault);
      for (const i of by.get(fault) ?? []) counts[i]!--;
    }
  }
}

/** Leaves out every option, dearest first, that shows nothing the others do not show; true for those that stay. */
export function dropNeedless(options: readonly Option[]): boolean[] {
  const seen = new Map<number, number>();
  for (const o of options) for (const fault of o.shows) seen.set(fault, (seen.get(fault) ?? 0) + 1);
  const stays = options.map(() => true);
  const order = options.map((_, i) => i).sort((a, b) => options[b]!.cost - options[a]!.cost || b - a);
  for (const i of order) {
    const { shows } = options[i]!;
    if (shows.some((fault) => seen.get(fault) === 1)) continue;
    stays[i] = false;
    for (const fault of shows) seen.set(fault, seen.get(fault)! - 1);
  }
  return stays;
}

/** Rounds of exchanges, each of which leaves one option fewer. */
const ROUNDS = 40;

/** Puts one option in the place of two wherever one shows all that only those two show, then cheaper ones. */
export function exchange(options: readonly Option[], chosen: readonly number[]): number[] {
  const by = new Map<number, number[]>();
  options.forEach((o, i) => {
    for (const fault of o.shows) push(by, fault, i);
  });
  let now = [...chosen];
  for (let round = 0; round < ROUNDS; round++) {
    const better = oneForTwo(options, by, now);
    if (better === undefined) break;
    now = better;
  }
  return handier(options, by, now);
}

/** Puts a cheaper option in the place of each that has one which shows all that it alone shows. */
function handier(
  options: readonly Option[],
  by: ReadonlyMap<number, readonly number[]>,
  chosen: readonly number[],
): number[] {
  const now = [...chosen];
  for (const [x, i] of chosen.entries()) {
    const others = new Set(now.filter((k) => k !== i).flatMap((k) => options[k]!.shows));
    const alone = options[i]!.shows.filter((f) => !others.has(f));
    for (const k of showsAll(options, by, alone))
      if (options[k]!.cost < options[now[x]!]!.cost && !now.includes(k)) now[x] = k;
  }
  return now;
}

function oneForTwo(
  options: readonly Option[],
  by: ReadonlyMap<number, readonly number[]>,
  chosen: readonly number[],
): number[] | undefined {
  const seen = new Map<number, number>();
  for (const i of chosen) for (const fault of options[i]!.shows) seen.set(fault, (seen.get(fault) ?? 0) + 1);
  for (const [x, i] of chosen.entries())
    for (const j of chosen.slice(x + 1)) {
      const both = new Set(options[j]!.shows);
      const alone = [
        ...options[i]!.shows.filter((f) => seen.get(f) === (both.has(f) ? 2 : 1)),
        ...options[j]!.shows.filter((f) => seen.get(f) === 1),
      ];
      const most = options[i]!.cost + options[j]!.cost;
      const found = showsAll(options, by, alone).filter(
        (k) => k !== i && k !== j && options[k]!.cost <= most,
      );
      const best = found.sort((a, b) => options[a]!.cost - options[b]!.cost)[0];
      if (best !== undefined) return [...chosen.filter((k) => k !== i && k !== j), best];
    }
  return undefined;
}

/** Options that show each of these faults. */
function showsAll(
  options: readonly Option[],
  by: ReadonlyMap<number, readonly number[]>,
  faults: readonly number[],
): number[] {
  const [first, ...rest] = [...faults].sort((a, b) => (by.get(a)?.length ?? 0) - (by.get(b)?.length ?? 0));
  if (first === undefined) return [];
  return (by.get(first) ?? []).filter((k) => {
    const shows = new Set(options[k]!.shows);
    return rest.every((fault) => shows.has(fault));
  });
}
