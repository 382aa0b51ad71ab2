/**
 * The one network solver: volts and amperes of impedances, held voltages and diodes between numbered nodes. It knows
 * nothing of plans, colours or standards, and judges nothing.
 *
 * Volts, amperes, ohms; phasors are RMS with a real and an imaginary part. Direct current leaves the imaginary parts at
 * zero.
 */

export interface Phasor {
  readonly re: number;
  readonly im: number;
}

/** Impedance re + j im between two nodes, ohm. Zero joins them. */
export interface Branch extends Phasor {
  readonly a: number;
  readonly b: number;
}

/** Held difference of potential V(a) - V(b) = re + j im, behind a resistance in line with it. */
export interface Emf extends Phasor {
  readonly a: number;
  readonly b: number;
  /** ohm, 0 for an ideal source */
  readonly ohms: number;
}

/** Conducts from anode to cathode at `drop` volts and more, with `ohms` in line; blocks otherwise. DC only. */
export interface Valve {
  readonly anode: number;
  readonly cathode: number;
  readonly drop: number;
  readonly ohms: number;
}

export interface Network {
  readonly nodes: number;
  readonly branches: readonly Branch[];
  readonly emfs: readonly Emf[];
  readonly valves: readonly Valve[];
}

export interface Solution {
  /** V, each relative to the reference node of its own component */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** number of the component that each node hangs in; potentials compare only within one */
  readonly component: Int32Array;
  /** A that each source drives out of its `a` terminal into the network; NaN never, `undefined` in `conflict` */
  readonly emfAmps: readonly Phasor[];
  /** which diodes conduct */
  readonly conducting: readonly boolean[];
  /** false when no consistent set of conducting diodes was found */
  readonly settled: boolean;
  /** index of a source that contradicts the others or is shorted by zero ohm; its own current is then not defined */
  readonly conflict: number | undefined;
}
