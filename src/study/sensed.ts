/** When a coil or an input sees its pull-in at solved volts, as functions of inputs and relays. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, Sense, Source } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import type { Figures, Island, Situation } from '../electric/island.ts';
import { type Bdd, FALSE, type Fn, TRUE } from '../logic/bdd.ts';
import { inputVariable, relayVariable } from '../logic/conduction.ts';
import type { LogicModel } from '../logic/model.ts';
import { Undecided } from '../logic/undecided.ts';
import type { Plan } from '../plan/plan.ts';
import { meets, voltsIn } from './seen-volts.ts';
import { solveLimited } from './supply-limits.ts';

/** States in which it sees its pull-in, and in which it sees no more than its drop-out. */
export interface Sensed {
  readonly on: Fn;
  readonly off: Fn;
}

type VoltSense = Extract<Sense, { by: 'volts' }>;

/** What solves the networks, and how much of that may be done. */
export interface SensedIn {
  readonly plan: Plan;
  readonly circuit: WiredCircuit;
  readonly model: LogicModel;
  readonly figures: Figures;
  /** states that matter; what is said of others means nothing */
  readonly care: Fn;
  /** nets times solutions that are left to spend */
  readonly budget: { left: number };
}

/** Where AC meets DC, or AC passes a diode, volts are not worked out, and what is joined has to do. */
export class NotWorkedOut extends Error {
  override readonly name = 'NotWorkedOut';
}

const NEVER: Sensed = { on: FALSE, off: TRUE };

/**
 * Decides a sense variable by variable. A branch ends where nothing feeds it whatever the rest does, and, round a coil
 * that is alone on one source, where the rest open or the rest closed gives the answer: more closed contacts can only
 * raise its volts, by Rayleigh's monotonicity law. Throws Undecided beyond the budget, NotWorkedOut.
 */
export class SenseSolver {
  private readonly bdd: Bdd;
  private readonly variables: readonly number[];
  private readonly alone: boolean;
  private readonly known = new Map<string, { on: boolean; off: boolean }>();

  /** `island` has everything that can change the volts of `sense`. */
  constructor(
    private readonly at: SensedIn,
    private readonly island: Island,
    private readonly sense: VoltSense,
  ) {
    this.bdd = at.model.bdd;
    this.variables = this.variablesOf();
    this.alone = this.isAlone();
  }

  solve(): Sensed {
    if (this.island.sources.length === 0) return NEVER;
    return this.branch(0, new Map(), this.at.care);
  }

  private branch(i: number, set: ReadonlyMap<number, boolean>, care: Fn): Sensed {
    if (care === FALSE) return NEVER;
    this.spend(this.island.count >> 3);
    if (!this.canBeFed(set)) return NEVER;
    const variable = this.variables[i];
    if (variable === undefined) return constant(this.seen((when) => this.position(when, set) === true, set));
    const early = this.alone && this.whateverElse(set);
    if (early) return early;
    const { bdd } = this;
    const moved = bdd.variable(variable);
    const high = this.branch(i + 1, new Map([...set, [variable, true]]), bdd.and(care, moved));
    const low = this.branch(i + 1, new Map([...set, [variable, false]]), bdd.diff(care, moved));
    return { on: bdd.ite(moved, high.on, low.on), off: bdd.ite(moved, high.off, low.off) };
  }

  /** The answer where it is the same with all contacts not yet set open as with all of them closed. */
  private whateverElse(set: ReadonlyMap<number, boolean>): Sensed | undefined {
    const open = this.seen((when) => this.position(when, set) === true, set);
    if (open.on) return constant(open);
    const most = (when: ContactEdge['when']) => this.position(when, set) !== false;
    if (this.joinsPoles(most)) return undefined;
    const closed = this.seen(most, set);
    return open.on === closed.on && open.off === closed.off ? constant(open) : undefined;
  }

  private seen(
    closed: (when: ContactEdge['when']) => boolean,
    set: ReadonlyMap<number, boolean>,
  ): { on: boolean; off: boolean } {
    const { at, island, sense } = this;
    const { circuit, model } = at;
    const value = (x: number) => set.get(x) === true;
    const situation: Situation = {
      closed: (c) => closed(c.when),
      alive: (s) => s.feed.by === 'always' || this.bdd.evaluate(model.live[s.index]!, value),
      pulledIn: (part) => circuit.relays.some((r) => r.part === part && value(relayVariable(r.index))),
    };
    const key = [
      island.contacts.map((c) => Number(situation.closed(c))).join(''),
      island.sources.map((s) => Number(situation.alive(s))).join(''),
      this.ac ? island.passives.map((p) => Number(situation.pulledIn(p.part))).join('') : '',
    ].join(' ');
    let found = this.known.get(key);
    if (!found) {
      this.spend(island.count);
      const solved = solveLimited(at.plan, island, at.figures, situation);
      if (solved.notWorkedOut !== undefined) throw new NotWorkedOut(solved.notWorkedOut);
      found = meets(sense, voltsIn([solved]));
      this.known.set(key, found);
    }
    return found;
  }

