/** A circuit that is cut again and again to what a few terminals see of it. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { Relay } from '../../circuit/circuit.ts';
import type { Figures } from '../../electric/island.ts';
import { Cut, type NearCircuit, type Reads, type Whole } from './near-cut.ts';

/** Figures for the smaller circuit. */
export function nearFigures(figures: Figures, { inLine }: Pick<NearCircuit, 'inLine'>): Figures {
  return {
    ...figures,
    wire: (w) => inLine.get(w)?.reduce((sum, one) => sum + figures.wire(one), 0) ?? figures.wire(w),
  };
}

const KINDS = ['wires', 'contacts', 'passives', 'diodes'] as const;

/** Whatever lies between two nets, numbered through: wires, contacts, passives, diodes. */
export class Surroundings {
  private readonly whole: Whole;
  private readonly poles: ReadonlySet<number>;
  private readonly coreAt = new Map<string, number>();

  constructor(
    readonly circuit: WiredCircuit,
    figures: Figures,
  ) {
    const pairs = [
      ...circuit.wires,
      ...circuit.contacts,
      ...circuit.passives,
      ...circuit.diodes.map((d) => ({ a: d.anode, b: d.cathode })),
    ];
    let count = 0;
    const starts = [
      ...KINDS.map((kind) => {
        const start = count;
        count += circuit[kind].length;
        return start;
      }),
      count,
    ];
    const from = Int32Array.from(pairs, (p) => p.a);
    const to = Int32Array.from(pairs, (p) => p.b);
    const first = new Int32Array(circuit.netCount + 1);
    for (const { a, b } of pairs) {
      first[a + 1]!++;
      first[b + 1]!++;
    }
    for (let n = 0; n < circuit.netCount; n++) first[n + 1]! += first[n]!;
    const next = first.slice();
    const at = new Int32Array(2 * count);
    pairs.forEach(({ a, b }, i) => {
      at[next[a]!++] = i;
      at[next[b]!++] = i;
    });
    const leaks = circuit.contacts.map((c) => figures.leak(c) !== undefined);
    const fixed = fixedNets(circuit);
    this.poles = new Set(circuit.sources.flatMap((s) => s.rails.map((r) => r.net)));
    for (const [i, w] of circuit.wires.entries()) this.coreAt.set(`${w.run} ${w.core}`, i);
    this.whole = { circuit, from, to, starts, at, first, fixed, leaks };
  }

  /** The links that some cores of the plan are. */
  cores(of: readonly { readonly run: number; readonly core: number }[]): number[] {
    return of.flatMap(({ run, core }) => this.coreAt.get(`${run} ${core}`) ?? []);
  }

  /** The nets of some terminals, of those that have one. */
  nets(keys: readonly string[]): number[] {
    return keys.flatMap((key) => this.circuit.netOf.get(key) ?? []);
  }

  /** Whether a pole of a supply or plug is on one of these nets. */
  isAtPole(nets: readonly number[]): boolean {
    return nets.some((n) => this.poles.has(n));
  }

  /** What these terminals see while no inputs but these are moved. */
  near(keys: Iterable<string>, inputs: ReadonlySet<number>): NearCircuit {
    return new Cut(this.whole, keys, inputs).done();
  }

  /**
   * Tells whether a change could be read at these probes while no inputs but these are moved: not where all that it is about
   * hangs on one and the same net. `dead`: with every supply off and every relay out.
   */
  reads(keys: Iterable<string>, inputs: ReadonlySet<number>, dead: boolean): Reads {
    return new Cut(this.whole, keys, inputs, dead).reads();
  }
}

/** Poles, what supplies hang on, what dry triggers and bare inputs see. */
function fixedNets({ sources, relays, passives, consumers }: WiredCircuit): number[] {
  const fed = new Set(sources.map((s) => (s.feed.by === 'part' ? s.feed.part : undefined)));
  const across = new Set(passives.map((p) => `${p.part} ${p.a} ${p.b}`));
  const bare = (r: Relay) =>
    r.senses.filter((s) => s.by === 'joined' || !across.has(`${r.part} ${s.a} ${s.b}`));
  return [
    ...sources.flatMap((s) => [
      ...s.rails.map((r) => r.net),
      ...(s.feed.by === 'nets' ? [s.feed.a, s.feed.b] : []),
    ]),
    ...relays.flatMap((r) => bare(r).flatMap((s) => [s.a, s.b])),
    ...consumers.flatMap((c) => (fed.has(c.part) ? [...c.nets.values()] : [])),
  ];
}
