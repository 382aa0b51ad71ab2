/** What a dead circuit would read with a core put elsewhere or two conductors touching, from the right circuit as it is solved. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Figures } from '../electric/island.ts';
import type { Resistor } from '../electric/resistances.ts';
import type { Ohmmeter } from '../machine/ohmmeter.ts';
import { kept } from '../plan/map-entries.ts';
import type { Fault } from './fault.ts';
import { touch } from './fault-wires.ts';
import { type Measure, wrongOhms } from './measure.ts';

/** Share by which what is foreseen may be off, far above rounding. */
const OFF = 0.005;

/** Resistances that a fault takes out and puts in. */
interface Rewired {
  readonly out: readonly Resistor[];
  readonly into: readonly Resistor[];
}

export class Foreseen {
  private readonly wires = new Map<string, Resistor>();
  private readonly known = new Map<Fault, Rewired | null>();

  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
    private readonly dead: Ohmmeter,
  ) {
    for (const w of circuit.wires)
      this.wires.set(`${w.run} ${w.core}`, { a: w.a, b: w.b, ohms: figures.wire(w) });
  }

  /** True where the fault surely leaves a reading in ohms, with everything dead, within what it ought to be. */
  leaves(m: Measure, fault: Fault): boolean {
    const rewired = kept(this.known, fault, () => this.rewired(fault) ?? null);
    if (rewired === null) return false;
    const at = { moved: m.stance.moved, relays: undefined, clipped: m.clipped };
    const read = this.dead.changed(at, m.pair.a, m.pair.b, rewired.out, rewired.into);
    if (read === undefined) return false;
    return [1 - OFF, 1 + OFF].every(
      (off) => wrongOhms(m, { least: read.least * off, most: read.most * off }) === undefined,
    );
  }

  /** Undefined where a fault is something else. */
  private rewired({ moved, change, plan }: Fault): Rewired | undefined {
    if (moved !== undefined) {
      const out: Resistor[] = [];
      const into: Resistor[] = [];
      for (const { run, core, ends } of moved) {
        const was = this.wires.get(`${run} ${core}`);
        if (was === undefined) return undefined;
        out.push(was);
        const is = ends && this.between(ends, was.ohms);
        if (is) into.push(is);
      }
      return { out, into };
    }
    if (plan !== undefined || change === undefined || change.parted.length > 0) return undefined;
    const into = change.joined.flatMap((ends) => this.between(ends, 0) ?? []);
    return { out: [], into: into.map(({ a, b }) => ({ a, b, ohms: this.figures.contact(touch(a, b)) })) };
  }

  private between([a, b]: readonly [string, string], ohms: number): Resistor | undefined {
    const [x, y] = [this.circuit.netOf.get(a), this.circuit.netOf.get(b)];
    return x === undefined || y === undefined ? undefined : { a: x, b: y, ohms };
  }
}
