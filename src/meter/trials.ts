/** Which readings each fault is tried with. */
import { spend } from '../circuit/effort.ts';
import type { UnionFind } from '../circuit/union-find.ts';
import { kept, push } from '../plan/map-entries.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { Study } from '../study/study.ts';
import { type Place, reachOf } from './alike/carried.ts';
import type { Fault } from './fault.ts';
import { touchesLoop } from './hazard.ts';
import { LateBenches } from './late-benches.ts';
import type { Measure } from './measure.ts';
import { Measurer } from './measurer.ts';
import { allTerminals, nearestInputs, RelaysBroughtIn, terminalsOfSources } from './nearest.ts';
import { type Pair, probePairs } from './probe-pairs.ts';
import { REST, type Stance, sealingInputs, stances } from './stance.ts';
import type { Bench, Subject, Subjects } from './subject.ts';
import { allTogether, partsAt, setName, spread, type Trial, trialOf } from './trial.ts';

/** One list of readings in one position. */
export interface TrialList {
  readonly stance: Stance;
  readonly list: readonly Measure[];
  /** ohms of the line, and a fault in the loop, which changes them by the relays that it keeps in or out alone */
  readonly inLoop: boolean;
}

/** Of the second stage volts, ohms of all of the line, or of what a fault touches. */
type Listed = 'volts' | 'ohms' | 'own ohms';

type BenchAndReadings = { readonly bench: Bench; readonly measure: Measurer };

/** Parts with terminals that every state is read at, above which relays that stay out are passed over. */
const MANY_MAINS = 12;

/** Faults times positions times pairs of probes up to which every fault is tried with all of them. */
const ALL = 1e6;
/** Sets of parts whose circuits are kept at hand. */
const KEPT = 8;
/** Positions that a fault is tried in beyond those of its own parts, where not in all. */
const FEW_STANCES = 5;

/** The readings of the right circuit, made as faults ask for them, each once. */
export class Trials {
  /** in the order in which they are worked through */
  readonly stances: readonly Stance[];
  private readonly byKey: ReadonlyMap<string, Stance>;
  /** true for a fault that can change a reading while only the low-voltage supplies are on */
  readonly onLoop: (fault: Fault) => boolean;
  /** positions for mains on: nobody holds a button while probing what holds itself in */
  private readonly handsFree: readonly Stance[];
  /** the first position that has a relay in, if any has */
  private readonly relayIn: readonly Stance[];
  private readonly broughtIn: RelaysBroughtIn;
  private readonly pairs: readonly Pair[];
  private readonly beside = new Map<string, Pair[]>();
  private readonly main: readonly Pair[];
  /** true where every fault is tried with every reading */
  readonly all: boolean;
  private readonly whole: BenchAndReadings;
  /** by parts */
  private readonly benches = new Map<string, BenchAndReadings>();
  /** faults in the whole circuit */
  private readonly wholly = new Map<Fault, Subject>();
  private readonly right: Subject;
  private readonly late = new LateBenches();
  private readonly manyMains: boolean;
  /** inputs that lie nearest to some parts along the cores */
  private readonly nearest: (parts: readonly string[]) => readonly number[];
  /** terminals of supplies and plugs, which are near everywhere */
  private readonly everywhere: readonly string[];
  private readonly together: UnionFind;
  /** what hangs together with a pole or the earth pin of a plug */
  private readonly lineRoots: ReadonlySet<number>;
  /** by trial and position */
  private readonly made = new Map<string, Map<Pair, Measure[]>>();
  /** by both terminals, either first */
  private readonly pairAt: ReadonlyMap<string, Pair>;
  private readonly lists = new Map<string, readonly Measure[]>();
  private readonly pairSets = new Map<string, ReadonlySet<Pair>>();

  constructor(
    private readonly study: Study,
    private readonly subjects: Subjects,
    faults: number,
  ) {
    const { plan } = study;
    const { right } = subjects;
    this.right = right;
    this.stances = stances(plan, right.circuit);
    const sealing = sealingInputs(plan, right.circuit);
    this.byKey = new Map(this.stances.map((s) => [s.key, s]));
    this.handsFree = this.stances.filter((s) => !s.moved.some((i) => sealing.has(i)));
    this.pairs = probePairs(plan);
    this.pairAt = new Map(
      this.pairs.flatMap((p) => [[`${p.a} ${p.b}`, p] as const, [`${p.b} ${p.a}`, p] as const]),
    );
    this.main = this.pairs.filter((p) => p.main);
    for (const pair of this.pairs)
      for (const part of new Set([partOfKey(pair.a), partOfKey(pair.b)])) push(this.beside, part, pair);
    this.whole = { bench: subjects, measure: new Measurer(study, subjects) };
    const mainParts = new Set(this.main.flatMap((p) => [partOfKey(p.a), partOfKey(p.b)]));
    this.manyMains = mainParts.size > MANY_MAINS;
    this.nearest = nearestInputs(plan, right.circuit);
    this.everywhere = terminalsOfSources(plan, right.circuit);
    this.all = this.affords(faults);
    this.onLoop = touchesLoop(study);
    const withRelay = this.stances.find(
      (s) => s.first.length === 0 && right.loop.relaysAt(s)?.includes(true),
    );
    this.relayIn = withRelay === undefined ? [] : [withRelay];
    this.broughtIn = new RelaysBroughtIn(study, this.stances, (s) => right.loop.relaysAt(s));
    this.together = allTogether(right.circuit);
    const mains = right.circuit.sources.filter((source) => source.mains);
    this.lineRoots = new Set(
      mains.flatMap(({ part, rails }) =>
        [...rails.map((r) => r.terminal), 'PE'].flatMap((t) => this.rootOf(`${part}.${t}`) ?? []),
      ),
    );
  }

