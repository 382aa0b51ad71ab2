/** Changes of wiring that a search tries. */
import type { Edit } from '../edit/edits.ts';
import { push } from '../plan/map-entries.ts';
import type { Part } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey, splitTerminalKey } from '../plan/terminal-key.ts';
import { hasTerminal } from './cutout-marks.ts';
import { kindOf, type Side } from './kinds.ts';
import { MissingEnds } from './missing-ends.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';
import { type QuickLook, rootsOf, type Wiring } from './quick-look.ts';
import { type Candidate, rewired } from './rewired.ts';

/** A candidate with what its cores join. */
export interface Attempt extends Candidate {
  readonly wiring: Wiring;
}

/** Slips of a hand that a part stands for which is wired the other way round. */
const TOGETHER = 1.1;
/** What a cable on the same conductor counts for beside one at the same part: it is as thick as it has to be. */
const SAME_CONDUCTOR = 0.5;
/** What each end beyond two adds where those of two tabs change places. */
const EACH_MORE = 0.1;
/** Tabs without a core up to which an end of any core is tried on each. */
const MOST_SPARE = 60;
const isContact = (part: Part): boolean => 'contact' in part || 'poles' in part;
const hasSpare = (part: Part): boolean => isContact(part) || 'taps' in part;
/** Parts with several ends on a tab: contacts, and what has two ends. */
const hasTabs = (part: Part): boolean => isContact(part) || ['diode', 'led', 'lamp'].includes(part.kind);
/** Parts whose pins may have been taken one for another. */
const hasPins = (part: Part): boolean => ['plug', 'outlet', 'motor', 'load', 'supply'].includes(part.kind);

interface Place {
  readonly run: number;
  readonly core: number;
  readonly end: 'a' | 'b';
  readonly at: number;
  readonly other: number;
}

/** Every single change of wiring worth a look, one for each conductor an end could land on. */
export class Rewirings {
  private readonly circuit: NumberedCircuit;
  private readonly missingEnds: MissingEnds;
  private readonly landed: Int32Array;
  private readonly whole: Wiring;
  private readonly roots: Int32Array;
  private readonly ever: (a: number, b: number) => boolean;
  private readonly earthed: ReadonlySet<number>;
  /** terminals that may take an end, those that lack one first */
  private readonly targets: readonly number[];
  private spare: readonly number[] | undefined;

  constructor(
    private readonly plan: Plan,
    private readonly quick: QuickLook,
    private readonly cores: Cores,
  ) {
    this.circuit = quick.circuit;
    this.missingEnds = new MissingEnds(this.circuit, cores);
    this.landed = this.missingEnds.landed;
    this.whole = quick.wiring(cores);
    this.ever = quick.joined(this.whole, true);
    this.roots = rootsOf(this.whole.parents);
    const { names } = this.circuit;
    this.earthed = new Set(names.flatMap((name, i) => (name.endsWith('.PE') ? [this.roots[i]!] : [])));
    const there = names.flatMap((_, i) => (hasTerminal(this.circuit, this.landed, i) ? [i] : []));
    this.targets = there.sort((x, y) => this.missing(y) - this.missing(x) || x - y);
  }

  /** Pins of mains parts and earths take no core of the loop, gates and supplies none of the mains. */
  private fits(terminal: number, other: number): boolean {
    const [x, y] = [this.side(terminal), this.side(other)];
    const earth = (t: number) => this.circuit.names[t]!.endsWith('.PE');
    if (earth(terminal) !== earth(other) && (earth(terminal) || earth(other))) {
      // An earth core joins earths, or a joint that is one already.
      return this.earthed.has(this.roots[earth(terminal) ? other : terminal]!);
    }
    return x === 'either' || y === 'either' || x === y;
  }

  private side(terminal: number): Side {
    const { terminal: mark } = splitTerminalKey(this.circuit.names[terminal]!);
    if (mark === 'PE') return 'mains';
    return this.kindAt(terminal)?.side(mark) ?? 'either';
  }

  private missing = (terminal: number): number => this.missingEnds.missing(terminal);

  private kindAt(terminal: number): ReturnType<typeof kindOf<Part>> | undefined {
    const part = this.plan.parts.get(this.partOf(terminal));
    return part && kindOf(part);
  }

