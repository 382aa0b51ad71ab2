/** What faults do to readings that were not made for them, and to those that were. */
import { loopNeedsMains } from '../machine/power.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import type { Fault } from './fault.ts';
import { hazards } from './hazard.ts';
import { howWrong, type Measure } from './measure.ts';
import { Readable } from './readable.ts';
import type { ReadingsGathered } from './readings-gathered.ts';
import type { Wrong } from './sheet/sheet-model.ts';
import type { Subject, Subjects } from './subject.ts';
import type { Trials } from './trials.ts';

/** What is known of readings with mains off and of those with mains on. */
export interface Gathered {
  readonly before: ReadingsGathered;
  readonly mains: ReadingsGathered;
}

/** What faults do to the readings of a sheet, by fault: those readings that show it. */
export type Rows = Map<number, Map<Measure, Wrong>>;

export class Judging {
  private readonly readable: Readable;
  private readonly hazard: ReturnType<typeof hazards>;
  private readonly loopNeedsMains: boolean;
  private readonly harmful = new Map<Fault, boolean>();

  constructor(
    plan: Plan,
    private readonly subjects: Subjects,
    private readonly trials: Trials,
    private readonly faults: readonly Fault[],
  ) {
    const { circuit } = subjects.right;
    this.readable = new Readable(subjects);
    this.hazard = hazards(plan, circuit);
    this.loopNeedsMains = loopNeedsMains(circuit);
  }

  /** Found by a bang is not found; where the loop hangs on the plug, mains is on with the loop. */
  judged(m: Measure, fault: Fault, subject: Subject): Wrong | undefined {
    const mainsOn = m.stage === 3 || (m.stage === 2 && this.loopNeedsMains);
    return mainsOn && this.isHazard(fault) ? undefined : howWrong(m, subject);
  }

  /** Finds out what some faults do to readings of which that is not known yet. */
  ask(measures: readonly Measure[], among: readonly number[], into: ReadingsGathered): void {
    const key = (m: Measure) => `${m.stage} ${m.stance.key}`;
    const order = [...measures].sort((x, y) => key(x).localeCompare(key(y), 'en'));
    for (const group of byPosition(order))
      for (const i of among) {
        const fault = this.faults[i]!;
        for (const m of group) {
          if (into.knownOf(m)(i) !== undefined) continue;
          const wrong = this.isReadable(m, fault) ? this.late(m, fault, group) : undefined;
          if (wrong === undefined) into.learn(m, i);
          else into.add(m, i, wrong);
        }
      }
  }

  /**
   * What some faults do to each of the readings chosen, in shop order: what is shown with mains off is put right then.
   * Unless it is to be known `wholly`, readings after the first that shows a fault tell only what is known of them
   * already. Faults after the first `given` are those of clip leads that were left on.
   */
  rows(
    faults: readonly Fault[],
    some: readonly number[],
    measures: readonly Measure[],
    gathered: Gathered,
    { given, wholly }: { readonly given: number; readonly wholly: boolean },
  ): Rows {
    const rows: Rows = new Map(some.map((i) => [i, new Map()]));
    const shown = new Set<number>();
    const passed = (m: Measure, i: number) =>
      (m.stage === 3 && shown.has(i)) || (i >= given && m.clipped.length > 0);
    let unseen = some;
    for (const group of byPosition(measures)) {
      const into = group[0]!.stage === 3 ? gathered.mains : gathered.before;
      const known = group.map((m) => into.knownOf(m));
      for (const i of wholly ? some : unseen) {
        const fault = faults[i]!;
        for (const [k, m] of group.entries()) {
          let found = known[k]!(i);
          if (found === undefined && !passed(m, i) && (i >= given || this.isReadable(m, fault))) {
            found = this.late(m, fault, group);
            into.learn(m, i, found);
          }
          if (found && !wholly) break;
        }
      }
      const seen = new Set<number>();
      for (const m of group)
        for (const [i, found] of into.found(m)) {
          const row = rows.get(i);
          if (row === undefined || passed(m, i)) continue;
          row.set(m, found);
          seen.add(i);
        }
      if (group[0]!.stage < 3) for (const i of seen) shown.add(i);
      if (seen.size > 0) unseen = unseen.filter((i) => !seen.has(i));
    }
    return rows;
  }

  /**
   * For each reading the faults for which it tells nothing: they bring the loop's supply to a meter on ohms, and no reading
   * before it has shown them. A fault stands with the first reading that it spoils.
   */
  spoiled(
    faults: readonly Fault[],
    measures: readonly Measure[],
    wrong: readonly ReadonlyMap<number, Wrong>[],
  ): Set<number>[] {
    const found = new Map(measures.map((m) => [m, new Set<number>()]));
    const at = new Map(measures.map((m, k) => [m, k]));
    const shown = new Map<number, number>();
    for (const [k, w] of wrong.entries()) for (const i of w.keys()) if (!shown.has(i)) shown.set(i, k);
    const open = new Set(
      faults.flatMap((f, i) => (f.untried === undefined && this.trials.crosses(f) ? [i] : [])),
    );
    for (const group of byPosition(measures.filter((m) => m.stage === 2 && m.expect.unit === 'ohm')))
      for (const i of open) {
        const before = group.filter((m) => at.get(m)! < (shown.get(i) ?? measures.length));
        const first = before.find(({ stance, pair }) => {
          const { loop } = this.trials.built(faults[i]!, group);
          return loop.relaysAt(stance, pair.a, pair.b) === undefined;
        });
        if (first !== undefined) found.get(first)!.add(i);
        if (first !== undefined || before.length < group.length) open.delete(i);
      }
    return [...found.values()];
  }

  private late(m: Measure, fault: Fault, among: readonly Measure[]): Wrong | undefined {
    return this.judged(m, fault, this.trials.built(fault, among));
  }

  private isHazard(fault: Fault): boolean {
    return kept(this.harmful, fault, () => this.hazard(this.subjects.circuit(fault)));
  }

  /** Whether a fault could change a reading. */
  private isReadable(m: Measure, fault: Fault): boolean {
    return this.trials.all || this.readable.by(m, fault);
  }
}

/** Readings that come one after the other in one stage and one position. */
function byPosition(measures: readonly Measure[]): Measure[][] {
  const groups: Measure[][] = [];
  for (const m of measures) {
    const before = groups.at(-1)?.[0];
    if (before?.stage === m.stage && before.stance.key === m.stance.key) groups.at(-1)!.push(m);
    else groups.push([m]);
  }
  return groups;
}
