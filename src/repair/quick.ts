/**
 * A quick look at what a rewired circuit does: contacts and cores as joins, diodes one way, relays settled from rest.
 * It sieves the many rewirings that a search tries; what passes is verified by the whole check.
 */

import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import {
  type Ends,
  feedOf,
  type QuickContact,
  type QuickLoad,
  type QuickRelay,
  type QuickSource,
  quickRelay,
} from './quick-parts.ts';

export type { Ends } from './quick-parts.ts';

/** What runs, by name of load or relay; `chatters` when relays never settle; `shorted` when a supply's poles meet. */
export interface Outcome {
  readonly running: ReadonlySet<string>;
  readonly chatters: boolean;
  readonly shorted: boolean;
}

export class Quick {
  /** number of every terminal, `PART.TERMINAL` */
  readonly numbers = new Map<string, number>();
  readonly names: string[] = [];
  readonly cores: Ends[][];
  private readonly contacts: QuickContact[];
  private readonly relays: QuickRelay[];
  private readonly sources: QuickSource[];
  private readonly loads: QuickLoad[];
  private readonly diodes: Ends[];
  private readonly plugged: Ends[];
  private readonly parent: Int32Array;
  /** 1 where a core is on the terminal, in the wiring that `base` was last asked for */
  private readonly landed: Uint8Array;

  private readonly plan: Plan;

  constructor(study: Study) {
    const { plan } = study;
    this.plan = plan;
    const key = (part: string, terminal: string) => (terminal === '' ? part : `${part}.${terminal}`);
    const at = (name: string): number => {
      let n = this.numbers.get(name);
      if (n === undefined) {
        n = this.names.length;
        this.numbers.set(name, n);
        this.names.push(name);
      }
      return n;
    };
    for (const [name, marks] of plan.terminals)
      for (const t of marks.names) at(t === '' ? name : `${name}.${t}`);
    const circuit = study.wired;
    this.cores = plan.runs.map((run) =>
      run.cores.map((c): Ends => [at(key(c.a.part, c.a.terminal)), at(key(c.b.part, c.b.terminal))]),
    );
    const merged = new Map<string, QuickContact>();
    for (const c of circuit.contacts) {
      const name = `${c.part}/${c.terminals.join('-')}/${c.pole}`;
      const when = c.when;
      const literal =
        when.by === 'always'
          ? []
          : when.by === 'relay'
            ? [{ relay: true, index: when.relay, value: when.value }]
            : [{ relay: false, index: when.input, value: when.value }];
      const known = merged.get(name);
      // A selector's resting contact comes as a chain, one link for each position it must not be in.
      merged.set(name, {
        a: at(key(c.part, c.terminals[0])),
        b: at(key(c.part, c.terminals[1])),
        when: [...(known?.when ?? []), ...literal],
      });
    }
    this.contacts = [...merged.values()];
    this.relays = circuit.relays.map((r) => quickRelay(plan, r.part, r.senses, at));
    this.sources = circuit.sources.map((source) => ({
      source,
      rails: source.rails.map((r) => at(`${source.part}.${r.terminal}`)),
      feed: feedOf(plan, source, at),
    }));
    this.loads = circuit.consumers.map((consumer) => ({
      consumer,
      terminals: [...consumer.nets.keys()].map((t) => at(`${consumer.part}.${t}`)),
    }));
    this.diodes = circuit.diodes
      .filter((d) => !d.load && !d.builtIn)
      .map((d): Ends => [at(`${d.part}.A`), at(`${d.part}.K`)]);
    this.plugged = [...plan.parts.values()].flatMap((p): Ends[] =>
      (p.kind === 'motor' || p.kind === 'load') && p.pluggedInto !== undefined
        ? ['L', 'N', 'L1', 'L2', 'L3', 'PE'].flatMap((t): Ends[] => {
            const [x, y] = [`${p.name}.${t}`, `${p.pluggedInto}.${t}`];
            return this.numbers.has(x) && this.numbers.has(y) ? [[at(x), at(y)]] : [];
          })
        : [],
    );
    this.parent = new Int32Array(this.names.length);
    this.landed = new Uint8Array(this.names.length);
  }

