/** Changes of wiring that a search tries, and how they alter the cores. */
import type { Edit } from '../edit/edits.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { Ends, Quick } from './quick.ts';
import { Wants } from './terminals-lacking-ends.ts';

/** An edit with what it costs at the bench. */
export interface Try {
  readonly edits: readonly Edit[];
  /** ends taken off and put on */
  readonly ends: number;
  /** new cores */
  readonly added: number;
  /** the smaller, the likelier this is what went wrong: ends put where a twin part has one and this part none */
  readonly oddness: number;
}

type Cores = readonly (readonly Ends[])[];

/** The cores after an edit; the list's shape stays, so that indices in later edits still hold. */
export function rewired(quick: Quick, cores: Cores, edits: readonly Edit[]): Ends[][] {
  const out = cores.map((run) => [...run]);
  const put = (run: number, core: number, end: 'a' | 'b', terminal: number) => {
    const [a, b] = out[run]![core]!;
    out[run]![core] = end === 'a' ? [terminal, b] : [a, terminal];
  };
  const at = (e: { run: number; core: number; end: 'a' | 'b' }) =>
    out[e.run]![e.core]![e.end === 'a' ? 0 : 1];
  for (const e of edits) {
    if (e.do === 'move') put(e.run, e.core, e.end, quick.terminal(e.to)!);
    else if (e.do === 'swap') {
      const [x, y] = [at(e.first), at(e.second)];
      put(e.first.run, e.first.core, e.first.end, y);
      put(e.second.run, e.second.core, e.second.end, x);
    } else if (e.do === 'remove') {
      const [a] = out[e.run]![e.core]!;
      out[e.run]![e.core] = [a, a];
    } else out.push([[quick.terminal(e.from)!, quick.terminal(e.to)!]]);
  }
  return out;
}

const MAINS_PARTS: ReadonlySet<string> = new Set(['plug', 'outlet', 'motor', 'load', 'box']);

interface Place {
  readonly run: number;
  readonly core: number;
  readonly end: 'a' | 'b';
  readonly at: number;
  readonly other: number;
}

/** Every single change of wiring worth a look, one for each conductor an end could land on. */
export class Rewirings {
  private readonly wants: Wants;
  private readonly landed: Int32Array;
  private readonly roots: Int32Array;
  private readonly ever: (a: number, b: number) => boolean;
  private readonly earthed: ReadonlySet<number>;
  /** terminals that may take an end, those that want one first */
  private readonly targets: readonly number[];

  constructor(
    private readonly plan: Plan,
    private readonly quick: Quick,
    private readonly cores: Cores,
  ) {
    this.wants = new Wants(plan, quick, cores);
    this.landed = this.wants.landed;
    const base = quick.base(cores);
    this.ever = quick.joined(base, true);
    this.roots = rootsOf(base);
    this.earthed = new Set(quick.names.flatMap((name, i) => (name.endsWith('.PE') ? [this.roots[i]!] : [])));
    this.targets = quick.names.map((_, i) => i).sort((x, y) => this.want(y) - this.want(x) || x - y);
  }

  /** Pins of mains parts and earths take no core of the loop, gates and supplies none of the mains. */
  private fits(terminal: number, other: number): boolean {
    const side = (t: number): 'mains' | 'low' | 'either' => {
      const [name, mark] = this.quick.names[t]!.split('.');
      const kind = this.plan.parts.get(name!)?.kind;
      if (mark === 'PE' || MAINS_PARTS.has(kind ?? '')) return 'mains';
      if (kind === 'gate' || kind === 'battery' || (kind === 'supply' && /^[+\-~]/.test(mark ?? '')))
        return 'low';
      return 'either';
    };
    const [x, y] = [side(terminal), side(other)];
    const earth = (t: number) => this.quick.names[t]!.endsWith('.PE');
    if (earth(terminal) !== earth(other) && (earth(terminal) || earth(other))) {
      // An earth core joins earths, or a joint that is one already.
      return this.earthed.has(this.roots[earth(terminal) ? other : terminal]!);
    }
    return x === 'either' || y === 'either' || x === y;
  }

  private want(terminal: number): number {
    return this.wants.want(terminal);
  }

  private partOf(terminal: number): string {
    return partOfKey(this.quick.names[terminal]!);
  }

  private places(): Place[] {
    return this.cores.flatMap((run, r) =>
      run.flatMap(([a, b], core): Place[] =>
        a === b
          ? []
          : [
              { run: r, core, end: 'a', at: a, other: b },
              { run: r, core, end: 'b', at: b, other: a },
            ],
      ),
    );
  }

  /** Ends moved, the ones that look odd first. */
  *moves(): Generator<Try> {
    const places = this.places().sort((x, y) => this.want(x.at) - this.want(y.at));
    for (const p of places) {
      const base = this.quick.base(
        rewired(this.quick, this.cores, [{ do: 'remove', run: p.run, core: p.core }]),
      );
      const root = rootsOf(base);
      const seen = new Set([root[p.at], root[p.other]]);
      for (const to of this.likely(p)) {
        if (to === p.at || to === p.other || seen.has(root[to]) || !this.fits(to, p.other)) continue;
        seen.add(root[to]);
        yield {
          edits: [{ do: 'move', run: p.run, core: p.core, end: p.end, to: this.quick.names[to]! }],
          ends: 1,
          added: 0,
          oddness: this.want(p.at) - this.want(to),
        };
      }
    }
  }

