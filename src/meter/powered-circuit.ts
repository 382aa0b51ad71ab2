/** A circuit with some of its supplies on, put into one position after the other and read with a voltmeter. */
import type { WiredCircuit } from '../circuit/build.ts';
import type { Source } from '../circuit/circuit.ts';
import type { Figures } from '../electric/island.ts';
import { Machine, type MachineState } from '../machine/machine.ts';
import { Voltmeter } from '../machine/voltmeter.ts';
import { kept } from '../plan/map-entries.ts';
import { REST, type Stance, stanceOf } from './stance.ts';

/** V: signed for DC, RMS for AC; kind null where no supply that is on reaches the two. */
export interface Volts {
  readonly volts: number;
  readonly kind: 'dc' | 'ac' | null;
}

/** Moments of a round of relays that never rest up to which it is followed. */
const LONGEST_ROUND = 16;

export class PoweredCircuit {
  private made: Machine | undefined;
  private readonly meters = new Map<string, Voltmeter>();

  /** Sources in `off` stay without power. */
  constructor(
    private readonly circuit: WiredCircuit,
    private readonly figures: Figures,
    private readonly off: (source: Source) => boolean,
  ) {}

  private get machine(): Machine {
    this.made ??= new Machine(this.circuit, this.figures, this.off);
    return this.made;
  }

  /** undefined where it cannot be told. */
  volts(stance: Stance, a: string, b: string): Volts | undefined {
    return this.read(this.at(stance), a, b);
  }

  /** The same position of everything with other figures. */
  withFigures(stance: Stance, figures: Figures): (a: string, b: string) => Volts | undefined {
    const meter = this.at(stance).withFigures(figures);
    return (a, b) => this.read(meter, a, b);
  }

  /**
   * Which relays are in; undefined where they never come to rest, and where a supply that is on reaches one of these
   * terminals, at which a meter on ohms tells nothing.
   */
  relaysAt(stance: Stance, ...keys: readonly string[]): readonly boolean[] | undefined {
    const { state, tied } = this.at(stance);
    if (!state.settled) return undefined;
    const reached = (key: string) => {
      const net = this.circuit.netOf.get(key);
      return net !== undefined && tied.reachedByPower(net);
    };
    return keys.some(reached) ? undefined : state.relays;
  }

  /**
   * The reading at each moment of the round that relays go which never come to rest; none where they rest, or where the
   * round does not close.
   */
  moments(stance: Stance, a: string, b: string): readonly (Volts | undefined)[] {
    const { state } = this.at(stance);
    if (state.settled) return [];
    const round = kept(this.rounds, stance.key, () => this.roundOf(state));
    return round.map((meter) => this.momentary(meter, a, b));
  }
  private readonly rounds = new Map<string, readonly Voltmeter[]>();

  private roundOf(start: MachineState): Voltmeter[] {
    const same = (x: readonly boolean[], y: readonly boolean[]) => x.every((on, i) => on === y[i]);
    const round = [start];
    while (round.length <= LONGEST_ROUND) {
      const next = this.machine.after(round.at(-1)!);
      if (same(next.relays, start.relays) && same(next.alive, start.alive))
        return round.map((state) => new Voltmeter(state));
      round.push(next);
    }
    return [];
  }

  private read(meter: Voltmeter, a: string, b: string): Volts | undefined {
    return meter.state.settled ? this.momentary(meter, a, b) : undefined;
  }

  private momentary(meter: Voltmeter, a: string, b: string): Volts | undefined {
    const { volts, kind } = meter.readOneOfMany(this.circuit.netOf.get(a), this.circuit.netOf.get(b));
    return volts === null ? undefined : { volts, kind };
  }

  /** Rest comes first, then what is worked and let go of, then the position that is read. */
  private at(stance: Stance): Voltmeter {
    return kept(this.meters, stance.key, () => {
      if (stance.key === REST.key) return new Voltmeter(this.machine.start([]));
      const before = stance.first.length > 0 ? stanceOf(stance.first) : REST;
      return new Voltmeter(this.machine.moveTo(stance.moved, this.at(before).state));
    });
  }
}
