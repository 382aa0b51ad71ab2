import type { ContactEdge } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { push } from '../plan/map-entries.ts';
import { driven, type Elimination, substitute } from './eliminate.ts';
import { SelectedInverse } from './inverse.ts';
import { assemble, type Figures, type Island, type Situation } from './island.ts';
import type { Phasor } from './network.ts';
import { Frame, type Potentials, solveNetwork } from './solve.ts';

/**
 * ohm across every open contact of the base network. So much that its admittance comes out as exactly zero: the contact
 * keeps its place in the elimination and passes nothing, however the sections it parts hang together.
 */
const OPEN_OHMS = Number.MAX_VALUE;
/** Above so many diodes each situation is solved on its own. */
const MOST_DIODES = 8;
/** Movers that a situation may have away from rest for another base to be worth looking for. */
const MOST_MOVED = 4;
/** Situations that want another base before it is made, and how many are kept. */
const WANTED = 3;
const MOST_BASES = 8;

export type Port = readonly [number, number];

/**
 * Volts at a few pairs of nets in many situations. The island is eliminated once with its contacts as they are at
 * rest. A situation in which one more contact is closed is a change of rank one (Sherman and Morrison 1950): with V0 the
 * volts across the contact before, Z the impedance seen between its ends and T the transfer impedance to the port,
 * V = Vport - T·V0/(z + Z). Z comes from the selected inverse, T by reciprocity from one solve a port. A contact between
 * two sections that nothing else joins carries no current and only sets one's potential against the other's. Anything
 * else - several contacts, another source, a diode that starts to conduct - is solved afresh, unless several situations
 * have all their changes but one in common: then the island is eliminated once more with those made.
 */
export class PortSolver {
  private readonly frame: Frame | undefined;
  private readonly base: Potentials = { re: new Float64Array(0), im: new Float64Array(0) };
  private readonly responses: Potentials[] = [];
  private readonly inverse: SelectedInverse | undefined;
  /** section of each node: what hangs together at rest, diodes left out */
  private readonly sections: Int32Array = new Int32Array(0);
  private readonly baseClosed: ReadonlySet<ContactEdge>;
  /** contacts by the input or relay that moves them */
  private readonly movers = new Map<string, ContactEdge[]>();
  private readonly valvePorts: Port[];
  /** solvers by the movers that are away from rest in their base, and how often each was wanted */
  private readonly bases = new Map<string, PortSolver>();
  private readonly wanted = new Map<string, number>();
  /** situations that could not be had by a small change, for the bench */
  solved = 0;

  constructor(
    private readonly island: Island,
    private readonly figures: Figures,
    private readonly rest: Situation,
    private readonly ports: readonly Port[],
  ) {
    for (const c of island.contacts) if (c.when.by !== 'always') push(this.movers, moverOf(c), c);
    this.baseClosed = new Set(island.contacts.filter((c) => rest.closed(c)));
    this.valvePorts = island.diodes.map((d) => [d.anode, d.cathode] as const);
    if (island.diodes.length > MOST_DIODES || island.contacts.length < 4) return;
    const { network } = assemble(island, figures, rest, OPEN_OHMS);
    const frame = new Frame({ ...network, valves: [] });
    const elimination = frame.eliminate([]);
    const { re, im } = driven(elimination);
    frame.spread(re, im, true);
    const sets = new UnionFind(network.nodes);
    for (const b of network.branches) if (b.re < OPEN_OHMS) sets.union(b.a, b.b);
    for (const e of network.emfs) sets.union(e.a, e.b);
    this.sections = Int32Array.from({ length: network.nodes }, (_, node) => sets.find(node));
    this.frame = frame;
    this.base = { re, im };
    for (const port of [...ports, ...this.valvePorts]) this.responses.push(this.respond(elimination, port));
    this.inverse = new SelectedInverse(elimination);
  }

  /** Potentials for one ampere in at the first net of the port and out at the second. */
  private respond(elimination: Elimination, port: Port): Potentials {
    const frame = this.frame!;
    const re = new Float64Array(frame.count);
    const im = new Float64Array(frame.count);
    const [a, b] = port.map(this.island.local);
    if (a! < 0 || b! < 0) return { re, im };
    re[frame.root(a!)]! += 1;
    re[frame.root(b!)]! -= 1;
    substitute(elimination, re, im);
    frame.spread(re, im, false);
    return { re, im };
  }

  /**
   * Volts at every port. `moved` names what differs from rest (`input 3`, `relay 0`), as `moverOf` does; `aliveAsAtRest`
   * says that the same sources have power.
   */
  volts(situation: Situation, moved: readonly string[], aliveAsAtRest: boolean): Phasor[] {
    const quick =
      this.frame && aliveAsAtRest
        ? (this.byChange(situation, moved) ?? this.byOtherBase(situation, moved))
        : undefined;
    return quick ?? this.afresh(situation);
  }

  /** From a base in which every change but one is made already, where others asked for the same. */
  private byOtherBase(situation: Situation, moved: readonly string[]): Phasor[] | undefined {
    const differs = (c: ContactEdge) => situation.closed(c) !== this.baseClosed.has(c);
    const changed = moved.filter((name) => this.movers.get(name)?.some(differs));
    if (changed.length < 2 || changed.length > MOST_MOVED) return undefined;
    for (const last of changed) {
      const others = changed.filter((name) => name !== last);
      // All that moved is held against the base: a contact may hang on more than the one that moves it.
      const quick = this.baseWith(others, situation)?.byChange(situation, moved);
      if (quick !== undefined) return quick;
    }
    return undefined;
  }

