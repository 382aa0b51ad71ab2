/** The truth table as data. */
import type * as z from 'zod';
import type { Frozen } from '../text/frozen.ts';
import type { inTimeSchema, momentSchema, rowSchema, tableSchema } from './table-schema.ts';

export type TableRow = Frozen<z.infer<typeof rowSchema>>;
/** One moment at which something changes. */
export type Moment = Frozen<z.infer<typeof momentSchema>>;
/** What runs when in time. */
export type InTime = Frozen<z.infer<typeof inTimeSchema>>;
export type TruthTable = Frozen<z.infer<typeof tableSchema>>;

/** What the row shows for a column; the parts' names are unique over inputs, relays and loads. */
export function cell(row: TableRow, name: string): string {
  return row.loads[name] ?? row.relays[name] ?? row.inputs[name] ?? '';
}

/** `collector ought to run`; empty where the row is as intended. */
export function deviationText(row: TableRow): string {
  const wrong = Object.entries(row.expected).filter(([name, want]) => cell(row, name) !== want);
  return wrong.map(([name, want]) => `${name} ought to ${want === 'runs' ? 'run' : `be ${want}`}`).join(', ');
}
