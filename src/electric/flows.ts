import type { ContactEdge, Passive, Source } from '../circuit/circuit.ts';
import type { Wire } from '../circuit/nets.ts';
import type { Assembled, Island } from './island.ts';
import type { Phasor, Solution } from './network.ts';

/** Volts and currents of one solved island, by the circuit's own nets and parts. */
export class Flows {
  constructor(
    readonly island: Island,
    private readonly made: Assembled,
    readonly solution: Solution,
  ) {}

  /** V(a) - V(b); undefined where nothing ties the two together. */
  volts(a: number, b: number): Phasor | undefined {
    const [x, y] = [this.island.local(a), this.island.local(b)];
    const s = this.solution;
    if (x < 0 || y < 0 || s.component[x] !== s.component[y]) return undefined;
    return { re: s.re[x]! - s.re[y]!, im: s.im[x]! - s.im[y]! };
  }

  /** A from `a` to `b` of a wire, closed contact or element; none where it is open or of no resistance. */
  amps(of: Wire | ContactEdge | Passive): Phasor | undefined {
    const index = this.made.branchOf.get(of);
    if (index === undefined) return undefined;
    const b = this.made.network.branches[index]!;
    const size = b.re * b.re + b.im * b.im;
    if (size === 0) return undefined;
    const s = this.solution;
    const re = s.re[b.a]! - s.re[b.b]!;
    const im = s.im[b.a]! - s.im[b.b]!;
    return { re: (re * b.re + im * b.im) / size, im: (im * b.re - re * b.im) / size };
  }

  /** A that a source gives at its first rail. */
  sourceAmps(source: Source): Phasor {
    const all = this.otherRails(source);
    return { re: all.reduce((sum, x) => sum + x.re, 0), im: all.reduce((sum, x) => sum + x.im, 0) };
  }

  /** A of the rail of a source that carries most: two lines of three may be shorted and the first know nothing of it. */
  mostAmps(source: Source): number {
    const all = [this.sourceAmps(source), ...this.otherRails(source)];
    return Math.max(...all.map((i) => Math.hypot(i.re, i.im)));
  }

  private otherRails(source: Source): Phasor[] {
    return (this.made.emfsOf.get(source) ?? []).map((i) => this.solution.emfAmps[i]!);
  }
}
