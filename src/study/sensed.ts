/** When a coil or an input sees its pull-in at solved volts, as functions of inputs and relays. */

import type { WiredCircuit } from '../circuit/build.ts';
import type { ContactEdge, Sense, Source } from '../circuit/circuit.ts';
import { effort } from '../circuit/effort.ts';
import { relaysByPart } from '../circuit/relays-by-part.ts';
import { UnionFind } from '../circuit/union-find.ts';
import type { Figures, Island } from '../electric/island.ts';
import { type Bdd, FALSE, type Fn, TRUE } from '../logic/bdd.ts';
import { inputVariable, relayVariable } from '../logic/conduction.ts';
import type { LogicModel } from '../logic/model.ts';
import { Undecided } from '../logic/undecided.ts';
import { type Moved, stateOf } from '../logic/verify.ts';
import type { Plan } from '../plan/plan.ts';
import { type Seen, SenseVolts } from './sense-volts.ts';

/** States in which it sees its pull-in, and in which it sees no more than its drop-out. */
export interface Sensed {
  readonly on: Fn;
  readonly off: Fn;
}

/** What solves the networks, and how much of that may be done. */
export interface SensedIn {
  readonly plan: Plan;
  readonly circuit: WiredCircuit;
  readonly model: LogicModel;
  readonly figures: Figures;
  /** inputs away from rest in the states that are asked for; undefined for every state there is */
  readonly states: readonly Moved[] | undefined;
  /** whether no position of the contacts shorts a source or asks it for more than its limit */
  readonly steady: (source: Source) => boolean;
  /** nets times solutions that are left to spend */
  readonly budget: { left: number; readonly until: number };
}

/** Variables of the diagrams that are set so far. */
type Setting = ReadonlyMap<number, boolean>;
type Closed = (when: ContactEdge['when']) => boolean;

const NEVER: Sensed = { on: FALSE, off: TRUE };

/**
 * Decides a sense variable by variable. A branch ends where nothing feeds it whatever the rest does, and, round a coil
 * that is alone on one source, where the rest open or the rest closed gives the answer: more closed contacts can only
 * raise its volts, by Rayleigh's monotonicity law; of an AC coil as well, since wires and contacts are pure resistance.
 * Throws Undecided beyond the budget, NotWorkedOut.
 */
export class SenseSolver {
  private readonly bdd: Bdd;
  private readonly volts: SenseVolts;
  private readonly alone: boolean;
  private readonly variables: readonly number[];
  /** variables each of which feeds the coil by itself */
  private readonly strong = new Set<number>();

  /** `island` has everything that can change the volts of `sense`. */
  constructor(
    private readonly at: SensedIn,
    private readonly island: Island,
    private readonly sense: Extract<Sense, { by: 'volts' }>,
  ) {
    this.bdd = at.model.bdd;
    const [source, ...others] = island.sources;
    const steady = source !== undefined && others.length === 0 && at.steady(source);
    this.volts = new SenseVolts(at.plan, at.figures, island, sense, steady, (nets) => this.spend(nets));
    this.alone = steady && source.feed.by === 'always' && this.isAlone();
    this.variables = this.inOrder();
  }

  /** What is said of states that are not asked for means nothing. */
  solve(): Sensed {
    const { at, bdd } = this;
    if (this.island.sources.length === 0) return NEVER;
    if (at.states === undefined) return this.branch(this.variables, new Map(), at.model.valid, false);
    const inputs = this.variables.filter((x) => x >= at.circuit.relays.length);
    const relays = this.variables.filter((x) => x < at.circuit.relays.length);
    const found = at.states.map((moved) => {
      const on = new Set(moved.map((i) => inputVariable(at.circuit, i)));
      const here = stateOf(at.circuit, bdd, moved);
      const sensed = this.branch(relays, new Map(inputs.map((x) => [x, on.has(x)])), here, false);
      return { on: bdd.and(here, sensed.on), off: bdd.and(here, sensed.off) };
    });
    return { on: bdd.any(found.map((f) => f.on)), off: bdd.any(found.map((f) => f.off)) };
  }

  /** `never` says that the rest closed has been found not to pull it in. */
  private branch(left: readonly number[], set: Setting, care: Fn, never: boolean): Sensed {
    if (care === FALSE) return NEVER;
    this.spend(this.island.count >> 3);
    if (!this.canBeFed(set)) return NEVER;
    const [variable, ...others] = left;
    const open = this.alone || variable === undefined ? this.seen(this.least(set), set) : undefined;
    if (variable === undefined) return constant(open!);
    let low = never;
    if (open && this.isSet(set)) {
      if (open.on || (never && !open.off)) return constant(open);
      if (!never && !this.strong.has(variable)) {
        const most = this.most(set);
        const closed = this.joinsPoles(most) ? undefined : this.seen(most, set);
        if (closed && closed.on === open.on && closed.off === open.off) return constant(open);
        low = closed?.on === false;
      }
    }
    const { bdd } = this;
    const moved = bdd.variable(variable);
    const [x, y] = [true, false].map((value) =>
      this.branch(
        others,
        new Map([...set, [variable, value]]),
        value ? bdd.and(care, moved) : bdd.diff(care, moved),
        low,
      ),
    );
    return { on: bdd.ite(moved, x!.on, y!.on), off: bdd.ite(moved, x!.off, y!.off) };
  }

