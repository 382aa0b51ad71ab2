/** One contact with everything found out about it. */

import type { Contact } from '../../plan/device-figures.ts';
import type { Part } from '../../plan/part-types.ts';
import { type ContactJudgement, SLACK } from '../../ratings/judgement.ts';
import type { LoadCurrents } from '../../ratings/motor.ts';

export interface JudgedContact {
  readonly part: Part;
  readonly pole: number;
  readonly loads: readonly string[];
  readonly feeds: 'load' | 'coil';
  readonly currents: LoadCurrents;
  readonly volts: number;
  readonly kind: 'ac' | 'dc';
  readonly device?: 'hand-switch' | 'solid-state';
  readonly judged: readonly ContactJudgement[];
}

/** What the contact makes decides; a contact that makes nothing hard, what it carries. */
export function decisive({ judged }: JudgedContact): ContactJudgement | undefined {
  // a horsepower mark lets a rough starting figure pass that is above the test current; it decides nothing then
  const known = judged.filter(
    (j) => j.needed !== undefined && j.found !== undefined && !(j.verdict === 'pass' && beyond(j)),
  );
  const of = (...aspects: string[]) => known.find((j) => aspects.includes(j.aspect));
  return of('starting', 'motor-rated') ?? of('running') ?? of('horsepower') ?? known[0];
}

const beyond = (j: ContactJudgement) => j.aspect !== 'voltage' && (j.needed ?? 0) > (j.found ?? 0) * SLACK;

/** One field that is missing leaves several aspects open; it is asked for once. */
export function openOf({ judged }: JudgedContact): ContactJudgement[] {
  const asked = new Set<string>();
  return judged.filter((j) => {
    if (j.verdict === 'pass' || (j.missing !== undefined && asked.has(j.missing))) return false;
    if (j.missing !== undefined) asked.add(j.missing);
    return true;
  });
}

/** The contact itself, as its label has it. */
export function contactOf({ part, pole }: Pick<JudgedContact, 'part' | 'pole'>): Contact | undefined {
  if ('poles' in part) return part.poles.find((p) => p.index === pole)?.contact;
  if ('throws' in part && part.throws) return part.throws.find((p) => p.index === pole)?.contact;
  return 'contact' in part ? part.contact : undefined;
}
