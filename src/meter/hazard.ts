/** Which side a fault lies on, and which must be found before mains is on: they bring mains where it does not belong. */

import type { WiredCircuit } from '../circuit/build.ts';
import { isLow } from '../circuit/sides.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { loopNeedsMains } from '../machine/power.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import type { Fault } from './fault.ts';

/**
 * Tells whether, with every contact closed, a pole of the mains meets another pole of the mains, a loop or earth that it
 * keeps apart from in the right circuit; a loop or earth through a motor or a lamp as well.
 */
export function hazards(plan: Plan, right: WiredCircuit): (circuit: WiredCircuit) => boolean {
  const earths = [...plan.parts.values()].filter((p) => p.kind === 'plug').map((p) => `${p.name}.PE`);
  const poles = (mains: boolean) =>
    right.sources
      .filter((s) => s.mains === mains)
      .flatMap((s) => s.rails.map((r) => `${s.part}.${r.terminal}`));
  const mains = poles(true);
  const foreign = mains.flatMap((a) => [...poles(false), ...earths].map((b) => [a, b] as const));
  const lines = mains.flatMap((a, i) => mains.slice(i + 1).map((b) => [a, b] as const));
  const meet = (circuit: WiredCircuit, pairs: readonly (readonly [string, string])[], loads: boolean) => {
    const sets = new UnionFind(circuit.netCount);
    for (const w of circuit.wires) sets.union(w.a, w.b);
    for (const c of circuit.contacts) sets.union(c.a, c.b);
    if (loads) for (const p of circuit.passives) sets.union(p.a, p.b);
    return pairs.map(([a, b]) => {
      const [x, y] = [circuit.netOf.get(a), circuit.netOf.get(b)];
      return x !== undefined && y !== undefined && sets.joined(x, y);
    });
  };
  const all = [...foreign, ...lines];
  const [metal, loaded] = [meet(right, all, false), meet(right, foreign, true)];
  const fresh = (now: readonly boolean[], before: readonly boolean[]) => now.some((x, i) => x && !before[i]);
  return (circuit) => fresh(meet(circuit, all, false), metal) || fresh(meet(circuit, foreign, true), loaded);
}

/**
 * Whether a fault can change a reading while only the low-voltage supplies are on: what it changes is on that side, or
 * these supplies hang on the mains themselves.
 */
export function touchesLoop({ circuit, sides }: Study): (fault: Fault) => boolean {
  if (loopNeedsMains(circuit)) return () => true;
  return (fault) => fault.at.some((key) => isLow(sides, circuit.netOf.get(key)));
}
