/**
 * What is asked of a contact and what was found, and the comparison both rest on. This folder knows published tables and
 * the arithmetic on them, and must not know circuits, findings or wording.
 */

import type { Contact, CurrentKind, Practice } from '../plan/device-figures.ts';
import type { LoadNature } from './load.ts';
import type { Figure, LoadCurrents } from './motor.ts';

export type Verdict = 'pass' | 'fail' | 'cannot-tell';
/** What of a contact was judged; `kind` where a DC load meets AC ratings alone, `motor-rated` where it has no figure meant for motors. */
export type ContactAspect = 'voltage' | 'kind' | 'running' | 'starting' | 'horsepower' | 'motor-rated';

export interface ContactDuty {
  readonly contact: Contact;
  readonly currents: LoadCurrents;
  /** V across the open contact and its kind */
  readonly volts: number;
  readonly kind: CurrentKind;
  readonly phases: 1 | 3;
  readonly nature: LoadNature;
  /** sum at the shafts, where every motor's is known */
  readonly horsepower?: number;
  readonly practice: Practice;
  /** what the contact is part of where that matters: a switch worked by hand, or a solid-state output */
  readonly device?: 'hand-switch' | 'solid-state';
}

export interface ContactJudgement {
  readonly aspect: ContactAspect;
  readonly verdict: Verdict;
  /** what the load asks, in `unit`; undefined where the plan does not tell */
  readonly needed: number | undefined;
  /** what the contact gives, in `unit`, with `multiple` applied */
  readonly found: number | undefined;
  readonly unit: 'V' | 'A' | 'hp';
  /** the printed figure that decides, empty where there is none */
  readonly ratingUsed: string;
  /** multiple of the printed figure that was allowed */
  readonly multiple: number;
  readonly basis: string;
  /** the field that would settle a cannot-tell: `contact.motor`, or of the load `amps`, `locked-rotor` */
  readonly missing?: string;
}

/** Rounding in unit conversion must not turn an equality into a failure. */
export const SLACK = 1 + 1e-9;

/** Wording of a figure that the plan itself gives. */
export const STATED = 'contact rating, stated';

export function judgement(
  aspect: ContactAspect,
  verdict: Verdict,
  rest: Partial<Omit<ContactJudgement, 'aspect' | 'verdict'>>,
): ContactJudgement {
  const { needed, found, unit = 'A', ratingUsed = '', multiple = 1, basis = '', missing } = rest;
  const body = { aspect, verdict, needed, found, unit, ratingUsed, multiple, basis };
  return missing === undefined || verdict !== 'cannot-tell' ? body : { ...body, missing };
}

/**
 * Fail when the figure is surely above the limit, pass when surely not: a figure known only as "at
 * least" cannot pass, and a rule-of-thumb range that straddles the limit decides nothing. Both in A.
 */
export function compare(needed: Figure, limit: number): Verdict {
  if (needed.amps > limit * SLACK) {
    const low =
      needed.rough === true && needed.atLeast !== true ? (needed.least ?? needed.amps) : needed.amps;
    return low > limit * SLACK ? 'fail' : 'cannot-tell';
  }
  return needed.atLeast === true ? 'cannot-tell' : 'pass';
}
