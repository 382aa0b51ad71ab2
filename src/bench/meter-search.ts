/** Tries faults on the bench and chooses the readings that show them. */
import { isLow } from '../checks/sides.ts';
import { findSides } from '../checks/study.ts';
import { buildCircuit } from '../circuit/build.ts';
import type { Plan } from '../plan/plan.ts';
import { chooseFew, dropNeedless, exchange } from './meter-cover.ts';
import type { Fault } from './meter-fault.ts';
import { hazards } from './meter-hazard.ts';
import { judge, type Measure } from './meter-measure.ts';
import { type Measurer, measurer } from './meter-options.ts';
import { type Pair, probePairs } from './meter-pairs.ts';
import type { Wrong } from './meter-sheet.ts';
import { REST, type Stance, sealingInputs, stances } from './meter-stance.ts';
import { type Subject, subjects } from './meter-subject.ts';
import { probeOf } from './meter-words.ts';

/** Told how many of how many trials are done. */
export type Progress = (done: number, of: number) => void;

export interface Searched {
  /** in shop order */
  readonly measures: readonly Measure[];
  /** for each measure, what each fault does to it */
  readonly wrong: readonly (readonly (Wrong | undefined)[])[];
  /** faults that some reading tried shows */
  readonly detectable: ReadonlySet<number>;
}

/** Positions up to which every fault is tried in all of them, and pairs of probes likewise. */
const FEW_STANCES = 5;
const FEW_PAIRS = 420;
/** What makes a reading dearer: power on, mains on, several things to hold in position. */
const STAGE_COST = [0, 1, 1.2, 2];

export function search(plan: Plan, faults: readonly Fault[], progress?: Progress): Searched {
  return new Search(plan, faults, progress).run();
}

class Search {
  private readonly bench;
  private readonly stances: readonly Stance[];
  /** positions for mains on: nobody holds a button while probing what holds itself in */
  private readonly handsFree: readonly Stance[];
  private readonly pairs: readonly Pair[];
  private readonly near = new Map<string, Pair[]>();
  private readonly main: readonly Pair[];
  private readonly measure: Measurer;
  private readonly made = new Map<string, readonly Measure[]>();
  private readonly lists = new Map<string, readonly Measure[]>();
  private readonly pairSets = new Map<string, ReadonlySet<Pair>>();
  private readonly onLoop: (fault: Fault) => boolean;
  private readonly hazard: ReturnType<typeof hazards>;
  /** faults that are shown before mains is on */
  private readonly early = new Set<number>();
  private done = 0;

  constructor(
    plan: Plan,
    private readonly faults: readonly Fault[],
    private readonly progress: Progress | undefined,
  ) {
    this.bench = subjects(plan);
    this.stances = stances(plan, this.bench.right.circuit);
    const sealing = sealingInputs(plan, this.bench.right.circuit);
    this.handsFree = this.stances.filter((s) => !s.moved.some((i) => sealing.has(i)));
    this.pairs = probePairs(plan);
    this.main = this.pairs.filter((p) => p.main);
    for (const pair of this.pairs)
      for (const part of new Set([probeOf(pair.a).part, probeOf(pair.b).part]))
        this.near.set(part, [...(this.near.get(part) ?? []), pair]);
    this.measure = measurer(plan, this.bench.right);
    this.onLoop = touchesLoop(plan);
    this.hazard = hazards(plan, this.bench.right.circuit);
  }

  run(): Searched {
    const tried = this.faults.flatMap((f, i) => (f.untried === undefined ? [i] : []));
    const total = 2 * tried.length;
    const tick = () => this.progress?.(++this.done, total);
    const dead = new Gathered();
    for (const i of tried) {
      this.tryFault(i, [1, 2], dead);
      tick();
    }
    const covered = new Set<number>();
    const first = dead.choose(covered);
    for (const i of covered) this.early.add(i);
    const mains = new Gathered();
    for (const i of tried) if (!covered.has(i)) this.tryFault(i, [3], mains);
    const chosen = [...first, ...mains.choose(covered)];
    const measures = inShopOrder(chosen, this.stances);
    const wrong = measures.map((): (Wrong | undefined)[] => this.faults.map(() => undefined));
    for (const i of tried) {
      const known = this.known(i, dead);
      const subject = this.bench.build(this.faults[i]!);
      measures.forEach((m, k) => {
        wrong[k]![i] = known(m) ? dead.wrong(m, i) : this.judged(m, i, subject);
      });
      tick();
    }
    const stays = dropNeedless(
      measures.map((m, k) => ({ cost: costOf(m), shows: tried.filter((i) => wrong[k]![i] !== undefined) })),
    );
    return {
      measures: measures.filter((_, k) => stays[k]),
      wrong: wrong.filter((_, k) => stays[k]),
      detectable: new Set(tried.filter((i) => covered.has(i) || wrong.some((w) => w[i] !== undefined))),
    };
  }

