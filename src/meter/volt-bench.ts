/** What a voltmeter reads in a circuit with some of its supplies on, for many pairs of terminals. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { type Figures, type Island, islandOf, type Situation } from '../electric/island.ts';
import { joinedIn } from '../machine/machine.ts';
import { closedWith, hasPower, pullsIn, voltsIn } from '../machine/steps.ts';
import { type Held, solveLimited } from '../machine/supply-limits.ts';
import { kept } from '../plan/map-entries.ts';
import type { Stance } from './stance.ts';

/** ohm of a multimeter on volts; common practice. */
const METER_OHMS = 1e7;
/** Steps for each thing that moves, after which relays that still move are taken to chatter. */
const STEPS_EACH = 4;

/** V: signed for DC, RMS for AC; kind null where no supply that is on reaches the two. */
export interface Volts {
  readonly volts: number;
  readonly kind: 'dc' | 'ac' | null;
}

interface Standing {
  readonly relays: readonly boolean[];
  readonly alive: ReadonlySet<Source>;
}

interface Settled extends Standing {
  readonly situation: Situation;
  /** false when relays never come to rest */
  readonly still: boolean;
  readonly held: readonly Held[];
  /** what hangs together, worked out when it is first asked for */
  tied: UnionFind | undefined;
}

export class LiveBench {
  private readonly islands: readonly Island[];
  private readonly known = new Map<string, Settled>();
  /** solved islands by what stands how in them: a relay that moves often changes nothing in its own */
  private readonly solutions = new Map<string, Held>();

