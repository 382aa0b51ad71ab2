/** Tries faults on the bench and chooses the readings that show them. */
import { spend } from '../circuit/effort.ts';
import { kept } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { Carrying } from './alike/carrying.ts';
import { EffectTable } from './effect-table.ts';
import { type Fault, mayShow } from './fault.ts';
import { leadFaults } from './fault-clip-lead.ts';
import { GivenUp } from './given-up.ts';
import { Judging } from './judging.ts';
import { howWrong, type Measure, wrongOhms } from './measure.ts';
import { fewest, ReadingsGathered, shorter, trouble } from './readings-gathered.ts';
import { redOnCathode } from './red-on-cathode.ts';
import { Sections } from './sections.ts';
import type { Wrong } from './sheet/sheet-model.ts';
import { inShopOrder } from './shop-order.ts';
import type { Stance } from './stance.ts';
import { type Bench, type Subject, Subjects } from './subject.ts';
import { sweeping } from './sweeping.ts';
import type { Trial } from './trial.ts';
import { Trials } from './trials.ts';

/** Told how many of how many trials are done. */
export type Progress = (done: number, of: number) => void;

export interface Searched {
  /** those given, and then those that only the sheet itself can bring in */
  readonly faults: readonly Fault[];
  /** in shop order */
  readonly measures: readonly Measure[];
  /** relay of the zone that each measure is taken in; null for the trunk, and where there are no zones */
  readonly zones: readonly (string | null)[];
  /** for each measure, what each fault that it shows does to it */
  readonly wrong: readonly ReadonlyMap<number, Wrong>[];
  /** for each measure the faults for which it tells nothing, each with the first that it does this to */
  readonly spoiled: readonly ReadonlySet<number>[];
  /** faults that some reading tried shows */
  readonly detectable: ReadonlySet<number>;
  /** true in a very large shop, where what is near the probes is worked out alone */
  readonly near: boolean;
}

type Judged = readonly (readonly [Measure, Wrong])[];

/** Steps up to which a sheet is short enough to do without clip leads: so many a gate, and so many more. */
const SHORT = { gate: 2, more: 12 } as const;

/** Faults times positions up to which the readings that look best are known in full; each is a network to solve. */
const STATES = 40_000;

/** Faults above which a step more or less is nothing beside the time that it takes to find it. */
const VERY_LARGE = 2500;

/** What makes a reading of one zone less handy where it is taken from outside of it; common practice, no source. */
const ACROSS = 0.1;

/** Faults times chosen readings up to which all is known of each pair, also after the first reading that shows a fault. */
const WHOLLY = 40_000;

export function searchReadings(study: Study, faults: readonly Fault[], progress?: Progress): Searched {
  return new Search(study, faults, progress).run();
}

class Search {
  private readonly plan: Plan;
  private readonly subjects: Subjects;
  private readonly trials: Trials;
  private readonly judging: Judging;
  private readonly sections: Sections;
  private readonly short: number;
  private readonly veryLarge: boolean;
  /** the faults that are tried at all */
  private readonly tried: readonly number[];
  private readonly early = new ReadingsGathered();
  private readonly mains = new ReadingsGathered();
  /** by list of readings and by the relays that are in */
  private readonly relayed = new Map<readonly Measure[], Map<string, Judged>>();
  /** numbers of the faults that are tried with everything, and of those that are like them */
  private readonly models: readonly number[];
  private readonly others: readonly number[];
  private readonly carrying: Carrying | undefined;
  private readonly givenUp = new GivenUp();
  private done = 0;
  private total: number;

  constructor(
    study: Study,
    private readonly faults: readonly Fault[],
    private readonly progress: Progress | undefined,
  ) {
    this.plan = study.plan;
    this.subjects = new Subjects(study);
    this.trials = new Trials(study, this.subjects, faults.length);
    this.sections = new Sections(study, this.subjects.right.circuit);
    this.judging = new Judging(study.plan, this.subjects, this.trials, faults);
    const gates = this.subjects.right.circuit.inputs.filter((i) => i.kind === 'gate').length;
    this.short = SHORT.gate * gates + SHORT.more;
    this.tried = faults.flatMap((f, i) => (f.untried === undefined ? [i] : []));
    this.veryLarge = this.tried.length > VERY_LARGE;
    this.total = 2 * this.tried.length;
    if (!this.trials.all)
      this.carrying = new Carrying(
        study,
        { faults, tried: this.tried },
        this.trials,
        this.judging,
        this.veryLarge,
      );
    this.models = this.carrying?.alike.models ?? this.tried;
    this.others = this.carrying?.alike.others ?? [];
  }

