/** An island cut into pieces of two ends, each moved by one thing: a zone's gates and coil, a relay's contact, a lamp. */
import type { ContactEdge, DiodeEdge, Passive, Relay } from '../../circuit/circuit.ts';
import type { Wire } from '../../circuit/nets.ts';
import { cellsOf } from '../../electric/cells.ts';
import { assemble, type Figures, type Island, numbersOf } from '../../electric/island.ts';
import type { Phasor } from '../../electric/network.ts';
import { over } from '../../electric/seen-from.ts';
import { solveNetwork } from '../../electric/solve.ts';
import type { Electrics } from '../electrics.ts';

/** What moves a piece: the inputs that feed a relay's coil, a relay, or one input; undefined where nothing does. */
export type Mover =
  | { readonly by: 'gates'; readonly relay: number }
  | { readonly by: 'relay'; readonly relay: number }
  | { readonly by: 'input'; readonly input: number };

/** A part of an island that meets the rest at two nets. */
export interface Piece {
  readonly ends: readonly [number, number];
  readonly mover: Mover | undefined;
  readonly island: Island;
  /** whether anything in it draws current, and not only joins */
  readonly draws: boolean;
}

export interface Pieces {
  readonly pieces: readonly Piece[];
  /** what is left of the island: wire, and contacts that nothing moves */
  readonly wires: readonly Wire[];
  readonly contacts: readonly ContactEdge[];
}

type Edge =
  | { readonly is: 'wire'; readonly of: Wire }
  | { readonly is: 'contact'; readonly of: ContactEdge }
  | { readonly is: 'passive'; readonly of: Passive }
  | { readonly is: 'diode'; readonly of: DiodeEdge };

/** Undefined where a piece would have more than two ends. */
export function piecesOf(own: Electrics, island: Island): Pieces | undefined {
  const { relays, inputs } = own.circuit;
  const gatesOf = zonesOfInputs(own);
  const count = relays.length;
  const keyOfContact = ({ when }: ContactEdge): number | undefined => {
    if (when.by === 'always') return undefined;
    if (when.by === 'relay') return when.relay;
    return gatesOf.has(when.input) ? count + gatesOf.get(when.input)! : 2 * count + when.input;
  };
  const coils = new Map(relays.map((r) => [r.part, r.index]));
  const keyOfPassive = (p: Passive) => (p.what === 'coil' ? count + coils.get(p.part)! : undefined);
  const moverOf = (key: number | undefined): Mover | undefined => {
    if (key === undefined) return undefined;
    if (key < count) return { by: 'relay', relay: key };
    return key < 2 * count ? { by: 'gates', relay: key - count } : { by: 'input', input: key - 2 * count };
  };
  if (inputs.length > 50_000) return undefined;
  const edges: Edge[] = [
    ...island.wires.map((of) => ({ is: 'wire', of }) as const),
    ...island.contacts.map((of) => ({ is: 'contact', of }) as const),
    ...island.passives.map((of) => ({ is: 'passive', of }) as const),
    ...island.diodes.map((of) => ({ is: 'diode', of }) as const),
  ];
  const cells = cellsOf(
    edges.map((e) => {
      if (e.is === 'diode')
        // The diode inside a coil belongs to it.
        return {
          a: e.of.anode,
          b: e.of.cathode,
          key: e.of.builtIn ? count + coils.get(e.of.part)! : undefined,
        };
      const key =
        e.is === 'contact' ? keyOfContact(e.of) : e.is === 'passive' ? keyOfPassive(e.of) : undefined;
      return { a: e.of.a, b: e.of.b, key };
    }),
    new Set(island.sources.flatMap((s) => s.rails.map((r) => r.net))),
  );
  const found: Piece[] = [];
  const wires: Wire[] = [];
  const contacts: ContactEdge[] = [];
  for (const cell of cells) {
    const within = cell.edges.map((i) => edges[i]!);
    const draws = within.some((e) => e.is === 'passive' || (e.is === 'diode' && e.of.load));
    if (cell.key === undefined && !draws) {
      if (within.some((e) => e.is === 'diode')) return undefined;
      for (const e of within) {
        if (e.is === 'wire') wires.push(e.of);
        if (e.is === 'contact') contacts.push(e.of);
      }
      continue;
    }
    if (cell.boundary.length < 2) continue;
    if (cell.boundary.length > 2) return undefined;
    const ends = [cell.boundary[0]!, cell.boundary[1]!] as const;
    found.push({ ends, mover: moverOf(cell.key), island: cutOut(island, within), draws });
  }
  return { pieces: found, wires, contacts };
}

