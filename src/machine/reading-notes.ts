/** What a number does not say. */
import type { Plan } from '../plan/plan.ts';
import type { Held } from './supply-limits.ts';

export const MIXED = 'AC and DC meet here, or AC passes a diode; what a meter reads then is not worked out.';
export const CLASH =
  'Sources of unlike volts are joined, or a battery is shorted, with no resistance between; the current is beyond telling.';
export const UNSETTLED = 'The diodes find no position that agrees with itself; nothing is told.';

/** Rounding of the arithmetic is no volt. */
export function clean(value: number, scale: number): number {
  return Math.abs(value) < 1e-9 * scale ? 0 : value;
}

export function limitNotes(plan: Plan, held: Held): string[] {
  const amps = (name: string) => {
    const part = plan.parts.get(name);
    return part?.kind === 'supply' ? part.limit.amps : 0;
  };
  return [
    ...held.limited.map(
      (s) =>
        `${s.part} cannot give what is asked of it: it is taken to hold its limit of ${Number(amps(s.part).toPrecision(3))} A, and its volts sag.`,
    ),
    ...held.tripped.map((s) => `${s.part} is shorted: its breaker or fuse is taken to have opened.`),
  ];
}
