/** Resistance and current of one conductor of a cable. */
import type { Practice } from '../plan/device-figures.ts';
import { kept } from '../plan/map-entries.ts';
import type { Cable } from '../plan/plan.ts';
import { copperFactor } from './coil.ts';
import { defaults } from './defaults.ts';
import * as tables from './table-files.ts';
import type { CordIecRow, WireAwgRow, WireIecRow } from './table-rows.ts';
import { branchRule, cellStatus } from './tables.ts';

/** ohm mm²/m of annealed copper at 20 °C, IEC 60028. */
const RESISTIVITY = 0.017241;
/** Areas come from metres squared and back, so equal sizes differ in their last digits. */
export const SAME_AREA = 1.001;

const squareMm = (cable: Cable): number => cable.area * 1e6;

function awgRow(cable: Cable): WireAwgRow | undefined {
  return tables.wireAwg().rows.find((r) => r.awg === cable.awg);
}

function iecRow(cable: Cable): WireIecRow | undefined {
  if (cable.awg !== undefined) return undefined;
  const area = squareMm(cable);
  return tables.wireIec60228().rows.find((r) => r.area <= area * SAME_AREA && area <= r.area * SAME_AREA);
}

/**
 * ohm per metre of one core at a copper temperature (°C). Gauge sizes: solid annealed copper, ASTM B258 with
 * IEC 60028, whatever the strands. Metric sizes: the upper limit of IEC 60228 for the class. A size in
 * neither table: 0.017241 ohm mm²/m over the area. To temperature by (234.5 + T)/254.5, IEC 60228.
 * Times `strandingAllowance` it is the worst case.
 */
export function ohmsPerMetre(cable: Cable, celsius: number): number {
  const perKm = kept(
    perKmOf,
    cable,
    () =>
      awgRow(cable)?.ohmsPerKm ?? iecRow(cable)?.[cable.strands] ?? (1000 * RESISTIVITY) / squareMm(cable),
  );
  return (perKm / 1000) * copperFactor(celsius);
}

/** ohm per km at 20 °C; runs of one cable ask for it again and again */
const perKmOf = new WeakMap<Cable, number>();

let stranded: number | undefined;

/** Mean of stranded over solid, NEC Chapter 9 Table 8; asked for with every wire of every state, so worked out once. */
function strandedOverSolid(): number {
  stranded ??= meanStranded();
  return stranded;
}

function meanStranded(): number {
  const ratios = tables
    .wireAwg()
    .rows.flatMap((r) =>
      r.solidPerKft75 === null || r.strandedPerKft75 === null ? [] : [r.strandedPerKft75 / r.solidPerKft75],
    );
  return ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
}

/**
 * How many times the figure of `ohmsPerMetre` a conductor may have; 1 or more. Gauge sizes: solid 1; stranded by
 * NEC Chapter 9 Table 8; fine by the default `fineStranding`, from memory. Metric sizes of IEC 60228: 1, they
 * are limits already; others: limit over pure copper at the smallest size of that table.
 */
export function strandingAllowance(cable: Cable): number {
  if (cable.awg !== undefined) {
    if (cable.strands === 'solid') return 1;
    return cable.strands === 'stranded' ? strandedOverSolid() : defaults.fineStranding.value;
  }
  if (iecRow(cable) !== undefined) return 1;
  const least = tables.wireIec60228().rows[0]!;
  return (least[cable.strands] * least.area) / (1000 * RESISTIVITY);
}

export interface WireSize {
  /** `18 AWG` or `0.75 mm2` */
  readonly label: string;
  /** ohm per metre of one core, worst case, at the temperature asked for */
  readonly ohmsPerMetre: number;
}

interface Size {
  readonly label: string;
  readonly cable: Cable;
}

/** The sizes sold in the cable's own system, thinnest first: even gauges 24 to 8, or those of IEC 60228. */
function sizesLike(cable: Cable): readonly Size[] {
  const like = (label: string, area: number, awg?: number): Size => {
    const { awg: _, ...rest } = cable;
    return { label, cable: { ...rest, gauge: label, area: area * 1e-6, ...(awg !== undefined && { awg }) } };
  };
  if (cable.awg === undefined) return tables.wireIec60228().rows.map((r) => like(`${r.area} mm2`, r.area));
  const even = tables.wireAwg().rows.filter((r) => r.awg % 2 === 0);
  return even.map((r) => like(`${r.awg} AWG`, r.area, r.awg)).reverse();
}

