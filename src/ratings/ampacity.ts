/** A that a mains cable may carry while all runs, by the tables of each practice. */

import type { Practice } from '../plan/device-figures.ts';
import type { Cable } from '../plan/plan.ts';
import {
  type Better,
  CORD_ENDS,
  carriedIec,
  cordIec,
  cordNec,
  isCord,
  type Laid,
  wireNec,
} from './laid-conductor.ts';

export interface Ampacity {
  /** A; 0 for a conductor thinner than any in the table */
  readonly amps: number;
  readonly basis: string;
}

export interface CablePlace {
  readonly threePhase: boolean;
  /** °C of the warmest air, where the plan says so; else that of the tables, 30 °C */
  readonly air?: number | undefined;
  /** °C the terminals at its ends are marked for, where the plan says so; else 60 °C */
  readonly terminal?: number | undefined;
  /** from a plug, and not fixed wiring */
  readonly appliance?: boolean;
}

/** What a plan does not say of insulation and laying is taken at its worse end. */
const TAKEN: Better = { ambient: true, rated: false, class: false, laying: false, memory: true };

const laid = (practice: Practice, { threePhase, air, terminal, appliance }: CablePlace): Laid => ({
  practice,
  ambient: air,
  terminal,
  loaded: threePhase ? 3 : 2,
  inBox: false,
  ...(appliance === true && { appliance }),
});

/**
 * nec: gauge sizes as `ampacityNec`. iec, and metric sizes everywhere: BS 7671 Table 4F3A, and what follows it above
 * 4 mm². Undefined where the table ends below the conductor or has no figure for it.
 */
export function ampacity(cable: Cable, practice: Practice, place: CablePlace): Ampacity | undefined {
  return practice === 'nec' && cable.awg !== undefined
    ? ampacityNec(cable, place)
    : ampacityIec(cable, place);
}

/**
 * Cord by NEC Table 400.5(A)(1), column B for two current-carrying conductors, A for three; building wire by the
 * column of Table 310.16 that its terminals allow (110.14(C)), 60 °C where they are not marked; both with the factor of the air. A size that no table lists goes by the listed gauge that is no
 * thicker.
 * @param better whether insulation that is not stated is taken as of 90 °C, else as of 60 °C; if left out, that of building wire
 */
export function ampacityNec(cable: Cable, place: CablePlace, better = !isCord(cable)): Ampacity | undefined {
  const known = laid('nec', place);
  const taken: Better = { ...TAKEN, rated: better };
  const { amps, basis } = isCord(cable) ? cordNec(cable, known, taken) : wireNec(cable, known, taken);
  // A metric size stands in neither table.
  if (amps === 0 && cable.awg === undefined)
    return { amps, basis: 'NEC Tables 310.16 and 400.5(A)(1) begin at 18 AWG' };
  return Number.isFinite(amps) ? { amps, basis } : undefined;
}

function ampacityIec(cable: Cable, place: CablePlace): Ampacity | undefined {
  const known = laid('iec', place);
  const found =
    cable.flexible || cable.area * 1e6 < CORD_ENDS
      ? cordIec(cable, known, TAKEN)
      : [carriedIec(cable, known, TAKEN)];
  if (found.length === 0) return { amps: 0, basis: 'BS 7671 Table 4F3A: begins at 0.5 mm2' };
  return found.reduce((a, b) => (b.amps > a.amps ? b : a));
}
