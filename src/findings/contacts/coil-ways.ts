/** Which contacts lie on the way from a coil to the poles that feed it. */

import type { Circuit, ContactEdge, Sense, Source } from '../../circuit/circuit.ts';
import { difference } from '../../circuit/rail-volts.ts';
import { push } from '../../plan/map-entries.ts';
import { takesKind } from '../../ratings/coil.ts';
import { type Coiled, modelOf } from '../../study/coil-models.ts';
import type { Study } from '../../study/study.ts';

/** A coil with the source that feeds it and the contacts on its way there. */
export interface CoilWay {
  readonly part: Coiled;
  readonly source: Source;
  /** V between the poles that reach its two ends */
  readonly volts: number;
  readonly contacts: readonly ContactEdge[];
}

type Step = { readonly to: number; readonly contact: ContactEdge | undefined };

function steps(circuit: Circuit): Map<number, Step[]> {
  const around = new Map<number, Step[]>();
  const join = (a: number, b: number, contact?: ContactEdge) => {
    push(around, a, { to: b, contact });
    push(around, b, { to: a, contact });
  };
  for (const c of circuit.contacts) join(c.a, c.b, c);
  for (const d of circuit.diodes) if (!d.load && !d.builtIn) join(d.anode, d.cathode);
  for (const p of circuit.passives) if (p.what === 'resistor') join(p.a, p.b);
  return around;
}

/** Walks from one end of a coil as far as the poles of the sources. */
function walk(circuit: Circuit, around: ReadonlyMap<number, readonly Step[]>, from: number) {
  const rails = new Set(circuit.sources.flatMap((s) => s.rails.map((r) => r.net)));
  const contacts = new Set<ContactEdge>();
  const seen = new Set([from]);
  const queue = [from];
  for (let net = queue.pop(); net !== undefined; net = queue.pop()) {
    if (rails.has(net)) continue;
    for (const step of around.get(net) ?? []) {
      if (step.contact) contacts.add(step.contact);
      if (seen.has(step.to)) continue;
      seen.add(step.to);
      queue.push(step.to);
    }
  }
  return { seen, contacts };
}

function wayOf(
  study: Study,
  around: ReadonlyMap<number, readonly Step[]>,
  part: Coiled,
  sense: Extract<Sense, { by: 'volts' }>,
): CoilWay | undefined {
  const [a, b] = [walk(study.circuit, around, sense.a), walk(study.circuit, around, sense.b)];
  for (const source of study.circuit.sources) {
    let volts = 0;
    for (const p of source.rails)
      for (const q of source.rails)
        if (p !== q && a.seen.has(p.net) && b.seen.has(q.net)) volts = Math.max(volts, difference(p, q));
    if (volts > 0) return { part, source, volts, contacts: [...new Set([...a.contacts, ...b.contacts])] };
  }
  return undefined;
}

/** Every coil that a source of its own kind of current feeds. */
export function coilWays(study: Study): CoilWay[] {
  const { circuit, plan } = study;
  const around = steps(circuit);
  return circuit.relays.flatMap((relay) => {
    const part = plan.parts.get(relay.part) as Coiled;
    const sense = relay.senses[0];
    if (sense?.by !== 'volts' || sense.a === sense.b) return [];
    const way = wayOf(study, around, part, sense);
    return way && takesKind(modelOf(part), way.source.kind) ? [way] : [];
  });
}
