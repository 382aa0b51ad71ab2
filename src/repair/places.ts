/** Where the parts of a plan stand, as far as its cables tell: what is together, and how far apart the rest is. */
import { UnionFind } from '../circuit/union-find.ts';
import { kept, push } from '../plan/map-entries.ts';
import type { Plan, Run } from '../plan/plan.ts';

/** m up to which a cable lies within one place. */
const WITHIN = 0.3;
/** Share and m by which a cable may be laid shorter or longer than the plan has it. */
const GIVE = { share: 0.1, metres: 0.2 };

/** A cable from one place to another. */
interface Way {
  readonly to: number;
  readonly metres: number;
  /** index into `Plan.runs` */
  readonly run: number;
}

export class Places {
  private readonly sets = new UnionFind();
  private readonly numbers = new Map<string, number>();
  private readonly ways = new Map<number, Way[]>();

  private readonly others = new Map<number, Places>();

  /** Parts that share a box, a link or a short cable stand together, and so does a load with its outlet. */
  constructor(
    private readonly plan: Plan,
    private readonly leftOut?: number,
  ) {
    for (const part of plan.parts.values()) {
      if (part.kind === 'box') for (const name of part.holds) this.together(part.name, name);
      if ('pluggedInto' in part && part.pluggedInto !== undefined) this.together(part.name, part.pluggedInto);
    }
    const runs = plan.runs.filter((run) => run.index !== leftOut);
    for (const run of runs)
      if (run.link || (run.length ?? 1) <= WITHIN)
        for (const core of run.cores) this.together(core.a.part, core.b.part);
    for (const run of runs) {
      const way = usualWay(run, (part) => this.of(part));
      if (way === undefined || run.link || run.length === undefined) continue;
      const [a, b] = way;
      push(this.ways, a, { to: b, metres: run.length, run: run.index });
      push(this.ways, b, { to: a, metres: run.length, run: run.index });
    }
  }

  private number(part: string): number {
    return kept(this.numbers, part, () => this.sets.add());
  }

  private together(a: string, b: string): void {
    this.sets.union(this.number(a), this.number(b));
  }

  /** Number of the place of a part. */
  of(part: string): number {
    return this.sets.find(this.number(part));
  }

  /** The place that most cores of a run lead from and to; undefined where it has none. */
  wayOf(run: Run): readonly [number, number] | undefined {
    return usualWay(run, (part) => this.of(part));
  }

  /** Whether a cable of so many metres may lead from one part to another; a link (undefined) stays in its place. */
  reaches(from: string, to: string, metres: number | undefined): boolean {
    const [a, b] = [this.of(from), this.of(to)];
    if (a === b) return true;
    if (metres === undefined) return false;
    return this.atLeast(a, b) <= metres * (1 + GIVE.share) + GIVE.metres;
  }

  /**
   * Whether the one core of a cable may lead from one part to another. Where it leads now may be the mistake, and then it
   * says nothing of what stands together.
   */
  reachesAlone({ index, length }: Run, from: string, to: string): boolean {
    if (this.leftOut === index) return this.reaches(from, to, length);
    return kept(this.others, index, () => new Places(this.plan, index)).reachesAlone(
      this.plan.runs[index]!,
      from,
      to,
    );
  }

  /**
   * Whether a core would leave its cable for a third place: all other cores of the run, two at least, lead from one place
   * to another, and so does this one for its other end.
   */
  leavesCable(run: Run, core: number, other: string, to: string): boolean {
    const ways = new Set(
      run.cores
        .filter((_, i) => i !== core)
        .map(({ a, b }) => [this.of(a.part), this.of(b.part)].sort((x, y) => x - y).join()),
    );
    const [way, ...more] = ways;
    if (run.link || run.cores.length < 3 || way === undefined || more.length > 0) return false;
    const places = way.split(',').map(Number);
    return places.includes(this.of(other)) && !places.includes(this.of(to));
  }

  /** m along the shortest way from one part to another, by what else lies in a run's cable; undefined where there is none. */
  wayBetween(from: string, to: string, besides: Run): number | undefined {
    const [start, end] = [this.of(from), this.of(to)];
    const left = new Map([[start, 0]]);
    const done = new Set<number>();
    for (;;) {
      const open = [...left].filter(([place]) => !done.has(place));
      if (open.length === 0) return undefined;
      const [at, metres] = open.reduce((x, y) => (y[1] < x[1] ? y : x));
      if (at === end) return metres;
      done.add(at);
      for (const w of this.ways.get(at) ?? []) {
        if (w.run === besides.index && besides.cores.length === 1) continue;
        left.set(w.to, Math.min(left.get(w.to) ?? Number.POSITIVE_INFINITY, metres + w.metres));
      }
    }
  }

  /** m that two places are apart at least, as far as cables tell that lead from one to the other or from both to a third. */
  private atLeast(a: number, b: number): number {
    const far = this.ways.get(a) ?? [];
    const direct = far.filter((w) => w.to === b).map((w) => w.metres);
    const thirds = far.flatMap((w) =>
      (this.ways.get(b) ?? []).filter((x) => x.to === w.to).map((x) => Math.abs(x.metres - w.metres)),
    );
    return direct.length > 0 ? Math.min(...direct) : Math.max(0, ...thirds);
  }
}

function usualWay(run: Run, placeOf: (part: string) => number): readonly [number, number] | undefined {
  const ways = new Map<string, { count: number; way: readonly [number, number] }>();
  for (const { a, b } of run.cores) {
    const [x, y] = [placeOf(a.part), placeOf(b.part)].sort((p, q) => p - q) as [number, number];
    const known = kept(ways, `${x} ${y}`, () => ({ count: 0, way: [x, y] as const }));
    known.count++;
  }
  return [...ways.values()].sort((x, y) => y.count - x.count)[0]?.way;
}
