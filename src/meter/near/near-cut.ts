/**
 * What a few terminals see of a circuit: the ends that hang loose are cut off, contacts that nobody moves are left out
 * where they are open, and cores in line are one. Nothing that is read at these terminals changes by that.
 */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { Wire } from '../../circuit/nets.ts';
import { Hanging, type Links } from './hanging.ts';

/** A smaller circuit, and the cores that each of its own ones stands for. */
export interface NearCircuit {
  readonly circuit: WiredCircuit;
  readonly inLine: ReadonlyMap<Wire, readonly Wire[]>;
}

/** What of a change could be read; nets and links by number. */
export interface Reads {
  /** Whether what lies between some nets. */
  readonly between: (nets: readonly number[]) => boolean;
  /** Whether some links taken out, and further pairs of nets joined. */
  readonly rewired: (out: readonly number[], into: readonly (readonly [number, number])[]) => boolean;
  /** Whether two nets parted that a core or contact joins. */
  readonly parted: (a: number, b: number) => boolean;
}

/** A circuit as lists of whatever lies between two nets, numbered through: wires, contacts, passives, diodes. */
export interface Whole extends Links {
  readonly circuit: WiredCircuit;
  /** number of the first of each kind, and of all */
  readonly starts: readonly number[];
  /** nets that stay in any case */
  readonly fixed: readonly number[];
  /** true for a contact that passes something while open */
  readonly leaks: readonly boolean[];
}

/** One cut, from the whole to what is near. */
export class Cut {
  private readonly of: Whole;
  private readonly hanging: Hanging;
  private readonly kept: Uint8Array;
  private readonly gone: Uint8Array;
  private readonly degree: Int32Array;
  private readonly keys: readonly string[];
  private readonly inLine = new Map<Wire, readonly Wire[]>();

  constructor(
    whole: Whole,
    keys: Iterable<string>,
    private readonly inputs: ReadonlySet<number>,
    private readonly dead = false,
  ) {
    this.of = whole;
    const { circuit, fixed } = this.of;
    this.keys = [...keys];
    this.kept = new Uint8Array(circuit.netCount);
    for (const key of this.keys) {
      const net = circuit.netOf.get(key);
      if (net !== undefined) this.kept[net] = 1;
    }
    // What a supply hangs on lies across its plug also for an ohmmeter.
    const hung = circuit.sources.some((s) => s.feed.by === 'part');
    for (const net of dead && !hung ? [] : fixed) this.kept[net] = 1;
    this.hanging = new Hanging(whole, this.kept);
    this.gone = this.hanging.gone;
    this.degree = this.hanging.degree;
  }

  done(): NearCircuit {
    this.cut();
    const wires = this.cores();
    return { circuit: this.numbered(wires), inLine: this.inLine };
  }

  reads(): Reads {
    this.cut();
    const { hanging } = this;
    return {
      between: (nets) => {
        let only = -1;
        for (const n of nets) {
          const on = hanging.end(n);
          // What hangs together with nothing that is read may be joined to one net of what is.
          if (on === only || !hanging.matters(on)) continue;
          if (only >= 0) return true;
          only = on;
        }
        return false;
      },
      rewired: (out, into) => hanging.changes(out, into),
      parted: (a, b) => this.carries(a, b),
    };
  }

  /** Whether current may come through what lies right between two nets; also where nothing does. */
  private carries(a: number, b: number): boolean {
    const { at, first, from, to } = this.of;
    let none = true;
    for (let k = first[a]!; k < first[a + 1]!; k++) {
      const i = at[k]!;
      if ((from[i] === a ? to[i] : from[i]) !== b) continue;
      if (this.gone[i] === 0) return true;
      none = false;
    }
    return none;
  }

  private cut(): void {
    this.openUnmoved();
    do this.hanging.cutOff();
    while (this.openUnfed());
  }

  private openUnmoved(): void {
    const { circuit, starts, leaks } = this.of;
    circuit.contacts.forEach(({ a, b, when }, k) => {
      const still = when.by === 'input' ? !this.inputs.has(when.input) : when.by === 'relay' && this.dead;
      const open = still && when.by !== 'always' && when.value && !leaks[k];
      if (open || a === b) this.hanging.drop(starts[1]! + k);
    });
  }

  /** Relays whose coil hangs loose stay out; true where that left something out. */
  private openUnfed(): boolean {
    const { circuit, starts, leaks } = this.of;
    const out = circuit.relays.map(
      (r) =>
        r.latch === undefined &&
        r.of === undefined &&
        r.senses.some((s) => s.by === 'volts' && !(this.hanging.matters(s.a) && this.hanging.matters(s.b))),
    );
    let more = false;
    circuit.contacts.forEach(({ when }, k) => {
      const i = starts[1]! + k;
      if (this.gone[i] === 1 || when.by !== 'relay' || !when.value || leaks[k] || !out[when.relay]) return;
      more = true;
      this.hanging.drop(i);
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
