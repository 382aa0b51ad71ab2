/** A section of the map laid out: a line for each run, along which it lies as long as it is, and places where runs end. */
import type { Leg, Network, Place } from './places.ts';
import { type Chord, type Step, type Ways, waysOf } from './ways.ts';

/** A place at the end of the line of a run, or on a line of its own where a walk begins. */
export interface LaidPlace {
  readonly place: Place;
  readonly line: number;
  /** m along cables from where the walk begins */
  readonly at: number;
}

/** A point of the map: m along, and the line it is on. */
export interface MapPoint {
  readonly at: number;
  readonly line: number;
}

export interface LaidRun {
  readonly leg: Leg;
  /** in the order of the walk */
  readonly from: Place;
  readonly to: Place;
  /** the line that its words stand on */
  readonly line: number;
  /** level pieces are its length together; upright ones lead from line to line and have none */
  readonly path: readonly MapPoint[];
  /** it ends at no place that is drawn: the name is written there once more */
  readonly again: boolean;
}

export interface LaidSection {
  readonly network: Network;
  readonly places: readonly LaidPlace[];
  /** in the order of the duct, from line to line */
  readonly runs: readonly LaidRun[];
  readonly lines: number;
  /** m from the left to the farthest end */
  readonly extent: number;
}

/** What comes next on the way down the lines. */
type Task =
  | { readonly what: 'root' | 'out' | 'home'; readonly place: number }
  | { readonly what: 'beyond'; readonly place: number }
  | { readonly what: 'chord'; readonly chord: Chord };

type Placed = {
  readonly step: Step;
  readonly line: number;
  readonly way: 'out' | 'home' | 'chord' | 'beside';
};

/** Closer than this two cables count as of one length, m. */
const ALIKE = 1e-6;

class Walk {
  readonly #ways: Ways;
  readonly #children = new Map<number, Step[]>();
  readonly #rings = new Map<number, Chord[]>();
  readonly #beside = new Map<number, Step[]>();
  readonly #again = new Map<number, Step[]>();
  /** line of each place */
  readonly lineOf = new Map<number, number>();
  readonly placed: Placed[] = [];
  lines = 0;

