/** A truth table in which gates of a zone that all do alike stand in one column and one row. */
import { record } from '../plan/map-entries.ts';
import type { TableRow, TruthTable } from './table-model.ts';
import type { Zone } from './zones.ts';

/** Inputs up to which each has a column of its own. */
const FEW_INPUTS = 24;

/** A row, and the rows of the whole table that it stands for: one, or one a gate of a zone. */
export interface FoldedRow extends TableRow {
  readonly of: readonly TableRow[];
}

export interface FoldedTable extends TruthTable {
  readonly rows: readonly FoldedRow[];
  /** relays whose gates stand together */
  readonly folded: readonly string[];
}

/**
 * What the rows of single gates say stays in `of`. A zone is folded where each of its gates alone makes the same of every relay and
 * load, and is meant to.
 */
export function foldedTable(table: TruthTable, zones: readonly Zone[]): FoldedTable {
  const whole = table.rows.map((row): FoldedRow => ({ ...row, of: [row] }));
  const inputs = Object.keys(table.rows[0]?.inputs ?? {});
  const alike = inputs.length <= FEW_INPUTS ? [] : zones.filter((z) => isAlike(table, z));
  if (alike.length === 0) return { ...table, rows: whole, folded: [] };
  const zoneOf = new Map(alike.flatMap((z) => z.gates.map((g) => [g, z] as const)));
  const columns = [...new Set(table.columns.map((c) => nameOf(zoneOf, c)))];
  const rows: FoldedRow[] = [];
  const known = new Map<Zone, number>();
  for (const row of table.rows) {
    const zone = zoneAlone(zoneOf, row);
    const at = zone && known.get(zone);
    if (at !== undefined) rows[at] = { ...rows[at]!, of: [...rows[at]!.of, row] };
    else {
      if (zone) known.set(zone, rows.length);
      const label = zone ? `any gate of ${zone.relay} alone` : row.label;
      rows.push({ ...row, label, inputs: inputsOf(alike, zoneOf, row, zone), of: [row] });
    }
  }
  return { ...table, columns, rows, folded: alike.map((z) => z.relay) };
}

const nameOf = (zoneOf: ReadonlyMap<string, Zone>, column: string): string => {
  const zone = zoneOf.get(column);
  return zone ? `gates of ${zone.relay}` : column;
};

const isAloneRow = (row: TableRow, gate: string): boolean => row.label === `${gate} alone`;

function zoneAlone(zoneOf: ReadonlyMap<string, Zone>, row: TableRow): Zone | undefined {
  const gate = / alone$/.test(row.label) ? row.label.slice(0, -' alone'.length) : '';
  return zoneOf.get(gate);
}

function isAlike({ rows }: TruthTable, zone: Zone): boolean {
  const own = zone.gates.map((g) => rows.filter((row) => isAloneRow(row, g)));
  if (own.some((r) => r.length !== 1)) return false;
  const says = own.map(([row]) => JSON.stringify([row!.relays, row!.loads, row!.expected]));
  return new Set(says).size === 1;
}

/** The words of inputs; those of a zone in one: what all of them are, else which differ from the most. */
function inputsOf(
  zones: readonly Zone[],
  zoneOf: ReadonlyMap<string, Zone>,
  row: TableRow,
  alone: Zone | undefined,
): Record<string, string> {
  const inputs = record(Object.entries(row.inputs).filter(([name]) => !zoneOf.has(name)));
  for (const zone of zones) {
    const words = zone.gates.map((g) => row.inputs[g]!);
    const moved = zone.gates.filter((g) => row.inputs[g] === 'open');
    const all = new Set(words).size === 1;
    inputs[nameOf(zoneOf, zone.gates[0]!)] =
      zone === alone ? 'one open' : all ? words[0]! : `${moved.join(', ')} open`;
  }
  return inputs;
}
