/** Where every contact, relay and supply stands when certain inputs are moved from rest. */
import type { ContactEdge, Relay, Source } from '../circuit/circuit.ts';
import { isOwn } from '../circuit/positions.ts';
import type { Situation } from '../electric/island.ts';
import { FALSE, type Fn } from '../logic/bdd.ts';
import { inputVariable, type Reach, relayVariable } from '../logic/conduction.ts';
import type { Mode } from '../logic/memory.ts';
import type { Moved, Verified } from '../logic/verify.ts';

/** One settled state of the circuit. */
export interface Standing {
  readonly moved: Moved;
  readonly relays: readonly boolean[];
  readonly alive: readonly boolean[];
  readonly situation: Situation;
}

export class Situations {
  private readonly rest: Standing;
  /** by the list of what is moved, which many coils are asked with */
  private readonly standings = new WeakMap<Moved, { readonly standing: Standing | undefined }>();
  private readonly meantBy = new Map<number, Fn>();
  private readonly relayOf: ReadonlyMap<string, number>;
  private readonly shown: readonly {
    readonly mode: Mode;
    readonly states: Fn;
    readonly relays: readonly Fn[];
  }[];

  constructor(readonly v: Verified) {
    this.relayOf = new Map(v.circuit.relays.filter(isOwn).map((r) => [r.part, r.index]));
    this.shown = [...v.fromRest].map(([mode, states]) => ({
      mode,
      states,
      relays: v.circuit.relays.map((r) => v.settler.at(v.model.bdd.variable(relayVariable(r.index)), mode)),
    }));
    this.rest =
      this.at([]) ??
      this.stand(
        [],
        v.circuit.relays.map(() => false),
      );
  }

  get atRest(): Standing {
    return this.rest;
  }

  /** The state reached straight from rest; undefined where relays find no settled position. */
  at(moved: Moved): Standing | undefined {
    let found = this.standings.get(moved);
    if (!found) {
      found = { standing: this.settle(moved) };
      this.standings.set(moved, found);
    }
    return found.standing;
  }

  private settle(moved: Moved): Standing | undefined {
    const { bdd } = this.v.model;
    const on = this.variables(moved);
    const here = this.shown.find((m) => bdd.evaluate(m.states, on));
    if (!here) return undefined;
    return this.stand(
      moved,
      here.relays.map((f) => bdd.evaluate(f, on)),
    );
  }

  private variables(moved: Moved): (x: number) => boolean {
    const set = new Set(moved.map((i) => inputVariable(this.v.circuit, i)));
    return (x) => set.has(x);
  }

  private stand(moved: Moved, relays: readonly boolean[]): Standing {
    const { model } = this.v;
    const inputs = new Set(moved);
    const value = this.withRelays(moved, relays);
    const alive = model.live.map((f) => model.bdd.evaluate(f, value));
    return {
      moved,
      relays,
      alive,
      situation: {
        closed: (c: ContactEdge) => isClosed(c, inputs, relays),
        alive: (s: Source) => alive[s.index] === true,
        pulledIn: (part: string) => relays[this.relayOf.get(part) ?? -1] === true,
      },
    };
  }

  private withRelays(moved: Moved, relays: readonly boolean[]): (x: number) => boolean {
    const on = this.variables(moved);
    return (x) => (x < relays.length ? relays[x] === true : on(x));
  }

  /** The same state with one relay not yet pulled in; undefined when its coil would then not be fed. */
  beforePullIn(standing: Standing, relay: Relay): Standing | undefined {
    const relays = standing.relays.map((x, k) => x && k !== relay.index);
    const on = this.withRelays(standing.moved, relays);
    if (!this.v.model.bdd.evaluate(this.meant(relay), on)) return undefined;
    return this.stand(standing.moved, relays);
  }

  /** Input states, reached straight from rest, in which a relay's coil is fed while it is still out. */
  feeding(relay: Relay): Fn {
    const { bdd } = this.v.model;
    return this.settled(bdd.compose(this.meant(relay), new Map([[relayVariable(relay.index), FALSE]])));
  }

  /** The coil sees its pull-in; where it never does, both its ends reach the poles of one live source. */
  private meant(relay: Relay): Fn {
    let f = this.meantBy.get(relay.index);
    if (f === undefined) {
      const pull = this.v.model.pull[relay.index]!;
      f = pull === FALSE ? connected(this.v, relay) : pull;
      this.meantBy.set(relay.index, f);
    }
    return f;
  }

  /** A function of inputs and relays as one of inputs alone, in the states reached straight from rest. */
  settled(f: Fn): Fn {
    const { bdd } = this.v.model;
    return bdd.any(this.shown.map((m) => bdd.and(this.v.settler.at(f, m.mode), m.states)));
  }
}

/** Whether a contact is closed with these inputs moved and these relays in. */
export function isClosed(c: ContactEdge, inputs: ReadonlySet<number>, relays: readonly boolean[]): boolean {
  const { when } = c;
  if (when.by === 'always') return true;
  if (when.by === 'input') return inputs.has(when.input) === when.value;
  return relays[when.relay] === when.value;
}

/** Both ends of a coil reach the poles of one live source, through contacts and diodes the right way round. */
function connected(v: Verified, relay: Relay): Fn {
  const { bdd, conduction, live, railReach } = v.model;
  const sense = relay.senses[0];
  if (sense?.by !== 'volts') return FALSE;
  const either = (out: Reach, back: Reach, bothWays: boolean): Fn => {
    const way = (x: number, y: number) => bdd.and(out.get(x) ?? FALSE, back.get(y) ?? FALSE);
    return bothWays ? bdd.or(way(sense.a, sense.b), way(sense.b, sense.a)) : way(sense.a, sense.b);
  };
  return bdd.any(
    v.circuit.sources.map((s) => {
      if (s.kind === 'dc' && !s.mains) {
        const out = conduction.throughDiodes(s.rails[0]!.net, true).at(-1)!;
        const back = conduction.throughDiodes(s.rails[1]!.net, false).at(-1)!;
        return bdd.and(live[s.index]!, either(out, back, !sense.polarised));
      }
      // Of three poles any two may feed it.
      const poles = railReach[s.index]!;
      const pairs = poles.flatMap((p, i) => poles.slice(i + 1).map((q) => either(p, q, true)));
      return bdd.and(live[s.index]!, bdd.any(pairs));
    }),
  );
}