  /** Contacts closed for certain, and all that are not open for certain. */
  private least(set: Setting): Closed {
    return (when) => this.position(when, set) === true;
  }

  private most(set: Setting): Closed {
    return (when) => this.position(when, set) !== false;
  }

  /** Whether the armature of an AC coil, on which its impedance hangs, is among what is set. */
  private isSet(set: Setting): boolean {
    return !this.volts.ac || this.armatures().every((x) => set.has(x));
  }

  private armatures(): number[] {
    const { island, at } = this;
    const here = at.circuit.relays.filter((r) => island.passives.some((p) => p.part === r.part));
    return here.map((r) => relayVariable(r.index));
  }

  private seen(closed: Closed, set: Setting): Seen {
    const { circuit, model } = this.at;
    const value = (x: number) => set.get(x) === true;
    return this.volts.at({
      closed: (c) => closed(c.when),
      alive: (s) => s.feed.by === 'always' || this.bdd.evaluate(model.live[s.index]!, value),
      pulledIn: (part) =>
        relaysByPart(circuit.relays)
          .get(part)
          ?.some((i) => value(relayVariable(i))) === true,
    });
  }

  /** Whether a contact is closed; undefined while what moves it is not set. */
  private position(when: ContactEdge['when'], set: Setting): boolean | undefined {
    if (when.by === 'always') return true;
    const moved = set.get(variableOf(this.at.circuit, when));
    return moved === undefined ? undefined : moved === when.value;
  }

  private spend(nets: number): void {
    const { budget } = this.at;
    budget.left -= nets;
    if (budget.left < 0 || effort() > budget.until)
      throw new Undecided('to solve every state for its volts would take too long');
  }

  /** Inputs and relays on which the volts hang: armatures first, then what feeds the coil by itself. */
  private inOrder(): number[] {
    const { island, bdd, at } = this;
    const found = new Set<number>(this.volts.ac ? this.armatures() : []);
    const rest = new Set<number>();
    for (const { when } of island.contacts) if (when.by !== 'always') rest.add(variableOf(at.circuit, when));
    for (const s of island.sources)
      if (s.feed.by !== 'always') for (const x of bdd.support(at.model.live[s.index]!)) rest.add(x);
    const ascending = [...rest].sort((x, y) => x - y);
    if (this.alone) {
      const out = new Map([...found].map((x) => [x, false] as const));
      for (const x of ascending)
        if (this.seen(this.least(new Map([...out, [x, true]])), out).on) this.strong.add(x);
    }
    for (const x of this.strong) found.add(x);
    for (const x of ascending) found.add(x);
    return [...found];
  }

  /** One element that draws current, and nothing that leaks. */
  private isAlone(): boolean {
    const { island } = this;
    return (
      island.passives.length === 1 &&
      island.diodes.every((d) => !d.load) &&
      island.contacts.every((c) => this.at.figures.leak(c) === undefined)
    );
  }

  /** Whether both ends can be reached from sources by anything but the coil itself, with contacts as far as they are set. */
  private canBeFed(set: Setting): boolean {
    const { island, sense } = this;
    const sets = this.joined(this.most(set));
    for (const c of island.contacts) if (this.at.figures.leak(c) !== undefined) sets.union(c.a, c.b);
    for (const p of island.passives) if (!isAcross(sense, p.a, p.b)) sets.union(p.a, p.b);
    for (const d of island.diodes) if (!isAcross(sense, d.anode, d.cathode)) sets.union(d.anode, d.cathode);
    const fed = (net: number) => island.sources.some((s) => s.rails.some((r) => sets.joined(r.net, net)));
    return fed(sense.a) && fed(sense.b);
  }

  private joinsPoles(closed: Closed): boolean {
    const { island, sense } = this;
    const sets = this.joined(closed);
    for (const d of island.diodes) if (!isAcross(sense, d.anode, d.cathode)) sets.union(d.anode, d.cathode);
    return island.sources.some(({ rails }) => rails.slice(1).some((r) => sets.joined(rails[0]!.net, r.net)));
  }

  private joined(closed: Closed): UnionFind {
    const sets = new UnionFind(this.island.netCount);
    for (const w of this.island.wires) sets.union(w.a, w.b);
    for (const c of this.island.contacts) if (closed(c.when)) sets.union(c.a, c.b);
    return sets;
  }
}

function variableOf(circuit: WiredCircuit, when: Exclude<ContactEdge['when'], { by: 'always' }>): number {
  return when.by === 'input' ? inputVariable(circuit, when.input) : relayVariable(when.relay);
}

const constant = ({ on, off }: Seen): Sensed => ({ on: on ? TRUE : FALSE, off: off ? TRUE : FALSE });

const isAcross = ({ a, b }: { readonly a: number; readonly b: number }, x: number, y: number): boolean =>
  (x === a && y === b) || (x === b && y === a);
