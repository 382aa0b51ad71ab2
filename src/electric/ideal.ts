import { solveNetwork } from './solve.ts';

/** A small network with ideal wires: the nodes are already merged over closed contacts. Volts, ohms. */
export interface IdealNetwork {
  readonly nodes: number;
  readonly resistors: readonly { readonly a: number; readonly b: number; readonly ohms: number }[];
  /** potential differences that sources hold: V(a) - V(b) = re + j im */
  readonly sources: readonly {
    readonly a: number;
    readonly b: number;
    readonly re: number;
    readonly im: number;
  }[];
  readonly diodes: readonly {
    readonly anode: number;
    readonly cathode: number;
    readonly drop: number;
    readonly ohms: number;
  }[];
}

export interface NodeVolts {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** false when no consistent set of conducting diodes was found, or sources contradict */
  readonly settled: boolean;
}

/** Node potentials with ideal wires, for the logic's conduction classes; parts that float are each relative to a node of their own. */
export function solveIdeal(net: IdealNetwork): NodeVolts {
  const s = solveNetwork({
    nodes: net.nodes,
    branches: net.resistors.map((r) => ({ a: r.a, b: r.b, re: r.ohms, im: 0 })),
    emfs: net.sources.map((e) => ({ ...e, ohms: 0 })),
    valves: net.diodes,
  });
  return { re: s.re, im: s.im, settled: s.settled && s.conflict === undefined };
}