  /** Whether a contact is closed; undefined while what moves it is not set. */
  private position(when: ContactEdge['when'], set: ReadonlyMap<number, boolean>): boolean | undefined {
    if (when.by === 'always') return true;
    const at =
      when.by === 'input' ? inputVariable(this.at.circuit, when.input) : relayVariable(when.relay);
    const moved = set.get(at);
    return moved === undefined ? undefined : moved === when.value;
  }

  private spend(nets: number): void {
    const { budget } = this.at;
    budget.left -= nets;
    if (budget.left < 0) throw new Undecided('to solve every state for its volts would take too long');
  }

  private get ac(): boolean {
    return this.island.sources.some((s) => s.kind === 'ac');
  }

  /** Inputs and relays on which the volts hang, in the order of the diagrams. */
  private variablesOf(): number[] {
    const { island, bdd } = this;
    const { circuit, model } = this.at;
    const found = new Set<number>();
    for (const { when } of island.contacts) {
      if (when.by === 'input') found.add(inputVariable(circuit, when.input));
      if (when.by === 'relay') found.add(relayVariable(when.relay));
    }
    for (const s of island.sources)
      if (s.feed.by !== 'always') for (const x of bdd.support(model.live[s.index]!)) found.add(x);
    // An AC coil takes less once its armature is in.
    if (this.ac)
      for (const r of circuit.relays)
        if (island.passives.some((p) => p.part === r.part)) found.add(relayVariable(r.index));
    return [...found].sort((x, y) => x - y);
  }

  /** One element that draws current, one source that holds, nothing that leaks. */
  private isAlone(): boolean {
    const { island, bdd } = this;
    const { model, care, figures } = this.at;
    const [source, ...others] = island.sources;
    return (
      others.length === 0 &&
      source !== undefined &&
      !this.ac &&
      source.feed.by === 'always' &&
      bdd.and(care, model.shorted[source.index]!) === FALSE &&
      island.passives.length === 1 &&
      island.diodes.every((d) => !d.load) &&
      island.contacts.every((c) => figures.leak(c) === undefined)
    );
  }

  /** Whether both ends can be reached from sources by anything but the coil itself, with contacts as far as they are set. */
  private canBeFed(set: ReadonlyMap<number, boolean>): boolean {
    const { island, sense } = this;
    const sets = this.joined((when) => this.position(when, set) !== false);
    for (const c of island.contacts) if (this.at.figures.leak(c) !== undefined) sets.union(c.a, c.b);
    const across = (x: number, y: number) => sameEnds(x, y, sense);
    for (const p of island.passives) if (!across(p.a, p.b)) sets.union(p.a, p.b);
    for (const d of island.diodes) if (!across(d.anode, d.cathode)) sets.union(d.anode, d.cathode);
    const fed = (net: number) => island.sources.some((s) => s.rails.some((r) => sets.joined(r.net, net)));
    return fed(sense.a) && fed(sense.b);
  }

  private joinsPoles(closed: (when: ContactEdge['when']) => boolean): boolean {
    const sets = this.joined(closed);
    for (const d of this.island.diodes)
      if (!sameEnds(d.anode, d.cathode, this.sense)) sets.union(d.anode, d.cathode);
    return this.island.sources.some(({ rails }: Source) =>
      rails.slice(1).some((r) => sets.joined(rails[0]!.net, r.net)),
    );
  }

  private joined(closed: (when: ContactEdge['when']) => boolean): UnionFind {
    const sets = new UnionFind(this.island.netCount);
    for (const w of this.island.wires) sets.union(w.a, w.b);
    for (const c of this.island.contacts) if (closed(c.when)) sets.union(c.a, c.b);
    return sets;
  }
}

const constant = ({ on, off }: { on: boolean; off: boolean }): Sensed => ({
  on: on ? TRUE : FALSE,
  off: off ? TRUE : FALSE,
});

const sameEnds = (x: number, y: number, { a, b }: VoltSense): boolean =>
  (x === a && y === b) || (x === b && y === a);
