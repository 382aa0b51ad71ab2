/** What an ohmmeter reads, for many pairs of terminals of one circuit. */

import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, Passive } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import { LEAD_OHMS, mostOf } from '../machine/ohms.ts';
import { closedWith } from '../machine/steps.ts';
import { primariesOf } from '../machine/supply-primaries.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { copperFactor } from '../ratings/coil.ts';
import { defaults } from '../ratings/defaults.ts';
import { ambientOf, figuresFor, modelOf, statedOhms } from '../study/corners.ts';
import { Resistances, type Resistor } from './resistance-graph.ts';

/** Where everything stands while the meter is on ohms. */
export interface Standing {
  readonly moved: readonly number[];
  /** which relays are in; undefined for none */
  readonly relays: readonly boolean[] | undefined;
  /** terminals that a clip lead joins */
  readonly clipped: readonly string[];
}

/** The network with unknown windings of next to nothing, and with the most they may have. */
interface Bounds {
  readonly least: Resistances;
  readonly most: Resistances;
}

/** ohm between two terminals: from a winding of next to nothing, where one is not known, to the most it may have. */
export interface Ohms {
  readonly least: number;
  readonly most: number;
}

/** ohm that stands for a winding that might be anything. */
const NEXT_TO_NONE = 1e-6;
/** °C of the coldest shop a sheet is worked through in; common practice, no source. */
const COLDEST = 5;

export class DeadBench {
  private readonly known = new Map<string, Bounds>();
  private last: (Standing & { readonly made: Bounds }) | undefined;

  /** What has a plug of its own is out and passes nothing. */
  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
  ) {}

  ohms(where: Standing, a: string, b: string): Ohms {
    const [x, y] = [this.circuit.netOf.get(a), this.circuit.netOf.get(b)];
    if (a === b || (x !== undefined && x === y)) return { least: 0, most: 0 };
    if (x === undefined || y === undefined)
      return { least: Number.POSITIVE_INFINITY, most: Number.POSITIVE_INFINITY };
    const { least, most } = this.at(where);
    const high = most.between(x, y);
    return { least: least === most ? high : least.between(x, y), most: high };
  }

  /** Whether any of these terminals is on a conductor that the clip lead joins. */
  reaches(where: Standing, keys: readonly string[]): boolean {
    const net = (key: string) => this.circuit.netOf.get(key);
    const ends = where.clipped.map(net).filter((n) => n !== undefined);
    const { most } = this.at(where);
    return keys.some((key) => {
      const x = net(key);
      return x !== undefined && ends.some((e) => most.between(x, e) < Number.POSITIVE_INFINITY);
    });
  }

  /** Asked for the same again and again, so what was asked for last is kept at hand. */
  private at(where: Standing) {
    const { moved, relays, clipped } = where;
    const { last } = this;
    if (last && last.moved === moved && last.relays === relays && last.clipped === clipped) return last.made;
    const key = `${moved.join()} ${relays?.map(Number).join('') ?? ''} ${clipped.join()}`;
    const made = kept(this.known, key, () => this.made(where));
    this.last = { moved, relays, clipped, made };
    return made;
  }

  private made({ moved, relays, clipped }: Standing): Bounds {
    const { circuit, figures } = this;
    const closed = closedWith(new Set(moved), relays ?? circuit.relays.map(() => false));
    // An ohmmeter drives too few volts for a solid-state output that is on to tell.
    const untold = (c: ContactEdge) => c.when.by === 'relay' && isSolidState(circuit.plan, c.part);
    const ends = clipped.map((key) => circuit.netOf.get(key)).filter((n) => n !== undefined);
    const sure: Resistor[] = [
      ...circuit.wires.map((w) => ({ a: w.a, b: w.b, ohms: figures.wire(w) })),
      ...circuit.contacts
        .filter((c) => closed(c) && !untold(c))
        .map((c) => ({ a: c.a, b: c.b, ohms: figures.contact(c) })),
      ...ends.slice(1).map((net) => ({ a: ends[0]!, b: net, ohms: LEAD_OHMS })),
    ];
    const blind: Resistor[] = circuit.contacts
      .filter((c) => closed(c) && untold(c))
      .map((c) => ({ a: c.a, b: c.b, ohms: NEXT_TO_NONE }));
    const most: Resistor[] = [];
    for (const p of [...circuit.passives, ...primariesOf(circuit)]) {
      if (isUnplugged(circuit.plan, p.part)) continue;
      const z = isHidden(circuit.plan, p) ? undefined : figures.passive(p, false);
      if (z !== undefined) {
        sure.push({ a: p.a, b: p.b, ohms: z.re });
        continue;
      }
      blind.push({ a: p.a, b: p.b, ohms: NEXT_TO_NONE });
      const ohms = mostOf(circuit.plan, p);
      if (ohms !== undefined) most.push({ a: p.a, b: p.b, ohms });
    }
    const high = new Resistances(circuit.netCount, [...sure, ...most]);
    return {
      most: high,
      least: blind.length === 0 ? high : new Resistances(circuit.netCount, [...sure, ...blind]),
    };
  }
}

/** Loads that have a plug of their own. */
export function isUnplugged(plan: Plan, name: string): boolean {
  const part = plan.parts.get(name);
  return (part?.kind === 'motor' || part?.kind === 'load') && part.pluggedInto !== undefined;
}

/** Electronics and cold filaments, whose resistance no rating tells. */
function isHidden(plan: Plan, p: Passive): boolean {
  const part = plan.parts.get(p.part);
  if (part?.kind === 'lamp') return part.resistance === undefined;
  return part?.kind === 'board' || (isSolidState(plan, p.part) && p.what === 'coil');
}

function isSolidState(plan: Plan, name: string): boolean {
  const part = plan.parts.get(name);
  return part?.kind === 'relay' && part.technology === 'solid-state';
}

/** The least and the most that everything may have: copper in a cold shop and a hot one, contacts, coils. */
export function ohmLimits(plan: Plan): { readonly least: Figures; readonly most: Figures } {
  const nominal = figuresFor(plan, 'ohmmeter');
  const warm = figuresFor(plan, 'low');
  const cold = Math.min(1, copperFactor(COLDEST));
  const hot = Math.max(1, copperFactor(ambientOf(plan)));
  const coil = (p: Passive): number => {
    const part = plan.parts.get(p.part);
    return p.what === 'coil' && part && 'poles' in part ? modelOf(part).tolerance : 0;
  };
  const scaled = (p: Passive, sign: number, copper: number) => {
    const z = nominal.passive(p, false);
    if (z === undefined) return undefined;
    const factor = p.what === 'coil' ? (1 + sign * coil(p)) * copper : 1;
    return { re: z.re * factor, im: 0 };
  };
  const { low, high } = defaults.contactResistance;
  return {
    least: {
      ...nominal,
      wire: (w) => nominal.wire(w) * cold,
      contact: (c) => statedOhms(plan, c) ?? low ?? 0,
      passive: (p) => scaled(p, -1, cold),
    },
    most: {
      ...nominal,
      wire: (w) => Math.max(warm.wire(w), nominal.wire(w)),
      contact: (c) => Math.max(statedOhms(plan, c) ?? 0, high ?? 0),
      passive: (p) => scaled(p, 1, hot),
    },
  };
}
