/** A plan under study, as scripts have it: the plan, and all that was worked out of it behind a closed door. */
import type { Plan } from '../plan/plan.ts';
import { Study as Whole } from '../study/study.ts';

let open: (study: Study) => Whole;
let make: (plan: Plan) => Study;

/**
 * A plan with everything that was worked out of it. Each answer is worked out when it is first asked for and then kept, so
 * one `Study` should serve every question about a plan. Made by `study`; nothing in it changes that shows.
 */
export class Study {
  /** the plan it is of */
  readonly plan: Plan;
  readonly #whole: Whole;

  private constructor(plan: Plan) {
    this.plan = plan;
    this.#whole = Whole.of(plan);
  }

  static {
    open = (study) => study.#whole;
    make = (plan) => new Study(plan);
  }
}

/** What the products are made from. Throws a `TypeError` for what `study` did not make. */
export const wholeOf = (study: Study): Whole => open(study);

/**
 * Puts a plan under study. It takes no time itself: what is worked out is worked out by the first product that needs it.
 * @param plan a plan that `readPlan`, `planWith` or `newPlan` gave
 */
export const study = (plan: Plan): Study => make(plan);
