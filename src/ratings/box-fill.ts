/** Volume that the contents of a box need, NEC 314.16(B). */
import type { Cable } from '../plan/plan.ts';
import * as tables from './table-files.ts';
import type { BoxFillRow, BoxVolumeRow } from './table-rows.ts';
import { SAME_AREA } from './wire.ts';

/** m³ of one cubic inch, exact. */
export const CUBIC_INCH = 1.6387064e-5;
const SLACK = 1 + 1e-9;

/** How the code counts earth conductors: all as one until 2017; since 2020 four as one and a quarter for each more. */
export type BoxFillEdition = '2017' | '2020';

/** mm² of a solid gauge, ASTM B258. */
const areaOf = (awg: number) => (Math.PI / 4) * (0.127 * 92 ** ((36 - awg) / 39)) ** 2;

export interface BoxContents {
  /** AWG of every conductor from outside that ends in the box, protective ones left out */
  readonly entering: readonly number[];
  /** AWG of every protective conductor from outside that ends in the box */
  readonly earths: readonly number[];
  /** AWG of conductors that do not leave the box; they count nothing but may be the largest */
  readonly inside: readonly number[];
  /** AWG of the largest conductor joined to the device of each yoke */
  readonly yokes: readonly number[];
  /** whether cables are held by clamps inside the box */
  readonly clamps: boolean;
}

export interface BoxAllowance {
  readonly clause: '314.16(B)(1)' | '314.16(B)(2)' | '314.16(B)(4)' | '314.16(B)(5)';
  /** what is counted, in the plural */
  readonly what: 'conductors' | 'clamps' | 'devices' | 'earths';
  /** things counted */
  readonly pieces: number;
  /** allowances they count as; may be in quarters */
  readonly count: number;
  readonly awg: number;
  readonly in3: number;
  readonly cm3: number;
}

export interface BoxFill {
  readonly in3: number;
  readonly cm3: number;
  readonly allowances: readonly BoxAllowance[];
}

function rowOf(awg: number): BoxFillRow | undefined {
  return tables.boxFill().rows.find((r) => r.awg === awg);
}

/**
 * AWG of the row a conductor counts by, Table 314.16(B): its own, else the next thicker one, and 18 for all thinner
 * ones. Metric sizes go by their copper (area, m², against the solid gauge of ASTM B258). Undefined above 6 AWG, where 314.28 rules.
 */
export function boxFillSize(cable: Pick<Cable, 'area' | 'awg'>): number | undefined {
  const { awg } = cable;
  const serves = ({ awg: gauge }: BoxFillRow) =>
    awg === undefined ? cable.area * 1e6 <= areaOf(gauge) * SAME_AREA : gauge <= awg;
  return tables
    .boxFill()
    .rows.filter(serves)
    .reduce<number | undefined>((most, r) => Math.max(most ?? r.awg, r.awg), undefined);
}

/**
 * Volume needed, in³ and cm³, with the counts it is made of: (B)(1) one of its size for each conductor from outside,
 * (B)(2) one of the largest for all clamps, (B)(4) two of the largest on each device, (B)(5) protective conductors by
 * the edition. Undefined where a size is not in the table.
 */
export function boxFill(contents: BoxContents, edition: BoxFillEdition = '2020'): BoxFill | undefined {
  const { entering, earths, inside, yokes } = contents;
  const present = [...entering, ...earths, ...inside, ...yokes];
  if (present.some((awg) => rowOf(awg) === undefined)) return undefined;
  const allowances: BoxAllowance[] = [];
  const add = (
    clause: BoxAllowance['clause'],
    what: BoxAllowance['what'],
    pieces: number,
    count: number,
    awg: number,
  ) => {
    const row = rowOf(awg)!;
    allowances.push({ clause, what, pieces, count, awg, in3: count * row.in3, cm3: count * row.cm3 });
  };
  for (const [awg, count] of bySize(entering)) add('314.16(B)(1)', 'conductors', count, count, awg);
  if (contents.clamps && entering.length + earths.length > 0)
    add('314.16(B)(2)', 'clamps', 1, 1, Math.min(...present));
  for (const [awg, count] of bySize(yokes)) add('314.16(B)(4)', 'devices', count, 2 * count, awg);
  if (earths.length > 0)
    add('314.16(B)(5)', 'earths', earths.length, earthCount(earths.length, edition), Math.min(...earths));
  const sum = (unit: 'in3' | 'cm3') => allowances.reduce((all, a) => all + a[unit], 0);
  return { in3: sum('in3'), cm3: sum('cm3'), allowances };
}

/** Allowances of protective conductors, NEC 314.16(B)(5): past four, a quarter each since 2020. */
function earthCount(earths: number, edition: BoxFillEdition): number {
  return edition === '2017' ? 1 : 1 + Math.max(0, earths - 4) / 4;
}

function bySize(gauges: readonly number[]): [awg: number, count: number][] {
  const sizes = [...new Set(gauges)].sort((a, b) => a - b);
  return sizes.map((awg) => [awg, gauges.filter((g) => g === awg).length]);
}

/** Kinds of box sold singly; masonry and cast boxes are listed by the gang. */
const SINGLE = ['square', 'round', 'device'];

/** Smallest box of Table 314.16(A) with at least that volume (in³); a better read row first. Undefined above the table. */
export function smallestBox(in3: number): BoxVolumeRow | undefined {
  const rank = (r: BoxVolumeRow) => (r.status === 'memory' ? 10 : 0) + SINGLE.indexOf(r.kind);
  return tables
    .boxVolumes()
    .rows.filter((r) => SINGLE.includes(r.kind) && r.in3 * SLACK >= in3)
    .sort((a, b) => a.in3 - b.in3 || rank(a) - rank(b))[0];
}

/** Whether a volume in m³ holds what is needed in in³. */
export function boxHolds(volume: number, in3: number): boolean {
  return (volume / CUBIC_INCH) * SLACK >= in3;
}
