/** No feed, no return, no way home: found by walking from a switch in its working position. */
import type { Circuit } from '../../../circuit/circuit.ts';
import { isLanded, netAt } from '../../../circuit/terminals.ts';
import type { UnionFind } from '../../../circuit/union-find.ts';
import type { Moved, Verified } from '../../../logic/verify.ts';
import type { Study } from '../../../study/study.ts';
import { joinedIn } from './joined-in.ts';

/** Where the loop of a switch is open; `terminals` are those of the switch that something lands on. */
export type DeadPath = { readonly terminals: readonly string[] } & (
  | { readonly kind: 'no-feed' }
  /** the far end of the coil returns to another source than the one that feeds the switch */
  | { readonly kind: 'stranded'; readonly coil: string; readonly source: string }
  | { readonly kind: 'no-return' }
  | { readonly kind: 'open-loop' }
);

/** `tabs` are the terminals that the switch joins. */
export function deadPath(
  study: Study,
  v: Verified,
  name: string,
  tabs: readonly string[],
  state: Moved,
): DeadPath {
  const { circuit } = study;
  const sets = joinedIn(v, state, name);
  const landed = tabs.filter((tab) => isLanded(circuit, name, tab));
  const netOf = (tab: string) => netAt(circuit, name, tab)!;
  const reaching = (nets: readonly number[]) =>
    landed.filter((tab) => nets.some((n) => sets.joined(n, netOf(tab))));
  const poles = circuit.sources.filter((s) => !s.mains).flatMap((s) => s.rails.map((r) => r.net));
  const ends = [
    ...circuit.relays.flatMap((r) => r.senses.flatMap((s) => [s.a, s.b])),
    ...circuit.diodes.flatMap((d) => [d.anode, d.cathode]),
  ];
  const terminals = landed.map((tab) => `${name}.${tab}`);
  const fed = reaching(poles);
  if (fed.length === 0) return { kind: 'no-feed', terminals };
  const leads = reaching(ends).filter((tab) => !fed.includes(tab));
  const stranded = strandedCoil(study, sets, netOf(fed[0]!), leads.map(netOf));
  if (stranded) return { kind: 'stranded', ...stranded, terminals };
  return { kind: leads.length === 0 ? 'no-return' : 'open-loop', terminals };
}

/** A coil that the switch's way on does reach, and whose far end does not return to the supply that feeds the switch. */
function strandedCoil(
  { circuit }: Study,
  sets: UnionFind,
  fed: number,
  nets: readonly number[],
): { coil: string; source: string } | undefined {
  const low = circuit.sources.filter((s) => !s.mains);
  const reaches = (s: (typeof low)[number], net: number) => s.rails.some((r) => sets.joined(r.net, net));
  const feeder = low.find((s) => reaches(s, fed));
  if (!feeder) return undefined;
  const onward = throughDiodes(circuit, sets, nets);
  for (const relay of circuit.relays)
    for (const sense of relay.senses) {
      const near = [sense.a, sense.b].find((n) => onward.has(sets.find(n)));
      if (sense.by !== 'volts' || near === undefined) continue;
      const far = near === sense.a ? sense.b : sense.a;
      if (low.some((s) => s !== feeder && reaches(s, far)) && !reaches(feeder, far))
        return { coil: relay.part, source: feeder.part };
    }
  return undefined;
}

/** Sets of joined nets that current leaving these nets can get to. */
function throughDiodes(circuit: Circuit, sets: UnionFind, nets: readonly number[]): Set<number> {
  const onward = new Set(nets.map((n) => sets.find(n)));
  for (let grew = true; grew; ) {
    grew = false;
    for (const d of circuit.diodes)
      if (!d.load && onward.has(sets.find(d.anode)) && !onward.has(sets.find(d.cathode))) {
        onward.add(sets.find(d.cathode));
        grew = true;
      }
  }
  return onward;
}
