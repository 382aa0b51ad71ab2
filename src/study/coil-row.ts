/** One way of feeding a coil, with the volts there. */
import type { Phasor } from '../electric/network.ts';
import type { Moved } from '../logic/verify.ts';
import type { Standing } from './situations.ts';

/** Volts in a state. */
export interface Found {
  readonly volts: number;
  readonly standing: Standing;
}

/** What has to be solved for a row. */
export interface RowVolts {
  readonly nominal: () => Phasor;
  readonly least: () => Found;
  readonly most: () => Found;
}

export const size = (p: Phasor): number => Math.hypot(p.re, p.im);

/** A value that is worked out once, when it is asked for. */
function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** What a coil gets while some inputs are moved. */
export interface CoilRow {
  /** what is moved, by name; undefined where nothing is, or where the coil's wiring does not depend on it */
  readonly gate: string | undefined;
  readonly moved: Moved;
  /** V; magnitudes for AC, absolute for DC */
  readonly least: number;
  readonly nominal: number;
  readonly most: number;
  readonly nominalPhasor: Phasor;
  /** states in which the least and the most occur */
  readonly leastIn: Standing;
  readonly mostIn: Standing;
  /** false when other inputs were searched instead of all tried, and no bound shows the state found to be the worst */
  readonly proved: boolean;
  /** nominal volts in the state of the least, where they were worked out with it */
  readonly nominalInLeast?: number;
  /** V that no state goes below or above, where a bound was worked out */
  readonly floor?: number;
  readonly ceiling?: number;
}

/** A row of which each corner is solved when it is first asked for. */
export class LazyRow implements CoilRow {
  private readonly volts: RowVolts;

  constructor(
    readonly gate: string | undefined,
    readonly moved: Moved,
    readonly proved: boolean,
    volts: RowVolts,
  ) {
    const { nominal, least, most } = volts;
    this.volts = { nominal: lazily(nominal), least: lazily(least), most: lazily(most) };
  }

  get least(): number {
    return this.volts.least().volts;
  }
  get nominal(): number {
    return size(this.volts.nominal());
  }
  get most(): number {
    return this.volts.most().volts;
  }
  get nominalPhasor(): Phasor {
    return this.volts.nominal();
  }
  get leastIn(): Standing {
    return this.volts.least().standing;
  }
  get mostIn(): Standing {
    return this.volts.most().standing;
  }

  /** The same where it does not matter what is moved. */
  ofAnyGate(): LazyRow {
    return new LazyRow(undefined, this.moved, this.proved, this.volts);
  }

  /** The same with a worse state found for it. */
  withLeast(found: Found): LazyRow {
    return new LazyRow(this.gate, this.moved, this.proved, { ...this.volts, least: () => found });
  }
}