  /** Terminals that want an end, then those of the end's own part, then one of each conductor. */
  private likely(p: Place): number[] {
    const own = this.targets.filter((t) => this.partOf(t) === this.partOf(p.at) && this.want(t) <= 0);
    const wanting = this.targets.filter((t) => this.want(t) > 0);
    const used = this.targets.filter((t) => this.landed[t]! > 0);
    // Where several ends of one conductor would do, a bar or splice is handier than a tab that has its core already.
    const bars = used.filter((t) => this.plan.parts.get(this.quick.names[t]!)?.kind === 'joint');
    return [...wanting, ...own, ...bars, ...used];
  }

  /** All the ends on one tab of a switch or pole, moved together to another of its tabs. */
  *tabs(): Generator<Try> {
    const byTerminal = new Map<number, Place[]>();
    for (const p of this.places()) byTerminal.set(p.at, [...(byTerminal.get(p.at) ?? []), p]);
    for (const [from, ends] of byTerminal) {
      const part = this.plan.parts.get(this.partOf(from));
      if (ends.length < 2 || !part || !('contact' in part || 'poles' in part)) continue;
      for (const to of this.targets) {
        if (to === from || this.partOf(to) !== part.name || ends.some((e) => e.other === to)) continue;
        yield {
          edits: ends.map((e) => ({
            do: 'move',
            run: e.run,
            core: e.core,
            end: e.end,
            to: this.quick.names[to]!,
          })),
          ends: ends.length,
          added: 0,
          oddness: this.want(from) - this.want(to),
        };
      }
    }
  }

  /** Two ends that change places: at one part, or at the same side of one run. */
  *swaps(): Generator<Try> {
    const places = this.places();
    const byPart = new Map<string, Place[]>();
    for (const p of places) byPart.set(this.partOf(p.at), [...(byPart.get(this.partOf(p.at)) ?? []), p]);
    const groups = [...byPart.values()].filter((g) => g.length <= 40);
    for (const run of new Set(places.map((p) => p.run)))
      for (const end of ['a', 'b'] as const)
        groups.push(places.filter((p) => p.run === run && p.end === end));
    const seen = new Set<string>();
    for (const g of groups)
      for (let i = 0; i < g.length; i++)
        for (let j = i + 1; j < g.length; j++) {
          const [x, y] = [g[i]!, g[j]!];
          const key = `${x.run}/${x.core}/${x.end} ${y.run}/${y.core}/${y.end}`;
          if (x.at === y.at || x.at === y.other || y.at === x.other || seen.has(key)) continue;
          seen.add(key);
          const first = { run: x.run, core: x.core, end: x.end };
          const second = { run: y.run, core: y.core, end: y.end };
          yield { edits: [{ do: 'swap', first, second }], ends: 2, added: 0, oddness: 0 };
        }
  }

  *removals(): Generator<Try> {
    for (let run = 0; run < this.cores.length; run++)
      for (let core = 0; core < this.cores[run]!.length; core++) {
        const [a, b] = this.cores[run]![core]!;
        if (a === b) continue;
        const oddness = Math.min(this.want(a), this.want(b));
        yield { edits: [{ do: 'remove', run, core }], ends: 2, added: 0, oddness };
      }
  }

  /** A new core between two conductors, from a terminal that wants one where there is such. */
  *additions(most: number): Generator<Try> {
    const root = rootsOf(this.quick.base(this.cores));
    const seen = new Set<number>();
    const ends = this.targets
      .filter((t) => this.want(t) > 0 || this.landed[t]! > 0)
      .filter((t) => !seen.has(root[t]!) && seen.add(root[t]!))
      .slice(0, most);
    for (let i = 0; i < ends.length; i++)
      for (let j = i + 1; j < ends.length; j++) {
        if (!this.fits(ends[i]!, ends[j]!)) continue;
        const [from, to] = [this.quick.names[ends[i]!]!, this.quick.names[ends[j]!]!];
        const oddness = -this.want(ends[i]!) - this.want(ends[j]!);
        const like = this.cableNear(ends[i]!, ends[j]!);
        const edit: Edit = { do: 'add', from, to, like, metres: undefined };
        yield { edits: [edit], ends: 2, added: 1, oddness };
      }
  }

  /** Whether a terminal is on the mains in some position of the contacts, or sits on a mains part. */
  private onMains(terminal: number): boolean {
    const kind = this.plan.parts.get(this.partOf(terminal))?.kind ?? '';
    return MAINS_PARTS.has(kind) || this.quick.poles(true).some((p) => this.ever(p, terminal));
  }

  /** A run on the same side with a cable that ends at one of the two parts, preferably at both. */
  private cableNear(a: number, b: number): number | undefined {
    const mains = this.onMains(a) || this.onMains(b);
    const parts = new Set([this.partOf(a), this.partOf(b)]);
    let best: { run: number; score: number } | undefined;
    this.plan.runs.forEach((run, r) => {
      const own = this.cores[r]?.flat() ?? [];
      if (run.link || !run.cable || own.some((t) => this.onMains(t)) !== mains) return;
      const ends = new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]));
      const score = [...parts].filter((p) => ends.has(p)).length;
      if (!best || score > best.score) best = { run: r, score };
    });
    return best?.run;
  }

  /** Other terminals on the conductor an edit lands on. */
  alike(edit: Edit): number {
    if (edit.do !== 'move') return 0;
    const rest = rewired(this.quick, this.cores, [{ do: 'remove', run: edit.run, core: edit.core }]);
    const root = rootsOf(this.quick.base(rest));
    const to = this.quick.terminal(edit.to)!;
    return this.quick.names.filter((_, i) => i !== to && root[i] === root[to] && this.landed[i]! > 0).length;
  }
}

/** Group number of every terminal from a table of parents. */
function rootsOf(parent: Int32Array): Int32Array {
  const root = (x: number): number => {
    let at = x;
    while (parent[at] !== at) at = parent[at]!;
    return at;
  };
  return Int32Array.from(parent, (_, i) => root(i));
}
