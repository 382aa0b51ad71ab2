/** A meter on ohms: what lies between two terminals with every supply taken off. */
import type { WiredCircuit } from '../circuit/build.ts';
import { type Figures, islandOf } from '../electric/island.ts';
import { Resistances, type Resistor } from '../electric/resistances.ts';
import { kept } from '../plan/map-entries.ts';
import { type OhmmeterPaths, ohmmeterPaths } from './ohmmeter-paths.ts';

/** ohm below which a continuity tester sounds, as makers of multimeters commonly state. */
export const BEEP_OHMS = 50;
/** Share by which an unknown winding may change a reading before the reading is not known. */
const SURE = 1e-6;
/** ohm that stands for a winding that might be anything. */
const NEXT_TO_NONE = 1e-6;

/** Where everything stands while the meter is on ohms. */
export interface DeadStanding {
  /** numbers of the inputs away from rest */
  readonly moved: readonly number[];
  /** which relays are in; undefined for none */
  readonly relays: readonly boolean[] | undefined;
  /** terminals that a clip lead joins */
  readonly clipped: readonly string[];
}

/**
 * ohm between two terminals: from a winding of next to nothing, where one is not known, to the most it may have.
 * Infinity where there is no way through.
 */
export interface OhmsRead {
  readonly least: number;
  readonly most: number;
}

/** Whether what is not known changes the reading by next to nothing. */
export function isSure({ least, most }: OhmsRead): boolean {
  return least === most || (most < Number.POSITIVE_INFINITY && most - least <= SURE * most);
}

/** The network with unknown windings of next to nothing, and with the most they may have. */
interface Bounds {
  readonly least: Resistances;
  readonly most: Resistances;
}

const NO_WAY: OhmsRead = { least: Number.POSITIVE_INFINITY, most: Number.POSITIVE_INFINITY };
/** Numbers in the columns of all networks that are kept. */
const COLUMNS = 4e6;

