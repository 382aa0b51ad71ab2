/** How far every net lies from one of them, along cores and closed contacts. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';

/** By net; infinitely many metres where no way leads there. */
export interface Reach {
  readonly metres: Float64Array;
  readonly ohms: Float64Array;
}

/** One way from a net along a core, a contact or a diode. */
interface Step {
  readonly to: number;
  readonly metres: number;
  readonly ohms: number;
  readonly contact: ContactEdge | undefined;
}

/** Every way from each net, whatever is closed; made once for many walks. */
export type Steps = readonly (readonly Step[])[];

export function stepsOf(circuit: WiredCircuit, figures: Figures): Steps {
  const steps: Step[][] = Array.from({ length: circuit.netCount }, () => []);
  const link = (a: number, b: number, metres: number, ohms: number, contact?: ContactEdge) => {
    steps[a]!.push({ to: b, metres, ohms, contact });
    steps[b]!.push({ to: a, metres, ohms, contact });
  };
  for (const w of circuit.wires) link(w.a, w.b, w.metres, figures.wire(w));
  for (const c of circuit.contacts) link(c.a, c.b, 0, figures.contact(c), c);
  for (const d of circuit.diodes) if (!d.load && !d.builtIn) link(d.anode, d.cathode, 0, 0);
  return steps;
}

/** Metres from one net along cores and closed contacts to every other; shortest first (Dijkstra 1959). */
export function walk(steps: Steps, closed: (c: ContactEdge) => boolean, start: number): Reach {
  const metres = new Float64Array(steps.length).fill(Number.POSITIVE_INFINITY);
  const ohms = new Float64Array(steps.length);
  metres[start] = 0;
  const heap = new Heap();
  heap.put(0, start);
  for (let net = heap.take(); net !== undefined; net = heap.take())
    for (const s of steps[net]!) {
      if (s.contact !== undefined && !closed(s.contact)) continue;
      const there = metres[net]! + s.metres;
      if (there >= metres[s.to]!) continue;
      metres[s.to] = there;
      ohms[s.to] = ohms[net]! + s.ohms;
      heap.put(there, s.to);
    }
  return { metres, ohms };
}

/** Binary heap of nets by distance; a stale entry costs one more look. */
class Heap {
  private readonly keys: number[] = [];
  private readonly nets: number[] = [];

  put(key: number, net: number): void {
    let i = this.keys.length;
    this.keys.push(key);
    this.nets.push(net);
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (this.keys[up]! <= this.keys[i]!) break;
      this.swap(i, up);
      i = up;
    }
  }

  take(): number | undefined {
    const net = this.nets[0];
    if (net === undefined) return undefined;
    const [key, last] = [this.keys.pop()!, this.nets.pop()!];
    if (this.nets.length === 0) return net;
    this.keys[0] = key;
    this.nets[0] = last;
    for (let i = 0; ; ) {
      const left = 2 * i + 1;
      if (left >= this.keys.length) break;
      const next = left + 1 < this.keys.length && this.keys[left + 1]! < this.keys[left]! ? left + 1 : left;
      if (this.keys[i]! <= this.keys[next]!) break;
      this.swap(i, next);
      i = next;
    }
    return net;
  }

  private swap(i: number, j: number): void {
    [this.keys[i], this.keys[j]] = [this.keys[j]!, this.keys[i]!];
    [this.nets[i], this.nets[j]] = [this.nets[j]!, this.nets[i]!];
  }
}
