/**
 * The single-fault table as data: format 1 of `pullin faults --json`.
 * Made from `table-schema.ts` by `npm run generate`; changes go there.
 */
import type { Told } from '../../findings/report-types.ts';

/** One single failure */
export interface FaultRow {
  /** What fails: a part, a terminal, or a core with its two ends */
  readonly item: string;
  /** How it fails, as `likely` of a plan names it */
  readonly mode: string;
  /** The same in words */
  readonly failureMode: string;
  /** What the machine does */
  readonly effect: string;
  /** danger: mains where it must not be, an earth lost, or a load goes on although what must stop it does not; worse: the load is on the side that `if-supply-fails` keeps it off; loss: it is on the other; nuisance: only lamps, relays or outlets differ; none: nothing is seen */
  readonly severity: 'danger' | 'worse' | 'loss' | 'nuisance' | 'none';
  /** In which position, or by which reading, it shows */
  readonly detection: string;
  /** Nothing at the machine shows it */
  readonly silent: boolean;
  /** Some load does not run when it should */
  readonly off: boolean;
  /** Some load runs when it should not */
  readonly on: boolean;
  /** What in the design takes the effect away, tried in the plan; null where nothing that was tried does */
  readonly provision: string | null;
}

/** What `pullin faults --json` prints, format 1 */
export interface FaultTable {
  /** Number of the format; a number more where an old reader would go wrong */
  readonly format: 1;
  /** What the plan calls itself */
  readonly title: string;
  /** What `check` says of the plan that something else was made from */
  readonly check: Told;
  /** How many there are of each sort */
  readonly summary: {
    /** Failures in the table */
    readonly failures: number;
    /** Of these, how many keep a load off that should run */
    readonly off: number;
    /** How many make a load run that should not, or keep it running */
    readonly on: number;
    /** How many are of this class; the five classes add up to all failures */
    readonly danger: number;
    /** Of this class */
    readonly worse: number;
    /** Of this class */
    readonly loss: number;
    /** Of this class */
    readonly nuisance: number;
    /** Of this class */
    readonly none: number;
    /** How many nobody sees at the machine, of any class */
    readonly silent: number;
  };
  /** The gravest first, and of alike ones the likeliest */
  readonly rows: readonly FaultRow[];
}
