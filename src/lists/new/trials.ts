/** Designs on trial: each is written as a plan, read back and judged in whole, and what stands against it is kept. */
import { judge, judgeAsTaken } from '../../findings/judge.ts';
import { type Finding, gravestFirst, type Report } from '../../findings/report-model.ts';
import type { Plan } from '../../plan/plan.ts';
import { readPlan } from '../../plan/read.ts';
import { Study } from '../../study/study.ts';
import { isBorne } from './borne.ts';
import type { Design } from './design.ts';
import { planText } from './plan-text.ts';

/** What a check says of one design. */
export interface Tried {
  readonly design: Design;
  readonly text: string;
  readonly plan: Plan;
  readonly report: Report;
  /** findings that keep it from passing */
  readonly against: readonly Finding[];
  /** cautions that some other choice may spare */
  readonly sparable: readonly string[];
}

/** File name of plans on trial. */
const FILE = 'new.yaml';

export class Trials {
  readonly #tried = new Map<string, Tried>();

  /** Throws where the text cannot be read, which is a mistake of this program: answers are checked before. */
  of(design: Design): Tried {
    const text = planText(design);
    const known = this.#tried.get(text);
    if (known !== undefined) return { ...known, design };
    const plan = this.read(design, text);
    const report = reportOf(design, Study.of(plan));
    const tried = { design, text, plan, report, ...standing(report) };
    this.#tried.set(text, tried);
    return tried;
  }

  /** How many plans were judged. */
  get count(): number {
    return this.#tried.size;
  }

  /** The plan of a design. */
  read(design: Design, text = planText(design)): Plan {
    const read = readPlan(text, FILE);
    if (!read.ok) throw new Error(`a new plan cannot be read: ${read.errors[0]?.message}`);
    return read.plan;
  }
}

/** What parts at hand leave unsaid is weighed at both ends only where the usual values pass: that takes long. */
function reportOf({ supply, switching, between }: Design, study: Study): Report {
  const stated = supply.chosen && switching.hand === undefined && between !== 'relay-at-hand';
  const taken = stated ? undefined : judgeAsTaken(study);
  return taken === undefined || taken.verdict === 'pass' ? judge(study) : taken;
}

function standing({ findings, cautions, verdict }: Report): Pick<Tried, 'against' | 'sparable'> {
  const against =
    verdict === 'pass'
      ? []
      : gravestFirst(findings.filter((f) => !['caution', 'notice'].includes(f.severity)));
  const minor = findings.filter((f) => f.severity === 'caution').map((f) => f.id as string);
  return { against, sparable: [...minor, ...cautions.map((c) => c.id)].filter((id) => !isBorne(id)) };
}

/** Whether nothing stands against it and nothing could be spared. */
export const isClean = ({ against, sparable }: Tried): boolean =>
  against.length === 0 && sparable.length === 0;

/** Less is better: what keeps it from passing first, then cautions. */
export const badness = ({ against, sparable }: Tried): number => against.length * 1000 + sparable.length;

/** The first of these designs that is clean, else the best, of equals the first. There has to be one. */
export function bestOf(trials: Trials, designs: readonly Design[]): Tried {
  let best: Tried | undefined;
  for (const design of designs) {
    const tried = trials.of(design);
    if (isClean(tried)) return tried;
    if (best === undefined || badness(tried) < badness(best)) best = tried;
  }
  if (best === undefined) throw new Error('no design to choose from');
  return best;
}
