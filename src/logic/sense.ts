/** When one coil, board input or dry trigger is satisfied. */
import type { Circuit, DiodeEdge, Passive, Sense, Source } from '../circuit/circuit.ts';
import { difference } from '../circuit/rail-volts.ts';
import { SILICON_DROP } from '../circuit/thresholds.ts';
import { type Bdd, FALSE, type Fn, TRUE } from './bdd.ts';
import { voltClasses } from './classes.ts';
import type { Conduction, Reach } from './conduction.ts';

/** V; rounding must not turn an equality into a failure. */
export const EPSILON = 1e-9;

/** What a DC source feeds and takes back; element n of each is what is reached through at most n diodes. */
export interface DcPath {
  readonly from: readonly Reach[];
  readonly to: readonly Reach[];
}

/** The sources as the coils see them. */
export interface Drive {
  readonly live: readonly Fn[];
  readonly railReach: readonly (readonly Reach[])[];
  readonly paths: ReadonlyMap<number, DcPath>;
}

export function joinedSense(conduction: Conduction, bdd: Bdd, sense: Sense): { on: Fn; off: Fn } {
  const on = sense.a === sense.b ? TRUE : (conduction.joined(sense.a).get(sense.b) ?? FALSE);
  return { on, off: bdd.not(on) };
}

/**
 * States in which a coil pulls in (`on`) or lets go (`off`). First those where contacts and diodes alone decide;
 * the few others, where current comes through lamps, other coils or loads, class by class with arithmetic.
 */
export function voltSense(
  circuit: Circuit,
  bdd: Bdd,
  conduction: Conduction,
  drive: Drive,
  part: string,
  sense: Extract<Sense, { by: 'volts' }>,
  note: (states: Fn, volts: number) => void,
): { on: Fn; off: Fn } {
  const { a, b, pullIn, dropOut, polarised } = sense;
  if (a === b) return { on: FALSE, off: TRUE };
  let on: Fn = FALSE;
  let possible: Fn = FALSE;
  const own = (element: Passive | DiodeEdge) =>
    element.part === part && (!('a' in element) || (element.a === a && element.b === b));
  for (const s of circuit.sources) {
    const live = drive.live[s.index]!;
    if (live === FALSE) continue;
    const path = drive.paths.get(s.index);
    const direct = (from: number, to: number): Fn =>
      path && s.kind === 'dc'
        ? bdd.any(byDiodes(bdd, path, s.rails[0]!.re - pullIn, from, to))
        : bdd.any(railPairs(bdd, s, drive.railReach[s.index]!, pullIn, from, to));
    on = bdd.or(on, bdd.and(live, direct(a, b)));
    if (!polarised || s.kind === 'ac') on = bdd.or(on, bdd.and(live, direct(b, a)));
    possible = bdd.or(possible, bdd.and(live, aroundLoop(conduction, drive, own, s, a, b)));
  }
  let off: Fn = bdd.not(bdd.or(on, possible));
  const open = bdd.diff(possible, on);
  if (open === FALSE) return { on, off };
  for (const c of voltClasses(conduction, drive.live, open, a, b)) {
    const seen = polarised ? c.volts : Math.abs(c.volts);
    if (seen >= pullIn - EPSILON) on = bdd.or(on, c.states);
    else if (seen <= dropOut + EPSILON) off = bdd.or(off, c.states);
    if (Math.abs(c.volts) > 1e-3) note(c.states, c.volts);
  }
  return { on, off };
}

/**
 * States in which some loop leads through the source and from one net to the other. Current in the coil needs one that
 * meets no net twice, so none that passes a pole on its way from the other: a pole holds its potential, whatever else
 * hangs on it.
 */
function aroundLoop(
  conduction: Conduction,
  { railReach }: Drive,
  own: (element: Passive | DiodeEdge) => boolean,
  s: Source,
  a: number,
  b: number,
): Fn {
  const { bdd } = conduction;
  const reach = railReach[s.index]!;
  const found: Fn[] = [];
  for (const [i, p] of s.rails.entries())
    for (const [j, q] of s.rails.entries()) {
      if (i >= j) continue;
      const out = conduction.weakly(p.net, true, own, s, reach[j]!);
      const back = conduction.weakly(q.net, false, own, s, reach[i]!);
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const)
        found.push(bdd.and(out.get(from) ?? FALSE, back.get(to) ?? FALSE));
    }
  return bdd.any(found);
}

/** Feeds from + to `from` and `to` to -, with no more diodes in the way than the voltage to spare allows. */
export function byDiodes(bdd: Bdd, path: DcPath, spare: number, from: number, to: number): Fn[] {
  if (spare < -EPSILON) return [];
  const most = Math.floor(spare / SILICON_DROP + EPSILON);
  const found: Fn[] = [];
  path.from.forEach((out, m) => {
    path.to.forEach((back, n) => {
      if (m + n <= most) found.push(bdd.and(out.get(from) ?? FALSE, back.get(to) ?? FALSE));
    });
  });
  return found;
}

function railPairs(
  bdd: Bdd,
  source: Source,
  reach: readonly Reach[],
  least: number,
  from: number,
  to: number,
): Fn[] {
  const found: Fn[] = [];
  source.rails.forEach((p, i) => {
    source.rails.forEach((q, j) => {
      if (i !== j && difference(p, q) >= least - EPSILON)
        found.push(bdd.and(reach[i]!.get(from) ?? FALSE, reach[j]!.get(to) ?? FALSE));
    });
  });
  return found;
}
