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

/** Diagrams are walked by recursion, a call or two a variable; a stack of the usual size holds twice as many. */
const MOST_VARIABLES = 4096;

const TERMINAL_LEVEL = 0x7fffffff;

export class Bdd {
  private readonly level: number[] = [TERMINAL_LEVEL, TERMINAL_LEVEL];
  private readonly low: number[] = [0, 1];
  private readonly high: number[] = [0, 1];
  private readonly unique = new Map<number, Map<number, number>>();
  private readonly iteCache = new Map<number, Map<number, number>>();

  private steps = 0;

  /** Throws Undecided where so many variables would take recursion deeper than the machine allows. */
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

  ite(f: Fn, g: Fn, h: Fn): Fn {
    if (f === TRUE || g === h) return g;
    if (f === FALSE) return h;
    if (g === TRUE && h === FALSE) return f;
    const key = g * 4194304 + h;
    const table = kept(this.iteCache, f, () => new Map<number, number>());
    const found = table.get(key);
    if (found !== undefined) return found;
    if (++this.steps > 8 * this.budget) throw new Undecided('the decision diagram took too long');
    const level = Math.min(this.level[f]!, this.level[g]!, this.level[h]!);
    const low = this.ite(
      this.cofactor(f, level, false),
      this.cofactor(g, level, false),
      this.cofactor(h, level, false),
    );
    const high = this.ite(
      this.cofactor(f, level, true),
      this.cofactor(g, level, true),
      this.cofactor(h, level, true),
    );
    const made = this.node(level, low, high);
    table.set(key, made);
    return made;
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
    const found = memo.get(f);
    if (found !== undefined) return found;
    const level = this.level[f]!;
    const low = this.compose(this.low[f]!, map, memo);
    const high = this.compose(this.high[f]!, map, memo);
    const made = this.ite(map.get(level) ?? this.variable(level), high, low);
    memo.set(f, made);
    return made;
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
    const walk = (node: Fn): number => {
      const known = cost.get(node);
      if (known !== undefined) return known;
      const restValue = rest(this.level[node]!);
      const made = Math.min(
        walk(this.low[node]!) + (restValue ? 1 : 0),
        walk(this.high[node]!) + (restValue ? 0 : 1),
      );
      cost.set(node, made);
      return made;
    };
    walk(f);
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