  private tryFault(index: number, stages: readonly (1 | 2 | 3)[], into: Gathered): void {
    const fault = this.faults[index]!;
    const subject = this.bench.build(fault);
    for (const stage of stages)
      for (const stance of this.stancesFor(fault, stage))
        for (const m of this.measuresFor(stage, stance, fault)) {
          const wrong = this.judged(m, index, subject);
          if (wrong !== undefined) into.add(m, index, wrong);
        }
  }

  private judged(m: Measure, index: number, subject: Subject): Wrong | undefined {
    if (m.stage === 2 && !this.onLoop(this.faults[index]!)) return undefined;
    // What an earlier stage shows is put right before mains is on, and found by a bang is not found.
    if (m.stage === 3 && (this.early.has(index) || this.hazard(subject.circuit))) return undefined;
    return judge(m, subject);
  }

  /** Whether a reading was tried with a fault before the readings were chosen. */
  private known(index: number, dead: Gathered): (m: Measure) => boolean {
    const fault = this.faults[index]!;
    const keys = ([1, 2] as const).map((stage) => new Set(this.stancesFor(fault, stage).map((s) => s.key)));
    const names = ([1, 2] as const).map(
      (stage) => new Set([...this.pairsFor(fault, stage)].map((p) => `${p.a} ${p.b}`)),
    );
    return (m) => {
      const { a, b } = m.pair;
      if (m.stage === 3) return false;
      const own = names[m.stage - 1]!;
      const paired = own.has(`${a} ${b}`) || own.has(`${b} ${a}`);
      return dead.has(m) && keys[m.stage - 1]!.has(m.stance.key) && paired;
    };
  }

  private measuresFor(stage: 1 | 2 | 3, stance: Stance, fault: Fault): readonly Measure[] {
    const pairs = this.pairsFor(fault, stage);
    const name = `${stage} ${stance.key} ${this.setName(fault, stage)}`;
    let list = this.lists.get(name);
    if (list === undefined) {
      this.fill(stage, stance, pairs);
      list = [...pairs].flatMap((p) => this.made.get(`${stage} ${stance.key} ${p.a} ${p.b}`)!);
      this.lists.set(name, list);
    }
    return list;
  }

  private setName(fault: Fault, stage: 1 | 2 | 3): string {
    return stage !== 2 && this.pairs.length <= FEW_PAIRS ? '*' : [...fault.parts].sort().join();
  }

  /** Works out all the readings that are still wanting at once, since they share the solving. */
  private fill(stage: 1 | 2 | 3, stance: Stance, pairs: ReadonlySet<Pair>): void {
    const name = (p: Pair) => `${stage} ${stance.key} ${p.a} ${p.b}`;
    const wanting = [...pairs].filter((p) => !this.made.has(name(p)));
    const lists = new Map(wanting.map((p) => [name(p), [] as Measure[]]));
    for (const m of this.measure(stage, stance, wanting)) {
      const { a, b } = m.pair;
      (lists.get(`${stage} ${stance.key} ${a} ${b}`) ?? lists.get(`${stage} ${stance.key} ${b} ${a}`))!.push(
        m,
      );
    }
    for (const [key, list] of lists) this.made.set(key, list);
  }

  private pairsFor(fault: Fault, stage: 1 | 2 | 3): ReadonlySet<Pair> {
    const name = this.setName(fault, stage);
    let found = this.pairSets.get(name);
    if (found === undefined) {
      const near = fault.parts.flatMap((p) => this.near.get(p) ?? []);
      found = new Set(name === '*' ? this.pairs : [...this.main, ...near]);
      this.pairSets.set(name, found);
    }
    return found;
  }