  private baseWith(movers: readonly string[], situation: Situation): PortSolver | undefined {
    const key = movers.join();
    const known = this.bases.get(key);
    if (known !== undefined) return known;
    const times = (this.wanted.get(key) ?? 0) + 1;
    this.wanted.set(key, times);
    if (times < WANTED || this.bases.size >= MOST_BASES) return undefined;
    const closed = (c: ContactEdge) =>
      movers.includes(moverOf(c)) ? situation.closed(c) : this.baseClosed.has(c);
    const base = new PortSolver(this.island, this.figures, { ...this.rest, closed }, this.ports);
    this.bases.set(key, base);
    return base;
  }

  private byChange(situation: Situation, moved: readonly string[]): Phasor[] | undefined {
    let changed: ContactEdge | undefined;
    for (const name of moved)
      for (const c of this.movers.get(name) ?? []) {
        if (situation.closed(c) === this.baseClosed.has(c)) continue;
        if (changed !== undefined || this.baseClosed.has(c) || this.figures.leak(c) !== undefined)
          return undefined;
        changed = c;
      }
    if (this.ringOfDiodes(changed)) return undefined;
    const all = [...this.ports, ...this.valvePorts].map((port, i) => this.portVolts(port, i, changed));
    const turned = this.island.diodes.some(
      (d, i) => all[this.ports.length + i]!.re > this.figures.diode(d).drop,
    );
    return turned ? undefined : all.slice(0, this.ports.length);
  }

  /** Whether diodes between sections close a way round, in which they might conduct. */
  private ringOfDiodes(closing: ContactEdge | undefined): boolean {
    const { local } = this.island;
    const into = new Map<number, number>();
    const find = (section: number): number => {
      const up = into.get(section);
      return up === undefined ? section : find(up);
    };
    const join = (x: number, y: number): boolean => {
      const [a, b] = [find(x), find(y)];
      if (a !== b) into.set(a, b);
      return a !== b;
    };
    const at = (net: number): number => this.sections[local(net)]!;
    if (closing !== undefined) join(at(closing.a), at(closing.b));
    const apart = this.valvePorts
      .filter((port) => port.every((net) => local(net) >= 0))
      .map(([a, b]) => [find(at(a)), find(at(b))] as const)
      .filter(([x, y]) => x !== y);
    return apart.some(([x, y]) => !join(x, y));
  }

  private portVolts(port: Port, index: number, closing: ContactEdge | undefined): Phasor {
    const { local } = this.island;
    const between = (p: Potentials, x: number, y: number): Phasor => ({
      re: p.re[x]! - p.re[y]!,
      im: p.im[x]! - p.im[y]!,
    });
    const [a, b] = [local(port[0]), local(port[1])];
    if (a < 0 || b < 0) return { re: 0, im: 0 };
    const at = (node: number): number => this.sections[node]!;
    const together = at(a) === at(b);
    const before = together ? between(this.base, a, b) : { re: 0, im: 0 };
    if (closing === undefined) return before;
    const [p, q] = [local(closing.a), local(closing.b)];
    if (at(p) !== at(q)) {
      const [near, far] = at(a) === at(p) ? [p, q] : [q, p];
      if (together || at(a) !== at(near) || at(b) !== at(far)) return before;
      const [here, there] = [between(this.base, a, near), between(this.base, far, b)];
      return { re: here.re + there.re, im: here.im + there.im };
    }
    if (!together) return before;
    const frame = this.frame!;
    const seen =
      frame.root(p) === frame.root(q)
        ? { re: 0, im: 0 }
        : this.inverse!.between(frame.root(p), frame.root(q));
    const z = { re: Math.max(0, seen.re) + this.figures.contact(closing), im: seen.im };
    const gain = between(this.responses[index]!, p, q);
    const across = between(this.base, p, q);
    const size = z.re * z.re + z.im * z.im;
    if (size === 0) return before;
    const re = gain.re * across.re - gain.im * across.im;
    const im = gain.re * across.im + gain.im * across.re;
    return {
      re: before.re - (re * z.re + im * z.im) / size,
      im: before.im - (im * z.re - re * z.im) / size,
    };
  }

  private afresh(situation: Situation): Phasor[] {
    this.solved++;
    const { local } = this.island;
    const s = solveNetwork(assemble(this.island, this.figures, situation).network);
    return this.ports.map(([x, y]) => {
      const [a, b] = [local(x), local(y)];
      if (a < 0 || b < 0 || s.component[a] !== s.component[b]) return { re: 0, im: 0 };
      return { re: s.re[a]! - s.re[b]!, im: s.im[a]! - s.im[b]! };
    });
  }

  /** Everything at rest. */
  atRest(): Phasor[] {
    return this.volts(this.rest, [], true);
  }
}

/** Name of what moves a contact. */
function moverOf(contact: ContactEdge): string {
  const { when } = contact;
  if (when.by === 'input') return `input ${when.input}`;
  return when.by === 'relay' ? `relay ${when.relay}` : 'nothing';
}
