/** A plan completed in several ways. */
import { kept } from '../../plan/map-entries.ts';
import type { Plan } from '../../plan/plan.ts';
import { completed, stating, type Unsaid, type Value, type World } from '../../ratings/unsaid/ends.ts';
import { unsaidIn } from '../../ratings/unsaid/unsaid.ts';
import { Study } from '../../study/study.ts';

/** What the plan leaves out, and the studies of it completed; each is made when first asked for. */
export class Worlds {
  readonly unsaid: readonly Unsaid[];
  private readonly studies = new Map<string, Study>();

  constructor(readonly study: Study) {
    this.unsaid = unsaidIn(study.plan);
  }

  /** What bears on the answer to a question and differs in that world from what is taken. */
  bearing(question: number, world: World): Unsaid[] {
    return this.unsaid.filter((u) => u.at[world] !== undefined && u.bears.includes(question));
  }

  /** Worlds that say the same are one study. */
  at(world: World): Study {
    return kept(this.byWorld, world, () => {
      const said = JSON.stringify(this.unsaid.map((u) => u.at[world] ?? null));
      return kept(this.studies, said, () => this.of(completed(this.study.plan, this.unsaid, world)));
    });
  }
  private readonly byWorld = new Map<World, Study>();

  /** A world but for some figures. */
  but(world: World, other: ReadonlyMap<Unsaid, Value>): Study {
    const said = this.unsaid.flatMap((u) => {
      const value = other.get(u) ?? u.at[world];
      return value === undefined ? [] : [[u, value] as const];
    });
    return this.of(stating(this.study.plan, said));
  }

  /** Where volts decide what conducts, the figures may; else the proof stays. */
  private of(plan: Plan): Study {
    const { verified, nominal } = this.study;
    return nominal?.verified === verified ? this.study.withFigures(plan) : Study.of(plan);
  }
}
