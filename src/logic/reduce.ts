import type { Circuit } from '../circuit/circuit.ts';
import { kept, push } from '../circuit/maps.ts';
import type { Bdd, Fn } from './bdd.ts';
import { conditionFn } from './conduction.ts';

/**
 * Contact network to conduction functions between ports. Contacts side by side are or-ed; a net that is no port is
 * taken out by joining each pair of its neighbours (the star-mesh step of Shannon's switching algebra, exact for
 * connection), the net with fewest neighbours first.
 */
export function reduceContacts(
  circuit: Circuit,
  bdd: Bdd,
  ports: ReadonlySet<number>,
): Map<number, Map<number, Fn>> {
  const parallel = new Map<number, Map<number, Fn[]>>();
  for (const c of circuit.contacts) {
    if (c.a === c.b) continue;
    const [a, b] = c.a < c.b ? [c.a, c.b] : [c.b, c.a];
    push(
      kept(parallel, a, () => new Map<number, Fn[]>()),
      b,
      conditionFn(circuit, bdd, c.when),
    );
  }
  const graph = new Map<number, Map<number, Fn>>();
  const put = (a: number, b: number, f: Fn) => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      kept(graph, from, () => new Map<number, Fn>()).set(to, f);
    }
  };
  for (const [a, row] of parallel) for (const [b, list] of row) put(a, b, bdd.any(list));

  // Buckets by degree; a net's entry may be stale, so its degree is read again when it comes up.
  const buckets: number[][] = [];
  const enqueue = (net: number) => {
    const degree = graph.get(net)!.size;
    while (buckets.length <= degree) buckets.push([]);
    buckets[degree]!.push(net);
  };
  for (const net of graph.keys()) if (!ports.has(net)) enqueue(net);
  for (let d = 0; d < buckets.length; ) {
    const net = buckets[d]?.pop();
    if (net === undefined) {
      d++;
      continue;
    }
    const row = graph.get(net);
    if (!row || row.size !== d) continue;
    const around = [...row];
    graph.delete(net);
    for (const [other] of around) graph.get(other)!.delete(net);
    for (let i = 0; i < around.length; i++) {
      for (let j = i + 1; j < around.length; j++) {
        const [a, fa] = around[i]!;
        const [b, fb] = around[j]!;
        const through = bdd.and(fa, fb);
        if (through === 0) continue;
        put(a, b, bdd.or(graph.get(a)!.get(b) ?? 0, through));
      }
    }
    for (const [other] of around) if (!ports.has(other)) enqueue(other);
    const least = Math.min(d, ...around.filter(([n]) => !ports.has(n)).map(([n]) => graph.get(n)!.size));
    d = Math.max(0, least);
  }
  return graph;
}
