/** Whether what was seen is a danger by itself. */
import type { Study } from '../../study/study.ts';
import type { Answer, Answered, Observation } from './observation.ts';

/** Whether a load ran although something that must stop it was worked, or while a relay was out. */
export function ranAstray(
  { plan, wired }: Study,
  answers: readonly Answered[],
  ofPlan: (observation: Observation) => Answer | undefined,
): boolean {
  const stops = new Set(
    (plan.intents ?? []).flatMap((i) => [...i.blockedBy, ...i.stoppedBy].map((r) => r.part)),
  );
  const out = new Set(
    answers.flatMap(({ observation: o, answer }) =>
      o.kind === 'click' && answer.by === 'yes' && !answer.yes ? [o.stance.key] : [],
    ),
  );
  return answers.some(({ observation: o, answer }) => {
    if ((o.kind !== 'look' && o.kind !== 'finger') || answer.by !== 'loads') return false;
    const right = ofPlan(o);
    const astray = answer.on.some((load) => right?.by === 'loads' && !right.on.includes(load));
    const stopped = o.stance.moved.some((i) => stops.has(wired.inputs[i]!.part));
    return astray && (stopped || out.has(o.stance.key));
  });
}
