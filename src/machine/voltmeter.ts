/** A meter on volts: what it reads between two nets of a circuit under power. */
import { type Figures, islandOf } from '../electric/island.ts';
import { isOn, type SolvedIsland, solveLimited } from '../study/supply-limits.ts';
import { EarthVolts } from './earth-volts.ts';
import { TiedNets } from './joined-nets.ts';
import type { MachineState } from './machine.ts';

/** ohm of a multimeter on volts; common practice. */
const METER_OHMS = 1e7;

export interface VoltsRead {
  /** V at the first net against the second: signed for DC, RMS for AC; null where it cannot be told */
  readonly volts: number | null;
  /** null where no supply that is on reaches the two */
  readonly kind: 'dc' | 'ac' | null;
  /** what the number does not say, as a sentence */
  readonly remark: string | undefined;
  /** the island it was worked out in, where one was */
  readonly island: SolvedIsland | undefined;
}

export const ONE_METAL = 'Both terminals are one piece of metal.';
const LOOSE =
  'Nothing joins the two, so the meter reads nothing that lasts; a sensitive one may show stray volts.';
const BEYOND =
  'Nothing in the plan joins the two, but one of them is on mains, and mains meets earth beyond its plug: the meter may show anything up to full mains.';

/** Rounding of the arithmetic, against a value of this size, is nothing. */
export function withoutRounding(value: number, scale: number): number {
  return Math.abs(value) < 1e-9 * scale ? 0 : value;
}

/** The meter, put between any two nets while everything stands as it does in one state. */
export class Voltmeter {
  private islands: readonly SolvedIsland[] | undefined;
  private earth: EarthVolts | undefined;

  constructor(
    readonly state: MachineState,
    private readonly figures: Figures = state.figures,
    readonly tied: TiedNets = new TiedNets(state),
  ) {}

  /** The same position of everything with other figures. */
  withFigures(figures: Figures): Voltmeter {
    return new Voltmeter(this.state, figures, this.tied);
  }

  /** The reading between two nets, undefined for a terminal that nothing is wired to. */
  read(a: number | undefined, b: number | undefined): VoltsRead {
    return this.toEarth(a, b) ?? this.untied(a, b) ?? this.across(this.withMeter(a!, b!), a!, b!);
  }

  /** Between the earth of a plug whose middle is earthed and what that plug's legs reach; undefined for any other two. */
  private toEarth(a: number | undefined, b: number | undefined): VoltsRead | undefined {
    if (a === undefined || b === undefined || this.tied.joined(a, b)) return undefined;
    this.earth ??= new EarthVolts(this.state, this.figures, () => this.solved());
    const found = this.earth.between(a, b) ?? this.earth.between(b, a);
    return found && { ...found, kind: 'ac', remark: undefined };
  }

  /**
   * The reading where many are asked for. What hangs together is solved once without the meter, which takes next to
   * nothing; it is put in only where nothing else ties the two to each other.
   */
  readOneOfMany(a: number | undefined, b: number | undefined): VoltsRead {
    const untied = this.toEarth(a, b) ?? this.untied(a, b);
    if (untied) return untied;
    if (!this.tied.reachedByPower(a!)) return NOTHING;
    this.islands ??= this.solved();
    const island = this.islands.find(({ flows }) => flows.volts(a!, b!) !== undefined);
    return this.across(island ?? this.withMeter(a!, b!), a!, b!);
  }

  private solved(): readonly SolvedIsland[] {
    const { figures, state } = this;
    const { machine, situation } = state;
    return figures === machine.figures ? machine.solved(situation) : machine.solvedWith(figures, situation);
  }

  /** What is read where no current can pass between the two, or where they are one; undefined where one can. */
  private untied(a: number | undefined, b: number | undefined): VoltsRead | undefined {
    if (a !== undefined && a === b) return { ...NOTHING, remark: ONE_METAL };
    if (a !== undefined && b !== undefined && this.tied.joined(a, b)) return undefined;
    // Mains meets earth somewhere beyond its plug, and so may meet the other.
    const onMains = [a, b].some(
      (net) => net !== undefined && this.tied.reachedByPower(net, (s) => s.mains && s.feed.by === 'always'),
    );
    return { ...NOTHING, volts: onMains ? null : 0, remark: onMains ? BEYOND : LOOSE };
  }

  /** The island of both nets with the meter between them. */
  private withMeter(a: number, b: number): SolvedIsland {
    const { figures } = this;
    const { circuit, situation } = this.state;
    const meter = { a, b, part: '', what: 'resistor' } as const;
    const parts = { ...circuit, passives: [...circuit.passives, meter] };
    const metered: Figures = {
      ...figures,
      passive: (p, on) => (p === meter ? { re: METER_OHMS, im: 0 } : figures.passive(p, on)),
    };
    return solveLimited(circuit.plan, islandOf(parts, [a, b]), metered, situation);
  }

  private across(island: SolvedIsland, a: number, b: number): VoltsRead {
    if (island.notWorkedOut !== undefined)
      return { volts: null, kind: null, remark: island.notWorkedOut, island };
    const v = island.flows.volts(a, b)!;
    const { situation } = this.state;
    const live = island.flows.island.sources.some((s) => isOn(island, situation, s));
    const kind = live ? (island.ac ? 'ac' : 'dc') : null;
    return { volts: kind === 'ac' ? Math.hypot(v.re, v.im) : v.re, kind, remark: undefined, island };
  }
}

const NOTHING: VoltsRead = { volts: 0, kind: null, remark: undefined, island: undefined };
