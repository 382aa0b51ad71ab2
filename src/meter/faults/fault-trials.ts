/** Every fault of a plan tried at the machine: what is seen in each position, with as little work as that takes. */
import type { Source } from '../../circuit/circuit.ts';
import { joinedByMetal } from '../../machine/joined-nets.ts';
import { Machine, type MachineState } from '../../machine/machine.ts';
import { kept } from '../../plan/map-entries.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { REST, type Stance, stanceOf } from '../stance.ts';
import { type Behaviour, behaviourOf } from './behaviour.ts';
import { type FaultyCircuit, FaultyCircuits } from './faulty-circuit.ts';
import { type Difference, differenceOf, Touched } from './touched.ts';

/** Nets from which a circuit is cut down before it is put under power. */
const LARGE = 40;
/** Circuits put under power that are kept at hand. */
const KEPT = 16;

/** Where everything stands, and the plugs whose breaker has opened on the way there. */
interface Stood {
  readonly state: MachineState;
  readonly opened: readonly string[];
}

/** A circuit under power, put into one position after the other. A line that meets earth opens its breaker. */
export class Powered {
  private readonly machines = new Map<string, Machine>();
  private readonly stood = new Map<string, Stood>();

  /** Sources in `off` stay without power. */
  constructor(
    readonly made: FaultyCircuit,
    private readonly off: (source: Source) => boolean = () => false,
  ) {}

  at(stance: Stance): MachineState {
    return this.standing(stance).state;
  }

  /** Plugs whose breaker has opened by then; each position is come to afresh. */
  openedAt(stance: Stance): readonly string[] {
    return this.standing(stance).opened;
  }

  /** Rest comes first, then what is worked and let go of, then the position asked for. */
  private standing(stance: Stance): Stood {
    return kept(this.stood, stance.key, () => {
      if (stance.key === REST.key) return this.held([], this.machine([]).start([]));
      const before = this.standing(stance.first.length > 0 ? stanceOf(stance.first) : REST);
      return this.held(before.opened, this.machine(before.opened).moveTo(stance.moved, before.state));
    });
  }

  /** What is left on once every line that meets earth has opened its breaker. */
  private held(opened: readonly string[], state: MachineState): Stood {
    const shorted = earthed(state).filter((part) => !opened.includes(part));
    if (shorted.length === 0) return { state, opened };
    const all = [...opened, ...shorted];
    return this.held(all, this.machine(all).moveTo([...state.moved], state));
  }

  private machine(opened: readonly string[]): Machine {
    const off = (s: Source) => this.off(s) || opened.includes(s.part);
    return kept(
      this.machines,
      opened.join(),
      () => new Machine(this.made.circuit, this.made.figures('reading'), off),
    );
  }
}

/** Plugs that are on and have a line on the earth of some plug, by metal alone. */
function earthed({ circuit, situation }: MachineState): string[] {
  const earths = circuit.sources.flatMap((s) => circuit.netOf.get(terminalKey(s.part, 'PE')) ?? []);
  if (earths.length === 0) return [];
  const joined = joinedByMetal(circuit, situation);
  return circuit.sources.flatMap((s) =>
    s.mains && situation.alive(s) && s.rails.some((r) => r.live && earths.some((e) => joined(e, r.net)))
      ? [s.part]
      : [],
  );
}

export class FaultTrials {
  readonly circuits: FaultyCircuits;
  readonly right: Powered;
  private readonly touched: Touched;
  private readonly differences = new Map<Fault, Difference | undefined>();
  private readonly powered = new Map<string, Powered>();
  private readonly rightLooks = new Map<string, Behaviour>();
  private readonly numbers = new Map<Fault, number>();

  constructor(readonly study: Study) {
    this.circuits = new FaultyCircuits(study);
    this.right = new Powered(this.circuits.right);
    this.touched = new Touched(study);
  }

  /** What is seen of the right circuit. */
  rightly(stance: Stance): Behaviour {
    return kept(this.rightLooks, stance.key, () =>
      behaviourOf(this.study.plan, this.right.at(stance), new Set()),
    );
  }

  /** What is seen with these faults; undefined where that is not worked out. */
  seen(faults: readonly Fault[], stance: Stance): Behaviour | undefined {
    if (faults.some((f) => f.untold)) return undefined;
    const still = new Set(faults.flatMap((f) => f.still ?? []));
    const acting = faults.length > 1 ? faults : faults.filter((f) => this.acts(f, stance));
    if (acting.length === 0) {
      const right = this.rightly(stance);
      return still.size === 0 ? right : { ...right, runs: without(right.runs, still) };
    }
    const powered = this.nearPower(acting, stance);
    const seen = behaviourOf(powered.made.plan, powered.at(stance), still);
    const opened = powered.openedAt(stance);
    return opened.length === 0 ? seen : { ...seen, strained: new Set([...seen.strained, ...opened]) };
  }

  /** Whether a fault can change anything on the way to a position, or there. */
  acts(fault: Fault, stance: Stance): boolean {
    if (fault.still !== undefined) return false;
    if (fault.plan !== undefined && fault.moved === undefined) return true;
    const difference = this.difference(fault);
    const way = [REST, ...(stance.first.length > 0 ? [stanceOf(stance.first)] : []), stance];
    return way.some((s) => this.touched.by(difference, this.right.at(s)));
  }

  /** The circuit with these faults, under power. */
  underPower(faults: readonly Fault[]): Powered {
    if (faults.length === 0) return this.right;
    const key = faults.map((f) => this.number(f)).join();
    const found = this.powered.get(key);
    if (found) return found;
    if (this.powered.size >= KEPT) this.powered.clear();
    const made = new Powered(this.circuits.with(faults));
    this.powered.set(key, made);
    return made;
  }

  /** The same, cut down to what decides in one position, where that is worth it. */
  private nearPower(faults: readonly Fault[], stance: Stance): Powered {
    if (this.study.wired.netCount < LARGE) return this.underPower(faults);
    return new Powered(this.circuits.near(faults, new Set([...stance.moved, ...stance.first])));
  }

  private number(fault: Fault): number {
    return kept(this.numbers, fault, () => this.numbers.size);
  }

  private difference(fault: Fault): Difference | undefined {
    if (!this.differences.has(fault))
      this.differences.set(fault, differenceOf(this.right.made.circuit, this.circuits.with([fault]).circuit));
    return this.differences.get(fault);
  }
}

function without(set: ReadonlySet<string>, out: ReadonlySet<string>): Set<string> {
  return new Set([...set].filter((x) => !out.has(x)));
}
