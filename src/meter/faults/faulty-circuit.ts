/** The circuit of a plan with one fault or several in it, ready to be put under power. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { Figures } from '../../electric/island.ts';
import type { Plan } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { figuresFor } from '../../study/corner-figures.ts';
import type { Corner } from '../../study/corners.ts';
import { withDeltas } from '../../study/mains/three-phase.ts';
import { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { nearFigures } from '../near/surroundings.ts';
import { Subjects, withMoved } from '../subject.ts';

export interface FaultyCircuit {
  readonly plan: Plan;
  readonly circuit: WiredCircuit;
  figures(corner: Corner): Figures;
}

/** Builds faulty circuits of one plan; what no fault changes is shared with the right one. */
export class FaultyCircuits {
  readonly right: FaultyCircuit;
  readonly subjects: Subjects;
  private readonly known = new Map<Corner, Figures>();

  constructor(private readonly study: Study) {
    this.subjects = new Subjects(study);
    this.right = this.made(study.plan, study.wired);
  }

  /** With all of these at once, in their order. */
  with(faults: readonly Fault[]): FaultyCircuit {
    const { plan } = this.study;
    // A link is no wire of this circuit: its two ends are one net.
    const links = faults.some((f) => f.moved?.some((m) => plan.runs[m.run]!.link));
    if (!links && faults.every((f) => this.subjects.isNear(f))) {
      const { circuit, figures } = this.right;
      const moved = faults.reduce((c, f) => (f.moved ? withMoved(c, f.moved) : c), circuit);
      return { plan, circuit: edited(moved, faults), figures };
    }
    const own = faults.reduce((p, f) => f.plan?.(p) ?? p, plan);
    const made = this.made(own, Study.of(own).wired);
    return { ...made, circuit: edited(made.circuit, faults) };
  }

  /**
   * The same cut down to what the terminals of the faults and the loads see while no inputs but these are moved, which
   * is all that decides what moves and runs; the whole where a fault is more than wiring between terminals.
   */
  near(faults: readonly Fault[], inputs: ReadonlySet<number>): FaultyCircuit {
    if (!faults.every((f) => this.subjects.isNear(f))) return this.with(faults);
    const { consumers, sources } = this.right.circuit;
    const poles = sources.flatMap((s) => [
      ...s.rails.map((r) => terminalKey(s.part, r.terminal)),
      terminalKey(s.part, 'PE'),
    ]);
    const handle = (net: number) => this.right.circuit.terminals[net]?.[0];
    const handles = consumers.map((c) => [...c.nets].map(([t, net]) => [t, handle(net)] as const));
    const own = new Set([...inputs, ...faults.flatMap((f) => this.inputsOf(f))]);
    const keys = new Set([
      ...poles,
      ...faults.flatMap((f) => f.at),
      ...handles.flat().flatMap(([, key]) => key ?? []),
    ]);
    const near = this.subjects.around.near(keys, own);
    const circuit: WiredCircuit = {
      ...near.circuit,
      consumers: consumers.flatMap((c, i) => {
        const nets = handles[i]!.map(([t, key]) => [t, near.circuit.netOf.get(key ?? '')] as const);
        return nets.every(([, net]) => net !== undefined)
          ? [{ ...c, nets: new Map(nets.map(([t, net]) => [t, net!])) }]
          : [];
      }),
    };
    const moved = faults.reduce((c, f) => (f.moved ? withMoved(c, f.moved) : c), circuit);
    return {
      plan: this.study.plan,
      circuit: edited(moved, faults),
      figures: (corner) => nearFigures(this.right.figures(corner), near),
    };
  }

  private inputsOf({ parts }: Fault): number[] {
    return this.study.wired.inputs.flatMap((i) => (parts.includes(i.part) ? [i.index] : []));
  }

  private made(own: Plan, wired: WiredCircuit): FaultyCircuit {
    const same = own.parts === this.study.plan.parts;
    const figures = (corner: Corner) => (same ? this.figures(corner) : figuresFor(own, corner));
    return {
      plan: own,
      circuit: withDeltas(own, wired, figures('reading')).circuit,
      figures: (corner) => withDeltas(own, wired, figures(corner)).figures,
    };
  }

  /** Wiring changes no figure. */
  private figures(corner: Corner): Figures {
    const found = this.known.get(corner) ?? figuresFor(this.study.plan, corner);
    this.known.set(corner, found);
    return found;
  }
}

function edited(circuit: WiredCircuit, faults: readonly Fault[]): WiredCircuit {
  return faults.reduce((c, f) => f.circuit?.(c) ?? c, circuit);
}
