/** Parts that are wired alike: which of them, seen from one fault, stand where others stand seen from another. */
import { kept, push } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';

/** One end of a core at a part, and where its other end is. */
interface Way {
  readonly terminal: string;
  readonly to: string;
  readonly toTerminal: string;
}

/** A part goes into its own likes: its kind, and what its cores lead to. */
export class AlikeParts {
  private readonly ways = new Map<string, Way[]>();
  private readonly labels = new Map<string, string>();
  private readonly byLabel = new Map<string, string[]>();

  constructor(private readonly plan: Plan) {
    for (const { cores, index } of plan.runs)
      for (const { a, b } of cores) {
        push(this.runsAt, a.part, index);
        push(this.runsAt, b.part, index);
        push(this.ways, a.part, { terminal: a.terminal, to: b.part, toTerminal: b.terminal });
        push(this.ways, b.part, { terminal: b.terminal, to: a.part, toTerminal: a.terminal });
      }
    for (const name of plan.parts.keys()) {
      const ends = this.waysOf(name).map((w) => `${w.terminal}>${this.kindOf(w.to)}.${w.toTerminal}`);
      this.labels.set(name, `${this.kindOf(name)} ${ends.sort().join()}`);
    }
    for (const [name, label] of this.labels) push(this.byLabel, label, name);
  }

  /** What is the same for parts that are wired alike. */
  label(part: string): string {
    return this.labels.get(part) ?? '';
  }

  /** The figures of a part and of the runs that end at it, as text. */
  figures(part: string): string {
    return kept(this.told, part, () => {
      const own = { ...this.plan.parts.get(part), name: '', at: '', where: '' };
      const runs = (this.runsAt.get(part) ?? []).map((i) => {
        const { length, cable } = this.plan.runs[i]!;
        return JSON.stringify([length, cable]);
      });
      return `${JSON.stringify(own)} ${runs.join()}`;
    });
  }
  private readonly told = new Map<string, string>();
  private readonly runsAt = new Map<string, number[]>();

  /** The parts wired as this one is, itself with them, in the order of the plan. */
  likes(part: string): readonly string[] {
    return this.byLabel.get(this.label(part)) ?? [part];
  }

  /**
   * Goes out along the cores from pairs of parts that stand for each other, as long as the parts met there are alike;
   * what stands for each part that was met. The first pair of a part holds.
   */
  matched(pairs: Iterable<readonly [string, string]>, most: number): Map<string, string> {
    const to = new Map<string, string>();
    const taken = new Set<string>();
    const put = (a: string, b: string) => {
      if (to.has(a) || taken.has(b) || this.label(a) !== this.label(b)) return;
      to.set(a, b);
      taken.add(b);
    };
    for (const [a, b] of pairs) put(a, b);
    for (const [a, b] of to) {
      if (to.size >= most) break;
      const there = this.grouped(b);
      for (const [name, here] of this.grouped(a)) {
        const free = (there.get(name) ?? []).filter((x) => !taken.has(x));
        const open = here.filter((x) => !to.has(x));
        for (const [k, x] of open.entries()) if (free[k] !== undefined) put(x, free[k]);
      }
    }
    return to;
  }

  /** The parts around one by how they hang on it, in the order of the plan. */
  private grouped(part: string): ReadonlyMap<string, readonly string[]> {
    return kept(this.groups, part, () => {
      const found = new Map<string, string[]>();
      for (const w of this.waysOf(part)) {
        const list = kept(found, `${w.terminal}>${w.toTerminal} ${this.label(w.to)}`, () => []);
        if (!list.includes(w.to)) list.push(w.to);
      }
      return found;
    });
  }
  private readonly groups = new Map<string, ReadonlyMap<string, readonly string[]>>();

  private waysOf(part: string): readonly Way[] {
    return this.ways.get(part) ?? [];
  }

  private kindOf(part: string): string {
    return this.plan.parts.get(part)?.kind ?? '';
  }
}
