/** Which nets hang together while everything stands in one position: by metal alone, or through elements as well. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import type { Figures, Situation } from '../electric/island.ts';

/**
 * Joined by wires and closed contacts alone: how a dry trigger sees its two terminals, which no supply of the plan need
 * reach.
 */
export function joinedByMetal(
  circuit: WiredCircuit,
  situation: Situation,
): (a: number, b: number) => boolean {
  let sets: UnionFind | undefined;
  return (a, b) => {
    if (!sets) {
      sets = new UnionFind(circuit.netCount);
      for (const w of circuit.wires) sets.union(w.a, w.b);
      for (const c of circuit.contacts) if (situation.closed(c)) sets.union(c.a, c.b);
    }
    return sets.joined(a, b);
  };
}

/** What wires, closed contacts, those that leak, and elements tie together, diodes whichever way. */
export class TiedNets {
  private sets: UnionFind | undefined;

  constructor(
    private readonly at: {
      readonly circuit: WiredCircuit;
      readonly figures: Figures;
      readonly situation: Situation;
    },
  ) {}

  joined(a: number, b: number): boolean {
    this.sets ??= this.made();
    return this.sets.joined(a, b);
  }

  /** Whether a source that has power is tied to a net. */
  reachedByPower(net: number, which: (s: Source) => boolean = () => true): boolean {
    const { circuit, situation } = this.at;
    return circuit.sources.some(
      (s) => situation.alive(s) && which(s) && s.rails.some((r) => this.joined(r.net, net)),
    );
  }

  private made(): UnionFind {
    const { circuit, figures, situation } = this.at;
    const sets = new UnionFind(circuit.netCount);
    for (const w of circuit.wires) sets.union(w.a, w.b);
    for (const c of circuit.contacts)
      if (situation.closed(c) || figures.leak(c) !== undefined) sets.union(c.a, c.b);
    for (const p of circuit.passives) sets.union(p.a, p.b);
    for (const d of circuit.diodes) sets.union(d.anode, d.cathode);
    for (const s of circuit.sources) for (const r of s.rails) sets.union(s.rails[0]!.net, r.net);
    return sets;
  }
}
