/**
 * What a few terminals see of a circuit: the ends that hang loose are cut off, contacts that nobody moves are left out
 * where they are open, and cores in line are one. Nothing that is read at these terminals changes by that.
 */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Wire } from '../circuit/nets.ts';

/** A smaller circuit, and the cores that each of its own ones stands for. */
export interface NearCircuit {
  readonly circuit: WiredCircuit;
  readonly inLine: ReadonlyMap<Wire, readonly Wire[]>;
}

/** Whether a change between some terminals could be read; `poles` for one that may change a supply or plug there. */
export type Reads = (at: readonly string[], poles: boolean) => boolean;

/** A circuit as lists of whatever lies between two nets, numbered through: wires, contacts, passives, diodes. */
export interface Whole {
  readonly circuit: WiredCircuit;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** number of the first of each kind, and of all */
  readonly starts: readonly number[];
  /** numbers of those at each net, one list after the other, and where each list begins */
  readonly at: Int32Array;
  readonly first: Int32Array;
  /** nets that stay in any case */
  readonly fixed: readonly number[];
  /** nets of the poles of supplies and plugs */
  readonly poles: ReadonlySet<number>;
  /** true for a contact that passes something while open */
  readonly leaks: readonly boolean[];
}

/** One cut, from the whole to what is near. */
export class Cut {
  private readonly of: Whole;
  private readonly kept: Uint8Array;
  private readonly gone: Uint8Array;
  private readonly degree: Int32Array;
  /** the net that one which was cut off hung on, else itself */
  private readonly hangsOn: Int32Array;
  private readonly keys: readonly string[];
  private readonly inLine = new Map<Wire, readonly Wire[]>();

  constructor(
    whole: Whole,
    keys: Iterable<string>,
    private readonly inputs: ReadonlySet<number>,
    private readonly dead = false,
  ) {
    this.of = whole;
    const { circuit, from, first, fixed } = this.of;
    this.hangsOn = Int32Array.from({ length: circuit.netCount }, (_, n) => n);
    this.keys = [...keys];
    this.kept = new Uint8Array(circuit.netCount);
    for (const key of this.keys) {
      const net = circuit.netOf.get(key);
      if (net !== undefined) this.kept[net] = 1;
    }
    // What a supply hangs on lies across its plug also for an ohmmeter.
    const hung = circuit.sources.some((s) => s.feed.by === 'part');
    for (const net of dead && !hung ? [] : fixed) this.kept[net] = 1;
    this.gone = new Uint8Array(from.length);
    this.degree = new Int32Array(circuit.netCount);
    for (let n = 0; n < circuit.netCount; n++) this.degree[n] = first[n + 1]! - first[n]!;
  }

  done(): NearCircuit {
    this.cut();
    const wires = this.cores();
    return { circuit: this.numbered(wires), inLine: this.inLine };
  }

  reads(): Reads {
    this.cut();
    const { circuit, poles } = this.of;
    const end = (net: number) => {
      let n = net;
      while (this.hangsOn[n] !== n) n = this.hangsOn[n]!;
      // Found once for all that hang on the way.
      for (let m = net; m !== n; ) {
        const next = this.hangsOn[m]!;
        this.hangsOn[m] = n;
        m = next;
      }
      return n;
    };
    return (at, pole) => {
      let only = -1;
      for (const key of at) {
        const net = circuit.netOf.get(key);
        if (net === undefined) continue;
        if (pole && poles.has(net)) return true;
        const on = end(net);
        // What hangs together with nothing that is read may be joined to one net of what is.
        if (this.degree[on] === 0 && this.kept[on] === 0) continue;
        if (only >= 0 && on !== only) return true;
        only = on;
      }
      return false;
    };
  }

  private cut(): void {
    this.openUnmoved();
    for (let n = 0; n < this.degree.length; n++) this.peel(n);
    while (this.openUnfed()) {}
  }

  private drop(i: number): void {
    if (this.gone[i] === 1) return;
    const { from, to } = this.of;
    this.gone[i] = 1;
    this.degree[from[i]!]!--;
    this.degree[to[i]!]!--;
  }

  /** Cuts off what hangs at a net by one thing alone, and so on. */
  private peel(start: number): void {
    const { from, to } = this.of;
    let n = start;
    while (this.kept[n] === 0 && this.degree[n] === 1) {
      const i = this.alone(n);
      this.drop(i);
      const on = from[i] === n ? to[i]! : from[i]!;
      this.hangsOn[n] = on;
      n = on;
    }
  }

  /** The first thing at a net that is still there. */
  private alone(n: number): number {
    const { at, first } = this.of;
    let k = first[n]!;
    while (this.gone[at[k]!] === 1) k++;
    return at[k]!;
  }

  private openUnmoved(): void {
    const { circuit, starts, leaks } = this.of;
    circuit.contacts.forEach(({ a, b, when }, k) => {
      const still = when.by === 'input' ? !this.inputs.has(when.input) : when.by === 'relay' && this.dead;
      const open = still && when.by !== 'always' && when.value && !leaks[k];
      if (open || a === b) this.drop(starts[1]! + k);
    });
  }

