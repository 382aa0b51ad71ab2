/** Inputs that can lower the volts at a coil which is fed: they open a contact or change what else draws current. */
import type { Relay } from '../circuit/circuit.ts';
import type { Island } from '../electric/island.ts';
import { FALSE, type Fn } from '../logic/bdd.ts';
import { inputVariable } from '../logic/conduction.ts';
import type { Electrics } from './electrics.ts';

/** Such inputs of a coil, by number; `feeding` are the input states that feed it, and `island` is what it lies in. */
export function togglesOf(own: Electrics, relay: Relay, island: Island, feeding: Fn): number[] {
  const { bdd } = own.v.model;
  const { circuit } = own.v;
  const found = new Set<number>();
  const addInputs = (f: Fn) => {
    const within = bdd.and(f, feeding);
    if (within === FALSE || within === feeding) return;
    for (const x of bdd.support(f)) {
      const i = x - circuit.relays.length;
      if (i >= 0) found.add(i);
    }
  };
  for (const { when } of island.contacts) {
    if (when.by === 'input' && !when.value) {
      const moved = bdd.variable(inputVariable(circuit, when.input));
      if (bdd.and(moved, feeding) !== FALSE) found.add(when.input);
    }
    if (when.by === 'relay' && when.relay !== relay.index)
      addInputs(own.situations.settled(bdd.variable(when.relay)));
  }
  for (const f of otherLoads(own, relay, island)) addInputs(f);
  return [...found].sort((x, y) => x - y);
}

/** For everything else in the island that draws current: the input states in which it is fed. */
function otherLoads(own: Electrics, relay: Relay, island: Island): Fn[] {
  const { bdd, conduction, live, railReach } = own.v.model;
  const ends = otherEnds(own, relay, island);
  return own.v.circuit.sources.flatMap((s) => {
    const dc = s.kind === 'dc' && !s.mains;
    const out = dc ? conduction.throughDiodes(s.rails[0]!.net, true).at(-1)! : railReach[s.index]![0]!;
    const back = dc ? conduction.throughDiodes(s.rails[1]!.net, false).at(-1)! : railReach[s.index]![1]!;
    const way = (x: number, y: number) => bdd.and(out.get(x) ?? FALSE, back.get(y) ?? FALSE);
    const fed = ends.map(({ a, b }) => bdd.and(live[s.index]!, bdd.or(way(a, b), way(b, a))));
    return fed.filter((f) => f !== FALSE).map((f) => own.situations.settled(f));
  });
}

/** Where they lie in the coarse circuit, which lists the same elements in the same order. */
function otherEnds(own: Electrics, relay: Relay, island: Island): { a: number; b: number }[] {
  const { circuit } = own.v;
  const ends: { a: number; b: number }[] = [];
  own.circuit.passives.forEach((p, i) => {
    const coil = p.part === relay.part && p.what === 'coil';
    if (!coil && island.passives.includes(p)) ends.push(circuit.passives[i]!);
  });
  own.circuit.diodes.forEach((d, i) => {
    const { anode, cathode } = circuit.diodes[i]!;
    if (d.load && island.diodes.includes(d)) ends.push({ a: anode, b: cathode });
  });
  return ends;
}
