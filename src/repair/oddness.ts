/**
 * How odd a wiring looks by its own habits: the fewer habits a plan breaks, the likelier it is what was meant. Weights
 * are of our own choosing; `npm run repairs` measures what they are worth.
 */
import { UnionFind } from '../circuit/union-find.ts';
import { push } from '../plan/map-entries.ts';
import type { Core, Plan, Run } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';

/** What each broken habit weighs, in ends moved by mistake. */
const WEIGHT = {
  /** a core of a cable that ends elsewhere than the others of that cable */
  astray: 1.2,
  /** a tab with another colour on it than the same tab of its twins, or with none where they have one */
  unlikeTwins: 1,
  /** a core of another colour than most on its conductor */
  offColour: 0.4,
  /** a terminal that does nothing without a core and has none, or a joint with one core */
  loose: 1.5,
  /** a core of the cable that is left unused, where its like use all */
  spare: 0.6,
  /** a core that joins what is joined already by another of its cable, or two tabs of one switch */
  idle: 1.5,
} as const;

/** Short cables lie within one place, m. */
const WITHIN = 0.3;

/** A wiring as its cores: what `Plan` and a change of it have in common. */
interface Wired {
  readonly run: Run;
  readonly core: Core;
  readonly a: string;
  readonly b: string;
}

/** The habits of one plan, by which any wiring of its parts can be judged. */
export class Oddness {
  /** parts that share a box, a link or a short cable stand in one place */
  private readonly places = new UnionFind();
  private readonly numbers = new Map<string, number>();
  private readonly usual: ReadonlyMap<string, number>;

  constructor(
    private readonly plan: Plan,
    private readonly needs: (terminal: string) => boolean,
  ) {
    for (const part of plan.parts.values()) {
      this.place(part.name);
      if (part.kind === 'box') for (const name of part.holds) this.together(part.name, name);
      if ((part.kind === 'motor' || part.kind === 'load') && part.pluggedInto !== undefined)
        this.together(part.name, part.pluggedInto);
    }
    for (const run of plan.runs)
      if (run.link || (run.length ?? 1) <= WITHIN)
        for (const core of run.cores) this.together(core.a.part, core.b.part);
    this.usual = usualCores(plan);
  }

  private place(part: string): number {
    let number = this.numbers.get(part);
    if (number === undefined) {
      number = this.places.add();
      this.numbers.set(part, number);
    }
    return number;
  }

  private together(a: string, b: string): void {
    this.places.union(this.place(a), this.place(b));
  }

  private placeOf(part: string): number {
    return this.places.find(this.place(part));
  }

  /** The habits broken by a plan of the same parts, weighed. */
  of(plan: Plan): number {
    const wired = plan.runs.flatMap((run) =>
      run.cores.map((core): Wired => ({ run, core, a: keyOf(core.a), b: keyOf(core.b) })),
    );
    return (
      WEIGHT.astray * this.astray(plan) +
      WEIGHT.unlikeTwins * this.unlikeTwins(wired) +
      WEIGHT.offColour * offColour(wired) +
      WEIGHT.loose * this.loose(wired) +
      WEIGHT.spare * this.spare(plan) +
      WEIGHT.idle * idle(plan)
    );
  }

  /** Cores whose ends lie in other places than those of most cores in their cable. */
  private astray(plan: Plan): number {
    let count = 0;
    for (const run of plan.runs) {
      if (run.link || run.cores.length < 2) continue;
      const ways = new Map<string, number>();
      for (const core of run.cores) {
        const way = this.way(core);
        ways.set(way, (ways.get(way) ?? 0) + 1);
      }
      count += run.cores.length - Math.max(...ways.values());
    }
    return count;
  }

  private way(core: Core): string {
    const [a, b] = [this.placeOf(core.a.part), this.placeOf(core.b.part)];
    return a < b ? `${a} ${b}` : `${b} ${a}`;
  }

  /** Tabs of twin parts, each against the colours that most of them carry. */
  private unlikeTwins(wired: readonly Wired[]): number {
    const colours = new Map<string, Set<string>>();
    for (const { run, core, a, b } of wired) {
      if (run.link) continue;
      for (const key of [a, b]) {
        let on = colours.get(key);
        if (!on) {
          on = new Set();
          colours.set(key, on);
        }
        on.add(core.colour);
      }
    }
    let count = 0;
    for (const [terminal, keys] of this.twins()) {
      void terminal;
      const signs = keys.map((key) => [...(colours.get(key) ?? [])].sort());
      count += Math.min(...signs.map((mode) => signs.reduce((sum, s) => sum + apart(s, mode), 0)));
    }
    return count;
  }

