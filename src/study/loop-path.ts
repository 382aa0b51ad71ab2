/** How long a gate's loop is, and how many ohms its wires and contacts have. */

import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, DiodeEdge, Relay } from '../circuit/circuit.ts';
import type { Figures, Situation } from '../electric/island.ts';
import { push } from '../plan/map-entries.ts';
import type { CoilRow } from './coil-rows.ts';
import type { CoilState } from './coil-states.ts';
import { coilImpedance, figuresFor } from './corners.ts';
import { coilNets, type Electrics } from './electrics.ts';

export interface Loop {
  /** m of conductor there and back, the shortest way */
  readonly metres: number | undefined;
  /** ohm at 20 °C of everything between supply and coil; ways side by side count together */
  readonly ohms: number | undefined;
}

interface Reach {
  readonly metres: Float64Array;
  readonly ohms: Float64Array;
}

const walks = new WeakMap<Electrics, Map<string, Reach>>();

/** The loop from the supply's poles through the gate and the coil. */
export function loopOf(own: Electrics, state: CoilState, row: CoilRow): Loop {
  const relay = own.circuit.relays[state.relay.index]!;
  const nets = coilNets(relay)!;
  const source = own.circuit.sources[state.fed.source.index]!;
  const standing = own.situations.at(row.moved);
  const before = standing && own.situations.beforePullIn(standing, state.relay);
  if (!before) return { metres: undefined, ohms: undefined };
  const island = own.islandOf(relay)!;
  const closing = island.contacts.filter(
    (c) => before.situation.closed(c) !== own.situations.atRest.situation.closed(c),
  );
  const only = closing.length === 1 && before.situation.closed(closing[0]!) ? closing[0] : undefined;
  const way = only
    ? throughOne(
        own,
        nets,
        source.rails.map((r) => r.net),
        only,
      )
    : throughAny(
        own,
        before.situation,
        nets,
        source.rails.map((r) => r.net),
      );
  const alone = island.passives.length === 1 && island.diodes.every((d) => quenches(own, d, state.relay));
  return { metres: way?.metres, ohms: alone ? seenOhms(own, state, row.nominal) : way?.ohms };
}

/** A diode across the coil itself, which carries nothing while the coil is fed. */
function quenches(own: Electrics, diode: DiodeEdge, relay: Relay): boolean {
  const whole = own.study.circuit.diodes[own.circuit.diodes.indexOf(diode)]!;
  const sense = relay.senses[0];
  if (sense?.by !== 'volts' || diode.load) return false;
  return [whole.anode, whole.cathode].every((n) => n === sense.a || n === sense.b);
}

/** ohm that the row's loop would have with other figures for its wires. */
export function ohmsWith(own: Electrics, state: CoilState, row: CoilRow, figures: Figures): number {
  const standing = own.situations.at(row.moved);
  const before = standing && own.situations.beforePullIn(standing, state.relay);
  const volts = before ? own.coilVoltsWith(state.relay, before, figures) : 0;
  return seenOhms(own, state, volts);
}

/** With the coil the only load: its volts tell the ohms in line with it, ways side by side and all. */
function seenOhms(own: Electrics, state: CoilState, volts: number): number {
  const z = coilImpedance(own.study.plan, state.fed.part, 'nominal', false)!;
  const { scale, ohms } = figuresFor(own.study.plan, 'nominal').source(state.fed.source);
  const rails = state.fed.source.rails;
  const e = scale * Math.hypot(rails[0]!.re - rails[1]!.re, rails[0]!.im - rails[1]!.im);
  // |Z + R| = |Z|·E/V for the resistance R in line with the coil.
  const total = (Math.hypot(z.re, z.im) * e) / volts;
  return Math.max(0, Math.sqrt(Math.max(0, total * total - z.im * z.im)) - z.re - ohms);
}

/** One contact closes the loop: distances to both its ends are walked once for all gates. */
function throughOne(
  own: Electrics,
  coil: readonly [number, number],
  rails: readonly number[],
  c: ContactEdge,
) {
  let best: { metres: number; ohms: number } | undefined;
  const ohms = figuresFor(own.study.plan, 'nominal').contact(c);
  const from = (net: number) => walked(own, net);
  for (const [x, y] of [coil, [coil[1], coil[0]] as const])
    for (const [p, q] of [
      [rails[0]!, rails[1]!],
      [rails[1]!, rails[0]!],
    ] as const)
      for (const [s, t] of [
        [c.a, c.b],
        [c.b, c.a],
      ] as const) {
        const parts = [
          [from(x), s],
          [from(p), t],
          [from(y), q],
        ] as const;
        const metres = parts.reduce((sum, [r, n]) => sum + r.metres[n]!, 0);
        if (!Number.isFinite(metres) || (best && best.metres <= metres)) continue;
        best = { metres, ohms: parts.reduce((sum, [r, n]) => sum + r.ohms[n]!, ohms) };
      }
  return best;
}

function throughAny(
  own: Electrics,
  situation: Situation,
  coil: readonly [number, number],
  rails: readonly number[],
) {
  const figures = figuresFor(own.study.plan, 'nominal');
  const plus = walk(own.circuit, figures, situation, rails[0]!);
  const minus = walk(own.circuit, figures, situation, rails[1]!);
  const ways = [
    [plus, coil[0], minus, coil[1]],
    [plus, coil[1], minus, coil[0]],
  ] as const;
  let best: { metres: number; ohms: number } | undefined;
  for (const [r, a, s, b] of ways) {
    const metres = r.metres[a]! + s.metres[b]!;
    if (Number.isFinite(metres) && (!best || metres < best.metres))
      best = { metres, ohms: r.ohms[a]! + s.ohms[b]! };
  }
  return best;
}

function walked(own: Electrics, net: number): Reach {
  let known = walks.get(own);
  if (!known) {
    known = new Map();
    walks.set(own, known);
  }
  const key = String(net);
  let reach = known.get(key);
  if (!reach) {
    reach = walk(own.circuit, figuresFor(own.study.plan, 'nominal'), own.situations.atRest.situation, net);
    known.set(key, reach);
  }
  return reach;
}

/** Metres from one net along cores and closed contacts to every other; shortest first (Dijkstra 1959). */
function walk(circuit: WiredCircuit, figures: Figures, situation: Situation, start: number): Reach {
  const steps = new Map<number, { to: number; metres: number; ohms: number }[]>();
  const link = (a: number, b: number, metres: number, ohms: number) => {
    push(steps, a, { to: b, metres, ohms });
    push(steps, b, { to: a, metres, ohms });
  };
  for (const w of circuit.wires) link(w.a, w.b, w.metres, figures.wire(w));
  for (const c of circuit.contacts) if (situation.closed(c)) link(c.a, c.b, 0, figures.contact(c));
  for (const d of circuit.diodes) if (!d.load && !d.builtIn) link(d.anode, d.cathode, 0, 0);
  const metres = new Float64Array(circuit.netCount).fill(Number.POSITIVE_INFINITY);
  const ohms = new Float64Array(circuit.netCount);
  metres[start] = 0;
  const heap = new Heap();
  heap.put(0, start);
  for (let net = heap.take(); net !== undefined; net = heap.take())
    for (const s of steps.get(net) ?? []) {
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
