/** What a plan leaves out that has no usual value, read the other way: levers mounted otherwise, the other tables. */
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

const otherPractice = (plan: Plan): Plan => ({ ...plan, practice: plan.practice === 'nec' ? 'iec' : 'nec' });
