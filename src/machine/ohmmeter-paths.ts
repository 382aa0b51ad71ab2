/** What an ohmmeter sends current through, and how many ohms it finds there. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Circuit, ContactEdge, Passive } from '../circuit/circuit.ts';
import { widestVolts } from '../circuit/rail-volts.ts';
import type { Figures } from '../electric/island.ts';
import type { SupplyPart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';
import { copperMost, windingMost } from '../ratings/winding.ts';
import { modelOf } from '../study/coil-models.ts';
import { closedWith } from './settle.ts';

/** ohm of a clip lead; common practice, no source. */
const LEAD_OHMS = 0.1;

export interface OhmmeterPaths {
  /** contacts that an ohmmeter tells open from closed, and those of them that are closed */
  readonly contacts: readonly ContactEdge[];
  readonly closed: readonly ContactEdge[];
  /** clip leads, from the first terminal to each of the others */
  readonly leads: readonly Passive[];
  /** coils, windings, resistors, those that the plan does not draw as well */
  readonly elements: readonly Passive[];
  /** solid-state outputs that are on: an ohmmeter drives too few volts for one of them to tell */
  readonly outputs: readonly Passive[];
  /** ohm of any of these; undefined where the plan does not tell it */
  readonly ohms: (p: Passive) => number | undefined;
  /** ohm that one which is not told has at most; undefined where it may be anything */
  readonly mostOhms: (p: Passive) => number | undefined;
}

/** With these inputs moved and these relays in, while a lead joins some nets. */
export function ohmmeterPaths(
  circuit: WiredCircuit,
  figures: Figures,
  moved: ReadonlySet<number>,
  relays: readonly boolean[],
  clipped: readonly number[],
): OhmmeterPaths {
  const { plan } = circuit;
  const isClosed = closedWith(moved, relays);
  const isOutput = (c: ContactEdge) => c.when.by === 'relay' && isSolidState(plan, c.part) && isClosed(c);
  const contacts = circuit.contacts.filter((c) => !isOutput(c));
  const leads = clipped
    .slice(1)
    .map((net): Passive => ({ a: clipped[0]!, b: net, part: '', what: 'resistor' }));
  return {
    contacts,
    closed: contacts.filter(isClosed),
    leads,
    elements: [...circuit.passives, ...hiddenPrimaries(circuit)],
    outputs: circuit.contacts
      .filter(isOutput)
      .map((c): Passive => ({ a: c.a, b: c.b, part: c.part, what: 'load' })),
    ohms: (p) => {
      if (leads.includes(p)) return LEAD_OHMS;
      return isNotTold(plan, p) ? undefined : figures.passive(p, false)?.re;
    },
    mostOhms: (p) => mostOf(circuit, p),
  };
}

/** ohm of a winding whose copper the plan does not tell, from what its plate says that it draws. */
function mostOf(circuit: Circuit, { part: name, what }: Passive): number | undefined {
  const part = circuit.plan.parts.get(name);
  if (part?.kind === 'motor' && what === 'load') return windingMost(part);
  // Impedance of the coil with its armature in, as printed; none for electronics, which pass no current of a meter.
  if ((part?.kind === 'relay' || part?.kind === 'timer') && what === 'coil') {
    const { electronic, ohms } = modelOf(part);
    return electronic ? undefined : ohms;
  }
  if (part?.kind === 'supply' && what === 'primary') return primaryMost(circuit, part);
  return undefined;
}

/** Of a transformer alone: what holds its volts may be electronic. */
function primaryMost({ sources }: Pick<Circuit, 'sources'>, part: SupplyPart): number | undefined {
  if (part.regulation !== 'transformer' && part.regulation !== 'unregulated') return undefined;
  const { winding } = sources.find((s) => s.part === part.name) ?? {};
  // Where the plan does not say what it is made for, it is for the mains that there is.
  const volts = winding ?? Math.max(0, ...sources.filter((s) => s.mains).map(widestVolts));
  return part.limit && copperMost(volts, part.limit.amps * part.output.volts);
}

/** The mains side of each supply that is told to hang on a plug, across the first two poles of that plug: no plan draws it. */
function hiddenPrimaries({ sources }: Pick<Circuit, 'sources'>): Passive[] {
  return sources.flatMap(({ part, feed }): Passive[] => {
    const plug = feed.by === 'part' ? sources.find((s) => s.part === feed.part) : undefined;
    const [a, b] = plug?.rails ?? [];
    return a && b ? [{ a: a.net, b: b.net, part, what: 'primary' }] : [];
  });
}

/** Electronics, and filaments: a cold one has a small part of the resistance that its rating tells. */
function isNotTold(plan: Plan, p: Passive): boolean {
  const part = plan.parts.get(p.part);
  if (part?.kind === 'lamp') return part.resistance === undefined;
  return part?.kind === 'board' || (p.what === 'coil' && isSolidState(plan, p.part));
}

function isSolidState(plan: Plan, name: string): boolean {
  const part = plan.parts.get(name);
  return part?.kind === 'relay' && part.technology === 'solid-state';
}
