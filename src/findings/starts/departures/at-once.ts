/** Departures that one move from rest shows, sorted into what a person would call them. */
import { FALSE, type Fn } from '../../../logic/bdd.ts';
import { type Moved, movedIn, stateOf, type Verified } from '../../../logic/verify.ts';
import type { Departure } from './departure.ts';
import { standsIn, type Tried } from './tried.ts';

/** What is wrong in these states, in all of which the load ought to run (`expected`) or to be off. */
export function departureAtOnce(tried: Tried, expected: boolean, states: Fn): Departure[] {
  return expected ? stopped(tried, states) : running(tried, states);
}

function running(tried: Tried, states: Fn): Departure[] {
  const { v, wanted, base, runs } = tried;
  const { bdd } = v.model;
  const found: Departure[] = [];
  let blocked = bdd.and(states, wanted.blocked);
  let uncalled = bdd.diff(states, blocked);
  const rest = bdd.or(stateOf(v.circuit, bdd, []), stateOf(v.circuit, bdd, base));
  const atRest = movedIn(v.circuit, bdd, bdd.and(states, rest));
  if (atRest) {
    const always = bdd.diff(v.model.valid, runs) === FALSE;
    found.push({ kind: 'runs-at-rest', wanted, moved: atRest, always });
    blocked = bdd.diff(blocked, rest);
    // What runs at rest runs in most other states too; only states where an input outside the intent matters remain.
    uncalled = bdd.diff(bdd.diff(uncalled, rest), followingFromRest(tried));
  }
  if (blocked !== FALSE) found.push(...blocksIgnored(tried, blocked));
  const moved = movedIn(v.circuit, bdd, uncalled);
  if (moved) {
    const strangers = strangersIn(tried, moved);
    const who = strangers.length > 0 ? strangers : partsOf(v, moved);
    found.push({
      kind: 'runs-uncalled',
      wanted,
      moved,
      who,
      listed: strangers.length === 0 && who.length > 0,
    });
  }
  return found;
}

/** States whose wrong running is the same as at rest: some named input could be put back without changing it. */
function followingFromRest({ v, wanted, base, runs }: Tried): Fn {
  return standsIn(v, base, runs) ? v.model.bdd.diff(runs, wanted.blocked) : FALSE;
}

/** Each blocker that alone is ignored; where none can be told apart from the others, the fact by itself. */
function blocksIgnored({ v, wanted }: Tried, states: Fn): Departure[] {
  const { bdd } = v.model;
  const found = wanted.blockers.flatMap(({ ref, blocks }): Departure[] => {
    const others = bdd.any(wanted.blockers.filter((b) => b.ref !== ref).map((b) => b.blocks));
    const moved = movedIn(v.circuit, bdd, bdd.diff(bdd.and(states, blocks), others));
    return moved ? [{ kind: 'runs-blocked', wanted, moved, by: ref }] : [];
  });
  if (found.length > 0) return found;
  const moved = movedIn(v.circuit, bdd, states);
  return moved && wanted.blockers.length > 0 ? [{ kind: 'runs-blocked', wanted, moved, by: undefined }] : [];
}

/** Meant to run, does not, though some entry alone starts it. */
function stopped(tried: Tried, states: Fn): Departure[] {
  const { v, wanted, base } = tried;
  const { bdd } = v.model;
  const called = bdd.any(wanted.entries.map((e) => e.works));
  const moved = nearestTo(v, bdd.and(states, called), base);
  if (!moved) return [];
  const who = strangersIn(tried, moved);
  if (who.length > 0) return [{ kind: 'stopped-by-stranger', wanted, moved, who }];
  const stopper = whichStops(tried, moved) ?? moved.at(-1)!;
  return [{ kind: 'stopped-by-entry', wanted, moved, who: v.circuit.inputs[stopper]!.part }];
}

function nearestTo(v: Verified, states: Fn, base: Moved): Moved | undefined {
  const set = new Set(base);
  const offset = v.circuit.relays.length;
  const found = v.model.bdd.nearest(states, (x) => set.has(x - offset));
  if (!found) return undefined;
  return v.circuit.inputs.filter((i) => found.get(offset + i.index) ?? set.has(i.index)).map((i) => i.index);
}

/** The input that, put back, lets the load run. */
function whichStops({ v, base, runs }: Tried, moved: Moved): number | undefined {
  return moved.find(
    (i) =>
      !base.includes(i) &&
      standsIn(
        v,
        moved.filter((m) => m !== i),
        runs,
      ),
  );
}

function partsOf(v: Verified, moved: Moved): string[] {
  return moved.map((i) => v.circuit.inputs[i]!.part);
}

/** Parts moved of which the intent does not speak. */
function strangersIn({ v, wanted }: Tried, moved: Moved): string[] {
  const named = new Set(
    [...wanted.entries.flatMap((e) => e.refs), ...wanted.blockers.map((b) => b.ref)].map((r) => r.part),
  );
  return partsOf(v, moved).filter((p) => !named.has(p));
}
