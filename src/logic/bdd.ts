import { spend } from '../circuit/effort.ts';
import { kept } from '../plan/map-entries.ts';
import { Undecided } from './undecided.ts';

/**
 * Reduced ordered binary decision diagrams (Bryant 1986): a Boolean function of many variables as a
 * shared graph in which equal functions are the same node, so that equality is `===`.
 * A node is a number; 0 is false and 1 is true. Variables are numbered from 0 at the top.
 */
export type Fn = number;
export const FALSE: Fn = 0;
export const TRUE: Fn = 1;

/** What a diagram of one node for each may take, and keys of two nodes and a level. */
const MOST_VARIABLES = 100_000;

const TERMINAL_LEVEL = 0x7fffffff;

/** One step of `ite` that waits for its halves. */
interface Open {
  readonly of: readonly [Fn, Fn, Fn];
  readonly level: number;
  low: Fn | undefined;
}

export class Bdd {
  private readonly level: number[] = [TERMINAL_LEVEL, TERMINAL_LEVEL];
  private readonly low: number[] = [0, 1];
  private readonly high: number[] = [0, 1];
  private readonly unique = new Map<number, Map<number, number>>();
  private readonly iteCache = new Map<number, Map<number, number>>();

  private steps = 0;

  /** Throws Undecided where there are more variables than can be followed. */
  constructor(
    readonly variables: number,
    private readonly budget = 1_000_000,
  ) {
    if (variables > MOST_VARIABLES) throw new Undecided('the circuit is too deep to follow');
  }

  get size(): number {
    return this.level.length;
  }

  variable(index: number): Fn {
    return this.node(index, FALSE, TRUE);
  }

  topVariable(f: Fn): number {
    return this.level[f]!;
  }

  private node(level: number, low: Fn, high: Fn): Fn {
    if (low === high) return low;
    // Node numbers stay below 2^22, so two of them and the level fit a double's 53 bits in two steps.
    const key = low * 4194304 + high;
    const table = kept(this.unique, level, () => new Map<number, number>());
    const found = table.get(key);
    if (found !== undefined) return found;
    if (this.level.length >= this.budget) throw new Undecided('the decision diagram grew too large');
    const made = this.level.length;
    this.level.push(level);
    this.low.push(low);
    this.high.push(high);
    table.set(key, made);
    return made;
  }

  /** f ? g : h. What is still to be done lies in a list and not on the machine's stack, which a long chain would exhaust. */
  ite(f: Fn, g: Fn, h: Fn): Fn {
    const open: Open[] = [];
    let next: readonly [Fn, Fn, Fn] | undefined = [f, g, h];
    let done: Fn = FALSE;
    for (;;) {
      if (next) {
        const known = this.known(...next);
        if (known === undefined) {
          const made: Open = { of: next, level: this.topOf(...next), low: undefined };
          open.push(made);
          next = this.half(made, false);
          continue;
        }
        done = known;
        next = undefined;
      }
      const last = open.at(-1);
      if (!last) return done;
      if (last.low === undefined) {
        last.low = done;
        next = this.half(last, true);
        continue;
      }
      open.pop();
      done = this.node(last.level, last.low, done);
      const [x, y, z] = last.of;
      kept(this.iteCache, x, () => new Map<number, number>()).set(y * 4194304 + z, done);
    }
  }

  private known(f: Fn, g: Fn, h: Fn): Fn | undefined {
    if (f === TRUE || g === h) return g;
    if (f === FALSE) return h;
    if (g === TRUE && h === FALSE) return f;
    const found = this.iteCache.get(f)?.get(g * 4194304 + h);
    if (found === undefined) spend(1);
    if (found === undefined && ++this.steps > 8 * this.budget)
      throw new Undecided('the decision diagram took too long');
    return found;
  }

  private topOf(f: Fn, g: Fn, h: Fn): number {
    return Math.min(this.level[f]!, this.level[g]!, this.level[h]!);
  }

  private half({ of: [f, g, h], level }: Open, value: boolean): readonly [Fn, Fn, Fn] {
    return [this.cofactor(f, level, value), this.cofactor(g, level, value), this.cofactor(h, level, value)];
  }

  private cofactor(f: Fn, level: number, value: boolean): Fn {
    if (this.level[f] !== level) return f;
    return value ? this.high[f]! : this.low[f]!;
  }

