/** One way of feeding a coil, with the volts there; each is solved when it is first asked for. */
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

export class CoilRow {
  private readonly volts: RowVolts;

  constructor(
    /** what is moved, by name; undefined where nothing is, or where the coil's wiring does not depend on it */
    readonly gate: string | undefined,
    readonly moved: Moved,
    /** false when other inputs were searched instead of all tried */
    readonly proved: boolean,
    volts: RowVolts,
  ) {
    const { nominal, least, most } = volts;
    this.volts = { nominal: lazily(nominal), least: lazily(least), most: lazily(most) };
  }

  /** V; magnitude for AC, absolute for DC */
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
  /** states in which the least and the most occur */
  get leastIn(): Standing {
    return this.volts.least().standing;
  }
  get mostIn(): Standing {
    return this.volts.most().standing;
  }

  /** The same where it does not matter what is moved. */
  ofAnyGate(): CoilRow {
    return new CoilRow(undefined, this.moved, this.proved, this.volts);
  }

  /** The same with a worse state found for it. */
  withLeast(found: Found): CoilRow {
    return new CoilRow(this.gate, this.moved, this.proved, { ...this.volts, least: () => found });
  }
}
