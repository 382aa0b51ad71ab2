/** A that a conductor carries where it lies, by the tables of each practice. */
import type { Practice } from '../plan/device-figures.ts';
import type { Cable } from '../plan/plan.ts';
import { defaults } from './defaults.ts';
import type { AmbientFactorRow, LaidConductorRow } from './protection-rows.ts';
import * as tables from './table-files.ts';
import type { CordNecRow, RowBase, TableStatus } from './table-rows.ts';
import { cellStatus } from './tables.ts';
import { gaugeWithin, SAME_AREA } from './wire.ts';

/** What is known of the place of a conductor. */
export interface Laid {
  readonly practice: Practice;
  /** °C of the warmest air, where the plan says so */
  readonly ambient?: number | undefined;
  /** °C the terminals at its ends are marked for, where the plan says so */
  readonly terminal?: number | undefined;
  /** loaded conductors in its cable */
  readonly loaded: number;
  /** both its ends lie within one box */
  readonly inBox: boolean;
  /** a cord from a plug, which goes by the table of cords alone */
  readonly appliance?: boolean;
}

/**
 * What a plan leaves open, or a table: the air, the insulation, the class of the fuse ahead, the way of laying, and a row
 * that is known from memory alone. Each is taken at its worse end or, where its key is true, at its better end.
 */
export type Open = 'ambient' | 'rated' | 'class' | 'laying' | 'memory';
export type Better = Readonly<Record<Open, boolean>>;

/** A, 0 for a conductor thinner than any in the table; infinite where the table ends below it and is taken at its better end. */
export interface Carried {
  readonly amps: number;
  readonly basis: string;
}

/** °C that the tables of current are made for. */
const TABLE_AIR = 30;

function airOf({ ambient }: Laid, better: boolean): number {
  return ambient ?? (better ? TABLE_AIR : defaults.ambient.value);
}

/** A cord to be moved; a single flexible core is wire of a panel. */
export const isCord = (cable: Cable): boolean => cable.flexible && cable.cores > 1;

const insulationOf = (cable: Cable, better: boolean): number => cable.rated ?? (better ? 90 : 60);

/** Factor of the air by the greatest listed insulation that is no better; above the last row 0. */
function ambientFactor(rule: AmbientFactorRow['rule'], rated: number, air: number): number {
  const rows = tables.ambientFactors().rows.filter((r) => r.rule === rule);
  const listed = Math.max(...rows.filter((r) => r.rated <= rated).map((r) => r.rated));
  return rows.find((r) => r.rated === listed && r.upTo >= air)?.factor ?? 0;
}

/** NEC Tables 310.15(C)(1) and 400.5(A)(3). */
function countFactor(rule: 'nec' | 'nec-cord', loaded: number): number {
  return tables.loadedCores().rows.findLast((r) => r.rule === rule && r.from <= loaded)?.factor ?? 1;
}

const SEEN: Readonly<Record<TableStatus, string>> = {
  verified: '',
  'one-source': ' (seen in one copy)',
  memory: ' (from memory)',
};

function words(table: string, status: TableStatus, factor: number, air: number): string {
  return `${table}${SEEN[status]}${factor === 1 ? '' : `, times ${Number(factor.toFixed(3))} in air of ${air} °C`}`;
}

/** NEC Table 400.5(A)(1) with the factors of 400.5(A). */
export function cordNec(cable: Cable, laid: Laid, better: Better): Carried {
  const table = tables.cordAmpacityNec();
  const column = laid.loaded >= 3 ? 'threePhase' : 'singlePhase';
  const name = `NEC Table 400.5(A)(1), column ${laid.loaded >= 3 ? 'A' : 'B'}`;
  const gauge = gaugeWithin(
    cable,
    table.rows.map((r) => r.awg),
  );
  if (gauge === 'thinner') return { amps: 0, basis: `${name}: begins at 18 AWG` };
  if (gauge === 'thicker' && better.memory)
    return { amps: Infinity, basis: `${name}: taken as far as 2 AWG` };
  const awg = gauge === 'thicker' ? 0 : gauge;
  const known = (r: CordNecRow) =>
    r.awg >= awg && r[column] !== null && (better.memory || cellStatus(table, r, column) !== 'memory');
  const row = table.rows.findLast(known);
  if (row === undefined) return { amps: 0, basis: name };
  const air = airOf(laid, better.ambient);
  const factor =
    ambientFactor('nec', Math.min(insulationOf(cable, better.rated), 90), air) *
    countFactor('nec-cord', laid.loaded);
  return { amps: row[column]! * factor, basis: words(name, cellStatus(table, row, column), factor, air) };
}

const columnAt = (celsius: number) => (celsius >= 90 ? 'at90' : celsius >= 75 ? 'at75' : 'at60');

export interface WireNec extends Carried {
  /** A of the largest device for the size, 240.4(D); none from 8 AWG on */
  readonly cap: number | undefined;
}

