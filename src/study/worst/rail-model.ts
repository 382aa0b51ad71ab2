/** An island with one source as rails of pure resistance, with everything that switches or draws across pairs of nets. */
import type { ContactEdge } from '../../circuit/circuit.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import type { Island } from '../../electric/island.ts';
import type { Branch } from '../../electric/network.ts';
import { PortMatrix } from '../../electric/port-matrix.ts';
import { FALSE, type Fn, TRUE } from '../../logic/bdd.ts';
import { inputVariable } from '../../logic/conduction.ts';
import { kept } from '../../plan/map-entries.ts';
import { figuresFor } from '../corner-figures.ts';
import type { Corner } from '../corners.ts';
import type { Electrics } from '../electrics.ts';
import { type OnePort, onePort, type Piece, type Pieces, piecesOf } from './pieces.ts';

/** Above so many pairs of nets the matrix would be too large. */
const MOST_PORTS = 400;

/** What is across a port while its variable is off, and while it is on: the most it can be in any such state. */
export interface Element {
  readonly port: number;
  readonly piece: Piece;
  readonly variable: number | undefined;
  readonly off: OnePort;
  readonly on: OnePort;
}

/** One thing that is off or on: a relay, or an input by itself. */
export interface Variable {
  readonly by: 'relay' | 'input';
  readonly index: number;
  /** input states, reached straight from rest, in which it is on */
  readonly when: Fn;
}

/** By variable: whether it is on. */
export type Settings = ReadonlyMap<number, boolean>;

/** The rails and what is across them, in one corner. */
export interface RailModel {
  readonly corner: Corner;
  readonly matrix: PortMatrix;
  /** V of the source */
  readonly volts: number;
  readonly elements: readonly Element[];
  /** a piece in a state of its own */
  put(piece: Piece, closed: (c: ContactEdge) => boolean, coil?: number): OnePort | undefined;
}

/** What is the same in every corner. */
export interface Layout {
  readonly island: Island;
  readonly pieces: Pieces;
  readonly variables: readonly Variable[];
  readonly variableOf: ReadonlyMap<Piece, number>;
  /** the piece that a relay's coil lies in, by the relay's number */
  readonly coilIn: ReadonlyMap<number, Piece>;
}

/** Undefined where the island is no such thing: several sources, a source that may be dead, contacts that leak. */
export function layoutOf(own: Electrics, island: Island): Layout | undefined {
  const [source, ...others] = island.sources;
  const { model } = own.v;
  if (!source || others.length > 0 || source.rails.length !== 2) return undefined;
  if (model.live[source.index] !== TRUE || source.rails.some((r) => r.im !== 0)) return undefined;
  const figures = figuresFor(own.study.plan, 'low');
  if (island.contacts.some((c) => figures.leak(c) !== undefined)) return undefined;
  if (source.kind === 'ac' && island.diodes.length > 0) return undefined;
  const cut = piecesOf(own, island);
  if (!cut || cut.pieces.length > MOST_PORTS) return undefined;
  const pieces = turned(island, cut);
  const variables: Variable[] = [];
  const places = new Map<string, number>();
  const variableOf = new Map<Piece, number>();
  const coilIn = new Map<number, Piece>();
  for (const piece of pieces.pieces) {
    const { mover } = piece;
    for (const p of piece.island.passives)
      if (p.what === 'coil') coilIn.set(own.circuit.relays.find((r) => r.part === p.part)!.index, piece);
    if (!mover || (mover.by === 'gates' && piece.island.contacts.every((c) => c.when.by !== 'input')))
      continue;
    const by = mover.by === 'input' ? 'input' : 'relay';
    const index = mover.by === 'input' ? mover.input : mover.relay;
    variableOf.set(
      piece,
      kept(places, `${by} ${index}`, () => {
        const x = model.bdd.variable(by === 'input' ? inputVariable(own.v.circuit, index) : index);
        variables.push({ by, index, when: by === 'input' ? x : own.situations.settled(x) });
        return variables.length - 1;
      }),
    );
  }
  return { island, pieces, variables, variableOf, coilIn };
}

/** Undefined where a piece is no resistance or impedance over the whole range of its volts. */
export function railModel(own: Electrics, layout: Layout, corner: Corner): RailModel | undefined {
  const { island, pieces, variables, variableOf } = layout;
  const figures = figuresFor(own.study.plan, corner);
  const source = island.sources[0]!;
  const { scale, ohms } = figures.source(source);
  const [first, second] = source.rails;
  const volts = scale * (first!.re - second!.re);
  if (!(volts > 0)) return undefined;
  const at = island.local;
  const branches: Branch[] = [
    ...pieces.wires.map((w) => ({ a: at(w.a), b: at(w.b), re: figures.wire(w), im: 0 })),
    ...pieces.contacts.map((c) => ({ a: at(c.a), b: at(c.b), re: figures.contact(c), im: 0 })),
  ];
  const matrix = new PortMatrix({
    nodes: island.count,
    branches,
    source: { a: at(first!.net), b: at(second!.net), re: volts, im: 0, ohms },
    ports: pieces.pieces.map((p) => [at(p.ends[0]), at(p.ends[1])]),
  });
  const put = (piece: Piece, closed: (c: ContactEdge) => boolean, coil?: number) =>
    onePort(piece, figures, closed, volts, coil === undefined ? undefined : own.circuit.relays[coil]);
  const elements: Element[] = [];
  for (const [port, piece] of pieces.pieces.entries()) {
    const variable = variableOf.get(piece);
    const [off, on] = [false, true].map((value) =>
      put(piece, closable(own, piece, variables[variable ?? -1], value)),
    );
    if (!off || !on) return undefined;
    elements.push({ port, piece, variable, off, on });
  }
  return { corner, matrix, volts, elements, put };
}

/** Each piece with the end first that hangs on the first pole of the source, so that none has volts below zero. */
function turned(island: Island, cut: Pieces): Pieces {
  const sets = new UnionFind(island.netCount);
  for (const w of cut.wires) sets.union(w.a, w.b);
  for (const c of cut.contacts) sets.union(c.a, c.b);
  const [first, second] = island.sources[0]!.rails;
  const pieces = cut.pieces.map((p): Piece => {
    const [a, b] = p.ends;
    return sets.joined(a, second!.net) || sets.joined(b, first!.net) ? { ...p, ends: [b, a] } : p;
  });
  return { ...cut, pieces };
}

/** Contacts of a piece that can be closed in some state with its variable off, or on. */
function closable(own: Electrics, piece: Piece, variable: Variable | undefined, value: boolean) {
  const { bdd } = own.v.model;
  return ({ when }: ContactEdge): boolean => {
    if (when.by === 'always' || variable === undefined) return when.by === 'always';
    if (piece.mover!.by === 'relay') return value === (when as { value: boolean }).value;
    const x = bdd.variable(inputVariable(own.v.circuit, (when as { input: number }).input));
    const here = (when as { value: boolean }).value ? x : bdd.not(x);
    return (value ? bdd.and(here, variable.when) : bdd.diff(here, variable.when)) !== FALSE;
  };
}