/** The relay whose coil an input feeds; none for inputs on which several coils hang. */
function zonesOfInputs({ v }: Electrics): Map<number, number> {
  const { bdd, pull } = v.model;
  const count = v.circuit.relays.length;
  const found = new Map<number, number>();
  const shared = new Set<number>();
  pull.forEach((f, relay) => {
    for (const x of bdd.support(f)) {
      if (x < count) continue;
      if (found.has(x - count)) shared.add(x - count);
      found.set(x - count, relay);
    }
  });
  for (const input of shared) found.delete(input);
  return found;
}

function cutOut(island: Island, edges: readonly Edge[]): Island {
  const ends = edges.flatMap((e) => (e.is === 'diode' ? [e.of.anode, e.of.cathode] : [e.of.a, e.of.b]));
  const nets = [...new Set(ends)];
  return {
    netCount: island.netCount,
    local: numbersOf(nets, island.netCount),
    nets,
    count: nets.length,
    wires: edges.flatMap((e) => (e.is === 'wire' ? [e.of] : [])),
    contacts: edges.flatMap((e) => (e.is === 'contact' ? [e.of] : [])),
    passives: edges.flatMap((e) => (e.is === 'passive' ? [e.of] : [])),
    diodes: edges.flatMap((e) => (e.is === 'diode' ? [e.of] : [])),
    sources: [],
  };
}

/** A piece as its two ends see it: the current is y·(V - emf); and V across a coil in it, gain·V + offset. */
export interface OnePort {
  readonly y: Phasor;
  readonly emf: number;
  readonly gain: Phasor;
  readonly offset: number;
}

const NONE: OnePort = { y: { re: 0, im: 0 }, emf: 0, gain: { re: 0, im: 0 }, offset: 0 };
/** Share of the volts at which diodes have to stand as they do at all of them. */
const LOW = 0.7;

/**
 * A piece with its contacts as `closed` says, between `ends` in that order, at `volts` and below. Undefined where its
 * diodes do not stand alike over that range, or one conducts that is no indicator.
 */
export function onePort(
  piece: Piece,
  figures: Figures,
  closed: (c: ContactEdge) => boolean,
  volts: number,
  coil?: Relay,
): OnePort | undefined {
  const { island, ends } = piece;
  const made = assemble(island, figures, { closed, alive: () => false, pulledIn: () => false }).network;
  const [a, b] = ends.map(island.local) as [number, number];
  const at = (re: number) => solveNetwork({ ...made, emfs: [{ a, b, re, im: 0, ohms: 0 }] });
  const sense = coil?.senses[0];
  const inner = (s: ReturnType<typeof at>): Phasor => {
    if (sense?.by !== 'volts') return { re: 0, im: 0 };
    const [p, q] = [island.local(sense.a), island.local(sense.b)];
    if (p < 0 || q < 0 || s.component[p] !== s.component[q]) return { re: 0, im: 0 };
    return { re: s.re[p]! - s.re[q]!, im: s.im[p]! - s.im[q]! };
  };
  const whole = at(volts);
  if (!whole.settled || whole.conflict !== undefined) return undefined;
  const [amps, across] = [whole.emfAmps[0]!, inner(whole)];
  const gain = over(across, { re: volts, im: 0 });
  if (!whole.conducting.some((on) => on)) {
    const y = over(amps, { re: volts, im: 0 });
    return Math.hypot(y.re, y.im) < 1e-11 ? { ...NONE, gain } : { y, emf: 0, gain, offset: 0 };
  }
  if (island.diodes.some((d, i) => whole.conducting[i] && !d.load)) return undefined;
  const less = at(LOW * volts);
  if (!less.settled || less.conducting.some((on, i) => on !== whole.conducting[i])) return undefined;
  const step = (1 - LOW) * volts;
  const y = (amps.re - less.emfAmps[0]!.re) / step;
  const slope = (across.re - inner(less).re) / step;
  return {
    y: { re: y, im: 0 },
    emf: volts - amps.re / y,
    gain: { re: slope, im: 0 },
    offset: across.re - slope * volts,
  };
}
