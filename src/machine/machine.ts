/**
 * The plan under power in a named position, as at the machine: what moves, what runs, what a meter reads. Nothing here
 * says what is right or wrong, except what the plan's own intents ask for.
 */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Relay, Source } from '../circuit/circuit.ts';
import { BOOLEANS, nextPosition, type Sensing } from '../circuit/positions.ts';
import type { Figures, Island, Situation } from '../electric/island.ts';
import { kept } from '../plan/map-entries.ts';
import { fedByVolts, sensing, voltsIn } from '../study/seen-volts.ts';
import { sourceIslands } from '../study/source-islands.ts';
import { type SolvedIsland, solveLimited } from '../study/supply-limits.ts';
import { joinedByMetal } from './joined-nets.ts';
import { closedWith, hasPower, type Standing, settle } from './settle.ts';

/** Where everything stands. */
export interface MachineState extends Standing {
  readonly machine: Machine;
  readonly circuit: WiredCircuit;
  readonly figures: Figures;
  /** numbers of the inputs away from rest */
  readonly moved: ReadonlySet<number>;
  readonly situation: Situation;
  /** false when relays never came to rest */
  readonly settled: boolean;
}

/** A circuit to be put under power and moved step by step. Timers are taken to have run out. */
export class Machine {
  private readonly islands: readonly Island[];
  /** place of each relay and source in its list, by part: a circuit may lack a source that its plan has */
  private readonly relayPlace: ReadonlyMap<string, number>;
  private readonly sourcePlace: ReadonlyMap<string, number>;
  /** solved islands by what stands how in them: a relay that moves often changes nothing in its own */
  private readonly solutions = new Map<string, SolvedIsland>();

  /** Sources in `off` stay without power. */
  constructor(
    readonly circuit: WiredCircuit,
    readonly figures: Figures,
    private readonly off: (source: Source) => boolean = () => false,
  ) {
    this.islands = sourceIslands(circuit);
    this.relayPlace = placesOf(circuit.relays);
    this.sourcePlace = placesOf(circuit.sources);
  }

  /** Where it comes to rest when power comes with these inputs away from theirs. */
  start(moved: readonly number[]): MachineState {
    const { relays, sources } = this.circuit;
    return this.moveTo(moved, {
      relays: relays.map(() => false),
      alive: sources.map((s) => s.feed.by === 'always' && !this.off(s)),
    });
  }

  /** Where it comes to rest with these inputs away from theirs, going on from where it stood. */
  moveTo(moved: readonly number[], from: Standing): MachineState {
    const inputs = new Set(moved);
    const { settled, ...standing } = settle(from, (now) => this.look(inputs, now));
    return this.state(inputs, standing, settled);
  }

  /** The next moment of a state in which things move. */
  after({ moved, relays, alive }: MachineState): MachineState {
    return this.state(moved, this.look(new Set(moved), { relays, alive }), false);
  }

  /** A standing as a state, whether things would stay so or not. */
  state(moved: ReadonlySet<number>, { relays, alive }: Standing, settled: boolean): MachineState {
    const { circuit, figures } = this;
    const situation = this.situation(moved, relays, alive);
    return { machine: this, circuit, figures, moved, relays, alive, situation, settled };
  }

  /** The islands that have power, solved; in the others every volt is nothing, which takes no arithmetic. */
  solved(situation: Situation): SolvedIsland[] {
    return this.powered(situation).map(([island, k]) =>
      kept(this.solutions, `${k} ${standingOf(island, situation)}`, () =>
        solveLimited(this.circuit.plan, island, this.figures, situation),
      ),
    );
  }

  /** The same with other figures, for relays and sources that stay as they stand. */
  solvedWith(figures: Figures, situation: Situation): SolvedIsland[] {
    return this.powered(situation).map(([island]) =>
      solveLimited(this.circuit.plan, island, figures, situation),
    );
  }

  private powered(situation: Situation): (readonly [Island, number])[] {
    return this.islands
      .map((island, k) => [island, k] as const)
      .filter(([island]) => island.sources.some((s) => situation.alive(s)));
  }

  private look(moved: ReadonlySet<number>, { relays, alive }: Standing): Standing {
    const { circuit } = this;
    const situation = this.situation(moved, relays, alive);
    const volts = voltsIn(this.solved(situation));
    const joined = joinedByMetal(circuit, situation);
    const fed = fedByVolts(circuit.sources, volts);
    return {
      relays: this.next(relays, (r) => sensing(r, volts, joined)),
      alive: circuit.sources.map((s) => !this.off(s) && hasPower(circuit, s, situation.alive, fed)),
    };
  }

  private next(relays: readonly boolean[], see: (r: Relay) => Sensing<boolean>): boolean[] {
    const own = this.circuit.relays;
    const seen = own.map(see);
    return own.map((r) =>
      nextPosition(
        BOOLEANS,
        r,
        (k) => seen[k]!,
        (k) => relays[k] === true,
      ),
    );
  }

  private situation(
    moved: ReadonlySet<number>,
    relays: readonly boolean[],
    alive: readonly boolean[],
  ): Situation {
    return {
      closed: closedWith(moved, relays),
      alive: (s) => alive[this.sourcePlace.get(s.part) ?? -1] === true,
      pulledIn: (part) => relays[this.relayPlace.get(part) ?? -1] === true,
    };
  }
}

/** A relay's pieces come after it under the same name. */
function placesOf(list: readonly { readonly part: string }[]): Map<string, number> {
  const places = new Map<string, number>();
  for (const [i, { part }] of list.entries()) if (!places.has(part)) places.set(part, i);
  return places;
}

/** Everything in an island that its solution hangs on, as text. */
function standingOf(island: Island, situation: Situation): string {
  const bits = (list: readonly boolean[]) => list.map(Number).join('');
  return [
    bits(island.contacts.map((c) => situation.closed(c))),
    bits(island.sources.map((s) => situation.alive(s))),
    // A DC coil is the same coil in and out.
    island.sources.some((s) => s.kind === 'ac')
      ? bits(island.passives.map((p) => situation.pulledIn(p.part)))
      : '',
  ].join(' ');
}
