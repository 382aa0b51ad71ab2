import { kept, push } from '../plan/map-entries.ts';
import { type Bdd, FALSE, type Fn } from './bdd.ts';

/** Two nets joined in the states of a function. */
export interface Join {
  readonly a: number;
  readonly b: number;
  readonly when: Fn;
}

type Graph = Map<number, Map<number, Fn>>;

/**
 * Contact network to conduction functions between ports. Contacts side by side are or-ed; a net that is no port is
 * taken out by joining each pair of its neighbours (the star-mesh step of Shannon's switching algebra, exact for
 * connection), the net with fewest neighbours first.
 */
export function reduceContacts(bdd: Bdd, contacts: readonly Join[], ports: ReadonlySet<number>): Graph {
  const graph = sideBySide(bdd, contacts);
  // Buckets by degree; a net's entry may be stale, so its degree is read again when it comes up.
  const buckets: number[][] = [];
  const enqueue = (net: number) => {
    const degree = graph.get(net)!.size;
    while (buckets.length <= degree) buckets.push([]);
    buckets[degree]!.push(net);
  };
  for (const net of graph.keys()) if (!ports.has(net)) enqueue(net);
  for (let degree = 0; degree < buckets.length; ) {
    const net = buckets[degree]?.pop();
    if (net === undefined) {
      degree++;
      continue;
    }
    if (graph.get(net)?.size !== degree) continue;
    const around = takeOut(bdd, graph, net).filter((other) => !ports.has(other));
    for (const other of around) enqueue(other);
    degree = Math.max(0, Math.min(degree, ...around.map((other) => graph.get(other)!.size)));
  }
  return graph;
}

function put(graph: Graph, a: number, b: number, when: Fn): void {
  kept(graph, a, () => new Map<number, Fn>()).set(b, when);
  kept(graph, b, () => new Map<number, Fn>()).set(a, when);
}

/** One edge for all contacts between the same two nets. */
function sideBySide(bdd: Bdd, contacts: readonly Join[]): Graph {
  const parallel = new Map<number, Map<number, Fn[]>>();
  for (const { a, b, when } of contacts) {
    const row = kept(parallel, Math.min(a, b), () => new Map<number, Fn[]>());
    push(row, Math.max(a, b), when);
  }
  const graph: Graph = new Map();
  for (const [a, row] of parallel) for (const [b, list] of row) put(graph, a, b, bdd.any(list));
  return graph;
}

/** Takes a net out and joins its neighbours, which are returned. */
function takeOut(bdd: Bdd, graph: Graph, net: number): number[] {
  const around = [...graph.get(net)!];
  graph.delete(net);
  for (const [other] of around) graph.get(other)!.delete(net);
  for (const [i, [a, fa]] of around.entries())
    for (const [b, fb] of around.slice(i + 1)) {
      const through = bdd.and(fa, fb);
      if (through !== FALSE) put(graph, a, b, bdd.or(graph.get(a)!.get(b) ?? FALSE, through));
    }
  return around.map(([other]) => other);
}