  /** Sources in `off` stay without power. */
  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
    private readonly off: (source: Source) => boolean,
  ) {
    this.islands = islandsOf(circuit);
  }

  /** undefined where it cannot be told. */
  volts(stance: Stance, a: string, b: string): Volts | undefined {
    return this.read(this.at(stance), this.figures, a, b);
  }

  /** The same position of everything with other figures. */
  withFigures(stance: Stance, figures: Figures): (a: string, b: string) => Volts | undefined {
    const here = this.at(stance);
    const held = this.solved(figures, here.situation);
    return (a, b) => this.read({ ...here, held }, figures, a, b);
  }

  /**
   * Which relays are in; undefined where they never come to rest, and where a supply that is on reaches one of these
   * terminals, at which a meter on ohms tells nothing.
   */
  relaysAt(stance: Stance, ...keys: readonly string[]): readonly boolean[] | undefined {
    const here = this.at(stance);
    if (!here.still) return undefined;
    if (keys.length === 0) return here.relays;
    here.tied ??= this.tied(here.situation);
    const { tied } = here;
    const live = this.circuit.sources.filter((s) => here.situation.alive(s));
    const reached = (key: string) => {
      const net = this.circuit.netOf.get(key);
      return net !== undefined && live.some((s) => s.rails.some((r) => tied.joined(r.net, net)));
    };
    return keys.some(reached) ? undefined : here.relays;
  }

  private at(stance: Stance): Settled {
    const found = this.known.get(stance.key);
    if (found) return found;
    const made =
      stance.key === '/'
        ? this.settle([], this.start())
        : stance.first.length > 0
          ? this.settle(
              stance.moved,
              this.at({ key: `/${stance.first.join()}`, moved: stance.first, first: [] }),
            )
          : this.settle(stance.moved, this.at({ key: '/', moved: [], first: [] }));
    this.known.set(stance.key, made);
    return made;
  }

  private start(): Standing {
    const { circuit } = this;
    return {
      relays: circuit.relays.map(() => false),
      alive: new Set(circuit.sources.filter((s) => s.feed.by === 'always' && !this.off(s))),
    };
  }

  private settle(moved: readonly number[], from: Standing): Settled {
    const { circuit } = this;
    const set = new Set(moved);
    let relays = [...from.relays];
    let alive = from.alive;
    const most = STEPS_EACH * (1 + relays.length + circuit.sources.length);
    for (let step = 0; ; step++) {
      const situation = this.situation(set, relays, alive);
      const held = this.solved(this.figures, situation, this.solutions);
      const here = { relays, alive, situation, held, tied: undefined };
      if (step >= most) return { ...here, still: false };
      const next = this.positions(relays, held, situation);
      const nextAlive = this.powered(alive, held);
      const still = next.every((x, i) => x === relays[i]) && sameSet(alive, nextAlive);
      if (still) return { ...here, still };
      relays = next;
      alive = nextAlive;
    }
  }

  /** Islands without power need no arithmetic: every volt there is nothing. */
  private solved(figures: Figures, situation: Situation, known?: Map<string, Held>): Held[] {
    return this.islands.flatMap((island, k) => {
      if (!island.sources.some((s) => situation.alive(s))) return [];
      if (known === undefined) return solveLimited(this.circuit.plan, island, figures, situation);
      return kept(known, `${k} ${standing(island, situation)}`, () =>
        solveLimited(this.circuit.plan, island, figures, situation),
      );
    });
  }

  private situation(
    moved: ReadonlySet<number>,
    relays: readonly boolean[],
    alive: ReadonlySet<Source>,
  ): Situation {
    const number = new Map(this.circuit.relays.map((r) => [r.part, r.index]));
    return {
      closed: closedWith(moved, relays),
      alive: (s) => alive.has(s),
      pulledIn: (part) => relays[number.get(part) ?? -1] === true,
    };
  }

  private positions(was: readonly boolean[], held: readonly Held[], situation: Situation): boolean[] {
    const joined = joinedIn(this.circuit, situation);
    const volts = voltsIn(held);
    return this.circuit.relays.map((relay) => pullsIn(relay, was[relay.index] === true, volts, joined));
  }

  private powered(alive: ReadonlySet<Source>, held: readonly Held[]): ReadonlySet<Source> {
    const volts = voltsIn(held);
    const isAlive = (s: Source) => alive.has(s);
    return new Set(
      this.circuit.sources.filter((s) => !this.off(s) && hasPower(this.circuit, s, isAlive, volts)),
    );
  }

  /** What wires, closed contacts and elements tie together, diodes whichever way. */
  private tied(situation: Situation): UnionFind {
    const { circuit, figures } = this;
    const sets = new UnionFind(circuit.netCount);
    for (const w of circuit.wires) sets.union(w.a, w.b);
    for (const c of circuit.contacts)
      if (situation.closed(c) || figures.leak(c) !== undefined) sets.union(c.a, c.b);
    for (const p of circuit.passives) sets.union(p.a, p.b);
    for (const d of circuit.diodes) sets.union(d.anode, d.cathode);
    for (const s of circuit.sources) for (const r of s.rails) sets.union(s.rails[0]!.net, r.net);
    return sets;
  }

  private read(here: Settled, figures: Figures, a: string, b: string): Volts | undefined {
    const [x, y] = [this.circuit.netOf.get(a), this.circuit.netOf.get(b)];
    if (!here.still) return undefined;
    if (x !== undefined && x === y) return { volts: 0, kind: null };
    here.tied ??= this.tied(here.situation);
    const { tied } = here;
    if (x === undefined || y === undefined || !tied.joined(x, y)) return this.loose(here, tied, [x, y]);
    const powered = this.circuit.sources.some(
      (s) => here.situation.alive(s) && s.rails.some((r) => tied.joined(r.net, x)),
    );
    if (!powered) return { volts: 0, kind: null };
    const open = here.held.find((h) => h.flows.volts(x, y) !== undefined);
    const held = open ?? this.withMeter(here, figures, x, y);
    return held && readFrom(held, here.situation, x, y);
  }

  /** Mains meets earth beyond its plug, so a loose probe may read it against anything. */
  private loose(here: Settled, tied: UnionFind, nets: readonly (number | undefined)[]): Volts | undefined {
    const live = this.circuit.sources.filter((s) => s.mains && here.situation.alive(s));
    const mains = nets.some(
      (n) => n !== undefined && live.some((s) => s.rails.some((r) => tied.joined(n, r.net))),
    );
    return mains ? undefined : { volts: 0, kind: null };
  }

  private withMeter(here: Settled, figures: Figures, a: number, b: number): Held | undefined {
    const { circuit } = this;
    const meter = { a, b, part: '', what: 'resistor' } as const;
    const island = this.islands.find((i) => i.local[a]! >= 0 && i.local[b]! >= 0);
    if (island === undefined) return undefined;
    const own: Figures = {
      ...figures,
      passive: (p, on) => (p === meter ? { re: METER_OHMS, im: 0 } : figures.passive(p, on)),
    };
    const metered = { ...island, passives: [...island.passives, meter] };
    return solveLimited(circuit.plan, metered, own, here.situation);
  }
}

function islandsOf(circuit: WiredCircuit): Island[] {
  const seen = new Set<number>();
  const islands: Island[] = [];
  for (const s of circuit.sources) {
    if (seen.has(s.rails[0]!.net)) continue;
    const island = islandOf(
      circuit,
      s.rails.map((r) => r.net),
    );
    island.local.forEach((x, net) => {
      if (x >= 0) seen.add(net);
    });
    islands.push(island);
  }
  return islands;
}

/** Everything in an island that its solution hangs on, as text. */
function standing(island: Island, situation: Situation): string {
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

function readFrom(held: Held, situation: Situation, a: number, b: number): Volts | undefined {
  if (held.untold !== undefined) return undefined;
  const v = held.flows.volts(a, b);
  if (v === undefined) return undefined;
  const live = held.flows.island.sources.some((s) => situation.alive(s) && !held.tripped.includes(s));
  if (!live) return { volts: v.re, kind: null };
  return { volts: held.ac ? Math.hypot(v.re, v.im) : v.re, kind: held.ac ? 'ac' : 'dc' };
}

function sameSet<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean {
  return a.size === b.size && [...a].every((x) => b.has(x));
}
