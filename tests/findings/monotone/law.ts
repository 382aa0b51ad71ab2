/** What one change for the worse may do away with, and what it did. */
import type { FindingId } from '../../../src/findings/finding-ids.ts';
import { judge } from '../../../src/findings/judge.ts';
import { REGISTER } from '../../../src/findings/register.ts';
import type { Severity } from '../../../src/findings/report-words.ts';
import type { PartKind } from '../../../src/plan/part-types.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { Study } from '../../../src/study/study.ts';
import { changesOf, type OneChange, type Way } from './one-change.ts';

/** Findings that a change for the worse may rightly end, each with why; whatever else it ends is a mistake. */
const EXCEPTIONS: Readonly<Record<Way, Partial<Record<FindingId, string>>>> = {
  'thinner wire': {
    'box-overfilled': 'a thinner conductor takes less room in a box, NEC 314.16(B)',
    'coil-too-high': 'the wire takes more of the volts, IEC 60228',
    'fuse-too-small': 'through more ohms the coils draw less, IEC 60228',
    'earth-too-thin':
      'an earth need be no thicker than the lines, NEC 250.122(A), IEC 60364-5-54 Table 54.2; a line is judged by itself',
  },
  'longer run': {
    'coil-too-high': 'the wire takes more of the volts, IEC 60228',
    'fuse-too-small': 'through more ohms the coils draw less, IEC 60228',
  },
  'hotter shop': {
    'fuse-too-small': 'warm copper draws less for long, IEC 60228',
  },
  'cooler insulation': {},
  'cooler terminals': {},
  'larger breaker': {
    'trips-at-start': 'a larger one carries the start, IEC 60898-1',
    'circuit-overloaded':
      'a circuit of more amperes carries more, NEC 210.20(A); its wire is judged by itself',
  },
  'larger fuse': {
    'fuse-too-small': 'a larger one carries what flows, IEC 60269-1, and the start',
    'trips-at-start': 'a larger one carries the start, IEC 60269-1',
    'circuit-overloaded':
      'the fuse of the plug is the least of the circuit; what lies behind it is judged by itself',
  },
  'smaller contact': {},
  'weaker supply': {
    'transformer-unprotected':
      'a smaller transformer may have more times its current ahead, below 50 VA in its box anything, NEC 430.72(C)(3), (4), 450.3(B)',
    'wire-overloaded':
      'what cannot be pushed into a wire does not heat it, NEC 725.43, IEC 60364-4-43 clause 433.1',
    'fuse-too-small': 'under fewer volts the coils draw less',
    'coil-too-high': 'an unregulated supply of less power sags further under the same coil; makers’ data',
  },
  'larger motor': {
    'conductor-unprotected':
      'ahead of a motor alone may stand so many times its current, NEC 240.4(G) and 430.52; its wire is judged for what it draws',
    'breaker-too-large': 'the breaker may be so many times the motor’s current, NEC 430.52',
    'overload-setting':
      'a dial set too high for one motor is right for a larger, NEC 430.32(A), IEC 60947-4-1',
  },
};

/** 0 passes, 1 cannot be told, 2 fails. */
const GRAVITY: Readonly<Record<Severity, number>> = {
  danger: 2,
  warning: 2,
  fault: 2,
  doubt: 1,
  caution: 0,
  notice: 0,
};
const VERDICT = { pass: 0, 'cannot-tell': 1, fail: 2 } as const;

/** Findings that name the two ends of a cable, which are other ones when another cable is the thinnest. */
const OF_ENDS: ReadonlySet<FindingId> = new Set<FindingId>([
  'cord-too-thin',
  'conductor-unprotected',
  'cord-as-fixed-wiring',
  'wire-overloaded',
]);
/** A finding names the gate or outlet that is worst off, which another figure may change. */
const WORST_OFF: ReadonlySet<PartKind | undefined> = new Set<PartKind>(['gate', 'outlet', 'joint']);

export interface Graded {
  readonly verdict: number;
  /** by id, and by id and part */
  readonly findings: ReadonlyMap<string, number>;
}

/** How grave each finding of a plan is, none folded. */
function graded(study: Study): Graded {
  const findings = new Map<string, number>();
  for (const check of REGISTER)
    for (const { id, parts, severity } of check.find(study)) {
      const told = OF_ENDS.has(id) ? [] : parts.filter((p) => !WORST_OFF.has(study.plan.parts.get(p)?.kind));
      for (const key of [id, ...told.map((p) => `${id} ${p}`)])
        findings.set(key, Math.max(findings.get(key) ?? 0, GRAVITY[severity]));
    }
  return { verdict: VERDICT[judge(study).verdict], findings };
}

export interface Outcome {
  /** changes tried */
  readonly tried: number;
  /** what a change for the worse ended and must not, in words */
  readonly broken: readonly string[];
  /** exceptions met, `larger breaker: trips-at-start` */
  readonly met: ReadonlySet<string>;
}

/** Every change of a plan that `take` wants, held against the law. */
export function outcomeOf(plan: Plan, take: (change: OneChange, index: number) => boolean): Outcome {
  const whole = Study.of(plan);
  const own = graded(whole);
  const of = (other: Plan) => (other === plan ? own : graded(whole.withFigures(other)));
  const broken: string[] = [];
  const met = new Set<string>();
  const changes = [...changesOf(plan)].filter(take);
  for (const change of changes) {
    const excepted = EXCEPTIONS[change.way];
    const [before, after] = [of(change.before), of(change.after)];
    let kept = 0;
    for (const [key, gravity] of before.findings) {
      const id = key.split(' ')[0] as FindingId;
      if (excepted[id] === undefined) kept = Math.max(kept, gravity);
      if ((after.findings.get(key) ?? 0) >= gravity) continue;
      if (excepted[id] === undefined) broken.push(`${change.way}, ${change.words}: ends ${key}`);
      else met.add(`${change.way}: ${id}`);
    }
    if (after.verdict < Math.min(kept, before.verdict))
      broken.push(`${change.way}, ${change.words}: the plan is judged better`);
  }
  return { tried: changes.length, broken, met };
}
