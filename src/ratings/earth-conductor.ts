/** How thick an earth core has to be. */
import type { Practice } from '../plan/device-figures.ts';
import type { Cable } from '../plan/plan.ts';
import * as tables from './table-files.ts';

/** What stands beside an earth core. */
export interface EarthedCircuit {
  /** of a line to what it earths */
  readonly line: Cable;
  /** A of the breaker or fuse ahead of that line; undefined where the plan does not say */
  readonly ahead: number | undefined;
}

export interface EarthLimit {
  /** m² of copper */
  readonly area: number;
  /** gauge by the table, undefined where the line itself is the limit */
  readonly awg: number | undefined;
  readonly basis: string;
}

const SQUARE_MM = 1e-6;

/**
 * The thinnest earth core that may go with a line, NEC Table 250.122 or IEC 60364-5-54 Table 54.2. NEC asks for no more
 * than the line itself has (250.122(A)); where what stands ahead is not known, what the smallest device would ask for.
 */
export function leastEarth({ line, ahead }: EarthedCircuit, practice: Practice): EarthLimit {
  return practice === 'nec' ? byDevice(line, ahead ?? 0) : byLine(line);
}

function byDevice(line: Cable, ahead: number): EarthLimit {
  const rows = tables.earthConductors().rows.flatMap((r) => (r.practice === 'nec' ? [r] : []));
  const awg = rows.find((r) => ahead <= r.upTo)?.awg;
  const area = tables.wireAwg().rows.find((r) => r.awg === awg)?.area ?? Infinity;
  return area * SQUARE_MM < line.area
    ? { area: area * SQUARE_MM, awg, basis: 'NEC Table 250.122' }
    : { area: line.area, awg: undefined, basis: 'NEC 250.122(A) and Table 250.122' };
}

function byLine(line: Cable): EarthLimit {
  const mm2 = line.area / SQUARE_MM;
  const rows = tables.earthConductors().rows.flatMap((r) => (r.practice === 'iec' ? [r] : []));
  const { share, least } = rows.find((r) => mm2 <= r.upTo) ?? rows.at(-1)!;
  const area = Math.max(share * mm2, least) * SQUARE_MM;
  return { area, awg: undefined, basis: 'IEC 60364-5-54 Table 54.2 (seen in one summary)' };
}
