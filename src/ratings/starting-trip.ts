/** Whether a breaker or fuse holds the starting current of a motor. */
import type { Practice } from '../plan/device-figures.ts';
import type { OvercurrentDevice } from './conductor-protection.ts';
import { SLACK } from './judgement.ts';
import type { Figure } from './motor.ts';
import type { FuseBandRow } from './protection-rows.ts';
import * as tables from './table-files.ts';
import type { BreakerCurveRow } from './table-rows.ts';
import { branchRule } from './tables.ts';

/** holds: it carries the start; may: it opens on some starts; opens: on every one; unknown: no figure decides. */
export interface StartVerdict {
  readonly verdict: 'holds' | 'may' | 'opens' | 'unknown';
  /** A that it surely carries through a start */
  readonly holds: number | undefined;
  /** A that surely open it */
  readonly opens: number | undefined;
  readonly basis: string;
}

export interface Start {
  /** A while it starts */
  readonly starting: Figure;
  /** A at full load */
  readonly running: number | undefined;
  readonly practice: Practice;
}

type Band = Omit<StartVerdict, 'verdict'>;

/** Row of a breaker curve by letter and rating. */
function breakerCurve(curve: string, amps: number): BreakerCurveRow | undefined {
  const wanted = curve.trim().toUpperCase();
  return tables.breakerCurves().rows.find((r) => r.curve === wanted && amps > r.above && amps <= r.upTo);
}

/**
 * A breaker by its curve, IEC 60898-1; without one it opens for certain only where one of curve D would, and holds for
 * certain what one of curve B does; in North
 * America, where no band is published, never for certain. A gG fuse by IEC 60269-1, a BS 1362 plug fuse by its time band, a time-delay or fast one by what NEC
 * 430.52 takes to carry a start. What is known of a start is its current, not how long it lasts.
 */
export function judgeStart(
  device: OvercurrentDevice,
  curve: string | undefined,
  start: Start,
): StartVerdict | undefined {
  const band = device.kind === 'breaker' ? breakerBand(device.amps, curve, start) : fuseBand(device, start);
  return band && { ...band, verdict: verdictOf(band, start.starting) };
}

function verdictOf({ holds, opens }: Band, starting: Figure): StartVerdict['verdict'] {
  // A rule of thumb decides only where its whole range does.
  const low = starting.rough === true ? (starting.least ?? starting.amps) : starting.amps;
  if (opens !== undefined && low * SLACK >= opens) return 'opens';
  if (holds !== undefined && starting.amps <= holds * SLACK)
    return starting.atLeast === true ? 'unknown' : 'holds';
  return holds !== undefined && low > holds * SLACK ? 'may' : 'unknown';
}

function breakerBand(amps: number, curve: string | undefined, { practice }: Start): Band | undefined {
  if (curve === undefined && practice === 'nec') return unmarkedNec(amps);
  const row = breakerCurve(curve ?? 'D', amps);
  if (row === undefined) return undefined;
  const opens = row.trips * amps;
  const trips = `opens at ${row.trips} times ${amps} A`;
  const least = breakerCurve('B', amps);
  return curve === undefined
    ? {
        holds: least && least.holds * amps,
        opens,
        basis: `${row.standard}: curve B holds ${least?.holds ?? '?'} times ${amps} A, even curve ${row.curve} ${trips}`,
      }
    : {
        holds: row.holds * amps,
        opens,
        basis: `${row.standard}, curve ${row.curve} holds ${row.holds} times ${amps} A and ${trips}`,
      };
}

/** No standard gives a North American breaker a band; where makers' bands begin words a caution and decides nothing. */
function unmarkedNec(amps: number): Band | undefined {
  const row = breakerCurve('UL', amps);
  return (
    row && {
      holds: row.holds * amps,
      opens: undefined,
      basis: `${row.standard}: from ${row.holds} times ${amps} A on it may trip (from memory)`,
    }
  );
}

function fuseBand(device: OvercurrentDevice, start: Start): Band | undefined {
  const { amps } = device;
  if (device.kind === 'plug-fuse') return plugFuseBand(amps);
  const opens = surelyMelts(amps);
  if (device.class === 'aM')
    return { holds: bandsOf('aM')[0]!.holds * amps, opens: undefined, basis: 'IEC 60269-1, aM' };
  if (device.class === 'gG' || (device.class === undefined && start.practice === 'iec'))
    return ggBand(amps, opens);
  const rule = branchRule(device.class === 'time-delay' ? 'time-delay-fuse' : 'fuse');
  if (start.running === undefined) return undefined;
  const carries = amps * SLACK >= rule.value * start.running;
  return {
    // A fuse of that size is meant to carry whatever the motor starts with.
    holds: carries ? Math.max(start.starting.amps, amps) : amps,
    opens: undefined,
    basis: `NEC ${rule.clause}: ${rule.value * 100} % of ${start.running} A carries a start`,
  };
}

const bandsOf = (fuse: FuseBandRow['fuse']) => tables.fuseBands().rows.filter((r) => r.fuse === fuse);

function plugFuseBand(amps: number): Band {
  const rows = bandsOf('BS 1362');
  const holds = rows.findLast((r) => r.amps <= amps);
  const opens = rows.find((r) => r.amps >= amps)?.opens ?? undefined;
  return {
    holds: Math.max(holds?.holds ?? 0, 1.6 * amps),
    opens,
    basis: 'BS 1362, time bands (seen in one copy)',
  };
}

/** The smallest listed gG fuse at or above melts within 10 ms at this, by its largest pre-arcing I²t. */
function surelyMelts(amps: number): number | undefined {
  const row = tables.fuseGates().rows.find((r) => r.amps >= amps && r.mostI2t !== null);
  return row && Math.sqrt(row.mostI2t! / 0.01);
}

function ggBand(amps: number, opens: number | undefined): Band {
  const row = tables.fuseGates().rows.findLast((r) => r.amps <= amps);
  return {
    holds: row?.holds10s ?? undefined,
    opens,
    basis: `IEC 60269-1, gG: ${row?.holds10s ?? '?'} A for 10 s (from memory)${opens === undefined ? '' : `, pre-arcing within 10 ms at ${Math.round(opens)} A`}`,
  };
}
