/**
 * Changes that are never advised, whatever they mend: those that touch a protective conductor that is in its place, go
 * round a fuse, cut-out, stop or timer, or ask more of a cable than it has.
 */
import type { UnionFind } from '../circuit/union-find.ts';
import { type Edit, type EndRef, isSaying, type Rewiring } from '../edit/edits.ts';
import type { Core, Plan, TerminalRef } from '../plan/plan.ts';
import { partOfKey, splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import { isEarthColour } from '../ratings/core-colours.ts';
import { CableSides } from './cable-sides.ts';
import { joinedBy, unfused } from './fuse-reach.ts';
import type { Cores, NumberedCircuit } from './numbered-circuit.ts';
import type { Places } from './places.ts';
import { onBothSides, parksOnTab, polesOnStops } from './stops-kept.ts';
import { landedOn, triggerHarm } from './trigger-reach.ts';

const MAINS_MARKS: ReadonlySet<string> = new Set(['L', 'N', 'L1', 'L2']);
/** Kinds of part that stand in line to break a circuit by themselves. */
const GUARDS: ReadonlySet<string> = new Set(['fuse', 'cutout', 'timer']);

export class Harm {
  private readonly guards: readonly string[];
  private readonly earthJoints: ReadonlySet<string>;
  private readonly bypassedNow: ReadonlySet<string>;
  private readonly wiredNow: ReadonlySet<string>;
  private readonly landedNow: ReadonlySet<number>;
  private readonly feedsNow: number;
  private readonly quenchingNow: ReadonlySet<number>;
  private readonly sides: CableSides;
  private readonly unfusedNow: ReadonlySet<number>;
  private readonly triggersNow: ReadonlySet<string>;
  private readonly fedForGoodNow: ReadonlySet<string>;
  private readonly onBothNow: ReadonlySet<string>;
  private readonly polesNow: ReadonlyMap<string, number>;

  constructor(
    private readonly plan: Plan,
    private readonly circuit: NumberedCircuit,
    private readonly places: Places,
  ) {
    this.guards = guardsOf(plan);
    this.earthJoints = earthJointsOf(plan);
    this.bypassedNow = this.bypassed(circuit.cores);
    this.landedNow = landedOn(circuit.cores);
    this.wiredNow = new Set([...this.landedNow].map((t) => partOfKey(circuit.names[t]!)));
    this.feedsNow = this.feedsOf(circuit.cores);
    this.quenchingNow = this.quenching(circuit.cores).across;
    this.sides = new CableSides(plan, circuit);
    this.unfusedNow = unfused(circuit, circuit.cores);
    this.triggersNow = triggerHarm(circuit, circuit.cores);
    this.fedForGoodNow = this.fedForGood(circuit.cores);
    const joined = this.joinedBy(circuit.cores);
    this.onBothNow = onBothSides(circuit, joined, this.landedNow);
    this.polesNow = polesOnStops(circuit, joined, this.guards);
  }

  /** Whether a change does harm; `cores` is the wiring after it. */
  isDone(edits: readonly Edit[], cores: Cores): boolean {
    return (
      edits.some(
        (e) => !isSaying(e) && (this.touchesEarth(e) || this.feedsFromLoop(e) || this.outOfReach(e)),
      ) ||
      [...this.bypassed(cores)].some((part) => !this.bypassedNow.has(part)) ||
      edits.some((e) => e.do === 'move' && this.sides.changes(e.run, cores)) ||
      [...unfused(this.circuit, cores)].some((t) => !this.unfusedNow.has(t)) ||
      this.leavesOut(cores) ||
      this.feedsTrigger(cores) ||
      [...this.fedForGood(cores)].some((part) => !this.fedForGoodNow.has(part)) ||
      this.strays(cores) ||
      this.nearsMains(cores) ||
      parksOnTab(this.circuit, edits, landedOn(cores)) ||
      (edits.some((e) => e.do === 'remove') && this.feedsOf(cores) < this.feedsNow)
    );
  }

  private core(at: { readonly run: number; readonly core: number }): Core {
    return this.plan.runs[at.run]!.cores[at.core]!;
  }

  private isEarth(key: string): boolean {
    return key.endsWith('.PE') || this.earthJoints.has(key);
  }

  /** An end that lies on earth and belongs there: the core's other end does too, or its colour says so. */
  private holdsEarth(core: Core, end: 'a' | 'b'): boolean {
    const [own, other] = end === 'a' ? [core.a, core.b] : [core.b, core.a];
    return this.isEarth(keyOf(own)) && (this.isEarth(keyOf(other)) || isEarthColour(core.colour));
  }

  private touchesEarth(e: Rewiring): boolean {
    if (e.do === 'add') return this.isEarth(e.from) !== this.isEarth(e.to);
    if (e.do === 'move') {
      const core = this.core(e);
      return this.holdsEarth(core, e.end) && !this.isEarth(e.to);
    }
    if (e.do === 'remove') {
      const core = this.core(e);
      return this.holdsEarth(core, 'a') || this.holdsEarth(core, 'b') || isEarthColour(core.colour);
    }
    const [x, y] = [this.core(e.first), this.core(e.second)];
    const [p, q] = [keyOf(x[e.first.end]), keyOf(y[e.second.end])];
    if (this.isEarth(p) === this.isEarth(q))
      return this.holdsEarth(x, e.first.end) || this.holdsEarth(y, e.second.end);
    return this.holdsEarth(x, e.first.end) || this.holdsEarth(y, e.second.end);
  }

  /** A core that is not on the mains and would land on the mains side of a supply. */
  private feedsFromLoop(e: Rewiring): boolean {
    const lands = (to: string, other: string) => this.isMainsPin(to) && !this.sides.joinsMains(other, other);
    const other = (at: EndRef) => keyOf(this.core(at)[at.end === 'a' ? 'b' : 'a']);
    const own = (at: EndRef) => keyOf(this.core(at)[at.end]);
    if (e.do === 'move') return lands(e.to, other(e));
    if (e.do === 'add') return lands(e.from, e.to) || lands(e.to, e.from);
    if (e.do === 'remove') return false;
    return lands(own(e.second), other(e.first)) || lands(own(e.first), other(e.second));
  }

  private isMainsPin(key: string): boolean {
    const { part, terminal } = splitTerminalKey(key);
    return this.plan.parts.get(part)?.kind === 'supply' && MAINS_MARKS.has(terminal);
  }

  /** A core whose end would lie where its cable does not lead, or a new one with no cable to take it from. */
  private outOfReach(e: Rewiring): boolean {
    if (e.do === 'remove') return false;
    if (e.do === 'add') {
      const [from, to] = [partOfKey(e.from), partOfKey(e.to)];
      // A new cable is as long as it has to be; a jumper is not. Cable of the loop is not for mains, nor the reverse.
      return e.like === undefined
        ? !this.places.reaches(from, to, undefined)
        : this.sides.isMains(e.like) !== this.sides.joinsMains(e.from, e.to);
    }
    if (e.do === 'move') {
      const core = this.core(e);
      const [other, to] = [(e.end === 'a' ? core.b : core.a).part, partOfKey(e.to)];
      // Its cable leads to that part already.
      if (core[e.end].part === to) return false;
      return (
        this.strains(e.run, other, to) || this.places.leavesCable(this.plan.runs[e.run]!, e.core, other, to)
      );
    }
    const [x, y] = [this.core(e.first), this.core(e.second)];
    const other = (core: Core, end: 'a' | 'b') => (end === 'a' ? core.b : core.a).part;
    if (x[e.first.end].part === y[e.second.end].part) return false;
    return (
      this.strains(e.first.run, other(x, e.first.end), y[e.second.end].part) ||
      this.strains(e.second.run, other(y, e.second.end), x[e.first.end].part)
    );
  }

  private strains(run: number, from: string, to: string): boolean {
    const { link, length, cores } = this.plan.runs[run]!;
    if (this.places.reaches(from, to, link ? undefined : length)) return false;
    return link === true || cores.length > 1 || !this.places.reachesAlone(this.plan.runs[run]!, from, to);
  }

  /** Guards whose two ends meet by wires and other contacts, so that they break nothing. */
  private bypassed(cores: Cores): ReadonlySet<string> {
    return new Set(
      this.guards.filter((name) => {
        const sets = this.joinedBy(cores);
        const own = this.circuit.contacts.filter((c) => c.links[0]!.part === name);
        for (const c of this.circuit.contacts) if (c.links[0]!.part !== name) sets.union(c.a, c.b);
        return own.some((c) => sets.joined(c.a, c.b));
      }),
    );
  }

  /** Diodes that lie across a coil, by wires alone, and those with a core at both ends. */
  private quenching(cores: Cores): {
    readonly across: ReadonlySet<number>;
    readonly wired: ReadonlySet<number>;
  } {
    const sets = this.joinedBy(cores);
    const landed = landedOn(cores);
    const across = new Set<number>();
    const wired = new Set<number>();
    this.circuit.diodes.forEach(([x, y], i) => {
      if (landed.has(x) && landed.has(y)) wired.add(i);
      const quenches = this.circuit.relays.some(
        ({ coil }) =>
          coil !== undefined &&
          ((sets.joined(x, coil[0]) && sets.joined(y, coil[1])) ||
            (sets.joined(x, coil[1]) && sets.joined(y, coil[0]))),
      );
      if (quenches) across.add(i);
    });
    return { across, wired };
  }

  /** A diode that quenched a coil and now lies somewhere else. */
  private strays(cores: Cores): boolean {
    const after = this.quenching(cores);
    return [...this.quenchingNow].some((i) => after.wired.has(i) && !after.across.has(i));
  }

  /** A trigger with less on it than a bare contact needs, or with a pole: told where that was so before in just this way. */
  private feedsTrigger(cores: Cores): boolean {
    const after = triggerHarm(this.circuit, cores);
    const before = this.triggersNow;
    return after.size > 0 && !(after.size === before.size && [...after].every((x) => before.has(x)));
  }

  /** Timers that time from their supply and have it for good, by wires and fuses: their time passes once and delays nothing. */
  private fedForGood(cores: Cores): ReadonlySet<string> {
    const { circuit, plan } = this;
    const timers = circuit.relays.filter(
      (r) => r.coil !== undefined && r.trigger !== undefined && !this.triggered(r.trigger, cores),
    );
    if (timers.length === 0) return new Set();
    const sets = this.joinedBy(cores);
    for (const c of circuit.contacts)
      if (plan.parts.get(c.links[0]!.part)?.kind === 'fuse') sets.union(c.a, c.b);
    const poles = [...circuit.poles(true), ...circuit.poles(false)];
    const onPole = (end: number) => poles.some((p) => sets.joined(p, end));
    return new Set(timers.filter((r) => r.coil!.every(onPole)).map((r) => r.part));
  }

  private triggered(trigger: readonly number[], cores: Cores): boolean {
    const landed = landedOn(cores);
    return trigger.some((t) => landed.has(t));
  }

  /** A switch of the loop that gets a core of the mains beside it, or a stop of several poles that a line is led past. */
  private nearsMains(cores: Cores): boolean {
    const joined = this.joinedBy(cores);
    const poles = polesOnStops(this.circuit, joined, this.guards);
    return (
      [...poles].some(([name, count]) => count < (this.polesNow.get(name) ?? 0) && count > 0) ||
      [...onBothSides(this.circuit, joined, landedOn(cores))].some((part) => !this.onBothNow.has(part))
    );
  }

  private joinedBy(cores: Cores): UnionFind {
    return joinedBy(this.circuit, cores);
  }

  /** Mains terminals of supplies that are on the mains: one that loses its feed is not thereby fed. */
  private feedsOf(cores: Cores): number {
    const { circuit } = this;
    const sets = this.joinedBy(cores);
    for (const c of circuit.contacts) sets.union(c.a, c.b);
    const poles = circuit.poles(true);
    return circuit.names.filter((key, i) => {
      return this.isMainsPin(key) && poles.some((p) => sets.joined(p, i));
    }).length;
  }

  /** A guard that had a core before and has not one at either end of some contact now, or a coil that loses an end. */
  private leavesOut(cores: Cores): boolean {
    const landed = landedOn(cores);
    const isWired = (coil: readonly [number, number] | undefined, on: ReadonlySet<number>) =>
      coil?.every((end) => on.has(end)) === true;
    if (this.circuit.relays.some(({ coil }) => isWired(coil, this.landedNow) && !isWired(coil, landed)))
      return true;
    return this.guards.some((name) => {
      if (!this.wiredNow.has(name)) return false;
      const own = this.circuit.contacts.filter((c) => c.links[0]!.part === name);
      return !own.some((c) => landed.has(c.a) && landed.has(c.b));
    });
  }
}

const keyOf = (end: TerminalRef): string => terminalKey(end.part, end.terminal);

/** Fuses, cut-outs and timers, and whatever an intent names as what stops or blocks a load. */
function guardsOf(plan: Plan): string[] {
  const named = (plan.intents ?? []).flatMap((i) => [...i.blockedBy, ...i.stoppedBy].map((ref) => ref.part));
  const built = [...plan.parts.values()].filter((p) => GUARDS.has(p.kind)).map((p) => p.name);
  return [...new Set([...built, ...named])];
}

/** Joints on which cores to protective terminals lie, and none to any other part. */
function earthJointsOf(plan: Plan): Set<string> {
  const reach = new Map<string, Set<string>>();
  for (const run of plan.runs)
    for (const { a, b } of run.cores)
      for (const [own, other] of [
        [a, b],
        [b, a],
      ] as const)
        if (plan.parts.get(own.part)?.kind === 'joint')
          reach.set(own.part, (reach.get(own.part) ?? new Set()).add(keyOf(other)));
  const isProtective = (key: string) => splitTerminalKey(key).terminal === 'PE';
  return new Set(
    [...reach]
      .filter(([, keys]) => {
        const others = [...keys].filter((key) => plan.parts.get(key)?.kind !== 'joint');
        const protective = others.filter(isProtective).length;
        return protective > 0 && protective > others.length / 2;
      })
      .map(([name]) => name),
  );
}