  run(): Searched {
    this.tryBeforeMains(['dead', 'loop']);
    let best = this.mainsLast() ?? [];
    if (this.isLong(best)) {
      this.total += this.tried.length;
      this.tryBeforeMains(['dead clipped', 'loop clipped']);
      best = shorter(best, this.mainsLast());
    }
    // What harms nobody may be found with mains on, where all else makes too long a sheet.
    if (this.isLong(best)) {
      const isOther = new Set(this.others);
      this.tryOnMains((fault, i) => fault.beforeMains !== true && !isOther.has(i));
      this.carry(['mains'], [this.early, this.mains]);
      best = shorter(best, this.together());
    }
    return this.searched(best);
  }

  /** Longer than it need be: in a very large shop only where the line is what makes it so, not the gates. */
  private isLong(best: readonly Measure[]): boolean {
    const over = best.length - this.short;
    return over > 0 && (!this.veryLarge || over <= best.filter((m) => this.trials.isOfLine(m)).length);
  }

  private tryBeforeMains(trials: readonly Trial[]): void {
    for (const i of this.models) {
      this.tryFault(i, trials, this.early);
      this.tick();
    }
    this.complete(this.models);
    this.carry(trials, [this.early]);
  }

  /** The other faults are tried as those they are like were found, and with everything where that does not show them. */
  private carry(trials: readonly Trial[], known: readonly ReadingsGathered[]): void {
    if (this.carrying === undefined) return;
    if (this.givenUp.holds(this.others)) return;
    const gathered = { before: this.early, mains: this.mains };
    for (const group of this.carrying.carry(known, gathered, this.weigh))
      for (const i of group) {
        // What nothing tells at parts alike to the last figure is not tried with everything once more.
        const told = this.carrying.alike.twinsOf(i).every((k) => this.early.faults.has(k));
        if (!this.early.faults.has(i) && told && !trials.includes('mains'))
          this.tryFault(i, trials, this.early);
        this.tick();
      }
  }

  /** Where not all were tried with all: what nothing shows yet with every reading, all with those that look best so far. */
  private complete(among: readonly number[]): void {
    if (this.trials.all || this.givenUp.isTime) return;
    const hidden = among.filter((i) => !this.early.faults.has(i) && mayShow(this.faults[i]!));
    const like = this.others.filter((i) => this.carrying!.alike.modelsOf(i).every((k) => hidden.includes(k)));
    if (this.trials.affords(hidden.length + like.length))
      for (const i of hidden) this.tryFault(i, ['dead', 'loop'], this.early, true);
    if (this.tried.length * this.trials.stances.length > STATES) return;
    this.judging.ask(this.early.promising(), among, this.early);
  }

  private tryOnMains(which: (fault: Fault, index: number) => boolean): void {
    for (const i of this.tried)
      if (!this.mains.triedAt(i) && which(this.faults[i]!, i)) this.tryFault(i, ['mains'], this.mains);
  }

  private tryFault(index: number, trials: readonly Trial[], into: ReadingsGathered, all?: boolean): void {
    if (this.givenUp.holds([index])) return;
    const fault = this.faults[index]!;
    const bench = this.trials.bench(fault, all);
    const subject = bench.build(fault);
    for (const trial of trials)
      for (const { stance, list, inLoop } of this.trials.for(fault, trial, all)) {
        into.trying(index, list);
        spend(list.length);
        if (inLoop) {
          for (const [m, wrong] of this.byRelays(list, stance, subject, bench)) into.add(m, index, wrong);
          continue;
        }
        for (const m of list) {
          const wrong = this.judging.judged(m, fault, subject);
          if (wrong !== undefined) into.add(m, index, wrong);
        }
      }
  }