  /** The positions a fault is tried in: rest, whatever moves what the fault touches, and where that is nothing the first gates. */
  private stancesFor(fault: Fault, stage: 1 | 2 | 3): readonly Stance[] {
    // Ohms cost next to nothing; volts are solved for with every fault anew.
    if (stage === 2 && !this.onLoop(fault)) return [];
    const stances = stage === 3 ? this.handsFree : this.stances;
    if (stage !== 2 && stances.length <= FEW_STANCES) return stances;
    const { inputs } = this.bench.right.circuit;
    const own = new Set(inputs.filter((i) => fault.parts.includes(i.part)).map((i) => i.index));
    const single = stances.filter((s) => s.first.length === 0 && s.moved.length === 1);
    const several = stances.filter((s) => s.first.length > 0 || s.moved.length > 1);
    const touching = (s: Stance) => [...s.moved, ...s.first].some((i) => own.has(i));
    const boxed = own.size === 0;
    const singles = boxed ? this.spread(single) : single.filter(touching);
    const more = several.filter((s) => boxed || touching(s)).slice(0, FEW_STANCES);
    return [REST, ...singles, ...more];
  }

  /** Of all gates the first and the last, and every input that is no gate. */
  private spread(single: readonly Stance[]): Stance[] {
    const { inputs } = this.bench.right.circuit;
    const gates = single.filter((s) => inputs[s.moved[0]!]!.kind === 'gate');
    const others = single.filter((s) => inputs[s.moved[0]!]!.kind !== 'gate');
    return [...gates.slice(0, 1), ...gates.slice(-1), ...others];
  }
}

/** Which faults each reading shows. */
class Gathered {
  private readonly shows = new Map<Measure, Map<number, Wrong>>();

  add(measure: Measure, fault: number, wrong: Wrong): void {
    const list = this.shows.get(measure);
    if (list) list.set(fault, wrong);
    else this.shows.set(measure, new Map([[fault, wrong]]));
  }

  has(measure: Measure): boolean {
    return this.shows.has(measure);
  }

  wrong(measure: Measure, fault: number): Wrong | undefined {
    return this.shows.get(measure)?.get(fault);
  }

  choose(covered: Set<number>): Measure[] {
    const all = [...this.shows];
    const options = all.map(([m, shows]) => ({ cost: costOf(m), shows: [...shows.keys()] }));
    return exchange(options, chooseFew(options, covered)).map((i) => all[i]![0]);
  }
}

/**
 * Whether a fault can change a reading while only the low-voltage supplies are on: what it changes is on that side, or
 * these supplies hang on the mains themselves.
 */
function touchesLoop(plan: Plan): (fault: Fault) => boolean {
  const circuit = buildCircuit(plan);
  if (circuit.sources.some((s) => !s.mains && s.feed.by !== 'always')) return () => true;
  const sides = findSides(circuit);
  return (fault) => fault.at.some((key) => isLow(sides, circuit.netOf.get(key)));
}

function costOf({ stage, stance, pair, expect }: Measure): number {
  const hold = stance.first.length > 0 ? 1.5 : 1 + 0.2 * Math.max(0, stance.moved.length - 1);
  const move = stance.moved.length > 0 ? 1.1 : 1;
  // That nothing shows may be the probe's fault as well, so volts that are there are read rather.
  const shown = expect.shows === 'nothing' ? 1.3 : 1;
  return STAGE_COST[stage]! * hold * move * shown * pair.cost;
}

/** Stage by stage, position by position, the red probe moved as seldom as can be. */
function inShopOrder(measures: readonly Measure[], order: readonly Stance[]): Measure[] {
  const at = new Map(order.map((s, i) => [s.key, i]));
  return [...measures].sort(
    (x, y) =>
      x.stage - y.stage ||
      at.get(x.stance.key)! - at.get(y.stance.key)! ||
      x.pair.cost - y.pair.cost ||
      x.pair.a.localeCompare(y.pair.a, 'en') ||
      x.pair.b.localeCompare(y.pair.b, 'en'),
  );
}