  private find(x: number): number {
    const p = this.parent;
    let at = x;
    while (p[at] !== at) {
      p[at] = p[p[at]!]!;
      at = p[at]!;
    }
    return at;
  }

  private union(a: number, b: number): void {
    const x = this.find(a);
    const y = this.find(b);
    if (x !== y) this.parent[x] = y;
  }

  /** Everything that cores alone join. */
  base(cores: readonly (readonly Ends[])[]): Int32Array {
    for (let i = 0; i < this.parent.length; i++) this.parent[i] = i;
    this.landed.fill(0);
    for (const run of cores)
      for (const [a, b] of run) {
        if (a === b) continue;
        this.landed[a] = 1;
        this.landed[b] = 1;
        this.union(a, b);
      }
    for (const [a, b] of this.plugged) this.union(a, b);
    return this.parent.slice();
  }

  /** What runs at the end of these moves, each settled in turn, from rest on. `base` comes from the method of that name. */
  outcome(base: Int32Array, steps: readonly ReadonlySet<number>[]): Outcome {
    let now = this.settle(
      base,
      new Set(),
      this.relays.map(() => false),
    );
    for (const moved of steps) {
      if (now.chatters) return now;
      if (moved.size === 0 && steps.length === 1) return now;
      now = this.settle(
        base,
        moved,
        this.relays.map((r) => now.running.has(r.part)),
      );
    }
    return now;
  }

  private settle(base: Int32Array, moved: ReadonlySet<number>, from: readonly boolean[]): Outcome {
    let relays = [...from];
    for (let step = 0; step < 2 * relays.length + 4; step++) {
      this.close(base, moved, relays);
      const alive = this.alive();
      const next = this.relays.map((r) => this.pulls(r, alive.reach));
      if (next.every((x, i) => x === relays[i])) {
        const running = new Set(
          this.loads.filter((l) => this.fed(l, alive.live)).map((l) => l.consumer.part),
        );
        this.relays.forEach((r, i) => {
          if (relays[i]) running.add(r.part);
        });
        return { running, chatters: false, shorted: alive.shorted };
      }
      relays = next;
    }
    return { running: new Set(), chatters: true, shorted: false };
  }

  private close(base: Int32Array, moved: ReadonlySet<number>, relays: readonly boolean[]): void {
    this.parent.set(base);
    for (const c of this.contacts)
      if (c.when.every((w) => (w.relay ? relays[w.index] === true : moved.has(w.index)) === w.value))
        this.union(c.a, c.b);
  }

  /** Sources with power and without a short, and what each pole of a low-voltage one reaches. */
  private alive() {
    const live = new Set<QuickSource>();
    let shorted = false;
    const reach: { plus: Set<number>; minus: Set<number>; dc: boolean }[] = [];
    for (const s of [...this.sources].sort((x, y) => Number(y.source.mains) - Number(x.source.mains))) {
      if (!this.powered(s, live)) continue;
      const roots = s.rails.map((r) => this.find(r));
      const dc = s.source.kind === 'dc' && !s.source.mains;
      const plus = this.spread(roots[0]!, true, dc);
      if (new Set(roots).size < roots.length || (dc && plus.has(roots[1]!))) {
        shorted = true;
        continue;
      }
      live.add(s);
      for (let i = 0; i < roots.length; i++)
        for (let j = i + 1; j < roots.length; j++)
          reach.push({
            plus: dc ? plus : new Set([roots[i]!]),
            minus: dc ? this.spread(roots[j]!, false, dc) : new Set([roots[j]!]),
            dc,
          });
    }
    return { live, shorted, reach };
  }

