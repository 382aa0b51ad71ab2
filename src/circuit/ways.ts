/** Which edges of a graph lie on a way between two places that meets no net twice. */

interface Edge {
  readonly a: number;
  readonly b: number;
}

interface Step<E> {
  readonly to: number;
  readonly edge: E | undefined;
}

/** One net on the way down of the walk, with the edge it was entered by. */
interface Frame<E> {
  readonly net: number;
  readonly entered: E | undefined | null;
  next: number;
}

const START = -1;
const END = -2;

/**
 * The edges on simple ways from any of the start nets to any of the end nets: those that are in one biconnected
 * component with an edge that joins the two (Hopcroft and Tarjan 1973). What hangs on one net alone, a ring of contacts
 * included, leads nowhere. Takes time in proportion to the edges.
 */
export function edgesBetween<E extends Edge>(
  edges: readonly E[],
  starts: ReadonlySet<number>,
  ends: ReadonlySet<number>,
): Set<E> {
  const named = (net: number) => (starts.has(net) ? START : ends.has(net) ? END : net);
  const around = new Map<number, Step<E>[]>([
    [START, [{ to: END, edge: undefined }]],
    [END, [{ to: START, edge: undefined }]],
  ]);
  const step = (from: number, to: number, edge: E) => {
    const list = around.get(from);
    if (list) list.push({ to, edge });
    else around.set(from, [{ to, edge }]);
  };
  for (const edge of edges) {
    const [a, b] = [named(edge.a), named(edge.b)];
    if (a === b) continue;
    step(a, b, edge);
    step(b, a, edge);
  }
  return componentOfJoin(around);
}

/** Edges met since the walk left START by the edge that joins START and END, until it comes back over that edge. */
function componentOfJoin<E>(around: ReadonlyMap<number, readonly Step<E>[]>): Set<E> {
  const found = new Map<number, number>([[START, 0]]);
  const low = new Map<number, number>([[START, 0]]);
  const met: (E | undefined)[] = [];
  const begun = new Map<number, number>();
  // The edge between the two comes first, so that the component it is in is the first child of START.
  const frames: Frame<E>[] = [{ net: START, entered: null, next: 0 }];
  for (let at = frames.at(-1); at !== undefined; at = frames.at(-1)) {
    const here = at.net;
    const next = around.get(here)?.[at.next++];
    if (next === undefined) {
      frames.pop();
      const up = frames.at(-1);
      if (up === undefined) break;
      low.set(up.net, Math.min(low.get(up.net)!, low.get(here)!));
      if (low.get(here)! < found.get(up.net)!) continue;
      const own = met.splice(begun.get(here)!);
      if (up.net === START && here === END) return new Set(own.filter((e) => e !== undefined));
      continue;
    }
    if (next.edge === at.entered) continue;
    const before = found.get(next.to);
    if (before === undefined) {
      begun.set(next.to, met.length);
      met.push(next.edge);
      found.set(next.to, found.size);
      low.set(next.to, found.get(next.to)!);
      frames.push({ net: next.to, entered: next.edge, next: 0 });
    } else if (before < found.get(here)!) {
      met.push(next.edge);
      low.set(here, Math.min(low.get(here)!, before));
    }
  }
  return new Set();
}