  /** The lists of readings that a fault is tried with; with `all`, whatever readings there are. */
  *for(fault: Fault, trial: Trial, all = this.all): Generator<TrialList> {
    const touched = this.touched(fault);
    const list = (stance: Stance, kind: Listed) => this.list(fault, trial, kind, stance, touched, all);
    const live = trial === 'loop' || trial === 'loop clipped';
    const loop = this.onLoop(fault);
    if (fault.live && !(trial === 'mains' || (live && loop))) return;
    const inLoop = live && loop && ![...touched].some((root) => this.lineRoots.has(root));
    for (const stance of this.stancesFor(fault, trial, all)) {
      if (trial === 'mains' || (trial === 'loop' && loop))
        yield { stance, list: list(stance, 'volts'), inLoop: false };
      // With power on, what is wrong in the loop moves contacts in the line; else a fault changes what it touches.
      if (trial !== 'mains') yield { stance, list: list(stance, inLoop ? 'ohms' : 'own ohms'), inLoop };
    }
  }

  /** Where a fault is tried with these lists: in the whole shop, or in what is near its parts. */
  bench(fault: Fault, all = this.all): Bench {
    return this.benchFor(fault, all).bench;
  }

  /** What a fault is tried on with these readings of one position, which were not made for it. */
  built(fault: Fault, among: readonly Measure[]): Subject {
    if (this.all || fault.at.length === 0) return kept(this.wholly, fault, () => this.subjects.build(fault));
    const parts = [...partsAt(fault)].sort().join();
    return this.late.at(among, fault, parts, (keys, inputs) => this.near(partsAt(fault), keys, inputs));
  }

  /** Readings at these places, as far as there are any, and where some faults are tried with them. */
  at(faults: readonly Fault[], places: readonly Place[]): { bench: Bench; readings: readonly Measure[] } {
    const { keys, inputs } = reachOf(places);
    const parts = new Set(faults.flatMap((f) => [...partsAt(f)]));
    const bench = this.near(parts, keys, inputs);
    let measure: Measurer | undefined;
    const readings = places.flatMap((place) => {
      const pair = this.pairAt.get(`${place.a} ${place.b}`);
      const stance = this.byKey.get(place.stance.key);
      if (pair === undefined || stance === undefined) return [];
      measure ??= new Measurer(this.study, bench);
      const trial = trialOf(place);
      this.fill(trial, stance, [pair], measure);
      const clipped = place.clipped.join();
      const found = this.madeAt(trial, stance).get(pair)!;
      return found.filter((m) => m.expect.shows === place.shows && m.clipped.join() === clipped);
    });
    return { bench, readings };
  }

  private benchFor(fault: Fault, all: boolean): BenchAndReadings {
    if (all) return this.whole;
    const name = setName(fault, all);
    if (this.benches.size >= KEPT && !this.benches.has(name)) this.benches.clear();
    return kept(this.benches, name, () => {
      const trials: readonly Trial[] = ['dead', 'loop', 'dead clipped', 'loop clipped', 'mains'];
      const stances = trials.flatMap((trial) => this.stancesFor(fault, trial, all));
      const inputs = new Set(stances.flatMap((s) => [...s.moved, ...s.first]));
      const keys = [...this.pairsFor(fault, all)].flatMap((p) => [p.a, p.b]);
      const bench = this.near(partsAt(fault), keys, inputs);
      return { bench, measure: new Measurer(this.study, bench) };
    });
  }

  private near(parts: ReadonlySet<string>, keys: readonly string[], moved: ReadonlySet<number>): Bench {
    const { plan } = this.study;
    const inputs = new Set(moved);
    for (const i of this.right.circuit.inputs) if (parts.has(i.part)) inputs.add(i.index);
    const own = [...parts].flatMap((part) => allTerminals(plan, part));
    return this.subjects.near(new Set([...this.everywhere, ...own, ...keys]), inputs);
  }

  /** Whether so many faults may be tried with every reading there is. */
  affords(faults: number): boolean {
    return faults * this.stances.length * this.pairs.length <= ALL;
  }

  /** Whether a reading is of the line, which clip leads are for. */
  isOfLine({ pair }: Measure): boolean {
    return [pair.a, pair.b].some((key) => this.lineRoots.has(this.rootOf(key) ?? -1));
  }

  /** Whether a fault may bring the loop's supply to what is read dead beside it. */
  crosses(fault: Fault): boolean {
    return this.onLoop(fault) && [...this.touched(fault)].some((root) => this.lineRoots.has(root));
  }