  /** Relays whose coil hangs loose stay out; true where that left something out. */
  private openUnfed(): boolean {
    const { circuit, starts, leaks } = this.of;
    const loose = (net: number) => this.kept[net] === 0 && this.degree[net] === 0;
    const out = circuit.relays.map(
      (r) =>
        r.latch === undefined &&
        r.of === undefined &&
        r.senses.some((s) => s.by === 'volts' && (loose(s.a) || loose(s.b))),
    );
    let more = false;
    circuit.contacts.forEach(({ a, b, when }, k) => {
      const i = starts[1]! + k;
      if (this.gone[i] === 1 || when.by !== 'relay' || !when.value || leaks[k] || !out[when.relay]) return;
      more = true;
      this.drop(i);
      this.peel(a);
      this.peel(b);
    });
    return more;
  }

  /** Whether a net only passes on what comes through one core to another. */
  private passes(n: number): boolean {
    const { at, first, starts } = this.of;
    if (this.kept[n] === 1 || this.degree[n] !== 2) return false;
    for (let k = first[n]!; k < first[n + 1]!; k++)
      if (this.gone[at[k]!] === 0 && at[k]! >= starts[1]!) return false;
    return true;
  }

  /** Cores that are left, those in line as one. */
  private cores(): Wire[] {
    const { circuit, from, to, starts } = this.of;
    const wires: Wire[] = [];
    for (let i = 0; i < starts[1]!; i++) {
      if (this.gone[i] === 1) continue;
      const line = [i];
      this.gone[i] = 1;
      const a = this.follow(i, from[i]!, line);
      const b = this.follow(i, to[i]!, line);
      const [own] = line.map((k) => circuit.wires[k]!);
      const wire = line.length === 1 ? own! : { run: -1, core: wires.length, a, b, metres: 0 };
      if (line.length > 1)
        this.inLine.set(
          wire,
          line.map((k) => circuit.wires[k]!),
        );
      wires.push(wire);
    }
    return wires;
  }

  /** Goes on from a core over a net, as far as nets only pass on; returns the net at the end. */
  private follow(core: number, start: number, line: number[]): number {
    const { from, to, at, first } = this.of;
    let [last, n] = [core, start];
    while (this.passes(n)) {
      let k = first[n]!;
      while (k < first[n + 1]! && (this.gone[at[k]!] === 1 || at[k] === last)) k++;
      if (k === first[n + 1]!) return n;
      last = at[k]!;
      this.gone[last] = 1;
      line.push(last);
      n = from[last] === n ? to[last]! : from[last]!;
    }
    return n;
  }

  /** The circuit of what is left, its nets numbered anew. */
  private numbered(wires: readonly Wire[]): WiredCircuit {
    const { circuit, starts, fixed } = this.of;
    const numbers = new Map<number, number>();
    const net = (n: number) => {
      const found = numbers.get(n) ?? numbers.size;
      numbers.set(n, found);
      return found;
    };
    const stays = (kind: number) => (_: unknown, k: number) => this.gone[starts[kind]! + k] === 0;
    for (const n of fixed) net(n);
    const netOf = new Map<string, number>();
    for (const key of this.keys) {
      const n = circuit.netOf.get(key);
      if (n !== undefined) netOf.set(key, net(n));
    }
    const joined = <T extends { readonly a: number; readonly b: number }>(x: T): T => ({
      ...x,
      a: net(x.a),
      b: net(x.b),
    });
    const own = wires.map((w) => {
      const made = joined(w);
      const line = this.inLine.get(w);
      if (line) {
        this.inLine.delete(w);
        this.inLine.set(made, line);
      }
      return made;
    });
    const contacts = circuit.contacts.filter(stays(1)).map(joined);
    const passives = circuit.passives.filter(stays(2)).map(joined);
    const diodes = circuit.diodes
      .filter(stays(3))
      .map((d) => ({ ...d, anode: net(d.anode), cathode: net(d.cathode) }));
    const sources = circuit.sources.map((s) => ({
      ...s,
      rails: s.rails.map((r) => ({ ...r, net: net(r.net) })),
      feed: s.feed.by === 'nets' ? joined(s.feed) : s.feed,
    }));
    const feeds = new Set(circuit.sources.map((s) => (s.feed.by === 'part' ? s.feed.part : '')));
    const consumers = circuit.consumers
      .filter((c) => feeds.has(c.part))
      .map((c) => ({ ...c, nets: new Map([...c.nets].map(([t, n]) => [t, net(n)])) }));
    const relays = circuit.relays.map((r) => ({ ...r, senses: r.senses.map(joined) }));
    return {
      ...circuit,
      netCount: numbers.size,
      netOf,
      terminals: [],
      contacts,
      passives,
      diodes,
      sources,
      consumers,
      relays,
      wires: own,
    };
  }
}
