/** A circuit on the bench, right or with one fault, ready to be measured. */

import type { WiredCircuit } from '../circuit/build.ts';
import { Ohmmeter } from '../machine/ohmmeter.ts';
import { plugsOut } from '../machine/power.ts';
import type { Plan } from '../plan/plan.ts';
import { figuresFor } from '../study/corner-figures.ts';
import { withDeltas } from '../study/mains/three-phase.ts';
import { Study } from '../study/study.ts';
import type { Fault } from './fault.ts';
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

/** Makes subjects of one plan; what the plan alone decides is worked out once. */
export function subjects(study: Study): {
  readonly right: Subject;
  build(fault: Fault): Subject;
} {
  const { plan, wired: right } = study;
  const reading = figuresFor(plan, 'reading');
  const ohmmeter = figuresFor(plan, 'ohmmeter');
  const off = plugsOut(plan, right);
  const make = (circuit: WiredCircuit, own: Plan, fault?: Fault): Subject => {
    const change = fault?.circuit ?? ((c: WiredCircuit) => c);
    // Wiring changes no figure; another part brings its own.
    const figures = own.parts === plan.parts ? reading : figuresFor(own, 'reading');
    const live = withDeltas(own, circuit, figures);
    const dead = withDeltas(own, circuit, ohmmeter);
    const on = change(live.circuit);
    return {
      circuit: on,
      dead: new Ohmmeter(unpluggedCircuit(change(dead.circuit)), dead.figures),
      loop: new PoweredCircuit(on, live.figures, off),
      mains: new PoweredCircuit(on, live.figures, () => false),
    };
  };
  return {
    right: make(right, plan),
    build: (fault) => {
      const own = fault.plan?.(plan) ?? plan;
      return make(own === plan ? right : Study.of(own).wired, own, fault);
    },
  };
}
