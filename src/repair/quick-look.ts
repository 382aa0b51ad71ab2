/**
 * A quick look at what a rewired circuit does: contacts and cores as joins, diodes one way, relays settled from rest.
 * It sifts the many rewirings that a search tries; what passes is verified by the whole check.
 */
import type { Consumer, Source } from '../circuit/circuit.ts';
import { BOOLEANS, isOwn, nextPosition } from '../circuit/positions.ts';
import { closedWith, hasPower, type Standing, settle } from '../machine/settle.ts';
import type { Cores, Ends, NumberedCircuit, NumberedSense } from './numbered-circuit.ts';

/** What runs, by name of load, relay or lamp; `chatters` when relays never settle; `shorted` when a supply's poles meet. */
export interface Outcome {
  readonly running: ReadonlySet<string>;
  /** the loads among them */
  readonly loads: ReadonlySet<string>;
  readonly chatters: boolean;
  readonly shorted: boolean;
}

/** What cores alone make of the parts. */
export interface Wiring {
  /** a terminal on the same conductor, itself at the end of that line, for every terminal */
  readonly parents: Int32Array;
  /** ends of cores on every terminal */
  readonly landed: Int32Array;
  readonly sources: readonly Source[];
  /** where everything stands with all inputs at rest, once that was asked for */
  rest?: Settled;
}

interface Settled extends Standing {
  readonly outcome: Outcome;
}

/** Terminals that the two poles of one source reach, each pole a way out or a way back. */
interface Reach {
  readonly plus: ReadonlySet<number>;
  readonly minus: ReadonlySet<number>;
  readonly dc: boolean;
}

/** What is seen in one moment. */
interface Seen {
  /** sources with power and no short across them */
  readonly on: ReadonlySet<Source>;
  readonly shorted: boolean;
  readonly reach: readonly Reach[];
}

export class QuickLook {
  /** joins of the moment that is looked at */
  private readonly parent: Int32Array;
  /** terminals that something joins besides cores and contacts */
  private readonly plugged: Uint8Array;
  #moments = 0;

  constructor(readonly circuit: NumberedCircuit) {
    this.parent = new Int32Array(circuit.names.length);
    this.plugged = new Uint8Array(circuit.names.length);
    for (const pair of circuit.plugged) for (const t of pair) this.plugged[t] = 1;
  }

