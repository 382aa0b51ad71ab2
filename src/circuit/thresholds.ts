import type { Coil, CurrentKind, Limit, Volts } from '../plan/device-figures.ts';
import type { Part, Pole, SupplyPart } from '../plan/part-types.ts';

/** Volts at which a coil at 20 °C pulls in and has let go, and whether it minds its polarity. */
export interface CoilThresholds {
  readonly pullIn: number;
  readonly dropOut: number;
  readonly polarised: boolean;
}

/** V that a silicon diode takes. */
export const SILICON_DROP = 0.7;

/**
 * V above which a supply's output is mains to whatever it feeds, and no loop at low voltage any more: extra-low voltage
 * of IEC 61140 (from memory). What fingers may meet is judged by tighter limits.
 */
const EXTRA_LOW: Readonly<Record<CurrentKind, number>> = { ac: 50, dc: 120 };

export function isMainsOutput({ volts, kind }: Volts): boolean {
  return volts > EXTRA_LOW[kind];
}

/** A transformer for control circuits and no bell transformer: it has taps, or gives mains volts. */
export function isControlTransformer({ output, taps }: SupplyPart): boolean {
  return taps !== undefined || isMainsOutput(output);
}

/** Main poles numbered 1-2, 3-4 are a contactor's (EN 50005). */
export function isContactor(part: { readonly poles: readonly Pole[] }): boolean {
  return part.poles.some((p) => p.common === '1');
}

/** Whether its coil may draw at pull-in what a contactor's does: what is rated in AC-3 is mostly one (IEC 60947-4-1). */
export function drawsAsContactor(part: { readonly poles: readonly Pole[] }): boolean {
  return isContactor(part) || part.poles.some((p) => p.contact.ac3 !== undefined);
}

/** What feeds electronics and no winding: a timer, and a relay whose coil takes a range of volts or AC as well as DC. */
export function isElectronic(part: Part): boolean {
  if (part.kind === 'timer') return true;
  return part.kind === 'relay' && (part.coil.upTo !== undefined || part.coil.either === true);
}

/**
 * Pull-in and drop-out of a coil as printed, at 20 °C. What the plan leaves out takes the usual guaranteed figures:
 * pull-in 75 % (DC relay), 80 % (AC relay) or 85 % (contactor), drop-out 10 % (DC), 30 % (AC relay) or 20 % (AC
 * contactor) of rated voltage. Basis: must-operate and must-release figures that several relay makers print; those of
 * contactors are IEC 60947-4-1's, from memory; an electronic input works from 85 % of its lowest voltage and is off at
 * 10 % of it (data sheets of timers and wide-range relays, five makers). `src/ratings/defaults.ts` has the same figures; a test compares them.
 */
export function coilThresholds(
  coil: Coil,
  polarised: boolean | undefined,
  { contactor, electronic }: { readonly contactor: boolean; readonly electronic: boolean },
): CoilThresholds {
  const rated = coil.rated.volts;
  const ac = coil.rated.kind === 'ac';
  if (electronic)
    return {
      pullIn: limitVolts(coil.pullIn, rated) ?? 0.85 * rated,
      dropOut: limitVolts(coil.dropOut, rated) ?? 0.1 * rated,
      polarised: polarised ?? (coil.suppressor === 'diode' && !ac && coil.either !== true),
    };
  return {
    pullIn: limitVolts(coil.pullIn, rated) ?? rated * (contactor ? 0.85 : ac ? 0.8 : 0.75),
    dropOut: limitVolts(coil.dropOut, rated) ?? rated * (ac ? (contactor ? 0.2 : 0.3) : 0.1),
    polarised: polarised ?? (coil.suppressor === 'diode' && !ac),
  };
}

function limitVolts(limit: Limit | undefined, rated: number): number | undefined {
  if (limit === undefined) return undefined;
  return 'fraction' in limit ? limit.fraction * rated : limit.volts;
}
