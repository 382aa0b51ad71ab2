/**
 * The truth table as data, as `pullin table --json` prints it.
 * Made from `table-schema.ts` by `npm run generate`; changes go there.
 */

/** One position of everything that is moved by hand */
export interface TableRow {
  /** What was moved, `bandsaw open` */
  readonly label: string;
  /** The moves that lead there from rest, each in words; several where what is held decides */
  readonly moves: readonly string[];
  /** Position of each gate, switch, button and cut-out */
  readonly inputs: Readonly<Record<string, string>>;
  /** Position of each relay */
  readonly relays: Readonly<Record<string, string>>;
  /** What each load does */
  readonly loads: Readonly<Record<string, string>>;
  /** What the plan intends for each load (or relay); nothing where it allows both */
  readonly expected: Readonly<Record<string, string>>;
}

/** One moment at which something changes */
export interface Moment {
  /** What was moved, `planer open`; empty where only time has gone by */
  readonly move: string;
  /** s since the last move */
  readonly after: number;
  /** What each load does, and where each timer stands */
  readonly cells: Readonly<Record<string, string>>;
}

/** What runs when in time: moves one after the other, each once all before it has run out */
export interface InTime {
  /** Names of loads and timers */
  readonly columns: readonly string[];
  /** In the order of time */
  readonly rows: readonly Moment[];
}

/** What runs in which position */
export interface TruthTable {
  /** What the positions of the relays rest on. joins: nominal volts are ample, so what is joined settles it; volts: the volts of coils were solved in every state; some: in the states of this table alone; unknown: they were not, and what is joined alone says them */
  readonly rests: 'joins' | 'volts' | 'some' | 'unknown';
  /** Names of inputs, relays and loads in the order to print them */
  readonly columns: readonly string[];
  /** Rest first */
  readonly rows: readonly TableRow[];
  /** Of plans with timers only: moves one after the other, each once all before it has run out */
  readonly inTime?: InTime;
}
