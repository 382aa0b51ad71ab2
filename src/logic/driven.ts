import { FALSE, type Fn } from './bdd.ts';
import type { Verified } from './verify.ts';

/** States in which a DC source drives current from net `a` to net `b` when the two are looked at as its poles. */
export function drivenByDc(v: Verified, a: number, b: number): Fn {
  const { bdd } = v.model;
  return bdd.any(
    v.circuit.sources
      .filter((s) => !s.mains && s.kind === 'dc')
      .map((s) => {
        const [plus, minus] = v.model.railReach[s.index]!;
        // Where contacts join the poles, every net reaches both; that is a short, not a polarity.
        const apart = bdd.not(plus!.get(s.rails[1]!.net) ?? FALSE);
        return bdd.every([apart, plus!.get(a) ?? FALSE, minus!.get(b) ?? FALSE]);
      }),
  );
}

/** States in which the two nets are the poles of an AC source, either way round. */
export function acrossAc(v: Verified, a: number, b: number): Fn {
  const { bdd } = v.model;
  return bdd.any(
    v.circuit.sources
      .filter((s) => s.kind === 'ac')
      .map((s) => {
        const reach = v.model.railReach[s.index]!;
        const at = (i: number, n: number) => reach[i]?.get(n) ?? FALSE;
        const apart = bdd.not(at(0, s.rails[1]?.net ?? -1));
        return bdd.and(apart, bdd.or(bdd.and(at(0, a), at(1, b)), bdd.and(at(1, a), at(0, b))));
      }),
  );
}
