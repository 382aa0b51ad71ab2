/** The truth table as data. */

export interface TableRow {
  /** what was moved, `bandsaw open` */
  readonly label: string;
  /** the moves that lead there from rest, each in words; several where what is held decides */
  readonly moves: readonly string[];
  /** position of each input */
  readonly inputs: Readonly<Record<string, string>>;
  /** whether each relay is in */
  readonly relays: Readonly<Record<string, string>>;
  /** whether each load runs */
  readonly loads: Readonly<Record<string, string>>;
  /** what the plan intends for each load (or relay); nothing where it allows both */
  readonly expected: Readonly<Record<string, string>>;
}

/** One moment at which something changes. */
export interface Moment {
  /** what was moved, `planer open`; empty where only time has gone by */
  readonly move: string;
  /** s since the last move */
  readonly after: number;
  /** what each load does, and where each timer stands */
  readonly cells: Readonly<Record<string, string>>;
}

/** What runs when in time: moves one after the other, each once everything before it has run out. */
export interface InTime {
  /** names of loads and timers */
  readonly columns: readonly string[];
  /** in the order of time */
  readonly rows: readonly Moment[];
}

/** What runs in which position. */
export interface TruthTable {
  /** what the positions of the relays rest on, as in `Nominal`; of `unknown` volts what is joined alone says them */
  readonly rests: 'joins' | 'volts' | 'some' | 'unknown';
  /** names of inputs, relays and loads in the order to print them */
  readonly columns: readonly string[];
  /** rest first */
  readonly rows: readonly TableRow[];
  /** of plans with timers only */
  readonly inTime?: InTime;
}

/** What the row shows for a column; the parts' names are unique over inputs, relays and loads. */
export function cell(row: TableRow, name: string): string {
  return row.loads[name] ?? row.relays[name] ?? row.inputs[name] ?? '';
}

/** `collector ought to run`; empty where the row is as intended. */
export function deviationText(row: TableRow): string {
  const wrong = Object.entries(row.expected).filter(([name, want]) => cell(row, name) !== want);
  return wrong.map(([name, want]) => `${name} ought to ${want === 'runs' ? 'run' : `be ${want}`}`).join(', ');
}
