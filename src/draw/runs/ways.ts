/** The shortest ways along the cables of a section, and which cable closes a ring. */
import { walk } from '../../study/net-distances.ts';
import type { Leg, Network } from './places.ts';

/** m; a cable is never shorter, so that the way to a place does not turn in a circle */
const LEAST = 1e-4;

/** One way from a place to another along a leg. */
export interface Step {
  readonly leg: Leg;
  /** numbers of places in `Network.places` */
  readonly from: number;
  readonly to: number;
}

/** A leg that joins two places that are reached already. */
export interface Chord extends Step {
  /** places from the fork outwards to `from` and to `to`, ends included; undefined where no ring is closed with it */
  readonly ring?: {
    readonly fork: number;
    readonly out: readonly number[];
    readonly home: readonly number[];
  };
}

/** Every place with the leg that it is reached by, and the legs that are left. */
export interface Ways {
  readonly roots: readonly number[];
  /** m from the root */
  readonly metres: readonly number[];
  /** the last leg on the way to each place; undefined for a root */
  readonly last: readonly (Step | undefined)[];
  readonly chords: readonly Chord[];
  /** what a leg is drawn as, m */
  readonly lengthOf: (leg: Leg) => number;
}

/** Metres that a run without a length is drawn as: the shortest that is known. */
function drawnLengths(legs: readonly Leg[]): (leg: Leg) => number {
  const known = legs.flatMap(({ run }) => (run.length === undefined ? [] : [run.length]));
  const taken = known.length === 0 ? 1 : known.reduce((a, b) => Math.min(a, b));
  return ({ run }) => Math.max(LEAST, run.length ?? taken);
}

/** Shortest ways from the sources of the section; where none leads to a place, from the first of those that are left. */
export function waysOf({ section, places, legs }: Network): Ways {
  const lengthOf = drawnLengths(legs);
  const number = new Map(places.map((p, i) => [p, i]));
  const ends = legs.map((leg) => ({ leg, from: number.get(leg.a)!, to: number.get(leg.b)! }));
  const at: Step[][] = places.map(() => []);
  for (const s of ends) {
    at[s.from]!.push(s);
    at[s.to]!.push({ leg: s.leg, from: s.to, to: s.from });
  }
  const steps = at.map((own) =>
    own.map((s) => ({ to: s.to, metres: lengthOf(s.leg), ohms: 0, contact: undefined })),
  );
  const metres: number[] = places.map(() => Number.POSITIVE_INFINITY);
  const roots: number[] = [];
  const sources = places.flatMap((p, i) => (p.starts.has(section) ? [i] : []));
  for (const root of [...sources, ...places.keys()]) {
    if (Number.isFinite(metres[root]!)) continue;
    roots.push(root);
    for (const [i, m] of walk(steps, () => true, root).metres.entries())
      if (Number.isFinite(m)) metres[i] = m;
  }
  const isRoot = new Set(roots);
  const last = at.map((own, i) =>
    isRoot.has(i)
      ? undefined
      : turned(own.find((s) => metres[s.to]! + lengthOf(s.leg) <= metres[i]! + LEAST / 4)!),
  );
  const tree = new Set(last.map((s) => s?.leg));
  const chords = ends.filter((s) => !tree.has(s.leg));
  return { roots, metres, last, chords: ringsOf(chords, metres, last), lengthOf };
}

const turned = ({ leg, from, to }: Step): Step => ({ leg, from: to, to: from });

/** Closes a ring with each chord whose way no ring before it has taken. */
function ringsOf(
  chords: readonly Step[],
  metres: readonly number[],
  last: readonly (Step | undefined)[],
): Chord[] {
  const taken = new Set<number>();
  return chords.map((chord): Chord => {
    const [out, home]: [number[], number[]] = [[], []];
    let [u, v] = [chord.from, chord.to];
    // The place farther from the root goes back first; what lies ahead on a way is always farther.
    while (u !== v) {
      const back = metres[u]! >= metres[v]! ? u : v;
      (back === u ? out : home).unshift(back);
      const before = last[back]!.from;
      if (back === u) u = before;
      else v = before;
    }
    const way = [...out, ...home];
    // Cables side by side between the same places are no ring.
    if (way.length < 2 || way.some((p) => taken.has(p))) return chord;
    for (const p of way) taken.add(p);
    if (out.length === 0) return { ...turned(chord), ring: { fork: u, out: home, home: out } };
    return { ...chord, ring: { fork: u, out, home } };
  });
}
