/** Working current in the protective conductor: neutral joined to earth, and parts that return by it. */
import type { ContactEdge, Source } from '../../circuit/circuit.ts';
import { flood, neighbours } from '../../circuit/graph.ts';
import { contactPairs, elementPairs } from '../../circuit/sides.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** `neutral-earthed`: wires, or contacts in some position, join a neutral pin to earth. One finding for the plan. */
export function neutralEarthed(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  for (const source of circuit.sources.filter((s) => s.mains)) {
    const neutral = source.rails.findIndex((r) => r.terminal === 'N');
    if (neutral < 0 || !canJoin(study, source, neutral)) continue;
    const way = shortestWay(circuit.contacts, source.rails[neutral]!.net, sides.earth);
    if (way === undefined) continue;
    return [
      finding(plan, {
        id: 'neutral-earthed',
        severity: 'danger',
        question: 1,
        parts: [...way.map((c) => c.part), source.part],
        terminals: [`${source.part}.N`, `${source.part}.PE`],
        message: `neutral and earth are joined after ${source.part}`,
        why: `Working current then flows in the earth wire and in every metal part joined to it.${sayWay(way)}`,
        fix: 'Take neutral and earth apart everywhere after the plug.',
        basis: 'NEC 250.24(A)(5), 250.142(B) (from memory); BS 7671 section 411 (from memory)',
      }),
    ];
  }
  return [];
}

function sayWay(way: readonly ContactEdge[]): string {
  const parts = [...new Set(way.map((c) => c.part))];
  return parts.length < 2 ? '' : ` They meet through ${listOf(parts)}.`;
}

/** Two throws of one switch are never closed together; without the exact method they are taken as if they were. */
function canJoin(study: Study, source: Source, rail: number): boolean {
  const { verified: v, sides } = study;
  if (!v) return true;
  const reach = v.model.railReach[source.index]![rail]!;
  const { bdd, valid } = v.model;
  return bdd.and(valid, bdd.any([...sides.earth].map((net) => reach.get(net) ?? FALSE))) !== FALSE;
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

/**
 * `earth-as-return`: a part between a mains conductor and earth, with any contacts or parts in line with it.
 * @param neutralJoined neutral is joined to earth somewhere; what returns by both is that finding's
 */
export function earthAsReturn(study: Study, neutralJoined: boolean): Finding[] {
  const { plan, circuit, sides } = study;
  const pins = circuit.sources.filter((s) => s.mains).flatMap((s) => s.rails);
  const pinNets = new Set(pins.map((r) => r.net));
  const contacts = neighbours(contactPairs(circuit));
  const from = (live: boolean) =>
    flood(
      pins.filter((r) => r.live === live).map((r) => r.net),
      contacts,
      sides.bareEarth,
    );
  const [line, neutral] = [from(true), from(false)];
  // What contacts join to earth, up to the pins of the plug.
  const earthed = flood(sides.bareEarth, contacts, pinNets);
  for (const net of pinNets) earthed.delete(net);
  const fed = flood(pinNets, neighbours([...contactPairs(circuit), ...elementPairs(circuit)]), earthed);

  const returns = (earth: number, other: number): boolean => {
    if (!earthed.has(earth) || earthed.has(other) || !fed.has(other)) return false;
    if (sides.bareEarth.has(earth)) return true;
    if (neutralJoined && neutral.has(earth)) return false;
    // A line that a contact puts on earth is a short; only another line then drives current through the part.
    return !line.has(earth) || line.has(other);
  };
  const parts = elements(study)
    .filter(({ a, b }) => returns(a, b) || returns(b, a))
    .map((e) => e.part);
  return [...new Set(parts)].map((part) =>
    finding(plan, {
      id: 'earth-as-return',
      severity: 'danger',
      question: 1,
      parts: [part],
      message: `${part} works between a mains conductor and earth`,
      why: 'The protective conductor carries its working current; metal parts go live when that conductor breaks.',
      fix: `Return ${part} to the neutral, or use one made for line-to-line voltage.`,
      basis: 'NEC 250.6, 300.3(B) (from memory); BS 7671 clause 543.1 (from memory)',
    }),
  );
}

function elements({ circuit }: Study): { part: string; a: number; b: number }[] {
  return [
    ...circuit.passives,
    ...circuit.diodes.filter((d) => !d.builtIn).map((d) => ({ part: d.part, a: d.anode, b: d.cathode })),
  ];
}
