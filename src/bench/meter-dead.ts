/** What an ohmmeter reads with every supply and plug out, for many pairs of terminals of one circuit. */
import { ambientOf, figuresFor, modelOf, statedOhms } from '../checks/figures.ts';
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, Passive } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import type { Plan } from '../plan/plan.ts';
import { copperFactor } from '../ratings/coil.ts';
import { defaults } from '../ratings/defaults.ts';
import { Resistances, type Resistor } from './meter-graph.ts';
import type { Stance } from './meter-stance.ts';

/** ohm between two terminals: from a winding of next to nothing, where one is not known, to none at all. */
export interface Ohms {
  readonly least: number;
  readonly most: number;
}

/** ohm that stands for a winding that might be anything. */
const NEXT_TO_NONE = 1e-6;
/** °C of the coldest shop a sheet is worked through in; common practice, no source. */
const COLDEST = 5;

export class DeadBench {
  private readonly known = new Map<string, { readonly least: Resistances; readonly most: Resistances }>();

  /** What has a plug of its own is out and passes nothing. */
  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
  ) {}

  ohms(stance: Stance, a: string, b: string): Ohms {
    const [x, y] = [this.circuit.netOf.get(a), this.circuit.netOf.get(b)];
    if (a === b || (x !== undefined && x === y)) return { least: 0, most: 0 };
    if (x === undefined || y === undefined)
      return { least: Number.POSITIVE_INFINITY, most: Number.POSITIVE_INFINITY };
    const { least, most } = this.at(stance);
    const high = most.between(x, y);
    return { least: least === most ? high : least.between(x, y), most: high };
  }

  private at(stance: Stance) {
    let found = this.known.get(stance.key);
    if (!found) {
      found = this.made(new Set(stance.moved));
      this.known.set(stance.key, found);
    }
    return found;
  }

  private made(moved: ReadonlySet<number>) {
    const { circuit, figures } = this;
    const closed = (c: ContactEdge) =>
      c.when.by === 'always' ||
      (c.when.by === 'input' ? moved.has(c.when.input) === c.when.value : !c.when.value);
    const sure: Resistor[] = [
      ...circuit.wires.map((w) => ({ a: w.a, b: w.b, ohms: figures.wire(w) })),
      ...circuit.contacts.filter(closed).map((c) => ({ a: c.a, b: c.b, ohms: figures.contact(c) })),
    ];
    const blind: Resistor[] = [];
    for (const p of circuit.passives) {
      if (isUnplugged(circuit.plan, p.part)) continue;
      const z = isHidden(circuit.plan, p) ? undefined : figures.passive(p, false);
      if (z === undefined) blind.push({ a: p.a, b: p.b, ohms: NEXT_TO_NONE });
      else sure.push({ a: p.a, b: p.b, ohms: z.re });
    }
    const most = new Resistances(circuit.netCount, sure);
    return {
      most,
      least: blind.length === 0 ? most : new Resistances(circuit.netCount, [...sure, ...blind]),
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
  if (part?.kind === 'relay') return part.technology === 'solid-state' && p.what === 'coil';
  return part?.kind === 'board';
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