  constructor(network: Network, ways: Ways) {
    this.#ways = ways;
    const onRing = new Set<number>();
    for (const chord of ways.chords) {
      const { ring, from, to } = chord;
      if (ring !== undefined) {
        add(this.#rings, ring.fork, chord);
        for (const place of [...ring.out, ...ring.home]) onRing.add(place);
        continue;
      }
      if (ways.last[to]?.from === from) add(this.#beside, to, chord);
      else if (ways.last[from]?.from === to) add(this.#beside, from, { leg: chord.leg, from: to, to: from });
      else add(this.#again, from, chord);
    }
    const reach = reachOf(network, ways);
    for (const step of ways.last)
      if (step !== undefined && !onRing.has(step.to)) add(this.#children, step.from, step);
    // Spurs first, so that the longest way goes on below them.
    for (const own of this.#children.values()) own.sort((x, y) => reach[x.to]! - reach[y.to]!);
    this.#run();
  }

  #run(): void {
    const tasks: Task[] = this.#ways.roots.map((place) => ({ what: 'root', place }) as const).reverse();
    for (let task = tasks.pop(); task !== undefined; task = tasks.pop())
      tasks.push(...this.#take(task).reverse());
  }

  /** Does what is next, and says what follows it. */
  #take(task: Task): Task[] {
    switch (task.what) {
      case 'root':
        this.lineOf.set(task.place, this.lines++);
        return [{ what: 'beyond', place: task.place }];
      case 'out':
      case 'home':
        this.#reach(task.place, task.what);
        return [];
      case 'chord':
        this.placed.push({ step: task.chord, line: this.lines, way: 'chord' });
        this.lines += this.#turns(task.chord) ? 2 : 1;
        return [];
      case 'beyond':
        return this.#beyond(task.place);
    }
  }

  /** The line of a place, below those of other cables that lie beside its own. */
  #reach(place: number, way: 'out' | 'home'): void {
    for (const step of this.#beside.get(place) ?? [])
      this.placed.push({ step, line: this.lines++, way: 'beside' });
    this.placed.push({ step: this.#ways.last[place]!, line: this.lines, way });
    this.lineOf.set(place, this.lines++);
  }

  /** What hangs on a place: cables that end at a place told of elsewhere, spurs, the longest way, then rings. */
  #beyond(place: number): Task[] {
    for (const step of this.#again.get(place) ?? [])
      this.placed.push({ step, line: this.lines++, way: 'beside' });
    const ways = (this.#children.get(place) ?? []).flatMap(({ to }): Task[] => [
      { what: 'out', place: to },
      { what: 'beyond', place: to },
    ]);
    const rings = (this.#rings.get(place) ?? []).flatMap((chord): Task[] => [
      ...chord.ring!.out.flatMap((p): Task[] => [
        { what: 'out', place: p },
        { what: 'beyond', place: p },
      ]),
      { what: 'chord', chord },
      // The way home comes back line by line to the fork.
      ...[...chord.ring!.home].reverse().flatMap((p): Task[] => [
        { what: 'beyond', place: p },
        { what: 'home', place: p },
      ]),
    ]);
    return [...ways, ...rings];
  }

  /** How far out a cable goes before it turns back to its end, and whether it does. */
  turnOf({ leg, from, to }: Step): number {
    const { metres, lengthOf } = this.#ways;
    return metres[from]! + Math.max(0, (lengthOf(leg) + metres[to]! - metres[from]!) / 2);
  }
  #turns(step: Step): boolean {
    return this.turnOf(step) - this.#ways.metres[step.to]! > ALIKE;
  }
}

function add<V>(to: Map<number, V[]>, key: number, value: V): void {
  const own = to.get(key);
  if (own) own.push(value);
  else to.set(key, [value]);
}

/** m from the root to the farthest place beyond each. */
function reachOf({ places }: Network, { metres, last }: Ways): number[] {
  const reach = [...metres];
  const order = [...places.keys()].sort((a, b) => metres[b]! - metres[a]!);
  for (const i of order) {
    const before = last[i]?.from;
    if (before !== undefined) reach[before] = Math.max(reach[before]!, reach[i]!);
  }
  return reach;
}

function pathOf(walk: Walk, ways: Ways, { step, line, way }: Placed): { path: MapPoint[]; again: boolean } {
  const { leg, from, to } = step;
  const [start, end] = [ways.metres[from]!, ways.metres[to]!];
  const begin = [
    { at: start, line: walk.lineOf.get(from)! },
    { at: start, line },
  ];
  if (way === 'out' || way === 'home') return { path: [...begin, { at: end, line }], again: false };
  const toLine = walk.lineOf.get(to)!;
  if (way === 'beside') {
    const far = start + ways.lengthOf(leg);
    const joins = ways.last[to]?.from === from && Math.abs(far - end) < ALIKE;
    const path = [...begin, { at: far, line }];
    return joins ? { path: [...path, { at: end, line: toLine }], again: false } : { path, again: true };
  }
  const turn = walk.turnOf(step);
  const back = turn - end > ALIKE;
  return {
    path: [
      ...begin,
      { at: turn, line },
      ...(back
        ? [
            { at: turn, line: line + 1 },
            { at: end, line: line + 1 },
          ]
        : []),
      { at: end, line: toLine },
    ],
    again: false,
  };
}

/** Lays a section out. Pure. */
export function layRuns(network: Network): LaidSection {
  const ways = waysOf(network);
  const walk = new Walk(network, ways);
  const runs = walk.placed.map((placed): LaidRun => {
    const { step, line, way } = placed;
    const ends = [network.places[step.from]!, network.places[step.to]!] as const;
    const [from, to] = way === 'home' ? [ends[1], ends[0]] : ends;
    return { leg: step.leg, from, to, line, ...pathOf(walk, ways, placed) };
  });
  return {
    network,
    places: network.places.map((place, i) => ({ place, line: walk.lineOf.get(i)!, at: ways.metres[i]! })),
    runs,
    lines: walk.lines,
    extent: runs.reduce((most, r) => r.path.reduce((m, p) => Math.max(m, p.at), most), 0),
  };
}
