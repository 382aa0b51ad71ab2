/** How a worked circuit and its printed answers are written down. */

export interface Source {
  readonly title: string;
  readonly edition: string;
  readonly where: string;
}

/** A figure that the publication got wrong, the right one in the same unit, and what went wrong. */
export interface Misprint {
  readonly printed: string;
  readonly recomputed: string;
  readonly why: string;
}

/** Digits as printed, with unit: `42.299 mA`. */
export type Figure = string | Misprint;
type Figures = Readonly<Record<string, Figure>>;

/** Two nodes, then the value */
type Valued = readonly [string, string, number];

/** Elements by name. The first node of a source is its plus. */
export interface Elements {
  /** V, and ohm in line with it */
  readonly emfs?: Readonly<Record<string, readonly [string, string, number, number?]>>;
  /** A driven into the first node, whatever hangs there */
  readonly held?: Readonly<Record<string, Valued>>;
  /** ohm */
  readonly resistors?: Readonly<Record<string, Valued>>;
  /** H */
  readonly inductors?: Readonly<Record<string, Valued>>;
  /** F */
  readonly capacitors?: Readonly<Record<string, Valued>>;
  /** ohm, resistance and reactance in series */
  readonly impedances?: Readonly<Record<string, readonly [string, string, number, number]>>;
}

/**
 * Printed figures by element name (for `nodes` by node). Passive elements count current from their first node to
 * their second and power taken; sources count current out of their first node and power given.
 */
export interface Printed {
  /** V against the reference node */
  readonly nodes?: Figures;
  /** V, first node against second; magnitude when alternating */
  readonly volts?: Figures;
  /** A; magnitude when alternating */
  readonly amps?: Figures;
  readonly ampsReal?: Figures;
  readonly ampsImaginary?: Figures;
  /** true power; `given` and `taken` are the sums over all sources and over all others */
  readonly watts?: Figures;
  readonly vars?: Figures;
  readonly voltAmperes?: Figures;
  /** watts over volt-amperes */
  readonly factor?: Figures;
  /** volts over amperes, magnitude */
  readonly ohms?: Figures;
  /** degrees against the reference phase */
  readonly phaseOfVolts?: Figures;
  readonly phaseOfAmps?: Figures;
  /** degrees by which the current lags the voltage */
  readonly lag?: Figures;
}

/** Elements named here replace those of the item. */
export interface Case extends Elements, Printed {
  /** Hz; without it direct current */
  readonly hertz?: number;
}

export interface Item extends Case {
  readonly id: string;
  readonly source: Source;
  readonly reference?: string;
  /** printed for several states of the one circuit, by name */
  readonly cases?: Readonly<Record<string, Case>>;
}
