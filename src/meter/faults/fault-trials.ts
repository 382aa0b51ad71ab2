/** Every fault of a plan tried at the machine: what is seen in each position, with as little work as that takes. */
import type { Source } from '../../circuit/circuit.ts';
import { joinedByMetal } from '../../machine/joined-nets.ts';
import { Machine, type MachineState } from '../../machine/machine.ts';
import type { Standing } from '../../machine/settle.ts';
import { kept } from '../../plan/map-entries.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { REST, type Stance, stanceOf } from '../stance.ts';
import { type Behaviour, behaviourOf } from './behaviour.ts';
import { type FaultyCircuit, FaultyCircuits } from './faulty-circuit.ts';
import { Hung } from './hung.ts';
import { type Difference, differenceOf, Touched } from './touched.ts';

/** Nets from which a circuit is cut down before it is put under power. */
const LARGE = 40;
/** Circuits put under power that are kept at hand. */
const KEPT = 16;

/** Moments up to which a way is followed; longer ones are taken to be touched by every fault. */
const MOST_MOMENTS = 24;

/** Where everything stands, and the plugs whose breaker has opened on the way there. */
interface Stood {
  readonly state: MachineState;
  readonly opened: readonly string[];
}

/** A circuit under power, put into one position after the other. A line that meets earth opens its breaker. */
export class Powered {
  private readonly machines = new Map<string, Machine>();
  private readonly stood = new Map<string, Stood>();

  /** Sources in `off` stay without power; `atRest` is where everything stands at rest, where that is known. */
  constructor(
    readonly made: FaultyCircuit,
    private readonly off: (source: Source) => boolean = () => false,
    private readonly atRest?: Standing,
  ) {}

  at(stance: Stance): MachineState {
    return this.standing(stance).state;
  }

  /** Where everything stands moment by moment on the way to a position, and there; none where it never comes to rest. */
  moments(stance: Stance): readonly MachineState[] {
    return kept(this.ways, stance.key, () => {
      const { state, opened } = this.standing(stance);
      const [before, from] = this.comingTo(stance);
      if (!state.settled || opened.length > 0 || before.length > 0) return [];
      const machine = this.machine([]);
      const moments: MachineState[] = [];
      for (let now: Standing = from; moments.length < MOST_MOMENTS; now = machine.after(moments.at(-1)!)) {
        if (moments.length > 0 && isSame(now, moments.at(-1)!)) return moments;
        moments.push(machine.state(state.moved, now, true));
      }
      return [];
    });
  }
  private readonly ways = new Map<string, readonly MachineState[]>();

  /** The breakers that have opened before, and how everything stands when a position is come to. */
  private comingTo(stance: Stance): readonly [readonly string[], Standing] {
    if (stance.key === REST.key) {
      const { relays, sources } = this.made.circuit;
      const alive = sources.map((s) => s.feed.by === 'always' && !this.off(s));
      return [[], { relays: relays.map(() => false), alive }];
    }
    const before = this.standing(stance.first.length > 0 ? stanceOf(stance.first) : REST);
    return [before.opened, before.state];
  }

  /** Plugs whose breaker has opened by then; each position is come to afresh. */
  openedAt(stance: Stance): readonly string[] {
    return this.standing(stance).opened;
  }

  /** Rest comes first, then what is worked and let go of, then the position asked for. */
  private standing(stance: Stance): Stood {
    return kept(this.stood, stance.key, () => {
      if (stance.key === REST.key)
        return this.atRest === undefined
          ? this.held([], this.machine([]).start([]))
          : { state: this.machine([]).state(new Set(), this.atRest, true), opened: [] };
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
  private readonly hung: Hung;
  private readonly differences = new Map<Fault, Difference | undefined>();
  private readonly powered = new Map<string, Powered>();
  private readonly rightLooks = new Map<string, Behaviour>();
  private readonly numbers = new Map<Fault, number>();

  constructor(readonly study: Study) {
    this.circuits = new FaultyCircuits(study);
    this.right = new Powered(this.circuits.right);
    this.touched = new Touched(study);
    this.hung = new Hung(this.circuits.subjects);
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
    if (!isWired(fault)) return true;
    const way = [REST, ...(stance.first.length > 0 ? [stanceOf(stance.first)] : []), stance];
    return way.some((s) => this.actsAt(fault, s));
  }

  /** The same of where it stands and of each moment on the way from the position before. */
  private actsAt(fault: Fault, stance: Stance): boolean {
    if (this.hung.spares(fault, stance)) return false;
    const moments = this.right.moments(stance);
    const difference = this.difference(fault);
    return moments.length === 0 || moments.some((m) => this.touched.by(difference, m));
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
    const near = this.circuits.near(faults, new Set([...stance.moved, ...stance.first]));
    return new Powered(near, undefined, this.restOf(faults));
  }

  /** Where relays and supplies stand at rest with a fault that changes nothing there; undefined where it may. */
  private restOf(faults: readonly Fault[]): Standing | undefined {
    const rest = this.right.at(REST);
    if (faults.length > 1 || !rest.settled || this.right.openedAt(REST).length > 0) return undefined;
    const same = faults.every((f) => isWired(f) && !this.actsAt(f, REST));
    return same ? rest : undefined;
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

/** Whether a fault leaves the parts as they are. */
function isWired({ plan, moved }: Fault): boolean {
  return plan === undefined || moved !== undefined;
}

function isSame(x: Standing, y: Standing): boolean {
  const like = (a: readonly boolean[], b: readonly boolean[]) => a.every((on, i) => on === b[i]);
  return like(x.relays, y.relays) && like(x.alive, y.alive);
}

function without(set: ReadonlySet<string>, out: ReadonlySet<string>): Set<string> {
  return new Set([...set].filter((x) => !out.has(x)));
}