  not(f: Fn): Fn {
    return this.ite(f, FALSE, TRUE);
  }
  and(f: Fn, g: Fn): Fn {
    return f === g ? f : f < g ? this.ite(f, g, FALSE) : this.ite(g, f, FALSE);
  }
  or(f: Fn, g: Fn): Fn {
    return f === g ? f : f < g ? this.ite(f, TRUE, g) : this.ite(g, TRUE, f);
  }
  xor(f: Fn, g: Fn): Fn {
    return this.ite(f, this.not(g), g);
  }
  diff(f: Fn, g: Fn): Fn {
    return this.ite(g, FALSE, f);
  }

  /** Disjunction of many, deepest first, so that a long list of single variables costs one node each. */
  any(list: readonly Fn[]): Fn {
    const sorted = [...list].sort((a, b) => this.level[b]! - this.level[a]!);
    return sorted.reduce((all, f) => this.or(f, all), FALSE);
  }
  every(list: readonly Fn[]): Fn {
    const sorted = [...list].sort((a, b) => this.level[b]! - this.level[a]!);
    return sorted.reduce((all, f) => this.and(f, all), TRUE);
  }

  /** Puts functions in place of variables; a variable that is not in the map stays. */
  compose(f: Fn, map: ReadonlyMap<number, Fn>, memo: Map<Fn, Fn> = new Map()): Fn {
    if (f <= 1 || map.size === 0) return f;
    const made = (node: Fn): Fn => (node <= 1 ? node : memo.get(node)!);
    for (const node of this.upwards(f, memo)) {
      const level = this.level[node]!;
      const [low, high] = [made(this.low[node]!), made(this.high[node]!)];
      memo.set(node, this.ite(map.get(level) ?? this.variable(level), high, low));
    }
    return made(f);
  }

  /** Nodes of a function that `known` does not have, each after those below it. */
  private upwards(f: Fn, known: { has(node: Fn): boolean }): Fn[] {
    const seen = new Set<Fn>();
    const left = [f];
    for (let node = left.pop(); node !== undefined; node = left.pop()) {
      if (node <= 1 || seen.has(node) || known.has(node)) continue;
      seen.add(node);
      left.push(this.low[node]!, this.high[node]!);
    }
    return [...seen].sort((x, y) => this.level[y]! - this.level[x]!);
  }

  /** The variables the function really depends on. */
  support(f: Fn): Set<number> {
    const seen = new Set<Fn>();
    const found = new Set<number>();
    const stack = [f];
    while (stack.length > 0) {
      const node = stack.pop()!;
      if (node <= 1 || seen.has(node)) continue;
      seen.add(node);
      found.add(this.level[node]!);
      stack.push(this.low[node]!, this.high[node]!);
    }
    return found;
  }

  evaluate(f: Fn, value: (variable: number) => boolean): boolean {
    let node = f;
    while (node > 1) node = value(this.level[node]!) ? this.high[node]! : this.low[node]!;
    return node === TRUE;
  }

  /**
   * A satisfying assignment that differs from `rest` in as few variables as possible, or undefined.
   * Shortest path through the diagram; ties prefer earlier variables at rest.
   */
  nearest(f: Fn, rest: (variable: number) => boolean): Map<number, boolean> | undefined {
    if (f === FALSE) return undefined;
    const cost = new Map<Fn, number>([
      [FALSE, Number.POSITIVE_INFINITY],
      [TRUE, 0],
    ]);
    for (const node of this.upwards(f, cost)) {
      const restValue = rest(this.level[node]!);
      const low = cost.get(this.low[node]!)! + (restValue ? 1 : 0);
      const high = cost.get(this.high[node]!)! + (restValue ? 0 : 1);
      cost.set(node, Math.min(low, high));
    }
    const chosen = new Map<number, boolean>();
    let node = f;
    while (node > 1) {
      const level = this.level[node]!;
      const restValue = rest(level);
      const stay = restValue ? this.high[node]! : this.low[node]!;
      const move = restValue ? this.low[node]! : this.high[node]!;
      const keep = cost.get(stay)! <= cost.get(move)! + 1;
      chosen.set(level, keep ? restValue : !restValue);
      node = keep ? stay : move;
    }
    return chosen;
  }
}
