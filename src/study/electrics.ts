/** The electrical side of a study: the circuit with its cores apart, cut into islands, and solvers for them. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Relay, Source } from '../circuit/circuit.ts';
import { Flows } from '../electric/flows.ts';
import { assemble, type Figures, type Island, islandOf } from '../electric/island.ts';
import type { Phasor } from '../electric/network.ts';
import { PortSolver } from '../electric/ports.ts';
import { solveNetwork } from '../electric/solve.ts';
import type { Verified } from '../logic/verify.ts';
import { kept } from '../plan/map-entries.ts';
import type { Basis } from './basis.ts';
import { figuresFor } from './corner-figures.ts';
import type { Corner } from './corners.ts';
import { Situations, type Standing } from './situations.ts';

/** The electrical side of a study: the circuit with its cores apart, and solvers by island and corner. */
export class Electrics {
  readonly circuit: WiredCircuit;
  readonly situations: Situations;
  private readonly islands: { readonly island: Island; readonly relays: readonly Relay[] }[] = [];
  private readonly solvers = new Map<string, PortSolver>();
  private readonly fed = new Map<number, Island>();
  private readonly solved = new WeakMap<Island, Map<Corner, WeakMap<Standing, Flows>>>();

  constructor(
    readonly study: Basis,
    readonly v: Verified,
  ) {
    this.circuit = study.wired;
    this.situations = new Situations(v);
    const left = new Set(this.circuit.relays.filter((r) => coilNets(r) !== undefined));
    for (const r of left) {
      const whole = islandOf(this.circuit, coilNets(r)!);
      const relays = [...left].filter((x) => whole.local(coilNets(x)![0]) >= 0);
      for (const x of relays) left.delete(x);
      const island = islandOf(this.circuit, coilNets(r)!, true);
      this.islands.push({ island, relays });
    }
  }

  islandOf(relay: Relay): Island | undefined {
    return this.islands.find((i) => i.relays.includes(this.circuit.relays[relay.index]!))?.island;
  }

  /** V at the relay's coil in one state; magnitude and phase against the first pole of the supply. */
  coilVolts(relay: Relay, standing: Standing, corner: Corner): Phasor {
    const at = this.islands.findIndex((i) => i.relays.includes(this.circuit.relays[relay.index]!));
    const { island, relays } = this.islands[at]!;
    const key = `${at}/${corner}`;
    let solver = this.solvers.get(key);
    if (!solver) {
      solver = new PortSolver(
        island,
        figuresFor(this.study.plan, corner),
        this.situations.atRest.situation,
        relays.map((r) => coilNets(r)!),
      );
      this.solvers.set(key, solver);
    }
    const { atRest } = this.situations;
    const names = standing.moved.map((i) => `input ${i}`);
    standing.relays.forEach((x, k) => {
      if (x !== atRest.relays[k]) names.push(`relay ${k}`);
    });
    const same = island.sources.every((s) => standing.alive[s.index] === atRest.alive[s.index]);
    return solver.volts(standing.situation, names, same)[relays.indexOf(this.circuit.relays[relay.index]!)]!;
  }

  /** V at the relay's coil in one state with figures of the caller's own. */
  coilVoltsWith(relay: Relay, standing: Standing, figures: Figures): number {
    const island = this.islandOf(relay)!;
    const s = solveNetwork(assemble(island, figures, standing.situation).network);
    const [a, b] = coilNets(this.circuit.relays[relay.index]!)!.map(island.local);
    if (a! < 0 || b! < 0 || s.component[a!] !== s.component[b!]) return 0;
    return Math.hypot(s.re[a!]! - s.re[b!]!, s.im[a!]! - s.im[b!]!);
  }

  /** All that hangs together with a source; one island for all the sources in it. */
  islandRound(source: Source): Island {
    const known = this.fed.get(source.index);
    if (known !== undefined) return known;
    const island = islandOf(
      this.circuit,
      source.rails.map((r) => r.net),
      true,
    );
    this.fed.set(source.index, island);
    for (const s of island.sources)
      if (s.rails.every((r) => island.local(r.net) >= 0)) this.fed.set(s.index, island);
    return island;
  }

  /** Every current of the island round a source, in one state; kept where another source may ask for the same. */
  solveSource(source: Source, standing: Standing, corner: Corner): Flows {
    const island = this.islandRound(source);
    const solve = () => {
      const made = assemble(island, figuresFor(this.study.plan, corner), standing.situation);
      return new Flows(island, made, solveNetwork(made.network));
    };
    if (island.sources.length < 2) return solve();
    const solved = kept(this.solved, island, () => new Map<Corner, WeakMap<Standing, Flows>>());
    return kept(
      kept(solved, corner, () => new WeakMap()),
      standing,
      solve,
    );
  }
}

/** The two nets of a relay's coil (or a board's supply); undefined where it has none of its own. */
export function coilNets(relay: Relay): readonly [number, number] | undefined {
  const sense = relay.senses[0];
  return sense?.by === 'volts' && sense.a !== sense.b ? [sense.a, sense.b] : undefined;
}
