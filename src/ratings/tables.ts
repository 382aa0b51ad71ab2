/**
 * What published tables say of parts and wires, and the arithmetic on it: judgements of figures. Nothing in this folder
 * knows a circuit, a state or a finding.
 *
 * `table-files.ts` is the one door to the tables. Each is a JSON file with its title, source, clause and units at its head;
 * it is looked at (and frozen) only when first asked for.
 */

import * as tables from './table-files.ts';
import type {
  MotorBranchRow,
  RowBase,
  SocketRuleRow,
  Table,
  TableStatus,
  UtilizationRow,
} from './table-rows.ts';

export * as tables from './table-files.ts';

export type TableName = keyof typeof tables;

/** Status of one cell: its own, else its column's, else its row's. */
export function cellStatus<R extends RowBase>(
  table: Table<R>,
  row: R,
  column: Extract<keyof R, string>,
): TableStatus {
  return row.cellStatus?.[column] ?? table.columnStatus?.[column] ?? row.status;
}

/** Making and breaking multiples of a category's rated current, from the capacity test. */
export function capacityOf(category: 'AC-1' | 'AC-3' | 'AC-4', ratedAmps: number): UtilizationRow {
  const row = tables
    .utilization()
    .rows.find(
      (r) =>
        r.category === category &&
        r.test === 'capacity' &&
        ratedAmps > r.above &&
        ratedAmps <= (r.upTo ?? Infinity),
    );
  // ratedAmps is never zero or below in a read plan; the first row serves if it is
  return row ?? tables.utilization().rows.find((r) => r.category === category)!;
}

/** Value of a motor branch rule by its name in the table, with its clause. */
export function branchRule(name: string): MotorBranchRow {
  const row = tables.motorBranch().rows.find((r) => r.name === name);
  if (row === undefined) throw new Error(`no motor branch rule named ${name}`);
  return row;
}

/** Multiple of a socket's rating that a rule of thumb names. */
export function socketRule(name: SocketRuleRow['name']): number {
  return tables.socketRules().rows.find((r) => r.name === name)!.value;
}