  private partOf = (terminal: number): string => partOfKey(this.circuit.names[terminal]!);

  private places(): Place[] {
    // A core that an earlier change added is none that a later one moves.
    return this.cores.slice(0, this.plan.runs.length).flatMap((run, r) =>
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

  private without(...off: readonly { readonly run: number; readonly core: number }[]): Wiring {
    return this.quick.wiring(this.cores, (r, c) => off.some((o) => o.run === r && o.core === c));
  }

  /** Ends moved, the ones that look odd first. */
  *moves(): Generator<Attempt> {
    const places = this.places().sort((x, y) => this.missing(x.at) - this.missing(y.at));
    for (const p of places) {
      const without = this.without(p);
      const root = rootsOf(without.parents);
      const seen = new Set([root[p.at], root[p.other]]);
      for (const to of this.likely(p)) {
        if (to === p.at || to === p.other || seen.has(root[to]) || !this.fits(to, p.other)) continue;
        seen.add(root[to]);
        yield {
          edits: [{ do: 'move', run: p.run, core: p.core, end: p.end, to: this.circuit.names[to]! }],
          ends: 1,
          added: 0,
          oddness: this.missing(p.at) - this.missing(to),
          wiring: this.quick.joining(without, [[p.other, to]]),
        };
      }
    }
  }

  /** Terminals that lack an end, then those of the end's own part, then one of each conductor. */
  private likely(p: Place): number[] {
    const own = this.targets.filter((t) => this.partOf(t) === this.partOf(p.at) && this.missing(t) <= 0);
    const lacking = this.targets.filter((t) => this.missing(t) > 0);
    const used = this.targets.filter((t) => this.landed[t]! > 0);
    // Where several ends of one conductor would do, a bar or splice is handier than a tab that has its core already.
    const bars = used.filter((t) => this.kindAt(t)?.takesMoreCores);
    return [...lacking, ...own, ...bars, ...used, ...this.spareTabs()];
  }

  /** Tabs without a core of contacts and of tapped windings that have one elsewhere, where they are few. */
  private spareTabs(): readonly number[] {
    this.spare ??= this.targets.filter((t) => {
      const part = this.plan.parts.get(this.partOf(t));
      return part && this.landed[t] === 0 && hasSpare(part) && this.isWired(part.name);
    });
    return this.spare.length > MOST_SPARE ? [] : this.spare;
  }

  private isWired(part: string): boolean {
    return this.circuit.names.some((name, t) => this.landed[t]! > 0 && partOfKey(name) === part);
  }

  /** All the ends on one tab of a part moved together to another of its tabs, or those on two of its tabs exchanged. */
  *tabs(): Generator<Attempt> {
    const byTerminal = new Map<number, Place[]>();
    for (const p of this.places()) push(byTerminal, p.at, p);
    for (const [from, ends] of byTerminal) {
      const part = this.plan.parts.get(this.partOf(from));
      if (!part || !(hasTabs(part) || hasPins(part))) continue;
      for (const to of this.targets) {
        const back = byTerminal.get(to) ?? [];
        if (to === from || this.partOf(to) !== part.name) continue;
        if (ends.length > 1 && hasTabs(part)) yield* this.together(from, to, ends, []);
        if (from < to && back.length > 0 && ends.length + back.length > 2)
          yield* this.together(from, to, ends, back);
      }
    }
  }

  private *together(
    from: number,
    to: number,
    ends: readonly Place[],
    back: readonly Place[],
  ): Generator<Attempt> {
    const moved = (list: readonly Place[], t: number) =>
      list.map(
        (e): Edit => ({ do: 'move', run: e.run, core: e.core, end: e.end, to: this.circuit.names[t]! }),
      );
    if (ends.some((e) => e.other === to) || back.some((e) => e.other === from)) return;
    const edits = [...moved(ends, to), ...moved(back, from)];
    const oddness = back.length > 0 ? 0 : this.missing(from) - this.missing(to);
    const wiring = this.quick.wiring(rewired(this.circuit, this.cores, edits));
    const slips = TOGETHER + (back.length > 0 ? EACH_MORE * (edits.length - 1) : 0);
    yield { edits, ends: edits.length, added: 0, oddness, slips, wiring };
  }

  /** Two ends that change places: at one part, or at the same side of one run. */
  *swaps(): Generator<Attempt> {
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
          const wiring = this.quick.joining(this.without(x, y), [
            [y.at, x.other],
            [x.at, y.other],
          ]);
          yield { edits: [{ do: 'swap', first, second }], ends: 2, added: 0, oddness: 0, wiring };
        }
  }

  *removals(): Generator<Attempt> {
    for (let run = 0; run < this.plan.runs.length; run++)
      for (let core = 0; core < this.cores[run]!.length; core++) {
        const [a, b] = this.cores[run]![core]!;
        if (a === b) continue;
        const oddness = Math.min(this.missing(a), this.missing(b));
        const wiring = this.without({ run, core });
        yield { edits: [{ do: 'remove', run, core }], ends: 2, added: 0, oddness, wiring };
      }
  }

  /** A new core between two conductors, from a terminal that lacks one where there is such. */
  *additions(most: number): Generator<Attempt> {
    const root = this.roots;
    const seen = new Set<number>();
    const ends = this.targets
      .filter((t) => this.missing(t) > 0 || this.landed[t]! > 0)
      .filter((t) => !seen.has(root[t]!) && seen.add(root[t]!))
      .slice(0, most);
    for (let i = 0; i < ends.length; i++)
      for (let j = i + 1; j < ends.length; j++) {
        if (!this.fits(ends[i]!, ends[j]!)) continue;
        const [from, to] = [this.circuit.names[ends[i]!]!, this.circuit.names[ends[j]!]!];
        const oddness = -this.missing(ends[i]!) - this.missing(ends[j]!);
        const like = this.cableNear(ends[i]!, ends[j]!);
        const edit: Edit = { do: 'add', from, to, like, metres: undefined };
        const wiring = this.quick.joining(this.whole, [[ends[i]!, ends[j]!]]);
        yield { edits: [edit], ends: 2, added: 1, oddness, wiring };
      }
  }

  /** Whether a terminal is on the mains in some position of the contacts, or sits on a mains part. */
  private onMains(terminal: number): boolean {
    const { terminal: mark } = splitTerminalKey(this.circuit.names[terminal]!);
    if (this.kindAt(terminal)?.side(mark) === 'mains') return true;
    return this.circuit.poles(true).some((p) => this.ever(p, terminal));
  }

  /** A run on the same side with a cable that ends at one of the two parts, preferably at both. */
  private cableNear(a: number, b: number): number | undefined {
    const mains = this.onMains(a) || this.onMains(b);
    const parts = new Set([this.partOf(a), this.partOf(b)]);
    const nets = [this.roots[a], this.roots[b]];
    let best: { run: number; score: number } | undefined;
    this.plan.runs.forEach((run, r) => {
      if (run.link || !run.cable) return;
      const own = this.cores[r]?.flat() ?? [];
      if (own.some((t) => this.onMains(t)) !== mains) return;
      const ends = new Set(run.cores.flatMap((c) => [c.a.part, c.b.part]));
      const isOn = own.some((t) => nets.includes(this.roots[t]));
      const score = [...parts].filter((p) => ends.has(p)).length + (isOn ? SAME_CONDUCTOR : 0);
      if (!best || score > best.score) best = { run: r, score };
    });
    return best?.run;
  }

  /** Terminals on the conductor of one of them, while a core is off (undefined: none), that have a core or lack one. */
  on(terminal: string, off?: { readonly run: number; readonly core: number }): string[] {
    const root = off ? rootsOf(this.without(off).parents) : this.roots;
    const at = this.circuit.terminal(terminal)!;
    return this.circuit.names.filter(
      (_, i) => root[i] === root[at] && (this.landed[i]! > 0 || this.missing(i) > 0),
    );
  }

  /** Whether a terminal has fewer ends than its twins, or none where it needs one. */
  lacks(terminal: string): boolean {
    return this.missing(this.circuit.terminal(terminal)!) > 0;
  }

  /** Other terminals on the conductor an edit lands on. */
  alike(edit: Edit): number {
    if (edit.do !== 'move') return 0;
    const root = rootsOf(this.without(edit).parents);
    const to = this.circuit.terminal(edit.to)!;
    const isThere = (i: number) => i !== to && root[i] === root[to] && this.landed[i]! > 0;
    return this.circuit.names.filter((_, i) => isThere(i)).length;
  }
}
