/** Which breaker or fuse stands ahead of each conductor. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge } from '../circuit/circuit.ts';
import { kept, push } from '../plan/map-entries.ts';

/** What lets a current through to a conductor; the more it lets through, the greater its `need`. */
export interface Guard {
  /** A that a conductor behind it must be good for */
  readonly need: number;
}

interface Step {
  readonly to: number;
  readonly contact: ContactEdge | undefined;
}

interface Place<G> {
  readonly net: number;
  readonly guard: G;
  /** the switch by which the net was entered: it cannot be in two positions at once */
  readonly by: string | undefined;
}

const switchOf = ({ part, pole }: ContactEdge) => `${part}/${pole}`;

/**
 * The guard of every net reached from some starts through wires and contacts in any position: of all ways to it, the one
 * whose tightest fuse lets most through. `fuse` gives the guard that a part is, undefined where it is none.
 */
export function guardsFrom<G extends Guard>(
  circuit: WiredCircuit,
  starts: readonly { readonly net: number; readonly guard: G }[],
  fuse: (part: string) => G | undefined,
): Map<number, G> {
  const steps = stepsOf(circuit);
  const waiting = new Map<G, Place<G>[]>();
  for (const { net, guard } of starts) push(waiting, guard, { net, guard, by: undefined });
  const reached = new Map<number, G>();
  const seen = new Map<number, Set<string | undefined>>();
  for (let place = widest(waiting); place !== undefined; place = widest(waiting)) {
    const { net, guard, by } = place;
    const entries = kept(seen, net, () => new Set<string | undefined>());
    // By a wire it can be left through anything, so no later entry adds a way.
    if (entries.has(undefined) || entries.has(by)) continue;
    entries.add(by);
    if (!reached.has(net)) reached.set(net, guard);
    for (const { to, contact } of steps.get(net) ?? []) {
      const through = contact && switchOf(contact);
      if (through !== undefined && through === by) continue;
      const own = contact && fuse(contact.part);
      const next = own !== undefined && own.need < guard.need ? own : guard;
      push(waiting, next, { net: to, guard: next, by: through });
    }
  }
  return reached;
}

function stepsOf(circuit: WiredCircuit): Map<number, Step[]> {
  const steps = new Map<number, Step[]>();
  const join = (a: number, b: number, contact: ContactEdge | undefined) => {
    push(steps, a, { to: b, contact });
    push(steps, b, { to: a, contact });
  };
  for (const w of circuit.wires) join(w.a, w.b, undefined);
  for (const c of circuit.contacts) join(c.a, c.b, c);
  return steps;
}

/** Takes a place behind the guard that lets most through. */
function widest<G extends Guard>(waiting: Map<G, Place<G>[]>): Place<G> | undefined {
  let most: G | undefined;
  for (const [guard, places] of waiting)
    if (places.length > 0 && (most === undefined || guard.need > most.need)) most = guard;
  return most && waiting.get(most)!.pop();
}
