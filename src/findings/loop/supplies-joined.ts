import type { Source } from '../../circuit/circuit.ts';
import { sayMoved } from '../../circuit/input-words.ts';
import { UnionFind } from '../../circuit/union-find.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Moved, Verified } from '../../logic/verify.ts';
import { push } from '../../plan/map-entries.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';

const entry: FindingEntry = {
  id: 'supplies-joined',
  title: 'two supplies feed one loop',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'two-collectors',
  meaning:
    'Both poles of two supplies are joined. They never give exactly the same volts, so one pushes current into the other; one runs hot, and two limited supplies together are no longer limited. Use one that is big enough, or join one pole only.',
  wrong: extract(
    '  - {link: [plus, plus2]}',
    '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, plus2], black: [PS2.-, minus]}}',
  ),
  right: '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, plus2], black: [PS2.-, minus]}}',
  basis: 'NEC 725.121(B) (2020)',
  followsFrom: [],
};

export const suppliesJoined: Check = { entry, find };

function find(study: Study): Found[] {
  const { circuit, verified: v } = study;
  if (!v) return [];
  const low = circuit.sources.filter((s) => !s.mains);
  // Of many supplies most reach no pole of another in any state.
  const atNet = new Map<number, Source[]>();
  for (const s of low) for (const net of new Set(s.rails.map((r) => r.net))) push(atNet, net, s);
  const reached = (s: Source) => {
    const nets = v.model.railReach[s.index]!.flatMap((reach) => [...reach.keys()]);
    const later = nets.flatMap((net) => atNet.get(net) ?? []).filter((t) => t.index > s.index);
    return [...new Set(later)].sort((a, b) => a.index - b.index);
  };
  const sets = new UnionFind(circuit.sources.length);
  const pairs = low.flatMap((s) =>
    reached(s).flatMap((t) => {
      const moved = everIn(v, whenJoined(v, s, t));
      if (moved) sets.union(s.index, t.index);
      return moved ? [{ s, t, moved }] : [];
    }),
  );
  const withIt = (s: Source) => low.filter((t) => sets.find(t.index) === sets.find(s.index));
  return pairs.map(({ s, t, moved }) => ({
    ...joined(study, s, t, moved),
    twin: {
      name: `${s.part} and ${t.part}`,
      alike: `${sets.find(s.index)}`,
      several: () => ({ message: `${listOf(withIt(s).map((x) => x.part))} feed one loop together` }),
    },
  }));
}

/** The states in which both poles of the one are joined to both poles of the other. */
function whenJoined({ model: { bdd, railReach } }: Verified, s: Source, t: Source): Fn {
  const reach = railReach[s.index]!;
  const at = (x: number, y: number) => reach[x]!.get(t.rails[y]!.net) ?? FALSE;
  return bdd.or(bdd.and(at(0, 0), at(1, 1)), bdd.and(at(0, 1), at(1, 0)));
}

function joined({ plan, circuit }: Study, s: Source, t: Source, moved: Moved): Found {
  return found(plan, entry, {
    parts: [s.part, t.part],
    terminals: [s, t].flatMap(({ part, rails }) => rails.map((r) => `${part}.${r.terminal}`)),
    message: `${s.part} and ${t.part} feed one loop together`,
    why: `With ${sayMoved(circuit, moved)} both poles of the one are joined to both poles of the other.`,
    fix: 'Use one supply that is big enough, or keep the two loops apart but for one common pole.',
    basis: entry.basis,
  });
}