  private powered(s: QuickSource, live: ReadonlySet<QuickSource>): boolean {
    if ('part' in s.feed) {
      const { part } = s.feed;
      const plug = this.sources.find((x) => x.source.part === part);
      if (plug) return live.has(plug);
      const outlet = this.loads.find((l) => l.consumer.part === part);
      return outlet !== undefined && this.fed(outlet, live);
    }
    const pair = s.feed.pairs.find(([a, b]) => this.landed[a] === 1 || this.landed[b] === 1);
    if (!pair) return true;
    const [a, b] = [this.find(pair[0]), this.find(pair[1])];
    return [...live].some(
      (x) =>
        x.source.mains &&
        onTwoRails(
          x.rails.map((r) => this.find(r)),
          a,
          b,
        ),
    );
  }

  private spread(start: number, forward: boolean, diodes: boolean): Set<number> {
    const seen = new Set([start]);
    if (!diodes || this.diodes.length === 0) return seen;
    for (let grown = true; grown; ) {
      grown = false;
      for (const [anode, cathode] of this.diodes) {
        const [from, to] = forward
          ? [this.find(anode), this.find(cathode)]
          : [this.find(cathode), this.find(anode)];
        if (seen.has(from) && !seen.has(to)) {
          seen.add(to);
          grown = true;
        }
      }
    }
    return seen;
  }

  private pulls(
    r: QuickRelay,
    reach: readonly { plus: Set<number>; minus: Set<number>; dc: boolean }[],
  ): boolean {
    const [a, b] = [this.find(r.coil[0]), this.find(r.coil[1])];
    if (a === b) return false;
    if (r.trigger && this.find(r.trigger[0]) !== this.find(r.trigger[1])) return false;
    return reach.some(({ plus, minus, dc }) => {
      const right = plus.has(a) && minus.has(b);
      const turned = plus.has(b) && minus.has(a) && (!dc || !r.polarised);
      if (!right && !turned) return false;
      if (!r.input) return true;
      const pin = this.find(r.input.pin);
      return (this.find(r.input.with) === a ? plus : minus).has(pin);
    });
  }

  /** Every conductor on a live rail of one source of its own, a two-wire load on two rails. */
  private fed(l: QuickLoad, live: ReadonlySet<QuickSource>): boolean {
    const roots = l.terminals.map((t) => this.find(t));
    return [...live].some((s) => {
      if (!s.source.mains) return false;
      const rails = s.rails.map((r) => this.find(r));
      const on = roots.map((r) => rails.indexOf(r));
      return on.every((i) => i >= 0) && new Set(on).size === on.length;
    });
  }

  /** Terminals joined by cores alone, or by any contact too. */
  joined(base: Int32Array, withContacts: boolean): (a: number, b: number) => boolean {
    this.parent.set(base);
    if (withContacts) for (const c of this.contacts) this.union(c.a, c.b);
    const frozen = Int32Array.from(this.parent, (_, i) => this.find(i));
    return (a, b) => frozen[a] === frozen[b];
  }

  /** Number of a terminal that the plan's parts have. */
  terminal(name: string): number | undefined {
    return this.numbers.get(name);
  }

  /** Poles of sources by side, for the rules on mains and low voltage. */
  poles(mains: boolean): number[] {
    return this.sources.filter((s) => s.source.mains === mains).flatMap((s) => [...s.rails]);
  }

  /** Loads and outlets with their conductors' numbers. */
  consumers(): readonly { readonly part: string; readonly conductors: ReadonlyMap<string, number> }[] {
    return this.loads.map((l) => ({
      part: l.consumer.part,
      conductors: new Map([...l.consumer.nets.keys()].map((t, i) => [t, l.terminals[i]!])),
    }));
  }

  /** The two ends of every contact. */
  contactEnds(): readonly Ends[] {
    return this.contacts.map((c): Ends => [c.a, c.b]);
  }

  get parts(): Plan['parts'] {
    return this.plan.parts;
  }
}

function onTwoRails(rails: readonly number[], a: number, b: number): boolean {
  const [x, y] = [rails.indexOf(a), rails.indexOf(b)];
  return x >= 0 && y >= 0 && x !== y;
}
