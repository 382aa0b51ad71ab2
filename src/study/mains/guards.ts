/** Which breaker or fuse stands ahead of each conductor. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { ContactEdge } from '../../circuit/circuit.ts';
import { kept, push } from '../../plan/map-entries.ts';

/** What lets a current through to a conductor; the more it lets through, the greater its `need`. */
export interface Guard {
  /** A that a conductor behind it must be good for */
  readonly need: number;
}

/** Ways into one net that are told apart. */
const MOST_ENTRIES = 4;

interface Step {
  readonly to: number;
  readonly contact: ContactEdge | undefined;
}

interface Place<G> {
  readonly net: number;
  readonly guard: G;
  /** the last moving contact on the way: what it is part of cannot be in two positions at once */
  readonly by: ContactEdge | undefined;
}

/** Whether two contacts can be closed together: not the two throws of one switch, nor two positions of a selector. */
function together(x: ContactEdge, y: ContactEdge): boolean {
  const [a, b] = [x.when, y.when];
  if (x.part !== y.part || a.by === 'always' || b.by === 'always' || a.by !== b.by) return true;
  const same = a.by === 'relay' || b.by === 'relay' ? true : a.input === b.input;
  return same ? a.value === b.value : !(a.value && b.value);
}

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
  const seen = new Map<number, Set<ContactEdge | undefined>>();
  for (let place = widest(waiting); place !== undefined; place = widest(waiting)) {
    const { net, guard } = place;
    const entries = kept(seen, net, () => new Set<ContactEdge | undefined>());
    // Past a few entries a net is taken as free to be left through anything, which only lets more through.
    const by = entries.size < MOST_ENTRIES ? place.by : undefined;
    // With no contact on the way it can be left through anything, so no later entry adds a way.
    if (entries.has(undefined) || entries.has(by)) continue;
    entries.add(by);
    if (!reached.has(net)) reached.set(net, guard);
    for (const { to, contact } of steps.get(net) ?? []) {
      if (contact !== undefined && by !== undefined && !together(by, contact)) continue;
      const own = contact && fuse(contact.part);
      const next = own !== undefined && own.need < guard.need ? own : guard;
      push(waiting, next, { net: to, guard: next, by: contact?.when.by === 'always' ? by : (contact ?? by) });
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
