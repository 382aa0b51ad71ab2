/** Contacts that feed coils: which contact feeds which coil, and what those coils draw. */
import type { Circuit, ContactEdge, Sense, Source } from '../../circuit/circuit.ts';
import { relayVariable } from '../../logic/conduction.ts';
import { push } from '../../plan/map-entries.ts';
import type { Contact, Part } from '../../plan/plan.ts';
import { pilotAdvice } from '../../ratings/contact-advice.ts';
import { sumFigures } from '../../ratings/load.ts';
import type { Figure } from '../../ratings/motor.ts';
import { judgePilot, type PilotDuty } from '../../ratings/pilot.ts';
import { type Coiled, modelOf } from '../../study/corners.ts';
import type { Study } from '../../study/study.ts';
import type { Judged } from './contact-words.ts';

/** A coil with the source that feeds it and the contacts on its way there. */
interface Way {
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
): Way | undefined {
  const [a, b] = [walk(study.circuit, around, sense.a), walk(study.circuit, around, sense.b)];
  for (const source of study.circuit.sources) {
    let volts = 0;
    for (const p of source.rails)
      for (const q of source.rails)
        if (p !== q && a.seen.has(p.net) && b.seen.has(q.net))
          volts = Math.max(volts, Math.hypot(p.re - q.re, p.im - q.im));
    if (volts > 0) return { part, source, volts, contacts: [...new Set([...a.contacts, ...b.contacts])] };
  }
  return undefined;
}

/** Every coil that a source of its own kind of current feeds. */
function ways(study: Study): Way[] {
  const { circuit, plan } = study;
  const around = steps(circuit);
  return circuit.relays.flatMap((relay) => {
    const part = plan.parts.get(relay.part) as Coiled;
    const sense = relay.senses[0];
    if (sense?.by !== 'volts' || sense.a === sense.b) return [];
    const way = wayOf(study, around, part, sense);
    return way && way.source.kind === modelOf(part).kind ? [way] : [];
  });
}

const HAND = ['switch', 'selector', 'button', 'cutout'];

/** A relay's contact on which another's pull depends; or a switch worked by hand on mains. Gates stand elsewhere. */
function feeds(study: Study, way: Way, edge: ContactEdge): boolean {
  const { circuit, plan, verified: v } = study;
  if (edge.part === way.part.name) return false;
  if (!edge.terminals.every((t) => circuit.landed.has(`${edge.part}.${t}`))) return false;
  if (edge.when.by === 'input')
    return way.source.mains && HAND.includes(plan.parts.get(edge.part)?.kind ?? '');
  if (edge.when.by !== 'relay') return false;
  if (!v) return true;
  const own = circuit.relays.find((r) => r.part === way.part.name)!;
  return v.model.bdd.support(v.model.pull[own.index]!).has(relayVariable(edge.when.relay));
}

function contactOf(part: Part, pole: number): Contact | undefined {
  if ('poles' in part) return part.poles.find((p) => p.index === pole)?.contact;
  return 'contact' in part ? part.contact : undefined;
}

/** A at the volts of the circuit, or at the coil's own where those are higher. */
function amps(way: Way, ohms: number | undefined, basis: string): Figure | undefined {
  if (ohms === undefined) return undefined;
  const volts = Math.max(way.volts, modelOf(way.part).rated);
  return { amps: volts / ohms, basis, status: 'stated' };
}

function dutyOf(study: Study, contact: Contact, fed: readonly Way[]): PilotDuty {
  const holding = sumFigures(fed.map((w) => amps(w, modelOf(w.part).ohms, `coil of ${w.part.name}, stated`)));
  const inrush = sumFigures(
    fed.map((w) =>
      amps(
        w,
        modelOf(w.part).inrushOhms,
        `coil of ${w.part.name} with its armature open, ${statesInrush(w.part) ? 'stated' : 'from its holding VA'}`,
      ),
    ),
  );
  const volts = Math.max(...fed.map((w) => w.volts));
  return {
    contact,
    volts,
    kind: fed[0]!.source.kind,
    practice: study.plan.practice,
    ...(holding !== undefined && { holding, holdingVA: holding.amps * volts }),
    ...(inrush !== undefined && { inrush }),
  };
}

function statesInrush(part: Coiled): boolean {
  return part.coil?.inrush !== undefined;
}

/** Every contact that feeds another relay's coil, judged for it. */
export function judgePilots(study: Study): Judged[] {
  const byEdge = new Map<string, { edge: ContactEdge; fed: Way[] }>();
  for (const way of ways(study))
    for (const edge of way.contacts) {
      if (!feeds(study, way, edge)) continue;
      const key = `${edge.part}/${edge.pole}/${edge.terminals.join('/')}`;
      const entry = byEdge.get(key);
      if (entry) entry.fed.push(way);
      else byEdge.set(key, { edge, fed: [way] });
    }
  return [...byEdge.values()].flatMap(({ edge, fed }) => {
    const part = study.plan.parts.get(edge.part)!;
    const contact = contactOf(part, edge.pole);
    if (contact === undefined) return [];
    const duty = dutyOf(study, contact, fed);
    return [
      {
        part,
        pole: Math.max(1, edge.pole),
        loads: fed.map((w) => w.part.name),
        feeds: 'coil' as const,
        currents: {
          ...(duty.holding && { running: duty.holding }),
          ...(duty.kind === 'ac' && duty.inrush && { starting: duty.inrush }),
        },
        volts: duty.volts,
        kind: duty.kind,
        judged: judgePilot(duty),
        advice: pilotAdvice(duty),
      },
    ];
  });
}
