/** How far a supply reaches before a fuse. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Wire } from '../circuit/nets.ts';
import { push } from '../plan/map-entries.ts';
import type { FusePart } from '../plan/part-types.ts';
import type { Plan } from '../plan/plan.ts';

export interface Unfused {
  readonly nets: ReadonlySet<number>;
  /** fuses met on the way */
  readonly fuses: readonly FusePart[];
  /** a switch, coil or lamp lies before any fuse */
  readonly reachesSwitch: boolean;
}

type Wired = Circuit & { readonly wires?: readonly Wire[] };

/** Where one gets from each net, and the nets that a load lies at. */
interface Ways {
  readonly steps: ReadonlyMap<
    number,
    readonly { readonly to: number; readonly fuse?: FusePart; readonly moves: boolean }[]
  >;
  readonly loads: ReadonlySet<number>;
}

const known = new WeakMap<Circuit, { readonly plan: Plan; readonly ways: Ways }>();

/** Worked out once a circuit, for every pole of every supply asks. */
function waysOf(plan: Plan, circuit: Wired): Ways {
  const before = known.get(circuit);
  if (before?.plan === plan) return before.ways;
  const steps = new Map<number, { to: number; fuse?: FusePart; moves: boolean }[]>();
  for (const w of circuit.wires ?? []) {
    push(steps, w.a, { to: w.b, moves: false });
    push(steps, w.b, { to: w.a, moves: false });
  }
  for (const c of circuit.contacts) {
    const owner = plan.parts.get(c.part);
    const fuse = owner?.kind === 'fuse' ? { fuse: owner } : {};
    push(steps, c.a, { to: c.b, moves: c.when.by !== 'always', ...fuse });
    push(steps, c.b, { to: c.a, moves: c.when.by !== 'always', ...fuse });
  }
  const ways = { steps, loads: new Set(circuit.passives.flatMap((p) => [p.a, p.b])) };
  known.set(circuit, { plan, ways });
  return ways;
}

/** What a pole reaches without passing a fuse, and the fuses it meets. */
export function unfused(plan: Plan, circuit: Wired, start: number): Unfused {
  const { steps, loads } = waysOf(plan, circuit);
  const nets = new Set([start]);
  const fuses: FusePart[] = [];
  let reachesSwitch = false;
  const queue = [start];
  for (let net = queue.pop(); net !== undefined; net = queue.pop()) {
    if (loads.has(net)) reachesSwitch = true;
    for (const s of steps.get(net) ?? []) {
      if (s.fuse) fuses.push(s.fuse);
      else if (s.moves) reachesSwitch = true;
      else if (!nets.has(s.to)) {
        nets.add(s.to);
        queue.push(s.to);
      }
    }
  }
  return { nets, fuses, reachesSwitch };
}

/** m of wire that lies ahead of the fuses. */
export function metresOf({ wires }: { readonly wires: readonly Wire[] }, { nets }: Unfused): number {
  return wires.filter((w) => nets.has(w.a)).reduce((sum, w) => sum + w.metres, 0);
}
