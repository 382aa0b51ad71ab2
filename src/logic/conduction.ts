import type { Circuit, Condition, DiodeEdge, Passive, Source } from '../circuit/circuit.ts';
import { spend } from '../circuit/effort.ts';
import { push } from '../plan/map-entries.ts';
import { type Bdd, FALSE, type Fn, TRUE } from './bdd.ts';
import { reduceContacts } from './reduce.ts';

/** Which nets are reached, as functions of the variables. */
export type Reach = ReadonlyMap<number, Fn>;

/** More diodes in line than this are taken as no path. */
const MOST_DIODES = 8;

/** Variables: relays first, then inputs in the order of the plan. */
export function relayVariable(relay: number): number {
  return relay;
}
export function inputVariable(circuit: Circuit, input: number): number {
  return circuit.relays.length + input;
}

function conditionFn(circuit: Circuit, bdd: Bdd, when: Condition): Fn {
  if (when.by === 'always') return TRUE;
  const v = bdd.variable(
    when.by === 'relay' ? relayVariable(when.relay) : inputVariable(circuit, when.input),
  );
  return when.value ? v : bdd.not(v);
}

const NO_EDGES: ReadonlyMap<number, Fn> = new Map();

/** What joins what: the contact network reduced to the nets where elements attach, and walks over it. */
export class Conduction {
  /** undirected contact edges between ports */
  readonly edges: ReadonlyMap<number, ReadonlyMap<number, Fn>>;
  private readonly forwardDiodes = new Map<number, { to: number; index: number }[]>();
  private readonly backwardDiodes = new Map<number, { to: number; index: number }[]>();

  private steps: ReadonlyMap<number, readonly Step[]> | undefined;

  constructor(
    readonly circuit: Circuit,
    readonly bdd: Bdd,
    extraPorts: readonly number[] = [],
  ) {
    const contacts = circuit.contacts
      .filter(({ a, b }) => a !== b)
      .map(({ a, b, when }) => ({ a, b, when: conditionFn(circuit, bdd, when) }));
    this.edges = reduceContacts(bdd, contacts, portsOf(circuit, extraPorts));
    circuit.diodes.forEach((d, index) => {
      if (d.load) return;
      push(this.forwardDiodes, d.anode, { to: d.cathode, index });
      push(this.backwardDiodes, d.cathode, { to: d.anode, index });
    });
  }

  /** Nets joined to the start by contacts alone. */
  joined(start: number): Reach {
    return this.spread(new Map([[start, TRUE]]));
  }

  private spread(start: ReadonlyMap<number, Fn>): Map<number, Fn> {
    const reach = new Map(start);
    const queue = [...start.keys()];
    for (let net = queue.pop(); net !== undefined; net = queue.pop()) {
      const here = reach.get(net)!;
      const edges = this.edges.get(net) ?? NO_EDGES;
      spend(1 + edges.size);
      for (const [to, when] of edges) {
        const before = reach.get(to) ?? FALSE;
        const after = this.bdd.or(before, this.bdd.and(here, when));
        if (after !== before) {
          reach.set(to, after);
          queue.push(to);
        }
      }
    }
    return reach;
  }

  /**
   * Nets reached from the start with current flowing away from it (`forward`) or towards it, by the least number of
   * diodes passed: element n holds what is reached through at most n of them. Indicators are not passed.
   */
  throughDiodes(start: number, forward: boolean): Reach[] {
    const diodes = forward ? this.forwardDiodes : this.backwardDiodes;
    const levels: Reach[] = [this.joined(start)];
    for (let n = 1; n <= MOST_DIODES; n++) {
      const last = levels[n - 1]!;
      const next = new Map(last);
      for (const [net, f] of last)
        for (const { to } of diodes.get(net) ?? []) next.set(to, this.bdd.or(next.get(to) ?? FALSE, f));
      const spread = this.spread(next);
      if (same(spread, last)) break;
      levels.push(spread);
    }
    return levels;
  }

  /**
   * Nets that current from a pole of a source could reach through anything at all: contacts, diodes the right way, coils,
   * lamps, loads and other sources, but by way of no net that is joined to the pole in `past`. `except` is left out. An
   * upper bound, used to find the states that need arithmetic.
   */
  weakly(
    start: number,
    forward: boolean,
    except: (element: Passive | DiodeEdge) => boolean,
    own: Source,
    past: Reach,
  ): Reach {
    const { bdd } = this;
    this.steps ??= stepsPast(this.circuit);
    const { steps } = this;
    const reach = new Map<number, Fn>();
    const queue: number[] = [];
    const raise = (to: number, f: Fn) => {
      const before = reach.get(to) ?? FALSE;
      const after = bdd.or(before, bdd.diff(f, past.get(to) ?? FALSE));
      if (after !== before) {
        reach.set(to, after);
        queue.push(to);
      }
    };
    raise(start, TRUE);
    for (let net = queue.pop(); net !== undefined; net = queue.pop()) {
      const here = reach.get(net)!;
      const edges = this.edges.get(net) ?? NO_EDGES;
      const across = steps.get(net) ?? [];
      spend(1 + edges.size + across.length);
      for (const [to, when] of edges) raise(to, bdd.and(here, when));
      for (const { to, way, element, source } of across) {
        if (source === own || (element !== undefined && except(element))) continue;
        if (way === 'both' || own.kind === 'ac' || (way === 'forward') === forward) raise(to, here);
      }
    }
    return reach;
  }
}

/** A step that no contact decides: through an element or from rail to rail of a source. */
interface Step {
  readonly to: number;
  /** with the current that a diode lets through or against it */
  readonly way: 'both' | 'forward' | 'backward';
  readonly element?: Passive | DiodeEdge;
  readonly source?: Source;
}

/** All of them, by the net that they lead from. */
function stepsPast(circuit: Circuit): ReadonlyMap<number, readonly Step[]> {
  const steps = new Map<number, Step[]>();
  const link = (a: number, b: number, by: Pick<Step, 'element' | 'source'>) => {
    push(steps, a, { to: b, way: 'both', ...by });
    push(steps, b, { to: a, way: 'both', ...by });
  };
  for (const p of circuit.passives) link(p.a, p.b, { element: p });
  for (const d of circuit.diodes) {
    push(steps, d.anode, { to: d.cathode, way: 'forward', element: d });
    push(steps, d.cathode, { to: d.anode, way: 'backward', element: d });
  }
  for (const s of circuit.sources)
    for (const r of s.rails.slice(1)) link(s.rails[0]!.net, r.net, { source: s });
  return steps;
}

function portsOf(circuit: Circuit, extra: readonly number[]): Set<number> {
  const ports = new Set(extra);
  for (const d of circuit.diodes) ports.add(d.anode).add(d.cathode);
  for (const p of circuit.passives) ports.add(p.a).add(p.b);
  for (const s of circuit.sources) {
    for (const r of s.rails) ports.add(r.net);
    if (s.feed.by === 'nets') ports.add(s.feed.a).add(s.feed.b);
  }
  for (const r of circuit.relays) for (const sense of r.senses) ports.add(sense.a).add(sense.b);
  for (const c of circuit.consumers) for (const net of c.nets.values()) ports.add(net);
  return ports;
}

function same(a: Reach, b: Reach): boolean {
  if (a.size !== b.size) return false;
  for (const [net, f] of a) if (b.get(net) !== f) return false;
  return true;
}