export class Ohmmeter {
  private readonly known = new Map<string, Bounds>();
  private last: (DeadStanding & { readonly made: Bounds }) | undefined;

  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
  ) {}

  /** The reading between two terminals. */
  read(where: DeadStanding, a: string, b: string): OhmsRead {
    return this.between(where, a, b, (ohms, x, y) => ohms.between(x, y));
  }

  /** The reading where many are asked for. */
  readOneOfMany(where: DeadStanding, a: string, b: string): OhmsRead {
    return this.between(where, a, b, (ohms, x, y) => ohms.oneOfMany(x, y));
  }

  /**
   * V between any two terminals for one ampere in at `a` and out at `b`, windings with the most they may have; undefined
   * where the ampere does not come by.
   */
  drops(where: DeadStanding, a: string, b: string): (x: string, y: string) => number | undefined {
    const net = (key: string) => this.circuit.netOf.get(key);
    const [na, nb] = [net(a), net(b)];
    if (na === undefined || nb === undefined) return () => undefined;
    const { most } = this.bounds(where);
    return (x, y) => {
      const [nx, ny] = [net(x), net(y)];
      return nx === undefined || ny === undefined ? undefined : most.drop(na, nb, nx, ny);
    };
  }

  /**
   * The reading were some cores or touching conductors not there and others put in, worked out from the circuit as it is;
   * undefined where that cannot be told.
   */
  changed(
    where: DeadStanding,
    a: string,
    b: string,
    out: readonly Resistor[],
    into: readonly Resistor[],
  ): OhmsRead | undefined {
    const [x, y] = [this.circuit.netOf.get(a), this.circuit.netOf.get(b)];
    if (x === undefined || y === undefined) return undefined;
    const { least, most } = this.bounds(where);
    if (!most.joined(x, y)) return joinsWith(most, into, x, y) ? undefined : NO_WAY;
    const high = most.changed(x, y, out, into);
    const low = least === most ? high : least.changed(x, y, out, into);
    return high === undefined || low === undefined ? undefined : { least: low, most: high };
  }

  private between(
    where: DeadStanding,
    a: string,
    b: string,
    ohms: (network: Resistances, x: number, y: number) => number,
  ): OhmsRead {
    const [x, y] = [this.circuit.netOf.get(a), this.circuit.netOf.get(b)];
    // A terminal that nothing is wired to has no net; it is still one piece of metal with itself.
    if (a === b || (x !== undefined && x === y)) return { least: 0, most: 0 };
    if (x === undefined || y === undefined) return NO_WAY;
    const { least, most } = this.bounds(where);
    const high = ohms(most, x, y);
    return { least: least === most ? high : ohms(least, x, y), most: high };
  }

  /** The parts in the same piece of circuit as a terminal whose ohms the plan does not tell. */
  unknownBeside(where: DeadStanding, a: string): string[] {
    const { contacts, elements, outputs, ohms } = this.paths(where);
    const passives = [...elements, ...outputs];
    const island = islandOf({ ...this.circuit, contacts, passives }, this.nets([a]));
    return [...new Set(island.passives.filter((p) => ohms(p) === undefined).map((p) => p.part))];
  }

  /** Whether any of these terminals is on a conductor that the clip lead joins. */
  reaches(where: DeadStanding, keys: readonly string[]): boolean {
    const clipped = this.nets(where.clipped);
    const { most } = this.bounds(where);
    return this.nets(keys).some((x) => clipped.some((y) => most.joined(x, y)));
  }

  private nets(keys: readonly string[]): number[] {
    return keys.map((key) => this.circuit.netOf.get(key)).filter((net) => net !== undefined);
  }

  private paths({ moved, relays, clipped }: DeadStanding): OhmmeterPaths {
    const { circuit, figures } = this;
    const into = relays ?? circuit.relays.map(() => false);
    return ohmmeterPaths(circuit, figures, new Set(moved), into, this.nets(clipped));
  }

  /** Asked for the same again and again, so what was asked for last is kept at hand. */
  private bounds(where: DeadStanding): Bounds {
    const { moved, relays, clipped } = where;
    const { last } = this;
    if (last && last.moved === moved && last.relays === relays && last.clipped === clipped) return last.made;
    const key = `${moved.join()} ${relays?.map(Number).join('') ?? ''} ${clipped.join()}`;
    if (this.known.size >= this.kept && !this.known.has(key)) this.known.clear();
    const made = kept(this.known, key, () => this.networks(this.paths(where)));
    this.last = { moved, relays, clipped, made };
    return made;
  }

  /** Networks that are kept at hand: their columns take the square of the nets. */
  private get kept(): number {
    return Math.max(2, COLUMNS / this.circuit.netCount ** 2);
  }

  private networks({ closed, leads, elements, outputs, ohms, mostOhms }: OhmmeterPaths): Bounds {
    const { circuit, figures } = this;
    const sure: Resistor[] = [
      ...circuit.wires.map((w) => ({ a: w.a, b: w.b, ohms: figures.wire(w) })),
      ...closed.map((c) => ({ a: c.a, b: c.b, ohms: figures.contact(c) })),
    ];
    const least: Resistor[] = outputs.map(({ a, b }) => ({ a, b, ohms: NEXT_TO_NONE }));
    const most: Resistor[] = [];
    for (const p of [...leads, ...elements]) {
      const { a, b } = p;
      const known = ohms(p);
      if (known !== undefined) {
        sure.push({ a, b, ohms: known });
        continue;
      }
      least.push({ a, b, ohms: NEXT_TO_NONE });
      const high = mostOhms(p);
      if (high !== undefined) most.push({ a, b, ohms: high });
    }
    const high = new Resistances(circuit.netCount, [...sure, ...most]);
    return {
      most: high,
      least: least.length === 0 ? high : new Resistances(circuit.netCount, [...sure, ...least]),
    };
  }
}

/** Whether what is put in may tie two nodes to each other that nothing joins. */
function joinsWith(network: Resistances, into: readonly Resistor[], x: number, y: number): boolean {
  const tied = [x];
  for (const node of tied)
    for (const { a, b } of into)
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const)
        if (network.joined(node, from) && !tied.includes(to)) tied.push(to);
  return tied.some((node) => network.joined(node, y));
}
