import type { ContactEdge } from '../../circuit/circuit.ts';
import { isMainsPart } from '../../circuit/sides.ts';
import { netAt } from '../../circuit/terminals.ts';
import { kept } from '../../plan/map-entries.ts';
import type { Part } from '../../plan/part-types.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { mainsSources } from './rail-reach.ts';

const entry: FindingEntry = {
  id: 'earth-broken',
  title: 'no unbroken earth from the plug to the metal',
  severity: 'danger',
  question: 1,
  base: 'dc-chain',
  meaning:
    'The green core does not run through from the plug to the outlet, motor or metal box, or it passes a contact or fuse. Everything works as before, so nobody notices; but when a live wire touches the metal, nothing trips and the machine is live. See it with a continuity tester between the earth pin and bare metal, plug out.',
  wrong: '{cable: cord, length: 60 cm, cores: {white: [neutral, X1.N]}}',
  right: '{cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
  basis: 'NEC 250.110, 250.114, 250.124, 250.148; BS 7671 clause 411.3.1 (partly from memory)',
  followsFrom: [],
};

export const earthBroken: Check = { entry, find };

/** Metal parts that hang on one conductor, which leads to no earth of theirs. */
interface Unearthed {
  readonly names: string[];
  /** undefined where nothing lands on PE */
  readonly net: number | undefined;
  /** it is earthed, but at another plug than the one that feeds it */
  readonly foreign: boolean;
}

function find(study: Study): Finding[] {
  const { plan } = study;
  if (![...plan.parts.values()].some((p) => p.kind === 'plug')) return [];
  return unearthed(study).map((group) => {
    const { names, foreign } = group;
    const ends = names.map((name) => `${name}.PE`);
    const through = contactIn(study, group);
    return found(plan, entry, {
      parts: [...names, ...(through ? [through.part] : [])],
      terminals: ends,
      message: foreign
        ? `${listOf(names)} ${names.length > 1 ? 'take their earth from another plug than their' : 'takes its earth from another plug than its'} line`
        : `${listOf(names)} ${names.length > 1 ? 'have' : 'has'} no unbroken protective earth from the plug`,
      why: sayWhy(study, group),
      fix: `Run the green (green-yellow) core from the plug's PE to ${listOf(ends)} without a break.`,
      basis: entry.basis,
      twin: { name: listOf(names), alike: foreign ? 'foreign' : (through?.part ?? 'broken') },
    });
  });
}

function sayWhy(study: Study, group: Unearthed): string {
  if (group.foreign) return 'Pull that other plug, and the metal here has no earth.';
  const through = contactIn(study, group);
  if (through)
    return `${group.names.length > 1 ? 'Their' : 'Its'} earth passes ${through.part}; a protective conductor may pass no contact and no fuse.`;
  const ends = group.names.map((name) => `${name}.PE`);
  return ends.some((end) => study.circuit.landed.has(end))
    ? `What lands on ${listOf(ends)} does not lead to the PE pin of a plug.`
    : `Nothing lands on ${ends[0]}.`;
}

function contactIn({ circuit }: Study, { net }: Unearthed): ContactEdge | undefined {
  return net === undefined ? undefined : circuit.contacts.find((c) => c.a === net || c.b === net);
}

function unearthed(study: Study): Unearthed[] {
  const { plan, circuit, sides } = study;
  const groups = new Map<string, Unearthed>();
  for (const part of plan.parts.values()) {
    if (!needsEarth(part)) continue;
    const net = netAt(circuit, part.name, 'PE');
    const earthed = net !== undefined && sides.earth.has(net);
    const foreign = earthed && earthOfAnother(study, part.name, net);
    if (earthed && !foreign) continue;
    // A plug-in load takes its earth from the outlet, and the outlet alone is named.
    if (isPlugIn(study, part.name)) continue;
    const key = net === undefined || foreign ? part.name : `net ${net}`;
    kept(groups, key, () => ({ names: [], net, foreign })).names.push(part.name);
  }
  return [...groups.values()];
}

function needsEarth(part: Part): boolean {
  return (
    part.kind === 'outlet' ||
    ((part.kind === 'motor' || part.kind === 'load') && isMainsPart(part) && !part.class2Insulated) ||
    (part.kind === 'box' && part.metal)
  );
}

/** The part's line comes from one plug and its earth only from others. */
function earthOfAnother({ circuit, verified: v }: Study, name: string, earth: number): boolean {
  const consumer = circuit.consumers.find((c) => c.part === name);
  if (!v || !consumer) return false;
  const nets = [...consumer.nets.values()];
  const feeding = mainsSources(circuit).filter((s) =>
    s.rails.some((r, i) => r.live && nets.some((n) => v.model.railReach[s.index]![i]!.has(n))),
  );
  return feeding.length > 0 && feeding.every((s) => netAt(circuit, s.part, 'PE') !== earth);
}
