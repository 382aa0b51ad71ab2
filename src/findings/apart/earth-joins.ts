/** Where the neutral is joined to earth, and through which contacts. */
import type { ContactEdge, Source } from '../../circuit/circuit.ts';
import { FALSE } from '../../logic/bdd.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { mainsSources, pinReaches } from './rail-reach.ts';

export interface EarthJoin {
  readonly source: Source;
  /** contacts from the neutral to earth; none where wires alone join them */
  readonly way: readonly ContactEdge[];
}

/** The first plug whose neutral meets earth, by wires or by contacts in some position. */
export const neutralToEarth = perStudy((study): EarthJoin | undefined => {
  const { circuit, sides } = study;
  for (const source of mainsSources(circuit)) {
    const neutral = source.rails.findIndex((r) => r.terminal === 'N');
    if (neutral < 0 || !canJoin(study, source, neutral)) continue;
    const way = shortestWay(circuit.contacts, source.rails[neutral]!.net, sides.earth);
    if (way) return { source, way };
  }
  return undefined;
});

/** Two throws of one switch are never closed together; without the exact method they are taken as if they were. */
function canJoin({ verified: v, sides }: Study, source: Source, rail: number): boolean {
  if (!v) return true;
  const { bdd, valid } = v.model;
  return bdd.and(valid, pinReaches(v, source, rail, sides.earth)) !== FALSE;
}

/** The fewest contacts that lead from a net to one of the others; none where it is one of them. */
function shortestWay(
  contacts: readonly ContactEdge[],
  from: number,
  to: ReadonlySet<number>,
): ContactEdge[] | undefined {
  const ways = new Map<number, ContactEdge[]>([[from, []]]);
  // A map is walked in the order of its entries, those added on the way included.
  for (const [net, way] of ways) {
    if (to.has(net)) return way;
    for (const c of contacts) {
      const next = c.a === net ? c.b : c.b === net ? c.a : undefined;
      if (next !== undefined && !ways.has(next)) ways.set(next, [...way, c]);
    }
  }
  return undefined;
}