  /** Terminals of the same name on parts of one kind and specification, of which there are several. */
  private twins(): ReadonlyMap<string, readonly string[]> {
    const groups = new Map<string, string[]>();
    for (const part of this.plan.parts.values()) {
      if (!TWINNED.has(part.kind)) continue;
      for (const name of this.plan.terminals.get(part.name)?.names ?? [])
        push(groups, `${part.kind} ${pressed(part)} ${name}`, terminalKey(part.name, name));
    }
    return new Map([...groups].filter(([, keys]) => keys.length > 1));
  }

  /** Terminals that lack a core, and joints with one alone. */
  private loose(wired: readonly Wired[]): number {
    const landed = new Map<string, number>();
    for (const { a, b } of wired) for (const key of [a, b]) landed.set(key, (landed.get(key) ?? 0) + 1);
    let count = 0;
    for (const part of this.plan.parts.values())
      for (const name of this.plan.terminals.get(part.name)?.names ?? []) {
        const key = terminalKey(part.name, name);
        const has = landed.get(key) ?? 0;
        if (has === 0 ? this.needs(key) : has === 1 && part.kind === 'joint') count++;
      }
    return count;
  }

  /** Cores left unused in cables that elsewhere are used to the last. */
  private spare(plan: Plan): number {
    return plan.runs.reduce((sum, run) => {
      if (run.link || run.cable === undefined || run.index >= this.plan.runs.length) return sum;
      return sum + Math.max(0, (this.usual.get(cableName(run)) ?? 0) - run.cores.length);
    }, 0);
  }
}

/** Kinds of part that a shop has several of, wired alike. */
const TWINNED: ReadonlySet<string> = new Set(['gate', 'switch', 'button', 'cutout', 'lamp', 'led']);

const keyOf = (end: Core['a']): string => terminalKey(end.part, end.terminal);
const pressed = (part: object): string => ('pressedWhen' in part ? String(part.pressedWhen) : '');
const cableName = (run: Run): string => `${run.cable?.stock ?? run.cable?.gauge} ${run.cable?.cores}`;

/** Cores that most runs of a cable use. */
function usualCores(plan: Plan): Map<string, number> {
  const used = new Map<string, number[]>();
  for (const run of plan.runs) if (!run.link && run.cable) push(used, cableName(run), run.cores.length);
  return new Map(
    [...used].map(([name, list]) => [name, [...list].sort((x, y) => x - y)[list.length >> 1]!] as const),
  );
}

/** Colours that one of two lists has and the other has not. */
function apart(x: readonly string[], y: readonly string[]): number {
  return x.filter((c) => !y.includes(c)).length + y.filter((c) => !x.includes(c)).length;
}

/** Cores of other colours than most on the same conductor, wires and joints alone joining. */
function offColour(wired: readonly Wired[]): number {
  const sets = new UnionFind();
  const ids = new Map<string, number>();
  const id = (key: string): number => {
    let found = ids.get(key);
    if (found === undefined) {
      found = sets.add();
      ids.set(key, found);
    }
    return found;
  };
  for (const { a, b } of wired) sets.union(id(a), id(b));
  const colours = new Map<number, Map<string, number>>();
  for (const { run, core, a } of wired) {
    if (run.link) continue;
    const net = sets.find(id(a));
    const on = colours.get(net) ?? new Map<string, number>();
    colours.set(net, on);
    on.set(core.colour, (on.get(core.colour) ?? 0) + 1);
  }
  let count = 0;
  for (const on of colours.values()) {
    const all = [...on.values()];
    count += all.reduce((x, y) => x + y, 0) - Math.max(...all);
  }
  return count;
}

/** Cores that join what another core of their cable joins, and cores between two tabs of one switch. */
function idle(plan: Plan): number {
  let count = 0;
  for (const run of plan.runs) {
    if (run.link) continue;
    const seen = new Set<string>();
    for (const core of run.cores) {
      const key = [keyOf(core.a), keyOf(core.b)].sort().join(' ');
      if (seen.has(key) || core.a.part === core.b.part) count++;
      seen.add(key);
    }
  }
  return count;
}