  /** What a line that is right reads wrong for the relays that a fault in the loop keeps in or out. */
  private byRelays(list: readonly Measure[], stance: Stance, subject: Subject, { right }: Bench): Judged {
    const relays = subject.loop.relaysAt(stance);
    if (relays === undefined) return [];
    const known = kept(this.relayed, list, () => new Map());
    return kept(known, relays.map(Number).join(''), () =>
      list.flatMap((m) => {
        const { pair, clipped } = m;
        const at = { moved: stance.moved, relays, clipped };
        const wrong = wrongOhms(m, right.dead.readOneOfMany(at, pair.a, pair.b));
        return wrong === undefined ? [] : [[m, wrong] as const];
      }),
    );
  }

  /** In a large shop a zone is rather read by itself than from across the trunk. */
  private readonly weigh = (m: Measure): number =>
    trouble(m) + (!this.trials.all && this.sections.isApart(m) ? ACROSS : 0);

  private tick(): void {
    this.progress?.(++this.done, this.total);
  }

  /** Everything that shows before mains is on is found before; only what is left is looked for with mains on. */
  private mainsLast(): Measure[] | undefined {
    const late = (i: number) => !this.early.faults.has(i);
    this.tryOnMains((_, i) => late(i));
    const first = this.witnessed(ReadingsGathered.choose([this.early], { weigh: this.weigh }));
    return first && [...first, ...ReadingsGathered.choose([this.mains], { counted: late })];
  }

  /** All at once, fewest readings first: gates opened before mains is on, and clip leads that were left, count as well. */
  private together(): Measure[] | undefined {
    const { inputs } = this.subjects.right.circuit;
    const all = [this.early, this.mains];
    const opened = (m: Measure) =>
      m.stage === 3
        ? []
        : m.stance.moved.filter((i) => inputs[i]!.kind === 'gate').map((i) => this.faults.length + i);
    const first = ReadingsGathered.choose(all, { more: opened, weigh: fewest });
    const leads = leadFaults(this.plan, first);
    const used = new Set(first.map((m) => m.clipped.join()));
    const led = leads.map((fault) => this.subjects.build(fault));
    const left = (m: Measure) =>
      m.stage === 3 || m.clipped.length > 0
        ? []
        : led.flatMap((s, k) =>
            howWrong(m, s) === undefined ? [] : [this.faults.length + inputs.length + k],
          );
    return this.witnessed(
      ReadingsGathered.choose(all, {
        more: (m) => [...opened(m), ...left(m)],
        allowed: (m) => m.clipped.length === 0 || leads.length === 0 || used.has(m.clipped.join()),
        weigh: fewest,
      }),
    );
  }

  /**
   * With readings that show a clip lead left where nothing else keeps it from meeting the mains; undefined where no
   * reading shows that.
   */
  private witnessed(chosen: readonly Measure[]): Measure[] | undefined {
    const measures = [...chosen];
    for (const fault of leadFaults(this.plan, chosen)) {
      const subject = this.subjects.build(fault);
      const shows = (m: Measure) =>
        m.stage < 3 && m.clipped.length === 0 && howWrong(m, subject) !== undefined;
      if (measures.some(shows)) continue;
      const witness = this.early.measures().find(shows);
      if (witness === undefined) return undefined;
      measures.push(witness);
    }
    return measures;
  }

  private searched(best: readonly Measure[]): Searched {
    const chosen = !this.veryLarge ? best : [...best, ...sweeping(this.early, best, this.models)];
    const isShown = (i: number) => this.early.faults.has(i) || this.mains.faults.has(i);
    const faults = [...this.givenUp.told(this.faults, isShown), ...leadFaults(this.plan, chosen)];
    const own = faults.flatMap((f, i) => (f.untried === undefined ? [i] : []));
    const wholly = own.length * chosen.length <= WHOLLY;
    const gathered = { before: this.early, mains: this.mains };
    const table = new EffectTable(
      inShopOrder(chosen, this.trials.stances, this.sections),
      own,
      (some, measures) =>
        this.judging.rows(faults, some, measures, gathered, { given: this.faults.length, wholly }),
    );
    for (const i of own) if (i < this.faults.length) this.tick();
    const { measures, wrong } = table.withoutNeedless(wholly);
    const shown = (i: number) => isShown(i) || wrong.some((w) => w.has(i));
    return {
      faults,
      measures: redOnCathode(this.subjects, measures, !this.trials.all),
      zones: measures.map((m) => this.sections.zone(m)),
      wrong,
      spoiled: this.judging.spoiled(faults, measures, wrong),
      detectable: new Set(own.filter(shown)),
      near: this.veryLarge,
    };
  }
}
