/** What a plan leaves out that has no usual value, read the other way: levers mounted otherwise, long delays, the other tables. */
import type { Part } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { Study } from '../../study/study.ts';
import type { Finding } from '../report-model.ts';

/** Plans as they may be meant besides; none where nothing of the kind is left out. */
export function otherReadings(study: Study, grave: readonly Finding[]): Study[] {
  const { plan } = study;
  const levers = unsaidLevers(plan);
  const named = new Set(grave.flatMap((f) => f.parts));
  const some = levers.filter((name) => named.has(name));
  const plans = [
    ...(levers.length > 0 ? [withLevers(plan, levers)] : []),
    ...(some.length > 0 && some.length < levers.length ? [withLevers(plan, some)] : []),
    ...(hasUnsaidTime(plan) ? [withTimes(plan)] : []),
    ...(plan.practiceFrom === 'taken' ? [otherPractice(plan)] : []),
  ];
  return plans.map((p) => Study.of(p));
}

function unsaidLevers(plan: Plan): string[] {
  return [...plan.parts.values()]
    .filter((p) => p.kind === 'gate' && !p.where.has('pressed-when'))
    .map((p) => p.name);
}

function withLevers(plan: Plan, names: readonly string[]): Plan {
  const parts = new Map<string, Part>(plan.parts);
  for (const name of names) {
    const part = parts.get(name);
    if (part?.kind === 'gate') parts.set(name, { ...part, pressedWhen: 'shut' });
  }
  return { ...plan, parts };
}

/** s, longer than any run-on that is asked for; common practice, no source. */
const LONG = 600;

const hasUnsaidTime = ({ parts }: Plan): boolean =>
  [...parts.values()].some((p) => p.kind === 'timer' && p.time === undefined);

/** A delay that is not stated is taken as none; here it is a long one. */
function withTimes(plan: Plan): Plan {
  const parts = [...plan.parts].map(([name, p]): [string, Part] => [
    name,
    p.kind === 'timer' && p.time === undefined ? { ...p, time: LONG } : p,
  ]);
  return { ...plan, parts: new Map(parts) };
}

const otherPractice = (plan: Plan): Plan => ({ ...plan, practice: plan.practice === 'nec' ? 'iec' : 'nec' });
