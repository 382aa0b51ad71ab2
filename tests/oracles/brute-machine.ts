/** One input state at a time: join what is closed, look up the class, let the relays move together. */
import { buildCircuit, type Circuit } from './brute-circuit.ts';
import { keyNets, type Solved, solveClass } from './brute-class.ts';
import { readWiring, type Wiring } from './brute-read.ts';

export interface Settled {
  /** relay bits of every state the circuit may end in; several when the order of moves decides or it chatters */
  ends: number[];
  fate: 'rests' | 'races' | 'chatters';
}

export class Machine {
  readonly wiring: Wiring;
  readonly circuit: Circuit;
  readonly symptoms = new Set<string>();
  private readonly keys: number[];
  private readonly up: Int32Array;
  private readonly label: Int32Array;
  private readonly seen: Int32Array;
  private readonly classes = new Map<string, Solved>();
  private readonly ledForward = new Set<string>();
  private readonly ledReversed = new Set<string>();
  private readonly mains: number[];

  constructor(source: string) {
    this.wiring = readWiring(source);
    this.circuit = buildCircuit(this.wiring);
    if (this.circuit.relays.length > 30) throw new Error('oracle: too many relays to enumerate');
    this.keys = keyNets(this.circuit);
    this.up = new Int32Array(this.circuit.nets);
    this.label = new Int32Array(this.circuit.nets);
    this.seen = new Int32Array(this.circuit.nets);
    this.mains = [
      ...this.circuit.plugs.flatMap((p) => p.pins.filter((x) => x[0] !== 'PE').map((x) => x[1])),
      ...this.circuit.sources.filter((s) => s.mains).flatMap((s) => [s.plus, s.minus]),
    ];
  }

  get allIn(): number {
    return 2 ** this.circuit.relays.length - 1;
  }

  private root(net: number): number {
    const up = this.up;
    let i = net;
    while (up[i] !== i) {
      up[i] = up[up[i]!]!;
      i = up[i]!;
    }
    return i;
  }

  private joinUp(inputs: ArrayLike<number>, bits: number): void {
    const up = this.up;
    for (let i = 0; i < up.length; i++) up[i] = i;
    for (const k of this.circuit.closers) {
      const is = k.relay >= 0 ? (bits >> k.relay) & 1 : inputs[k.input]!;
      if (is === k.at) up[this.root(k.a)] = this.root(k.b);
    }
  }

  /** What the circuit does with its inputs and relays held as given. */
  solve(inputs: ArrayLike<number>, bits: number, dead = 0): Solved {
    this.joinUp(inputs, bits);
    this.seen.fill(-1);
    let count = 0;
    let key = `${dead}:`;
    for (const net of this.keys) {
      const r = this.root(net);
      if (this.seen[r] === -1) this.seen[r] = count++;
      this.label[net] = this.seen[r]!;
      key += String.fromCharCode(33 + this.seen[r]!);
    }
    let s = this.classes.get(key);
    if (!s) {
      s = solveClass(this.circuit, this.label, count, dead);
      this.classes.set(key, s);
    }
    return s;
  }

  private advance(s: Solved, bits: number): number {
    let to = bits;
    s.next.forEach((n, i) => {
      if (n > 0) to |= 1 << i;
      else if (n < 0) to &= ~(1 << i);
    });
    return to;
  }

  settle(inputs: ArrayLike<number>, from: number, dead = 0): Settled {
    const path = [from];
    for (;;) {
      const bits = path[path.length - 1]!;
      const to = this.advance(this.solve(inputs, bits, dead), bits);
      if (to === bits) return { ends: [bits], fate: 'rests' };
      const back = path.indexOf(to);
      if (back >= 0) return this.unsettled(inputs, path.slice(back), dead);
      path.push(to);
    }
  }

  /** No rest when all relays move at once: is there one when they move one by one? */
  private unsettled(inputs: ArrayLike<number>, cycle: number[], dead: number): Settled {
    const queue = [...cycle];
    const met = new Set(queue);
    const rests: number[] = [];
    for (let q = 0; q < queue.length && queue.length < 4000; q++) {
      const bits = queue[q]!;
      const to = this.advance(this.solve(inputs, bits, dead), bits);
      if (to === bits) rests.push(bits);
      for (let i = 0; i < this.circuit.relays.length; i++) {
        const one = bits ^ (1 << i);
        if (((to ^ bits) >> i) & 1 && !met.has(one)) {
          met.add(one);
          queue.push(one);
        }
      }
    }
    return rests.length > 0 ? { ends: rests, fate: 'races' } : { ends: cycle, fate: 'chatters' };
  }

  /** Keeps what is wrong in a state that the circuit really comes to. */
  record(inputs: ArrayLike<number>, settled: Settled): void {
    if (settled.fate === 'chatters') this.symptoms.add('chatters');
    if (settled.fate === 'races') this.symptoms.add('depends-on-order');
    for (const bits of settled.ends) {
      const s = this.solve(inputs, bits);
      for (const x of s.symptoms) this.symptoms.add(x);
      for (const x of s.ledForward) this.ledForward.add(x);
      for (const x of s.ledReversed) this.ledReversed.add(x);
      if (this.mains.length === 0 || this.symptoms.has('mains-through-gate')) continue;
      const live = new Set(this.mains.map((net) => this.root(net)));
      if (this.circuit.gateNets.some((net) => live.has(this.root(net))))
        this.symptoms.add('mains-through-gate');
    }
  }

  /** Mains on the low-voltage side counts with any relay pushed in or out, whether or not it ever gets there. */
  recordForced(inputs: ArrayLike<number>): void {
    if (this.mains.length === 0 || this.symptoms.has('mains-meets-low-voltage')) return;
    for (const bits of [0, this.allIn]) {
      const met = this.solve(inputs, bits).symptoms.includes('mains-meets-low-voltage');
      if (met) this.symptoms.add('mains-meets-low-voltage');
    }
  }

  /** An indicator that is fed backwards somewhere and forwards nowhere. */
  finish(): void {
    for (const x of this.ledReversed) if (!this.ledForward.has(x)) this.symptoms.add('reversed');
    const { circuit: c } = this;
    const open = (name: string): boolean => !c.plugEarths.has(c.wireOnly(`${name}.PE`));
    if (c.consumers.some((x) => x.earthed && open(x.name)) || c.metalBoxes.some(open)) {
      this.symptoms.add('earth-broken');
    }
  }

  /** Does this lamp give light? */
  lit(name: string, inputs: ArrayLike<number>, bits: number): boolean {
    return this.solve(inputs, bits).lit.includes(name);
  }

  /** V between two terminals by their keys. */
  volts(inputs: ArrayLike<number>, bits: number, a: string, b: string): number {
    const net = (key: string): number => this.circuit.netOf.get(key) ?? -1;
    return this.solve(inputs, bits).between(net(a), net(b));
  }

  /** Is this relay in, or this consumer running? */
  on(name: string, inputs: ArrayLike<number>, bits: number, dead = 0): boolean {
    const r = this.circuit.relays.findIndex((x) => x.name === name);
    if (r >= 0) return ((bits >> r) & 1) === 1;
    const k = this.circuit.consumers.findIndex((x) => x.name === name);
    if (k < 0) throw new Error(`oracle: ${name} is neither a load nor a relay`);
    return this.solve(inputs, bits, dead).running[k]!;
  }
}
