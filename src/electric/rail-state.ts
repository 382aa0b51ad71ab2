/** The rails with some of what switches or draws settled: ohm and volts of the ports that are still asked for. */
import type { Across } from './port-matrix.ts';

/** The rails as a matrix of all ports; `z` row by row. */
export interface Rails {
  readonly z: Float64Array;
  readonly v: Float64Array;
}

/** A conductance put across a port: a change of rank one (Sherman and Morrison 1950), kept as such. */
interface Change {
  /** ohm between that port and every other, before the change */
  readonly column: Float64Array;
  /** siemens by which products of the column lower the ohms */
  readonly factor: number;
  /** A that the port takes */
  readonly amps: number;
}

/**
 * Few ports are asked for again and again, and the others seldom, such as that of a load which is taken off: so the few stand as a
 * matrix, and the others follow from the changes on the way here.
 */
export class RailState {
  private readonly place: Int32Array;

  private constructor(
    private readonly rails: Rails,
    private readonly changes: readonly Change[],
    /** ports asked for, in the order of the matrix */
    private readonly ports: readonly number[],
    readonly z: Float64Array,
    readonly v: Float64Array,
  ) {
    this.place = new Int32Array(rails.v.length).fill(-1);
    for (const [i, port] of ports.entries()) this.place[port] = i;
  }

  static of(rails: Rails, ports: readonly number[]): RailState {
    const [n, m] = [rails.v.length, ports.length];
    const z = new Float64Array(m * m);
    for (let i = 0; i < m; i++)
      for (let k = 0; k < m; k++) z[i * m + k] = rails.z[ports[i]! * n + ports[k]!]!;
    return new RailState(
      rails,
      [],
      ports,
      z,
      Float64Array.from(ports, (port) => rails.v[port]!),
    );
  }

  /** Row of a port in `z` and `v`, below zero where it is not asked for. */
  row(port: number): number {
    return this.place[port]!;
  }

  /** V across any port. */
  volts(port: number): number {
    let volts = this.rails.v[port]!;
    for (const { column, amps } of this.changes) volts -= column[port]! * amps;
    return volts;
  }

  /** ohm: V at one port, any, for one ampere out of another. */
  ohms(port: number, other: number): number {
    let ohms = this.rails.z[port * this.rails.v.length + other]!;
    for (const { column, factor } of this.changes) ohms -= factor * column[port]! * column[other]!;
    return ohms;
  }

  /** With more put across ports, one after the other, and only some of the ports that were asked for so far. */
  with(more: readonly Across[], ports: readonly number[]): RailState {
    const all = [...this.changes];
    for (const x of more) {
      const change = this.changeBy(all, x);
      if (change) all.push(change);
    }
    const m = ports.length;
    const rows = ports.map((port) => this.place[port]!);
    const z = new Float64Array(m * m);
    const v = new Float64Array(m);
    const width = this.ports.length;
    for (let i = 0; i < m; i++) {
      v[i] = this.v[rows[i]!]!;
      const from = rows[i]! * width;
      for (let k = 0; k < m; k++) z[i * m + k] = this.z[from + rows[k]!]!;
    }
    const column = new Float64Array(m);
    for (let c = this.changes.length; c < all.length; c++) {
      const change = all[c]!;
      for (let i = 0; i < m; i++) column[i] = change.column[ports[i]!]!;
      for (let i = 0; i < m; i++) {
        v[i]! -= column[i]! * change.amps;
        const share = column[i]! * change.factor;
        if (share === 0) continue;
        const row = i * m;
        for (let k = 0; k < m; k++) z[row + k]! -= share * column[k]!;
      }
    }
    return new RailState(this.rails, all, ports, z, v);
  }

  private changeBy(before: readonly Change[], { port, y, emf }: Across): Change | undefined {
    if (y.re === 0) return undefined;
    const n = this.rails.v.length;
    const column = this.rails.z.slice(port * n, port * n + n);
    let volts = this.rails.v[port]!;
    for (const change of before) {
      volts -= change.column[port]! * change.amps;
      const share = change.factor * change.column[port]!;
      if (share === 0) continue;
      for (let i = 0; i < n; i++) column[i]! -= share * change.column[i]!;
    }
    const factor = y.re / (1 + column[port]! * y.re);
    return { column, factor, amps: (volts - emf) * factor };
  }
}