  /** What the looks so far have cost: moments looked at, times terminals. */
  get work(): number {
    return this.#moments * this.parent.length;
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

  /** Everything that these cores join, but for those that are off. */
  wiring(cores: Cores, isOff: (run: number, core: number) => boolean = () => false): Wiring {
    for (let i = 0; i < this.parent.length; i++) this.parent[i] = i;
    const landed = new Int32Array(this.parent.length);
    cores.forEach((run, r) => {
      run.forEach(([a, b], c) => {
        if (a !== b && !isOff(r, c)) this.land(landed, a, b);
      });
    });
    for (const [a, b] of this.circuit.plugged) this.union(a, b);
    return this.wiringNow(landed);
  }

  /** A wiring with more cores in it. */
  joining(wiring: Wiring, added: readonly Ends[]): Wiring {
    this.parent.set(wiring.parents);
    const landed = wiring.landed.slice();
    for (const [a, b] of added) if (a !== b) this.land(landed, a, b);
    return this.wiringNow(landed);
  }

  private land(landed: Int32Array, a: number, b: number): void {
    landed[a]!++;
    landed[b]!++;
    this.union(a, b);
  }

  private wiringNow(landed: Int32Array): Wiring {
    const sources = this.circuit.sourcesWith((terminal) => landed[terminal]! > 0);
    // Every state begins with these, so each finds the end of its line in one step.
    return { parents: this.parent.map((_, i) => this.find(i)), landed, sources };
  }

  /** What runs at the end of these moves, each settled in turn, from rest on. */
  outcome(wiring: Wiring, steps: readonly ReadonlySet<number>[]): Outcome {
    wiring.rest ??= this.settle(wiring, new Set(), {
      relays: this.circuit.relays.map(() => false),
      alive: wiring.sources.map((s) => s.feed.by === 'always'),
    });
    let now = wiring.rest;
    for (const moved of steps) {
      if (now.outcome.chatters) return now.outcome;
      if (moved.size === 0 && steps.length === 1) return now.outcome;
      now = this.settle(wiring, moved, now);
    }
    return now.outcome;
  }

  /** A quick look sees at once which sources have power: nothing is lost by the time that a supply takes to come on. */
  private settle(wiring: Wiring, moved: ReadonlySet<number>, from: Standing): Settled {
    let seen: Seen | undefined;
    const { relays, alive, settled } = settle(from, (now) => {
      this.#moments++;
      this.close(wiring, moved, now.relays);
      const here = this.look(wiring.sources);
      seen = here;
      return {
        relays: this.next(now.relays, here.reach, wiring.landed),
        alive: wiring.sources.map((s) => here.on.has(s)),
      };
    });
    if (!settled || !seen) return { relays, alive, outcome: CHATTERS };
    const { on, shorted } = seen;
    const { consumers, relays: all } = this.circuit;
    const loads = new Set(consumers.filter((c) => this.isFed(c, on, seen!.reach)).map((c) => c.part));
    const running = new Set(loads);
    all.forEach((r, i) => {
      if (relays[i] && isOwn(r.relay)) running.add(r.part);
    });
    for (const lamp of this.circuit.lamps)
      if (this.pulls(lamp, lamp.coil, seen.reach, wiring.landed)) running.add(lamp.part);
    return { relays, alive, outcome: { running, loads, chatters: false, shorted } };
  }

  private close(wiring: Wiring, moved: ReadonlySet<number>, relays: readonly boolean[]): void {
    this.parent.set(wiring.parents);
    const closed = closedWith(moved, relays);
    const { landed } = wiring;
    const { plugged } = this;
    // A contact to a tab with nothing on it joins nothing.
    const leads = (t: number) => landed[t] !== 0 || plugged[t] !== 0;
    for (const c of this.circuit.contacts)
      if (leads(c.a) && leads(c.b) && c.links.every(closed)) this.union(c.a, c.b);
  }

  private look(sources: readonly Source[]): Seen {
    const on = new Set<Source>();
    let shorted = false;
    const reach: Reach[] = [];
    const known = { sources, consumers: this.circuit.consumers };
    const isOn = (s: Source) => on.has(s);
    const fed = (a: number, b: number) => this.onRails([a, b], on, () => true);
    for (const s of sources) {
      if (!hasPower(known, s, isOn, fed)) continue;
      const roots = s.rails.map((r) => this.find(r.net));
      const dc = s.kind === 'dc' && !s.mains;
      const plus = this.spread(roots[0]!, true, dc);
      if (new Set(roots).size < roots.length || (dc && plus.has(roots[1]!))) {
        shorted = true;
        continue;
      }
      on.add(s);
      for (let i = 0; i < roots.length; i++)
        for (let j = i + 1; j < roots.length; j++)
          reach.push({
            plus: dc ? plus : new Set([roots[i]!]),
            minus: this.spread(roots[j]!, false, dc),
            dc,
          });
    }
    return { on, shorted, reach };
  }

  /** What a pole reaches through diodes, the way they conduct or against it. */
  private spread(start: number, forward: boolean, diodes: boolean): Set<number> {
    const seen = new Set([start]);
    if (!diodes || this.circuit.diodes.length === 0) return seen;
    for (let grown = true; grown; ) {
      grown = false;
      for (const [anode, cathode] of this.circuit.diodes) {
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

  private next(relays: readonly boolean[], reach: readonly Reach[], landed: Int32Array): boolean[] {
    const own = this.circuit.relays;
    const seen = own.map((r) => r.coil !== undefined && this.pulls(r, r.coil, reach, landed));
    return own.map((r) =>
      nextPosition(
        BOOLEANS,
        r.relay,
        (k) => ({ on: seen[k]!, off: !seen[k]! }),
        (k) => relays[k] === true,
      ),
    );
  }

  private pulls(r: NumberedSense, coil: Ends, reach: readonly Reach[], landed: Int32Array): boolean {
    const [a, b] = [this.find(coil[0]), this.find(coil[1])];
    if (a === b) return false;
    const isTriggered = r.permanent || r.trigger?.some((t) => landed[t]! > 0);
    if (r.trigger && isTriggered && this.find(r.trigger[0]) !== this.find(r.trigger[1])) return false;
    return reach.some(({ plus, minus, dc }) => {
      const right = plus.has(a) && minus.has(b);
      const turned = plus.has(b) && minus.has(a) && (!dc || !r.polarised);
      if (!right && !turned) return false;
      if (!r.input) return true;
      const pin = this.find(r.input.pin);
      return (this.find(r.input.with) === a ? plus : minus).has(pin);
    });
  }

  private isFed(consumer: Consumer, on: ReadonlySet<Source>, reach: readonly Reach[]): boolean {
    if (consumer.dc) {
      const [a, b] = [...consumer.nets.values()].map((t) => this.find(t)) as [number, number];
      const ways = reach.filter((r) => r.dc);
      return (
        a !== b && ways.some((r) => (r.plus.has(a) && r.minus.has(b)) || (r.plus.has(b) && r.minus.has(a)))
      );
    }
    return this.onRails([...consumer.nets.values()], on);
  }

  /** Whether each of these terminals is on a rail of its own of one source, of the mains unless other sources count. */
  private onRails(
    terminals: readonly number[],
    on: ReadonlySet<Source>,
    counts: (s: Source) => boolean = (s) => s.mains,
  ): boolean {
    const roots = terminals.map((t) => this.find(t));
    return [...on].some((s) => {
      if (!counts(s)) return false;
      const rails = s.rails.map((r) => this.find(r.net));
      const at = roots.map((root) => rails.indexOf(root));
      return at.every((i) => i >= 0) && new Set(at).size === at.length;
    });
  }

  /** Which terminals cores alone join, or cores and every contact. */
  joined({ parents }: Wiring, withContacts: boolean): (a: number, b: number) => boolean {
    this.parent.set(parents);
    if (withContacts) for (const c of this.circuit.contacts) this.union(c.a, c.b);
    const frozen = Int32Array.from(this.parent, (_, i) => this.find(i));
    return (a, b) => frozen[a] === frozen[b];
  }
}

const CHATTERS: Outcome = { running: new Set(), loads: new Set(), chatters: true, shorted: false };

/** Number of the conductor that every terminal is on. */
export function rootsOf(parents: Int32Array): Int32Array {
  const root = (x: number): number => {
    let at = x;
    while (parents[at] !== at) at = parents[at]!;
    return at;
  };
  return Int32Array.from(parents, (_, i) => root(i));
}
