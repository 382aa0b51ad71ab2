/** A circuit on the bench, right or with one fault, ready to be measured. */

import type { WiredCircuit } from '../circuit/build.ts';
import type { Figures } from '../electric/island.ts';
import { Ohmmeter } from '../machine/ohmmeter.ts';
import { plugsOut } from '../machine/power.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { withDeltas } from '../study/mains/three-phase.ts';
import { Study } from '../study/study.ts';
import type { Fault, Moved } from './fault.ts';
import type { NearCircuit } from './near/near-cut.ts';
import { nearFigures, Surroundings } from './near/surroundings.ts';
import { PoweredCircuit } from './powered-circuit.ts';
import { unpluggedCircuit } from './unplugged.ts';

export interface Subject {
  readonly circuit: WiredCircuit;
  /** with nothing on, and what has a plug of its own unplugged */
  readonly dead: Ohmmeter;
  /** with the low-voltage supplies on, and out each plug they can do without */
  readonly loop: PoweredCircuit;
  readonly mains: PoweredCircuit;
}

/** Where faults are built: the whole shop, or what is near a few terminals. */
export interface Bench {
  readonly right: Subject;
  /** the figures that hold here, of those that hold in the shop */
  figures(whole: Figures): Figures;
  build(fault: Fault): Subject;
}

/** Nets of all circuits together that are kept at hand. */
const NETS = 60_000;

/** Makes subjects of one plan; what the plan alone decides is worked out once. */
export class Subjects implements Bench {
  readonly right: Subject;
  private readonly plan: Plan;
  private readonly reading: Figures;
  /** figures that an ohmmeter finds */
  readonly ohmmeter: Figures;
  /** the same for the right circuit, all sides of its deltas with them */
  private readonly own: { readonly reading: Figures; readonly ohmmeter: Figures };
  private readonly off;
  private surroundings: Surroundings | undefined;
  /** true where moved cores change figures elsewhere: what is fed by how many volts */
  private readonly farReaching: boolean;

  constructor(private readonly study: Study) {
    const { plan, wired } = study;
    this.plan = plan;
    this.reading = figuresFor(plan, 'reading');
    this.ohmmeter = figuresFor(plan, 'ohmmeter');
    const own = (figures: Figures) => withDeltas(plan, wired, figures).figures;
    this.own = { reading: own(this.reading), ohmmeter: own(this.ohmmeter) };
    this.off = plugsOut(plan, wired);
    this.farReaching =
      wired.sources.some((s) => s.feed.by === 'nets') || wired.passives.some((p) => p.fed !== undefined);
    this.right = this.whole(wired, plan, (c) => c);
  }

  figures(whole: Figures): Figures {
    return whole;
  }

  build(fault: Fault): Subject {
    const [own, circuit] = this.builtOf(fault);
    return this.whole(circuit, own, fault.circuit ?? ((c) => c));
  }

  /** The whole circuit with a fault in it. */
  circuit(fault: Fault): WiredCircuit {
    if (this.isNear(fault)) return changed(this.around.circuit, fault);
    const [own, built] = this.builtOf(fault);
    const { circuit } = withDeltas(own, built, this.reading);
    return fault.circuit?.(circuit) ?? circuit;
  }

  /** What is near these terminals, while no inputs but these are moved. */
  near(keys: Iterable<string>, inputs: ReadonlySet<number>): Bench {
    const near = this.around.near(keys, inputs);
    const figures = (whole: Figures) => nearFigures(whole, near);
    const make = (change: (c: WiredCircuit) => WiredCircuit) => this.nearby(near, change);
    return {
      right: make((c) => c),
      figures,
      build: (fault) => {
        if (!this.isNear(fault)) return this.build(fault);
        return make((c) => changed(c, fault));
      },
    };
  }

  private circuitOf(own: Plan): WiredCircuit {
    return own === this.plan ? this.study.wired : Study.of(own).wired;
  }

  /** A fault that is not near is asked for again and again. */
  private builtOf(fault: Fault): readonly [Plan, WiredCircuit] {
    if (this.built.size * this.study.wired.netCount > NETS) this.built.clear();
    return kept(this.built, fault, () => {
      const own = fault.plan?.(this.plan) ?? this.plan;
      return [own, this.circuitOf(own)];
    });
  }
  private readonly built = new Map<Fault, readonly [Plan, WiredCircuit]>();

