/** The order in which cores are wired: run by run from the supplies outwards, low voltage first, mains last. */

import { isMains, type Sides } from '../checks/sides.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { push } from '../circuit/maps.ts';
import type { BoxPart, Core, Plan, Run, TerminalRef } from '../plan/plan.ts';

export type Section = 'low voltage' | 'mains';

/** One core in its turn, from the end that is there already to the new one. */
export interface Placed {
  readonly section: Section;
  readonly run: Run;
  readonly core: Core;
  readonly from: TerminalRef;
  readonly to: TerminalRef;
  /** nothing wired before leads to it */
  readonly loose: boolean;
}

const MAINS_KINDS = new Set(['plug', 'outlet', 'motor', 'load']);
const MAINS_MARKS = new Set(['L', 'N', 'PE', 'L1', 'L2', 'L3']);

/** The side of a core: that of its conductor; where no source reaches it, that of the parts it lands on. */
export function sectionOf(circuit: Circuit, sides: Sides, core: Core): Section {
  const ends = [core.a, core.b];
  const nets = ends.map((e) => circuit.netOf.get(e.terminal === '' ? e.part : `${e.part}.${e.terminal}`));
  const low = nets.some((n) => n !== undefined && sides.low.has(n));
  if (nets.some((n) => isMains(sides, n))) return 'mains';
  // A pole of the loop that is joined to earth is wired with the loop.
  const earth = nets.some((n) => n !== undefined && sides.earth.has(n));
  if (earth && (!low || ends.some((e) => e.terminal === 'PE'))) return 'mains';
  if (low) return 'low voltage';
  const mains = ends.some((e) => {
    const kind = circuit.plan.parts.get(e.part)?.kind ?? '';
    const primary = kind === 'supply' && MAINS_MARKS.has(e.terminal);
    return MAINS_KINDS.has(kind) || primary || e.terminal === 'PE';
  });
  return mains ? 'mains' : 'low voltage';
}

/** Every core of the plan once. Within a section each starts at a source or at a part wired before, or is loose. */
export function wiringOrder(circuit: Circuit, sides: Sides): Placed[] {
  const { plan } = circuit;
  const cores = plan.runs.flatMap((run) =>
    run.cores.map((core) => ({ run, core, section: sectionOf(circuit, sides, core) })),
  );
  return (['low voltage', 'mains'] as const).flatMap((section) => {
    const bundles = new Map<number, Core[]>();
    for (const c of cores) if (c.section === section) push(bundles, c.run.index, c.core);
    const isSource = (name: string) => {
      const kind = plan.parts.get(name)?.kind;
      return section === 'mains' ? kind === 'plug' : kind === 'supply' || kind === 'battery';
    };
    return new Walk(plan, section, bundles, isSource).all();
  });
}

/** The protective conductor of a cable is joined before the others; common practice. */
const isEarthEnd = (core: Core): boolean => core.a.terminal === 'PE' || core.b.terminal === 'PE';

/** One section's walk over the parts: where it has come to is finished before it goes on, as deep as a spur leads. */
class Walk {
  readonly #plan: Plan;
  readonly #section: Section;
  readonly #left: Map<number, Core[]>;
  readonly #at = new Map<string, Set<number>>();
  readonly #boxes = new Map<string, BoxPart>();
  /** parts reached, with their turn */
  readonly #reached = new Map<string, number>();
  readonly #stack: string[] = [];
  readonly #placed: Placed[] = [];

  constructor(
    plan: Plan,
    section: Section,
    bundles: Map<number, Core[]>,
    isSource: (name: string) => boolean,
  ) {
    this.#plan = plan;
    this.#section = section;
    this.#left = bundles;
    for (const part of plan.parts.values())
      if (part.kind === 'box') for (const name of [part.name, ...part.holds]) this.#boxes.set(name, part);
    for (const [run, cores] of bundles)
      for (const core of cores)
        for (const { part } of [core.a, core.b]) {
          const runs = this.#at.get(part);
          if (runs) runs.add(run);
          else this.#at.set(part, new Set([run]));
        }
    // The first source is on top of the stack.
    for (const name of [...plan.parts.keys()].filter(isSource).reverse()) this.#reach(name);
  }

  all(): Placed[] {
    for (;;) {
      const name = this.#stack.at(-1);
      const run = name === undefined ? this.#left.keys().next().value : this.#next(name);
      if (run !== undefined) this.#place(run);
      else if (name === undefined) return this.#placed;
      else this.#stack.pop();
    }
  }

  #reach(name: string): void {
    if (this.#reached.has(name)) return;
    this.#reached.set(name, this.#reached.size);
    this.#stack.push(name);
  }

  /** What is left at a part: first what stays in its box, links before cables, then in the order of the plan. */
  #next(name: string): number | undefined {
    let best: { run: number; rank: number } | undefined;
    for (const run of this.#at.get(name) ?? []) {
      const cores = this.#left.get(run);
      if (cores === undefined) continue;
      const rank = this.#plan.runs[run]!.link ? 0 : this.#staysInside(cores) ? 1 : 2;
      if (best === undefined || rank < best.rank || (rank === best.rank && run < best.run))
        best = { run, rank };
    }
    return best?.run;
  }

  #staysInside(cores: readonly Core[]): boolean {
    const boxes = new Set(cores.flatMap((c) => [this.#boxes.get(c.a.part), this.#boxes.get(c.b.part)]));
    return boxes.size === 1 && !boxes.has(undefined);
  }

  /** All cores of a run, those first that start where something is wired already. */
  #place(index: number): void {
    const run = this.#plan.runs[index]!;
    const cores = [...this.#left.get(index)!].sort((x, y) => Number(isEarthEnd(y)) - Number(isEarthEnd(x)));
    this.#left.delete(index);
    while (cores.length > 0) {
      const found = cores.findIndex((c) => this.#reached.has(c.a.part) || this.#reached.has(c.b.part));
      const [core] = cores.splice(Math.max(0, found), 1);
      const [a, b] = [this.#reached.get(core!.a.part), this.#reached.get(core!.b.part)];
      const turn = (a ?? Number.POSITIVE_INFINITY) > (b ?? Number.POSITIVE_INFINITY);
      const [from, to] = turn ? [core!.b, core!.a] : [core!.a, core!.b];
      this.#placed.push({ section: this.#section, run, core: core!, from, to, loose: found < 0 });
      this.#reach(from.part);
      this.#reach(to.part);
    }
  }
}