/** NEC Table 310.16: the column of the terminals (110.14(C)), and that of the insulation with its factors. */
export function wireNec(cable: Cable, laid: Laid, better: Better): WireNec {
  const { rows } = tables.conductorAmpacityNec();
  const gauge = gaugeWithin(
    cable,
    rows.map((r) => r.awg),
  );
  if (gauge === 'thinner') return { amps: 0, cap: undefined, basis: 'NEC Table 310.16 begins at 18 AWG' };
  if (gauge === 'thicker' && better.memory)
    return { amps: Infinity, cap: undefined, basis: 'NEC Table 310.16: taken as far as 2 AWG' };
  const row = gauge === 'thicker' ? rows.at(-1)! : rows.find((r) => r.awg === gauge)!;
  const terminal = Math.max(laid.terminal ?? 60, 60);
  const rated = Math.max(Math.min(insulationOf(cable, better.rated), 90), 60);
  const air = airOf(laid, better.ambient);
  const factor = ambientFactor('nec', rated, air) * countFactor('nec', laid.loaded);
  // 18 and 16 AWG have a figure at 90 °C alone.
  const insulated = (row[columnAt(rated)] ?? row.at90!) * factor;
  const ended = row[columnAt(terminal)] ?? row.mostBreaker!;
  const [column, times] = insulated < ended ? [rated, factor] : [terminal, 1];
  const basis = words(`NEC Table 310.16, ${column} °C column`, row.status, times, air);
  return { amps: Math.min(insulated, ended), cap: row.mostBreaker ?? undefined, basis };
}

/** The thickest row that is no thicker than the conductor and whose figure counts. */
function rowFor<R extends RowBase & { readonly area: number }>(
  rows: readonly R[],
  cable: Cable,
  memory: boolean,
): R | undefined {
  const area = cable.area * 1e6 * SAME_AREA;
  return rows.filter((r) => r.area <= area && (memory || r.status !== 'memory')).at(-1);
}

/** Figure of one way of laying at its insulation, with the factor of the air. */
function laidAt(
  cable: Cable,
  laid: Laid,
  better: Better,
  of: { readonly way: LaidConductorRow['way']; readonly rated: number; readonly factor: number },
): Carried[] {
  const loaded = of.way === 'panel' ? 1 : laid.loaded >= 3 ? 3 : 2;
  const rows = tables
    .laidConductors()
    .rows.filter((r) => r.way === of.way && r.rated === of.rated && r.loaded === loaded);
  const row = rowFor(rows, cable, better.memory);
  if (row === undefined) return [];
  const air = airOf(laid, better.ambient);
  return [{ amps: row.amps * of.factor, basis: words(row.table, row.status, of.factor, air) }];
}

/** BS 7671 Table 4F3A, which gives cords for 90 °C the same figures and no factor up to 50 °C. */
function cordTable(cable: Cable, laid: Laid, better: Better, factor: number): Carried[] {
  const table = tables.cordAmpacityIec();
  const column = laid.loaded >= 3 ? 'threePhase' : 'singlePhase';
  const row = rowFor(
    table.rows.filter((r) => r[column] !== null),
    cable,
    better.memory,
  );
  if (row === undefined) return [];
  const status = cellStatus(table, row, column);
  const air = airOf(laid, better.ambient);
  return [{ amps: row[column]! * factor, basis: words('BS 7671 Table 4F3A', status, factor, air) }];
}

/** mm² at which the table of cords ends, and a little. */
export const CORD_ENDS = 4.1;

/** The best of the tables that its insulation allows. */
export function cordIec(cable: Cable, laid: Laid, better: Better): Carried[] {
  const air = airOf(laid, better.ambient);
  const rated = insulationOf(cable, better.rated);
  const plain = ambientFactor('iec-cord', 60, air);
  const low = rated >= 90 && air <= 50 ? Math.max(1, plain) : plain;
  const at = (celsius: number, factor: number) =>
    laidAt(cable, laid, better, { way: 'flexible', rated: celsius, factor });
  const warm = rated >= 70 ? Math.max(low, ambientFactor('iec', 70, air)) : low;
  const ofCord = cordTable(cable, laid, better, laid.appliance === true ? warm : low);
  // DIN VDE 0298-4 Table 11 excepts cords of appliances.
  if (laid.appliance === true && ofCord.length > 0 && cable.area * 1e6 < CORD_ENDS) return ofCord;
  return [
    ...ofCord,
    ...at(60, low),
    ...(rated >= 70 ? at(70, ambientFactor('iec', 70, air)) : []),
    ...(rated >= 90 && (laid.terminal ?? 0) >= 90 ? at(90, ambientFactor('iec', 90, air)) : []),
  ];
}

/** A single core within a box as panel wire; cord by its insulation; all else as a cable in or on a wall. */
export function carriedIec(cable: Cable, laid: Laid, better: Better): Carried {
  const air = airOf(laid, better.ambient);
  const rated = cable.rated ?? 70;
  const factor = rated >= 70 ? ambientFactor('iec', rated, air) : ambientFactor('iec-cord', 60, air);
  const way = cable.cores === 1 && laid.inBox ? 'panel' : better.laying ? 'clipped' : 'insulated-wall';
  const found =
    way !== 'panel' && cable.flexible
      ? cordIec(cable, laid, better)
      : laidAt(cable, laid, better, { way, rated: 70, factor });
  const begins = cable.flexible ? 'BS 7671 Table 4F3A: begins at 0.5 mm2' : 'the tables begin at 0.75 mm2';
  if (found.length === 0) return { amps: 0, basis: begins };
  const best = found.reduce((a, b) => (b.amps > a.amps ? b : a));
  if (laid.loaded <= 3 || better.memory) return best;
  const circuits = Math.ceil(laid.loaded / 3);
  const group = tables.loadedCores().rows.findLast((r) => r.rule === 'iec' && r.from <= circuits)?.factor;
  return { amps: best.amps * (group ?? 1), basis: `${best.basis}; BS 7671 Table 4C1 (from memory)` };
}
