/**
 * All that can be known of a plan, worked out when it is first asked for and then kept. Every product takes a Study, so
 * a plan is proved once a run. Nothing here says what is right or wrong, and nothing here words a report.
 */
import { buildCircuit, buildWiredCircuit, type WiredCircuit } from '../circuit/build.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { findSides, type Sides } from '../circuit/sides.ts';
import { Undecided } from '../logic/undecided.ts';
import { type Verified, verify } from '../logic/verify.ts';
import type { Plan } from '../plan/plan.ts';
import type { Basis } from './basis.ts';
import { type CoilState, coilStates } from './coil-states.ts';
import { Electrics } from './electrics.ts';
import { type FedCoil, fedCoils } from './fed-coils.ts';
import { atNominalVolts, type Nominal } from './nominal.ts';
import type { TruthTable } from './table-model.ts';
import { truthTable } from './truth-table.ts';

/** What the exact method came to: the proof, or why it gave up. */
type Decision = { readonly verified: Verified } | { readonly undecided: string };

/** What one Study hands to the next. */
interface Known {
  readonly moves?: ReadonlyMap<string, string>;
  readonly circuit?: Circuit;
  readonly wired?: WiredCircuit;
  readonly sides?: Sides;
  readonly decision?: Decision;
}

/** Immutable: what is asked twice is worked out once. */
export class Study implements Basis {
  readonly #known: Known;
  readonly #made = new Map<string, unknown>();

  private constructor(
    readonly plan: Plan,
    known: Known,
  ) {
    this.#known = known;
  }

  static of(plan: Plan): Study {
    return new Study(plan, {});
  }

  /** The same plan with ends of cores on other terminals; keys are those of `endKey`, values `PART.TERMINAL`. */
  rewired(moves: ReadonlyMap<string, string>): Study {
    return new Study(this.plan, { moves });
  }

  /**
   * A plan in which figures of parts or lengths of runs differ and nothing else: the same parts of the same kinds, contacts,
   * wiring and pull-in volts. What is joined to what and what conducts do not depend on such figures, so the proof stays.
   */
  withFigures(plan: Plan): Study {
    const circuit = { ...this.circuit, plan };
    const decision = this.#decision;
    return new Study(plan, {
      circuit,
      ...(this.#made.has('wired') && { wired: withLengths({ ...this.wired, plan }) }),
      sides: this.sides,
      decision: 'verified' in decision ? { verified: { ...decision.verified, circuit } } : decision,
    });
  }

  /** The same plan with its proof given up, since a check of it needed more than the method allows. */
  givenUp(undecided: string): Study {
    return new Study(this.plan, { circuit: this.circuit, sides: this.sides, decision: { undecided } });
  }

  #once<T>(name: string, make: () => T): T {
    if (!this.#made.has(name)) this.#made.set(name, make());
    return this.#made.get(name) as T;
  }

  /** The circuit with whole conductors as nets. */
  get circuit(): Circuit {
    const { circuit, moves } = this.#known;
    return this.#once('circuit', () => circuit ?? buildCircuit(this.plan, moves && { moves }));
  }

  /** The circuit with its cores apart: one net an end. Not of a rewired study, which only asks what conducts. */
  get wired(): WiredCircuit {
    return this.#once('wired', () => this.#known.wired ?? buildWiredCircuit(this.plan));
  }

  /** The same with every link apart as well, a wire of no length. */
  get linksApart(): WiredCircuit {
    return this.#once('linksApart', () => buildWiredCircuit(this.plan, 'all'));
  }

  /** Which nets are mains, low voltage and earth. */
  get sides(): Sides {
    return this.#once('sides', () => this.#known.sides ?? findSides(this.circuit));
  }

  get #decision(): Decision {
    return this.#once('decision', () => this.#known.decision ?? decide(this.circuit));
  }

  /** What was proved; undefined where the exact method would not end, and then `undecided` says why. */
  get verified(): Verified | undefined {
    const decision = this.#decision;
    return 'verified' in decision ? decision.verified : undefined;
  }

  get undecided(): string | undefined {
    const decision = this.#decision;
    return 'undecided' in decision ? decision.undecided : undefined;
  }

  /** Solvers of the circuit with its cores apart; none where nothing was decided. */
  get electrics(): Electrics | undefined {
    const { verified } = this;
    return verified && this.#once('electrics', () => new Electrics(this, verified));
  }

  /** Every coil with the source that can feed it; none where nothing was decided. */
  get fedCoils(): readonly FedCoil[] {
    return this.#once('fedCoils', () => fedCoils(this));
  }

  /** Coils whose kind of current suits their supply, with what they get for every gate. */
  get coilStates(): readonly CoilState[] {
    return this.#once('coilStates', () => coilStates(this.plan, this.fedCoils, this.electrics));
  }

  /** What every relay does at nominal volts, which is what it does for every product; none where nothing was decided. */
  get nominal(): Nominal | undefined {
    const { verified, electrics, coilStates } = this;
    if (!verified || !electrics) return undefined;
    return this.#once('nominal', () => atNominalVolts({ verified, electrics, coilStates }));
  }

  /** The states a person would try; with `all`, every combination. Throws Undecided, and TooManyInputs for `all`. */
  truthTable(options: { readonly all: boolean }): TruthTable {
    return this.#once(options.all ? 'whole table' : 'table', () => truthTable(this, options));
  }
}

/** A plan ready to be asked for anything; every product of the library takes one. */
export function study(plan: Plan): Study {
  return Study.of(plan);
}

/** The circuit with its wires as long as its plan says. */
function withLengths(wired: WiredCircuit): WiredCircuit {
  const { runs } = wired.plan;
  const same = wired.wires.every((w) => w.metres === (runs[w.run]!.length ?? 0));
  if (same) return wired;
  return { ...wired, wires: wired.wires.map((w) => ({ ...w, metres: runs[w.run]!.length ?? 0 })) };
}

/** The proof of a plan, for which this is the one place that asks. */
function decide(circuit: Circuit): Decision {
  try {
    return { verified: verify(circuit) };
  } catch (error) {
    if (!(error instanceof Undecided)) throw error;
    return { undecided: error.message };
  }
}
