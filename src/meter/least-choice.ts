/** The fewest readings that show every fault: a set cover, made small and then solved as an integer program. */
import { solve } from 'yalps';
import { kept } from '../plan/map-entries.ts';
import { chooseFew, exchange, type Option } from './cover.ts';

/** Pairs of options and faults up to which options are compared with each other. */
const COMPARED = 400_000;
/** Options of one part of the problem up to which it is solved as a program. */
const SOLVED = 400;
/** Rounds of branching, times the size of the part, before its search is left. */
const WORK = 2e6;

/** A cover problem: what each option shows, and which options show each fault, both of what is left. */
interface Left {
  readonly shows: Map<number, Set<number>>;
  readonly by: Map<number, Set<number>>;
}

/**
 * Numbers of options of least cost that together show every fault that any option shows. Least for certain where the
 * problem, once made small, falls into parts of at most 400 options whose search ends; else as few as exchanges find.
 */
export function chooseLeast(options: readonly Option[]): number[] {
  const size = options.reduce((sum, o) => sum + o.shows.length, 0);
  if (size > COMPARED) return exchange(options, chooseFew(options));
  const left = reduced(options);
  return partsOf(left).flatMap((part) => chooseIn(options, left, part));
}

/** Numbers of the options that no other stands in for: those worth being known in full. */
export function worthKnowing(options: readonly Option[]): number[] {
  const size = options.reduce((sum, o) => sum + o.shows.length, 0);
  return size > COMPARED ? exchange(options, chooseFew(options)) : [...reduced(options).shows.keys()];
}

function costOf(options: readonly Option[], chosen: readonly number[]): number {
  return chosen.reduce((sum, i) => sum + options[i]!.cost, 0);
}

/**
 * Leaves out faults that are shown whenever some other is, and options that show no more than one that costs no more,
 * until nothing changes.
 */
function reduced(options: readonly Option[]): Left {
  const left: Left = { shows: new Map(), by: new Map() };
  options.forEach((o, i) => {
    if (o.shows.length > 0) left.shows.set(i, new Set(o.shows));
    for (const f of o.shows) kept(left.by, f, () => new Set()).add(i);
  });
  while (dropFaults(left) || dropOptions(options, left)) {}
  return left;
}

function dropFaults({ shows, by }: Left): boolean {
  const order = [...by.keys()].sort((x, y) => by.get(x)!.size - by.get(y)!.size || x - y);
  const kept: number[] = [];
  for (const fault of order) {
    const own = by.get(fault)!;
    if (!kept.some((other) => within(by.get(other)!, own))) {
      kept.push(fault);
      continue;
    }
    by.delete(fault);
    for (const i of own) shows.get(i)!.delete(fault);
  }
  return kept.length < order.length;
}

function dropOptions(options: readonly Option[], { shows, by }: Left): boolean {
  const cost = (i: number) => options[i]!.cost;
  const order = [...shows.keys()].sort(
    (x, y) => shows.get(y)!.size - shows.get(x)!.size || cost(x) - cost(y) || x - y,
  );
  const kept: number[] = [];
  for (const i of order) {
    const own = shows.get(i)!;
    if (own.size > 0 && !kept.some((j) => cost(j) <= cost(i) && within(own, shows.get(j)!))) {
      kept.push(i);
      continue;
    }
    shows.delete(i);
    for (const fault of own) by.get(fault)!.delete(i);
  }
  return kept.length < order.length;
}

function within(a: ReadonlySet<number>, b: ReadonlySet<number>): boolean {
  if (a.size > b.size) return false;
  for (const x of a) if (!b.has(x)) return false;
  return true;
}

/** Options that share no fault with those of another list. */
function partsOf({ shows, by }: Left): number[][] {
  const seen = new Set<number>();
  const parts: number[][] = [];
  for (const start of shows.keys()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const part = [start];
    for (const i of part)
      for (const fault of shows.get(i)!)
        for (const j of by.get(fault)!)
          if (!seen.has(j)) {
            seen.add(j);
            part.push(j);
          }
    parts.push(part.sort((a, b) => a - b));
  }
  return parts;
}

/** The choice in one part: the best that the program comes to, or what exchanges come to where that is no better. */
function chooseIn(options: readonly Option[], { shows }: Left, part: readonly number[]): readonly number[] {
  if (part.length === 1) return part;
  const own = part.map((i): Option => ({ cost: options[i]!.cost, shows: [...shows.get(i)!] }));
  const tries: (readonly number[])[] = [exchange(own, chooseFew(own))];
  if (part.length <= SOLVED) {
    const found = solved(own, true);
    tries.push(covers(own, found) ? found : dived(own));
  }
  const [best] = tries.sort((x, y) => costOf(own, x) - costOf(own, y));
  return best!.map((k) => part[k]!);
}

/** Takes what the program without whole numbers takes all but wholly, then chooses among the rest anew. */
function dived(options: readonly Option[]): readonly number[] {
  const first = solved(options, false);
  const shown = new Set(first.flatMap((k) => options[k]!.shows));
  if (first.length === 0) return exchange(options, chooseFew(options));
  const rest = options.map((o) => ({ ...o, shows: o.shows.filter((f) => !shown.has(f)) }));
  return exchange(options, [...first, ...chooseLeast(rest)]);
}

function covers(options: readonly Option[], chosen: readonly number[]): boolean {
  const shown = new Set(chosen.flatMap((k) => options[k]!.shows));
  return options.every((o) => o.shows.every((f) => shown.has(f)));
}

/**
 * The best choice found when the search ends or is left, nothing where none was found by then. Without whole numbers, the
 * options that are taken to more than a half, or else the one that is taken most.
 */
function solved(options: readonly Option[], whole: boolean): readonly number[] {
  const faults = new Set(options.flatMap((o) => o.shows));
  const { variables } = solve<number, number>(
    {
      direction: 'minimize',
      objective: COST,
      constraints: new Map([...faults].map((f) => [f, { min: 1 }])),
      variables: new Map(
        options.map((o, k) => [k, [[COST, o.cost], ...o.shows.map((f) => [f, 1] as [number, number])]]),
      ),
      binaries: whole,
    },
    { maxIterations: Math.ceil(WORK / (options.length * faults.size)), timeout: Number.POSITIVE_INFINITY },
  );
  const most = Math.max(0, ...variables.map(([, x]) => x));
  const least = whole ? 0.5 : Math.min(DIVE, 0.999 * most);
  return variables.filter(([, x]) => x > least).map(([k]) => k);
}

/** Share from which on an option is taken for whole. */
const DIVE = 0.7;
/** Key of the costs among those of the faults, which are not negative. */
const COST = -1;
