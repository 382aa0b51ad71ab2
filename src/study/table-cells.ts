/** What a row of the truth table shows, and what it ought to show. */
import type { TableRow } from './table-model.ts';

/** What the row shows for a column; the parts' names are unique over inputs, relays and loads. */
export function cell(row: TableRow, name: string): string {
  return row.loads[name] ?? row.relays[name] ?? row.inputs[name] ?? '';
}

/** `collector ought to run`; empty where the row is as intended. */
export function deviationText(row: TableRow): string {
  const wrong = Object.entries(row.expected).filter(([name, want]) => cell(row, name) !== want);
  return wrong.map(([name, want]) => `${name} ought to ${want === 'runs' ? 'run' : `be ${want}`}`).join(', ');
}
