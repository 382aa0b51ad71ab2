/** A plan under power whose inputs are moved one after the other, as at the machine. */
import type { Circuit, Input } from '../circuit/circuit.ts';
import type { Basis } from '../study/basis.ts';
import { type ContactOnTheWay, contactsTo } from './contacts-on-the-way.ts';
import { IntendedStates, type Remembered } from './intended-state.ts';
import type { Machine, MachineState } from './machine.ts';
import { poweredMachine } from './power.ts';
import { type StateView, stateView } from './state-view.ts';

export class Walk {
  readonly inputs: readonly Input[];
  private readonly circuit: Circuit;
  private readonly machine: Machine;
  private readonly intended: IntendedStates;
  /** loads, and whatever else an intent speaks of */
  readonly targets: readonly string[];
  private state: MachineState;
  private remembered: Remembered = 0;
  private away: readonly number[] = [];

  /** `arming` as `isArming` of the plan's proof has it. */
  constructor(
    private readonly study: Basis,
    arming: boolean,
  ) {
    this.circuit = study.circuit;
    this.inputs = this.circuit.inputs;
    this.machine = poweredMachine(study);
    this.intended = new IntendedStates(this.circuit, arming);
    this.state = this.machine.start([]);
    this.remembered = this.intended.after(0, []);
    const loads = this.circuit.consumers.filter((c) => c.kind !== 'outlet').map((c) => c.part);
    this.targets = [...new Set([...this.intended.at(0, []).keys(), ...loads])];
  }

  /** Numbers of the inputs away from rest, ascending. */
  get moved(): readonly number[] {
    return this.away;
  }

  /** Moves one input to its other position; a selector turned to one position leaves its others. */
  toggle(input: number): void {
    const { part } = this.inputs[input]!;
    const others = this.away.filter((i) => this.inputs[i]!.part !== part);
    this.moveTo(this.away.includes(input) ? others : [...others, input]);
  }

  /** Puts one part back to rest. */
  release(part: string): void {
    this.moveTo(this.away.filter((i) => this.inputs[i]!.part !== part));
  }

  /** Puts every input where it is said to be, in one move. */
  moveTo(moved: readonly number[]): void {
    this.away = [...moved].sort((a, b) => a - b);
    this.state = this.machine.moveTo(this.away, this.state);
    this.remembered = this.intended.after(this.remembered, this.away);
  }

  /** Takes the power off and puts it on again: nothing holds itself any more. */
  repower(): void {
    this.state = this.machine.start(this.away);
    this.remembered = this.intended.after(0, this.away);
  }

  view(): StateView {
    const wanted = this.intended.at(this.remembered, this.away);
    return stateView(
      this.study.plan,
      this.state,
      new Map(this.targets.map((t) => [t, wanted.get(t) ?? null])),
    );
  }

  /** The contacts that current to a load, or to the coil of a relay, can pass; none for a part that is neither. */
  contactsTo(part: string): ContactOnTheWay[] {
    const relay = this.circuit.relays.find((r) => r.part === part);
    const consumer = this.circuit.consumers.find((c) => c.part === part);
    const nets = relay ? relay.senses.flatMap((s) => [s.a, s.b]) : [...(consumer?.nets.values() ?? [])];
    return contactsTo(this.circuit, this.state.situation, nets).filter((c) => c.part !== part);
  }
}
