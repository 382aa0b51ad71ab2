import { FALSE, type Fn } from '../../../logic/bdd.ts';
import { entryState } from '../../../logic/entry-states.ts';
import type { Wanted } from '../../../logic/intent.ts';
import { type Moved, movedIn } from '../../../logic/verify.ts';
import type { Study } from '../../../study/study.ts';
import { type Zone, zonesOf } from '../../../study/zones.ts';
import { deadCause } from './dead-cause.ts';
import { deadLoopCause } from './dead-loop-cause.ts';
import type { Departure } from './departure.ts';
import { reversedDiode } from './proved-moves.ts';
import { standsIn, type Tried } from './tried.ts';

const MOST_EXPLAINED = 40;

interface Alone {
  readonly entry: Wanted['entries'][number];
  readonly state: Moved | undefined;
}
type Dead = Alone & { readonly state: Moved };

/** What shows when each entry of an intent is worked alone, and the states in which that is why the load is off. */
export function entriesAlone(
  study: Study,
  tried: Tried,
): { readonly departures: readonly Departure[]; readonly explained: Fn } {
  const { v, wanted, base, runs } = tried;
  const { bdd } = v.model;
  const alone: Alone[] = wanted.entries.map((entry) => ({
    entry,
    state: entryState(v, wanted, entry.works, base),
  }));
  const dead = alone.filter(
    (a): a is Dead =>
      a.state !== undefined && !standsIn(v, a.state, runs) && !standsIn(v, a.state, v.chatter),
  );
  if (dead.length === 0) return { departures: [], explained: FALSE };
  const allDead = dead.length === alone.length;
  const restRuns = standsIn(v, base, runs) || standsIn(v, [], runs);
  const starts = startingState(tried);
  if (allDead && !restRuns && !starts) {
    const everything = [...new Set(dead.flatMap((a) => a.state))].sort((a, b) => a - b);
    const cause = deadLoopCause(study, v, wanted, everything);
    return {
      departures: [{ kind: 'nothing-starts', wanted, everything, cause }],
      explained: bdd.not(runs),
    };
  }
  if (allDead && !restRuns && starts && severalWork(tried, starts))
    return {
      departures: [{ kind: 'starts-together-only', wanted, starts, base }],
      explained: bdd.not(runs),
    };
  // Combinations of dead entries only follow from each being dead.
  const isDead = new Set<Alone>(dead);
  const alive = alone.filter((a) => !isDead.has(a)).map((a) => a.entry);
  const living = bdd.any(alive.map((e) => e.works));
  return {
    // A load that runs at rest and stops for every gate has its contact the wrong way round: that is said elsewhere.
    departures: allDead && restRuns ? [] : [deadEntries(study, tried, dead, alive)],
    explained: bdd.diff(bdd.not(runs), living),
  };
}

/** The fewest inputs that start the load while it is called and nothing blocks. */
function startingState({ v, wanted, runs }: Tried): Moved | undefined {
  const { bdd } = v.model;
  const called = bdd.any(wanted.entries.map((e) => e.works));
  return movedIn(v.circuit, bdd, bdd.every([runs, called, bdd.not(wanted.blocked), v.model.valid]));
}

/** More than one entry works in a state; else what each entry lacks is no other entry. */
function severalWork({ v, wanted }: Tried, moved: Moved): boolean {
  return wanted.entries.filter((e) => standsIn(v, moved, e.works)).length > 1;
}

function deadEntries(
  study: Study,
  tried: Tried,
  dead: readonly Dead[],
  alive: readonly Alone['entry'][],
): Departure {
  const diode = reversedDiode(study);
  const zones = deadZones(study, dead);
  const works = new Set(alive.flatMap((e) => e.refs.map((r) => r.part)));
  const suspectOf = ({ refs }: Alone['entry']) => refs.find((r) => !works.has(r.part)) ?? refs[0]!;
  const told = dead.filter((d) => {
    const zone = zones.get(d);
    return zone === undefined || zone.gates[0] === d.entry.refs[0]!.part;
  });
  return {
    kind: 'dead-entries',
    wanted: tried.wanted,
    dead: told.slice(0, MOST_EXPLAINED).map((d) => {
      const suspect = suspectOf(d.entry);
      return {
        refs: d.entry.refs,
        suspect,
        state: d.state,
        cause:
          diode === undefined ? deadCause(study, tried, d.entry, suspect, d.state) : { kind: 'diode', diode },
        ...(zones.has(d) && { zone: zones.get(d)! }),
      };
    }),
    more: Math.max(0, told.length - MOST_EXPLAINED),
  };
}

/** Entries whose whole zone is dead though each of its gates pulls its relay in: what is wrong lies behind the relay. */
function deadZones(study: Study, dead: readonly Dead[]): ReadonlyMap<Dead, Zone> {
  const single = new Map(
    dead.flatMap((d) => (d.entry.refs.length === 1 ? [[d.entry.refs[0]!.part, d] as const] : [])),
  );
  const zones = zonesOf(study).filter((z) => z.isCalledByEach && z.gates.every((g) => single.has(g)));
  return new Map(zones.flatMap((z) => z.gates.map((g) => [single.get(g)!, z] as const)));
}
