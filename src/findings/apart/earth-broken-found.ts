/** The protective conductor: unbroken from the plug to every metal part. */

import { netAt } from '../../circuit/terminals.ts';
import type { Part } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** `earth-broken`: metal with no unbroken earth. Parts that hang on one conductor are named together. */
export function earthBroken(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const groups = new Map<string, { names: string[]; net: number | undefined; foreign: boolean }>();
  for (const part of plan.parts.values()) {
    if (!needsEarth(part)) continue;
    const net = netAt(circuit, part.name, 'PE');
    const foreign = net !== undefined && sides.earth.has(net) && earthOfAnother(study, part.name, net);
    if (net !== undefined && sides.earth.has(net) && !foreign) continue;
    // A plug-in load takes its earth from the outlet, and the outlet alone is named.
    if ('pluggedInto' in part && part.pluggedInto !== undefined) continue;
    const key = net === undefined || foreign ? part.name : `net ${net}`;
    const group = groups.get(key);
    if (group) group.names.push(part.name);
    else groups.set(key, { names: [part.name], net, foreign });
  }
  return [...groups.values()].map((g) => broken(study, g.names, g.net, g.foreign));
}

function needsEarth(part: Part): boolean {
  return (
    part.kind === 'outlet' ||
    ((part.kind === 'motor' || part.kind === 'load') && !part.class2Insulated) ||
    (part.kind === 'box' && part.metal)
  );
}

function broken(
  { plan, circuit }: Study,
  names: readonly string[],
  net: number | undefined,
  foreign: boolean,
): Finding {
  const through = net === undefined ? undefined : circuit.contacts.find((c) => c.a === net || c.b === net);
  const ends = names.map((name) => `${name}.PE`);
  const several = names.length > 1;
  return finding(plan, {
    id: 'earth-broken',
    severity: 'danger',
    question: 1,
    parts: [...names, ...(through ? [through.part] : [])],
    terminals: ends,
    message: foreign
      ? `${listOf(names)} takes its earth from another plug than its line`
      : `${listOf(names)} ${several ? 'have' : 'has'} no unbroken protective earth from the plug`,
    why: foreign
      ? 'Pull that other plug, and the metal here has no earth.'
      : through
        ? `${several ? 'Their' : 'Its'} earth passes ${through.part}; a protective conductor may pass no contact and no fuse.`
        : ends.some((end) => circuit.landed.has(end))
          ? `What lands on ${listOf(ends)} does not lead to the PE pin of a plug.`
          : `Nothing lands on ${ends[0]}.`,
    fix: `Run the green (green-yellow) core from the plug's PE to ${listOf(ends)} without a break.`,
    basis: 'NEC 250.110, 250.114, 250.124, 250.148; BS 7671 clause 411.3.1 (partly from memory)',
  });
}

/** The part's line comes from one plug and its earth only from others. */
function earthOfAnother(study: Study, name: string, earth: number): boolean {
  const { circuit, verified: v } = study;
  const consumer = circuit.consumers.find((c) => c.part === name);
  if (!v || !consumer) return false;
  const feeding = circuit.sources.filter(
    (s) =>
      s.mains &&
      s.rails.some(
        (r, i) => r.live && [...consumer.nets.values()].some((n) => v.model.railReach[s.index]![i]!.has(n)),
      ),
  );
  return feeding.length > 0 && feeding.every((s) => circuit.netOf.get(`${s.part}.PE`) !== earth);
}