/**
 * The thinnest size of the cable's own system and strands that has at most `mostOhmsPerMetre` (ohm per metre of
 * one core) at `celsius` (°C of the copper) in the worst case; undefined when none has.
 * @param allowance times the figure of `ohmsPerMetre`; that of `strandingAllowance` if left out
 */
export function thinnestThatGives(
  cable: Cable,
  mostOhmsPerMetre: number,
  celsius: number,
  allowance?: number,
): WireSize | undefined {
  for (const size of sizesLike(cable)) {
    const worst = ohmsPerMetre(size.cable, celsius) * (allowance ?? strandingAllowance(size.cable));
    if (worst <= mostOhmsPerMetre) return { label: size.label, ohmsPerMetre: worst };
  }
  return undefined;
}

export interface ControlAmps {
  /** A */
  readonly amps: number;
  readonly basis: string;
}

/** The thickest row of the gauge table that is no thicker than the conductor; below the table its last row by area. */
function gaugeAmps(cable: Cable, fits: (awg: number) => boolean): ControlAmps {
  const rows = [...tables.controlWire().rows].sort((a, b) => a.awg - b.awg);
  const row = rows.find((r) => fits(r.awg));
  if (row === undefined) {
    const last = rows.at(-1)!;
    const amps = (last.amps * cable.area) / areaOfGauge(last.awg);
    return { amps, basis: `${last.basis}, ${last.awg} AWG by the area of copper` };
  }
  const memory = row.status === 'memory' && row.basis !== 'common practice' ? ' (from memory)' : '';
  return { amps: row.amps, basis: `${row.basis}, ${row.awg} AWG${memory}` };
}

/** m², infinite where the table of gauges has none. */
function areaOfGauge(awg: number): number {
  const area = tables.wireAwg().rows.find((r) => r.awg === awg)?.area;
  return area === undefined ? Infinity : area * 1e-6;
}

function cordAmps(row: CordIecRow): ControlAmps {
  const once = cellStatus(tables.cordAmpacityIec(), row, 'singlePhase') === 'one-source';
  const basis = `BS 7671 Table 4F3A, ${row.area} mm2${once ? ' (seen in one copy)' : ''}`;
  return { amps: row.singlePhase, basis };
}

/**
 * A that a conductor of a control circuit carries. Gauge sizes: NEC 402.5 for 18 and 16 AWG, common practice for
 * thinner ones. Metric sizes: BS 7671 Table 4F3A, air of 30 °C; below its first row the gauge of no greater
 * area. A size between two rows takes the thinner; a size above the table takes its last row; a size below
 * it the current of the last row in proportion to its copper, which is less than it bears.
 */
export function controlWireAmps(cable: Cable): ControlAmps {
  const own = cable.awg;
  if (own !== undefined) return gaugeAmps(cable, (awg) => awg >= own);
  const area = squareMm(cable) * SAME_AREA;
  const cord = tables.cordAmpacityIec().rows.findLast((r) => r.area <= area);
  if (cord !== undefined) return cordAmps(cord);
  return gaugeAmps(cable, (awg) => areaOfGauge(awg) * 1e6 <= area);
}

/** The cable in each size of its own system that is thicker, thinnest first. */
export function thickerSizes(cable: Cable): readonly Cable[] {
  return sizesLike(cable)
    .map((size) => size.cable)
    .filter((c) => c.area > cable.area * SAME_AREA);
}

/** Area of a gauge over that of the next thinner one, ASTM B258. */
const GAUGE_STEP = 92 ** (2 / 39);

/**
 * The thickest of some gauges that is no thicker than a conductor. `thinner`: the conductor is thinner than all of
 * them; `thicker`: by a whole gauge or more thicker than all, so that the thickest would say too little of it.
 */
export function gaugeWithin(cable: Cable, gauges: readonly number[]): number | 'thinner' | 'thicker' {
  const area = squareMm(cable) * SAME_AREA;
  const rows = tables.wireAwg().rows.filter((r) => gauges.includes(r.awg));
  if (area >= Math.max(...rows.map((r) => r.area)) * GAUGE_STEP) return 'thicker';
  return rows.find((r) => r.area <= area)?.awg ?? 'thinner';
}

/** m of wire that may lie between a source and its fuse: NEC 240.21(B)(1), ten feet as in 430.28(1); IEC 60364-4-43 clause 434.2.1. */
export function mostAheadOfFuse(practice: Practice): number {
  return practice === 'nec' ? branchRule('tap-10-ft').metres! : defaults.aheadOfFuse.value;
}
