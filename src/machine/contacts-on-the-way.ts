/** The contacts on the way of the current to a load or a coil, and which of them are made. */
import type { Circuit, ContactEdge } from '../circuit/circuit.ts';
import type { Situation } from '../electric/island.ts';
import { push } from '../plan/map-entries.ts';

export interface ContactOnTheWay {
  readonly part: string;
  readonly by: 'relay' | 'input';
  /** `COM-NO`, by the canonical names of the part's terminals */
  readonly terminals: string;
  /** whether the contact is one that the relay, or the input's working position, makes */
  readonly makes: boolean;
  readonly made: boolean;
}

interface Edge {
  readonly a: number;
  readonly b: number;
  readonly contact?: ContactEdge;
}

/**
 * Contacts between these nets and the poles of supplies, whatever position they are in; through fuses and diodes, not
 * through other elements. Tabs that lead nowhere are left out.
 */
export function contactsTo(
  circuit: Circuit,
  situation: Situation,
  nets: readonly number[],
): ContactOnTheWay[] {
  const ends = new Set([...nets, ...circuit.sources.flatMap((s) => s.rails.map((r) => r.net))]);
  const found: ContactOnTheWay[] = [];
  for (const { contact } of pruned(reached(circuit, nets, ends), ends)) {
    if (!contact || contact.when.by === 'always') continue;
    const { part, when, terminals } = contact;
    const made = situation.closed(contact);
    found.push({ part, by: when.by, terminals: terminals.join('-'), makes: when.value, made });
  }
  return found;
}

/** Edges met walking from the nets as far as the poles of supplies. */
function reached(circuit: Circuit, nets: readonly number[], ends: ReadonlySet<number>): Edge[] {
  const edges: Edge[] = [
    ...circuit.contacts.map((contact) => ({ a: contact.a, b: contact.b, contact })),
    ...circuit.diodes.filter((d) => !d.load && !d.builtIn).map((d) => ({ a: d.anode, b: d.cathode })),
  ];
  const around = new Map<number, Edge[]>();
  for (const e of edges) for (const net of [e.a, e.b]) push(around, net, e);
  const met = new Set<Edge>();
  const own = new Set(nets);
  const seen = new Set(nets);
  for (const net of seen) {
    if (ends.has(net) && !own.has(net)) continue;
    for (const e of around.get(net) ?? []) {
      met.add(e);
      seen.add(e.a);
      seen.add(e.b);
    }
  }
  return [...met];
}

/** Without what hangs on one end only. */
function pruned(edges: readonly Edge[], ends: ReadonlySet<number>): Edge[] {
  let left = [...edges];
  for (;;) {
    const degree = new Map<number, number>();
    for (const e of left) for (const net of [e.a, e.b]) degree.set(net, (degree.get(net) ?? 0) + 1);
    const loose = (net: number) => degree.get(net) === 1 && !ends.has(net);
    const kept = left.filter((e) => !loose(e.a) && !loose(e.b));
    if (kept.length === left.length) return kept;
    left = kept;
  }
}