  private whole(circuit: WiredCircuit, own: Plan, change: (c: WiredCircuit) => WiredCircuit): Subject {
    // Wiring changes no figure; another part brings its own.
    const same = own.parts === this.plan.parts;
    const live = withDeltas(own, circuit, same ? this.reading : figuresFor(own, 'reading'));
    const dead = withDeltas(own, circuit, this.ohmmeter);
    return this.subject(change(live.circuit), live.figures, dead.figures);
  }

  private nearby(near: NearCircuit, change: (c: WiredCircuit) => WiredCircuit): Subject {
    const { reading, ohmmeter } = this.own;
    return this.subject(change(near.circuit), nearFigures(reading, near), nearFigures(ohmmeter, near));
  }

  private subject(circuit: WiredCircuit, reading: Figures, ohmmeter: Figures): Subject {
    return {
      circuit,
      dead: new Ohmmeter(unpluggedCircuit(circuit), ohmmeter),
      loop: new PoweredCircuit(circuit, reading, this.off),
      mains: new PoweredCircuit(circuit, reading, () => false),
    };
  }

  /** The right circuit, to be cut to what is near. */
  get around(): Surroundings {
    if (this.surroundings) return this.surroundings;
    const { circuit } = withDeltas(this.plan, this.study.linksApart, this.reading);
    this.surroundings = new Surroundings(circuit, this.reading);
    return this.surroundings;
  }

  /** Whether a fault changes nothing but what lies between its terminals. */
  isNear(fault: Fault): boolean {
    return kept(this.areNear, fault, () => this.staysNear(fault));
  }
  private readonly areNear = new Map<Fault, boolean>();

  /** The same while every supply is off, where it is no matter what a supply or plug has become. */
  isNearDead(fault: Fault): boolean {
    return this.isNear(fault) || (this.isLooseDead && this.staysNear(fault, ['cutout', 'timer']));
  }

  /** Whether supplies and plugs are nothing to a meter on ohms: none of them hangs on another without a core. */
  get isLooseDead(): boolean {
    return !this.study.wired.sources.some((s) => s.feed.by === 'part');
  }

  private staysNear({ plan, moved }: Fault, kinds = ['supply', 'plug', 'cutout', 'timer']): boolean {
    if (plan === undefined) return true;
    if (moved === undefined || this.farReaching) return false;
    return moved.every(({ run, core, ends }) => {
      const { a, b } = this.plan.runs[run]!.cores[core]!;
      const was = [a, b].map((end) => `${end.part}${end.terminal === '' ? '' : `.${end.terminal}`}`);
      return [...was, ...(ends ?? [])].every((key) => !this.hangsOnCores(key, was, ends ?? [], kinds));
    });
  }

  /** Whether a part is another thing with a core on this terminal than without, and that changes. */
  private hangsOnCores(
    key: string,
    was: readonly string[],
    is: readonly string[],
    kinds: readonly string[],
  ): boolean {
    const kind = this.plan.parts.get(partOfKey(key))?.kind;
    if (kind === undefined || !kinds.includes(kind)) return false;
    const count = this.study.wired.landed.get(key) ?? 0;
    const change = is.filter((k) => k === key).length - was.filter((k) => k === key).length;
    return change !== 0 && (count === 0 || count + change <= 0);
  }
}

/** The circuit with a fault that stays near. */
function changed(c: WiredCircuit, { moved, circuit }: Fault): WiredCircuit {
  const rewired = moved ? withMoved(c, moved) : c;
  return circuit?.(rewired) ?? rewired;
}

/** The circuit with some cores on other terminals. */
export function withMoved(c: WiredCircuit, moved: readonly Moved[]): WiredCircuit {
  let { wires } = c;
  for (const { run, core, ends } of moved)
    wires = wires.flatMap((w) => {
      if (w.run !== run || w.core !== core) return [w];
      if (ends === undefined) return [];
      const [a, b] = ends.map((key) => c.netOf.get(key));
      return a === undefined || b === undefined ? [] : [{ ...w, a, b }];
    });
  return { ...c, wires };
}
