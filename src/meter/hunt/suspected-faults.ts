/** Which faults are hunted for, and which two may stand side by side. */
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import { laterFaults } from '../faults/later.ts';
import { faultsOf } from '../meter-sheet.ts';

/** Every fault that is hunted for: those of the commissioning sheet and those that come with use. */
export function suspectedFaults(study: Study): Fault[] {
  return [...faultsOf(study), ...laterFaults(study)].filter((f) => f.untried === undefined);
}

/** Two faults that can stand side by side: not of the same core or contact. */
export function goTogether(a: Fault, b: Fault): boolean {
  return a.item !== b.item && (a.plan === undefined || b.plan === undefined);
}
