/** A that a mains cable may carry, by the tables of each practice. */

import type { Practice } from '../plan/device-figures.ts';
import type { Cable } from '../plan/plan.ts';
import { tables } from './tables.ts';
import { gaugeWithin } from './wire.ts';

export interface Ampacity {
  /** A; 0 for a conductor thinner than any in the table */
  readonly amps: number;
  readonly basis: string;
}

/**
 * nec: gauge sizes as `ampacityNec`. iec, and metric sizes everywhere: BS 7671 Table 4F3A. Undefined where the table ends
 * below the conductor or has no figure for it.
 */
export function ampacity(cable: Cable, practice: Practice, threePhase: boolean): Ampacity | undefined {
  return practice === 'nec' && cable.awg !== undefined
    ? ampacityNec(cable, threePhase)
    : ampacityIec(cable, threePhase);
}

/**
 * Cord by NEC Table 400.5(A)(1), column B for two current-carrying conductors, A for three; building wire by the 60 °C
 * column of Table 310.16. A size that no table lists goes by the listed gauge that is no thicker.
 */
export function ampacityNec(cable: Cable, threePhase: boolean): Ampacity | undefined {
  const cords = tables.cordAmpacityNec().rows;
  const wires = tables.conductorAmpacityNec().rows;
  const gauges = (cable.flexible ? cords : wires).map((r) => r.awg);
  const awg = gaugeWithin(cable, gauges);
  if (awg === 'thicker') return undefined;
  const basis = cable.flexible
    ? `NEC Table 400.5(A)(1), column ${threePhase ? 'A' : 'B'}`
    : 'NEC Table 310.16, 60 °C column';
  if (awg === 'thinner') {
    // A metric size stands in neither table.
    const begins = cable.awg === undefined ? 'NEC Tables 310.16 and 400.5(A)(1) begin' : `${basis}: begins`;
    return { amps: 0, basis: `${begins} at 18 AWG` };
  }
  const wire = wires.find((r) => r.awg === awg);
  // 18 and 16 AWG stand in 240.4(D) only.
  const amps = cable.flexible
    ? cords.find((r) => r.awg === awg)?.[columnFor(threePhase)]
    : (wire?.at60 ?? wire?.mostBreaker);
  return amps == null ? undefined : { amps, basis };
}

function ampacityIec(cable: Cable, threePhase: boolean): Ampacity | undefined {
  const area = cable.area * 1e6;
  const row = tables.cordAmpacityIec().rows.findLast((r) => r.area <= area * 1.001);
  if (!row) return { amps: 0, basis: 'BS 7671 Table 4F3A: begins at 0.5 mm2' };
  const amps = row[columnFor(threePhase)];
  return amps == null ? undefined : { amps, basis: 'BS 7671 Table 4F3A' };
}

const columnFor = (threePhase: boolean) => (threePhase ? 'threePhase' : 'singlePhase');
