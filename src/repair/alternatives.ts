/** The same change on other terminals of the same conductors: which of them a hand would choose is seen by the habits. */
import type { Edit } from '../edit/edits.ts';
import type { Plan, Run } from '../plan/plan.ts';
import { partOfKey } from '../plan/terminal-key.ts';
import type { Places } from './places.ts';

type Added = Edit & { readonly do: 'add' };
type Moved = Edit & { readonly do: 'move' };

/** Pairs of terminals looked at for one new core, and terminals for one moved end. */
const MOST_PAIRS = 400;
const MOST_ENDS = 24;

/**
 * A moved end on the terminals of `alike`, which are all on the conductor it lands on: those of its own part first, then
 * those next to the part at the core's other end, in the order of the plan.
 */
export function movesTo(plan: Plan, edit: Moved, alike: readonly string[]): Moved[] {
  const core = plan.runs[edit.run]!.cores[edit.core]!;
  const [own, other] = edit.end === 'a' ? [core.a.part, core.b.part] : [core.b.part, core.a.part];
  const order = new Map([...plan.parts.keys()].map((name, i) => [name, i] as const));
  const from = order.get(other) ?? 0;
  const far = (key: string) => {
    const part = partOfKey(key);
    return part === own ? -1 : Math.abs((order.get(part) ?? 0) - from);
  };
  const near = [...new Set(alike)].sort((x, y) => far(x) - far(y)).slice(0, MOST_ENDS);
  return [...new Set([edit.to, ...near])].map((to) => ({ ...edit, to }));
}

/**
 * A new core between terminals of two conductors: one that its cable has left along the way it goes, or within one place a
 * jumper. A core of the loop lies in no cable of the mains, nor the reverse. Where there is neither, a cable of its own to any of them, the core as it was first.
 */
export function additionsBetween(
  plan: Plan,
  places: Places,
  edit: Added,
  from: readonly string[],
  to: readonly string[],
  isOfSide: (run: number) => boolean,
): Added[] {
  const spare = plan.runs.filter(
    (r) => !r.link && r.cable !== undefined && r.cores.length < r.cable.cores && isOfSide(r.index),
  );
  const found: Added[] = [];
  let pairs = 0;
  for (const x of from)
    for (const y of to) {
      if (++pairs > MOST_PAIRS) return found.length > 0 ? found : ownCables(edit, from, to);
      const [a, b] = [places.of(partOfKey(x)), places.of(partOfKey(y))];
      if (a === b) found.push({ ...edit, from: x, to: y, like: undefined });
      else
        for (const run of spare.filter((r) => leads(places, r, a, b)))
          found.push({ ...edit, from: x, to: y, like: run.index, metres: run.length });
    }
  return found.length > 0 ? found : ownCables(edit, from, to);
}

function ownCables(edit: Added, from: readonly string[], to: readonly string[]): Added[] {
  const others = from.flatMap((x) => to.map((y) => ({ ...edit, from: x, to: y })));
  const isOwn = (e: Added) => e.from === edit.from && e.to === edit.to;
  return [edit, ...others.filter((e) => !isOwn(e)).slice(0, MOST_ENDS)];
}

/** A cable with a core to spare that ends at one of two places, or whose ends nobody knows any more. */
function leads(places: Places, run: Run, a: number, b: number): boolean {
  const way = places.wayOf(run);
  return way === undefined || way.includes(a) || way.includes(b);
}