  /** What hangs together with the terminals of a fault. */
  private touched(fault: Fault): ReadonlySet<number> {
    return new Set(fault.at.flatMap((key) => this.rootOf(key) ?? []));
  }

  private rootOf(key: string): number | undefined {
    const net = this.right.circuit.netOf.get(key);
    return net === undefined ? undefined : this.together.find(net);
  }

  private list(
    fault: Fault,
    trial: Trial,
    kind: Listed,
    stance: Stance,
    roots: ReadonlySet<number>,
    every: boolean,
  ): readonly Measure[] {
    const own = kind === 'own ohms';
    const where = own ? [...roots].sort((a, b) => a - b).join() : '';
    return kept(this.lists, `${trial} ${kind} ${stance.key} ${setName(fault, every)} ${where}`, () => {
      const on = (key: string) => roots.has(this.rootOf(key) ?? -1);
      // Between what a fault touches and what it does not, nothing passes before or after; a lead may join the two.
      const fits = ({ a, b }: Pair) => !own || (trial.endsWith(' clipped') ? on(a) || on(b) : on(a) && on(b));
      const all = this.pairsFor(fault, every);
      spend(all.size);
      const pairs = [...all].filter(fits);
      this.fill(trial, stance, pairs, this.benchFor(fault, every).measure);
      const made = this.madeAt(trial, stance);
      const unit = kind === 'volts' ? 'V' : 'ohm';
      return pairs.flatMap((p) => made.get(p)!).filter((m) => m.expect.unit === unit);
    });
  }

  /** Works out all the readings that are still wanting at once, since they share the solving. */
  private fill(trial: Trial, stance: Stance, pairs: readonly Pair[], measure: Measurer): void {
    const made = this.madeAt(trial, stance);
    const wanting = pairs.filter((p) => !made.has(p));
    if (wanting.length === 0) return;
    for (const p of wanting) made.set(p, []);
    for (const m of measure.trying(trial, stance, wanting))
      made.get(this.pairAt.get(`${m.pair.a} ${m.pair.b}`)!)!.push(m);
  }

  private madeAt(trial: Trial, stance: Stance): Map<Pair, Measure[]> {
    return kept(this.made, `${trial} ${stance.key}`, () => new Map());
  }

  private pairsFor(fault: Fault, all: boolean): ReadonlySet<Pair> {
    const name = setName(fault, all);
    return kept(this.pairSets, name, () => {
      const near = fault.parts.flatMap((p) => this.beside.get(p) ?? []);
      return new Set(name === '*' ? this.pairs : [...this.mainFor(fault), ...near]);
    });
  }

  /** Pairs for every state; of many relays only those that the positions a fault is tried in work. */
  private mainFor(fault: Fault): readonly Pair[] {
    if (!this.manyMains) return this.main;
    const { circuit, loop } = this.right;
    const works = new Set(fault.parts);
    for (const stance of this.stancesFor(fault, 'loop', false))
      for (const [i, on] of (loop.relaysAt(stance) ?? []).entries())
        if (on) works.add(circuit.relays[i]!.part);
    const idle = new Set(circuit.relays.map((r) => r.part).filter((part) => !works.has(part)));
    return this.main.filter((p) => !idle.has(partOfKey(p.a)) && !idle.has(partOfKey(p.b)));
  }

  /** The positions a fault is tried in: rest, whatever moves what the fault touches, and where that is nothing the first gates. */
  private stancesFor(fault: Fault, trial: Trial, all: boolean): readonly Stance[] {
    // A lead is for what keeps conductors apart or together with nothing worked, and then with the relays in.
    if (trial === 'dead clipped') return [REST];
    if (trial === 'loop clipped')
      return [...this.relayIn, ...this.broughtIn.beyond(fault.parts, this.relayIn)];
    const stances = trial === 'mains' ? this.handsFree : this.stances;
    if (all && trial !== 'dead') return stances;
    const { inputs } = this.right.circuit;
    const own = new Set(inputs.filter((i) => fault.parts.includes(i.part)).map((i) => i.index));
    const single = stances.filter((s) => s.first.length === 0 && s.moved.length === 1);
    const several = stances.filter((s) => s.first.length > 0 || s.moved.length > 1);
    // Dead, each contact is read on its own.
    if (all) return [REST, ...single];
    const touching = (s: Stance) => [...s.moved, ...s.first].some((i) => own.has(i));
    const boxed = own.size === 0;
    // Whatever the order of its parts: circuits are kept by the parts alone.
    const by = new Set(this.nearest([...fault.parts].sort()));
    const close = single.filter((s) => by.has(s.moved[0]!));
    const singles = boxed ? [...spread(this.right.circuit, single), ...close] : single.filter(touching);
    const more = several.filter((s) => boxed || touching(s)).slice(0, FEW_STANCES);
    const found = [...new Set([REST, ...singles, ...more])];
    return boxed && trial !== 'dead' ? [...found, ...this.broughtIn.beyond(fault.parts, found)] : found;
  }
}
