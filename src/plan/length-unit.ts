/** Which unit a plan is typed in: what is told of it is told so. */
import type { LengthUnit } from '../text/lengths.ts';
import { kept } from './map-entries.ts';
import type { Plan } from './plan.ts';

/** The unit of a length as typed, `6 ft`, `6' 2"` or `2 m`. */
export function unitTyped(text: string): LengthUnit {
  // No unit of metres has these letters.
  return /ft|feet|foot|in|yd|['"\u2032\u2033\u2019\u201d]/i.test(text) ? 'ft' : 'm';
}

const units = new WeakMap<Plan, LengthUnit>();

/** The unit of most lengths of a plan, of equally many that of the first; without any, feet where wires are AWG. */
export function lengthUnit(plan: Plan): LengthUnit {
  return kept(units, plan, () => {
    const typed = plan.runs.flatMap((run) => run.unit ?? []);
    const feet = typed.filter((unit) => unit === 'ft').length;
    if (feet * 2 !== typed.length) return feet * 2 > typed.length ? 'ft' : 'm';
    if (typed[0] !== undefined) return typed[0];
    const cables = plan.runs.flatMap((run) => run.cable ?? []);
    return cables.length > 0 && cables.every((cable) => cable.awg !== undefined) ? 'ft' : 'm';
  });
}
