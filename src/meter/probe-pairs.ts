/** Where a person puts the probes: which pairs of terminals are worth a reading, and how handy each is. */
import { UnionFind } from '../circuit/union-find.ts';
import { push } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey, splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import { kindOf } from './kinds.ts';
import { terminalsOf, wiredTerminals } from './probe-terminals.ts';
import { keyOf } from './probe-words.ts';
import { isUnplugged } from './unplugged.ts';

export interface Pair {
  readonly a: string;
  readonly b: string;
  /** 1 is handiest */
  readonly cost: number;
  /** the two lie so far apart that a probe needs a long lead */
  readonly far: boolean;
  /** both are among the terminals that every state is read at */
  readonly main: boolean;
}

/** m of cable over which both ends are still within reach of two probes; common practice, no source. */
const REACH = 3;
/** Terminals at one place up to which every pair of them is tried. */
const FEW = 26;
/** Terminals that every state is read at of which every pair is. */
const MOST_MAIN = 160;
const COST = { main: 1, near: 1.2, far: 4 } as const;

/** Pairs of terminals with a core on each, handiest first. */
export function probePairs(plan: Plan): Pair[] {
  const landed = landedTerminals(plan);
  const place = places(plan);
  const mains = new Set(landed.filter((key) => isMain(plan, key)));
  const pairs = new Map<string, Pair>();
  const put = (a: string, b: string) => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    if (a === b || pairs.has(key)) return;
    const far = place(a) !== place(b);
    const main = mains.has(a) && mains.has(b);
    pairs.set(key, { a, b, far, main, cost: far ? COST.far : main ? COST.main : COST.near });
  };
  const byPlace = new Map<string, string[]>();
  for (const key of landed) push(byPlace, place(key), key);
  const within = (keys: readonly string[]) => {
    for (const [i, a] of keys.entries()) for (const b of keys.slice(i + 1)) put(a, b);
  };
  // Of a thousand poles, half a million pairs would be one: beyond the first, each part is read by itself.
  within([...mains].slice(0, MOST_MAIN));
  if (mains.size > MOST_MAIN) for (const own of byPart([...mains]).values()) within(own);
  for (const keys of byPlace.values()) {
    if (keys.length <= FEW) within(keys);
    else for (const own of byPart(keys).values()) within(own);
  }
  const known = new Set(landed);
  const there = terminalsOf(plan);
  for (const run of plan.runs)
    for (const core of run.cores)
      for (const [here, other] of [
        [core.a, core.b],
        [core.b, core.a],
      ] as const)
        for (const t of there(here.part)) {
          const key = terminalKey(here.part, t);
          if (known.has(key)) put(keyOf(other), key);
        }
  return [...pairs.values()].sort((x, y) => x.cost - y.cost);
}

/** Terminals that carry a core, in the order of the plan's parts. */
function landedTerminals(plan: Plan): string[] {
  const used = wiredTerminals(plan);
  return [...plan.terminals].flatMap(([part, { names }]) =>
    isUnplugged(plan, part) ? [] : names.map((t) => terminalKey(part, t)).filter((k) => used.has(k)),
  );
}

function byPart(keys: readonly string[]): Map<string, string[]> {
  const parts = new Map<string, string[]>();
  for (const key of keys) push(parts, partOfKey(key), key);
  return parts;
}

/** Poles of supplies, coils, pins of plugs and sockets, terminals of fixed loads. */
function isMain(plan: Plan, key: string): boolean {
  const { part, terminal } = splitTerminalKey(key);
  const { mainTerminals } = kindOf(plan.parts.get(part)!);
  return mainTerminals === 'all' || (mainTerminals?.includes(terminal) ?? false);
}

/** Names the place a terminal is at: one box with what stands beside it, or one part out in the shop. */
function places(plan: Plan): (key: string) => string {
  const names = [...plan.parts.keys()];
  const number = new Map(names.map((name, i) => [name, i]));
  const sets = new UnionFind(names.length);
  const join = (a: string, b: string) => sets.union(number.get(a)!, number.get(b)!);
  const boxed = new Set<string>();
  for (const box of plan.parts.values())
    if (box.kind === 'box')
      for (const part of box.holds) {
        join(box.name, part);
        boxed.add(part);
      }
  for (const run of plan.runs) {
    if (!run.link && (run.length ?? Number.POSITIVE_INFINITY) > REACH) continue;
    for (const { a, b } of run.cores)
      if (stands(plan, boxed, a.part) && stands(plan, boxed, b.part)) join(a.part, b.part);
  }
  return (key) => names[sets.find(number.get(partOfKey(key))!)]!;
}

/** Gates and buttons out in the shop are places of their own. */
function stands(plan: Plan, boxed: ReadonlySet<string>, name: string): boolean {
  return boxed.has(name) || !kindOf(plan.parts.get(name)!).outInShop;
}
