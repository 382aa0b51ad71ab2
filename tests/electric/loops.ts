/** Loops of any number of gates as wired parts: one regulated supply, one coil, two cores from gate to gate. */
import type { ContactEdge } from '../../src/circuit/circuit.ts';
import type { Wire } from '../../src/circuit/nets.ts';
import {
  assemble,
  type Figures,
  type Island,
  islandOf,
  type Parts,
  type Situation,
} from '../../src/electric/island.ts';
import { PortSolver } from '../../src/electric/ports.ts';
import { solveNetwork } from '../../src/electric/solve.ts';

export type Layout = 'chain' | 'star' | 'ring';
export const LAYOUTS: readonly Layout[] = ['chain', 'star', 'ring'];

/** V */
export const SUPPLY_VOLTS = 12;
/** ohm */
export const COIL_OHMS = 155;
/** ohm of a closed contact */
const CONTACT_OHMS = 0.05;
/** ohm per metre of one core */
const OHMS_PER_METRE = 0.053;
/** m from gate to gate, from the supply to the first gate and from the coil */
const METRES = 2;

/** Supply plus and minus, the two ends of the coil; gate i has the nets FIRST + 2i and FIRST + 2i + 1. */
export const PLUS = 0;
export const MINUS = 1;
export const OUT = 2;
export const BACK = 3;
export const FIRST = 4;

/** V, ohm; everything exactly as printed */
export const figures: Figures = {
  wire: (w) => OHMS_PER_METRE * w.metres,
  contact: () => CONTACT_OHMS,
  leak: () => undefined,
  passive: () => ({ re: COIL_OHMS, im: 0 }),
  diode: () => ({ drop: 0.7, ohms: 0 }),
  source: () => ({ scale: 1, ohms: 0 }),
};

/** A core of so many metres. */
export const wire = (a: number, b: number, metres: number): Wire => ({ run: 0, core: 0, a, b, metres });

/** The contact of gate `input`, closed when the gate is open. */
export function gate(input: number, a: number, b: number): ContactEdge {
  const when = { by: 'input', input, value: true } as const;
  return { a, b, when, part: `g${input}`, terminals: ['COM', 'NO'], pole: 0 };
}

/** A supply from PLUS to MINUS and a coil from OUT to BACK, with what else is given between PLUS and OUT. */
export function loopOf(netCount: number, wires: readonly Wire[], contacts: readonly ContactEdge[]): Parts {
  const rail = { re: 0, im: 0, live: false };
  return {
    netCount,
    wires: [wire(MINUS, BACK, METRES), ...wires],
    contacts,
    passives: [{ a: OUT, b: BACK, part: 'K1', what: 'coil' }],
    diodes: [],
    sources: [
      {
        index: 0,
        part: 'PS1',
        kind: 'dc',
        mains: false,
        rails: [
          { ...rail, net: PLUS, terminal: '+', re: SUPPLY_VOLTS },
          { ...rail, net: MINUS, terminal: '-' },
        ],
        feed: { by: 'always' },
      },
    ],
  };
}

/** `chain` goes from gate to gate, `ring` comes back from the last one, `star` has a pair of cores to each gate. */
export function gatesIn(layout: Layout, count: number): Parts {
  const wires: Wire[] = [];
  const contacts: ContactEdge[] = [];
  let [red, white] = [PLUS, OUT];
  for (let i = 0; i < count; i++) {
    const com = FIRST + 2 * i;
    wires.push(wire(red, com, METRES), wire(white, com + 1, METRES));
    contacts.push(gate(i, com, com + 1));
    if (layout !== 'star') [red, white] = [com, com + 1];
  }
  if (layout === 'ring') wires.push(wire(red, PLUS, METRES), wire(white, OUT, METRES));
  return loopOf(FIRST + 2 * count, wires, contacts);
}

/** The given gates open and the rest as they lie. */
export function opened(gates: readonly number[]): Situation {
  const open = new Set(gates);
  return {
    closed: ({ when }) => when.by === 'input' && open.has(when.input) === when.value,
    alive: () => true,
    pulledIn: () => false,
  };
}

export const atRest: Situation = opened([]);

/** What the coil hangs in. */
export const coilIsland = (parts: Parts): Island => islandOf(parts, [OUT, BACK], true);

/** Volts at the coil by way of the solver of small changes. */
export class CoilVolts {
  readonly solver: PortSolver;

  constructor(island: Island) {
    this.solver = new PortSolver(island, figures, atRest, [[OUT, BACK]]);
  }

  /** V */
  with(gates: readonly number[]): number {
    const names = gates.map((i) => `input ${i}`);
    return this.solver.volts(opened(gates), names, true)[0]!.re;
  }
}

/** Volts at the coil for rest and then for every gate alone open. */
export function sweep(parts: Parts, count: number): { readonly coil: CoilVolts; readonly volts: number[] } {
  const coil = new CoilVolts(coilIsland(parts));
  const volts = [coil.with([])];
  for (let i = 0; i < count; i++) volts.push(coil.with([i]));
  return { coil, volts };
}

/** V at the coil, the whole network solved for this one state. */
export function afresh(island: Island, gates: readonly number[]): number {
  const s = solveNetwork(assemble(island, figures, opened(gates)).network);
  const [a, b] = [island.local(OUT), island.local(BACK)];
  // Cut off as a dead end, or joined to nothing: no current, no volts.
  if (a < 0 || b < 0 || s.component[a] !== s.component[b]) return 0;
  return s.re[a]! - s.re[b]!;
}
