/** Tries the faults of parts that many are wired like with the readings that show those of one of them. */
import { kept, push } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import type { Fault } from '../fault.ts';
import type { Gathered, Judging } from '../judging.ts';
import type { Measure } from '../measure.ts';
import { ReadingsGathered } from '../readings-gathered.ts';
import type { Subject } from '../subject.ts';
import type { Trials } from '../trials.ts';
import { AlikeFaults } from './alike-faults.ts';
import { AlikeParts } from './alike-parts.ts';
import { Carried } from './carried.ts';

export class Carrying {
  readonly alike: AlikeFaults;
  private readonly carried: Carried;
  private readonly faults: readonly Fault[];

  constructor(
    study: Study,
    { faults, tried }: { readonly faults: readonly Fault[]; readonly tried: readonly number[] },
    private readonly trials: Trials,
    private readonly judging: Judging,
    /** what is shown dead is not tried live as well */
    private readonly deadIsEnough: boolean,
  ) {
    const parts = new AlikeParts(study.plan);
    this.faults = faults;
    this.alike = new AlikeFaults(faults, tried, parts);
    this.carried = new Carried(study, study.wired, parts, this.alike);
  }

  /**
   * The readings of least trouble that show the models, carried over to each part that is wired like theirs: all faults of
   * that part are tried with all of them there. Gives the faults of each part, once they were tried.
   */
  *carry(
    known: readonly ReadingsGathered[],
    gathered: Gathered,
    weigh: (m: Measure) => number,
  ): Generator<readonly number[]> {
    const isModel = new Set(this.alike.models);
    const chosen = ReadingsGathered.choose(known, { counted: (i) => isModel.has(i), weigh });
    const shown = new Map<number, Measure[]>();
    for (const m of chosen)
      for (const g of known) for (const i of g.shownBy(m)) if (isModel.has(i)) push(shown, i, m);
    for (const group of this.alike.groups()) {
      this.carryTo(group, shown, gathered);
      yield group;
    }
  }

  private carryTo(
    group: readonly number[],
    shown: ReadonlyMap<number, readonly Measure[]>,
    { before, mains }: Gathered,
  ): void {
    const faults = group.map((i) => this.faults[i]!);
    const wanted = group.flatMap((i) => this.carried.places(i, shown));
    const places = new Map(wanted.map((place) => [place.key, place]));
    const { bench, readings } = this.trials.at(faults, [...places.values()]);
    const shownDead = new Set<number>();
    const built = new Map<number, Subject>();
    for (const m of inOrder(readings)) {
      const into = m.stage === 3 ? mains : before;
      const known = into.knownOf(m);
      for (const [k, i] of group.entries()) {
        if (known(i) !== undefined || (m.stage === 2 && this.deadIsEnough && shownDead.has(i))) continue;
        const fault = faults[k]!;
        const subject = kept(built, i, () => bench.build(fault));
        const wrong = this.judging.judged(m, fault, subject);
        if (wrong === undefined) into.learn(m, i);
        else into.add(m, i, wrong);
        if (wrong !== undefined && m.stage === 1) shownDead.add(i);
      }
    }
  }
}

/** What is read dead comes first. */
function inOrder(readings: readonly Measure[]): Measure[] {
  return [...readings].sort((x, y) => x.stage - y.stage);
}
