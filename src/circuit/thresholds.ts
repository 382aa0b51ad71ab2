import type { Coil, Limit } from '../plan/plan.ts';

/** Volts at which a coil at 20 °C pulls in and has let go, and whether it minds its polarity. */
export interface CoilThresholds {
  readonly pullIn: number;
  readonly dropOut: number;
  readonly polarised: boolean;
}

/**
 * Pull-in and drop-out of a coil as printed, at 20 °C. What the plan leaves out takes the usual guaranteed figures:
 * pull-in 75 % (DC) or 80 % (AC), drop-out 10 % (DC) or 30 % (AC) of rated voltage.
 * Basis: must-operate and must-release figures that several relay makers print; the AC release is from memory.
 */
export function coilThresholds(coil: Coil, polarised: boolean | undefined): CoilThresholds {
  const rated = coil.rated.volts;
  const ac = coil.rated.kind === 'ac';
  return {
    pullIn: limitVolts(coil.pullIn, rated) ?? rated * (ac ? 0.8 : 0.75),
    dropOut: limitVolts(coil.dropOut, rated) ?? rated * (ac ? 0.3 : 0.1),
    polarised: polarised ?? (coil.suppressor === 'diode' && !ac),
  };
}

export function limitVolts(limit: Limit | undefined, rated: number): number | undefined {
  if (limit === undefined) return undefined;
  return 'fraction' in limit ? limit.fraction * rated : limit.volts;
}
