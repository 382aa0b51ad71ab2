/** The protective conductor: unbroken, apart from the neutral, and carrying no working current. */
import type { Finding } from '../report/model.ts';
import { finding, netAt, type Study } from './study.ts';

export function earthBroken(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const found: Finding[] = [];
  for (const part of plan.parts.values()) {
    const needs =
      part.kind === 'outlet' ||
      ((part.kind === 'motor' || part.kind === 'load') && !part.class2Insulated) ||
      (part.kind === 'box' && part.metal);
    if (!needs) continue;
    const net = netAt(circuit, part.name, 'PE');
    const foreign = net !== undefined && sides.earth.has(net) && earthOfAnother(study, part.name, net);
    if (net !== undefined && sides.earth.has(net) && !foreign) continue;
    // A plug-in load takes its earth from the outlet, and the outlet alone is named.
    if ('pluggedInto' in part && part.pluggedInto !== undefined) continue;
    const through = net === undefined ? undefined : circuit.contacts.find((c) => c.a === net || c.b === net);
    found.push(
      finding(plan, {
        id: 'earth-broken',
        severity: 'danger',
        question: 1,
        parts: [part.name, ...(through ? [through.part] : [])],
        terminals: [`${part.name}.PE`],
        message: foreign
          ? `${part.name} takes its earth from another plug than its line`
          : `${part.name} has no unbroken protective earth from the plug`,
        why: foreign
          ? 'Pull that other plug, and the metal here has no earth.'
          : through
            ? `Its earth passes ${through.part}; a protective conductor may pass no contact and no fuse.`
            : net !== undefined && circuit.landed.has(`${part.name}.PE`)
              ? `What lands on ${part.name}.PE does not lead to the PE pin of a plug.`
              : `Nothing lands on ${part.name}.PE.`,
        fix: `Run the green (green-yellow) core from the plug's PE to ${part.name}.PE without a break.`,
        basis: 'NEC 250.110, 250.114, 250.124, 250.148; BS 7671 clause 411.3.1 (partly from memory)',
      }),
    );
  }
  return found;
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

export function neutralEarthed(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  for (const source of circuit.sources.filter((s) => s.mains)) {
    const neutral = source.rails.find((r) => r.terminal === 'N');
    if (!neutral) continue;
    const hit = [...sides.earth].includes(neutral.net)
      ? []
      : circuit.contacts.filter(
          (c) =>
            (c.a === neutral.net && sides.earth.has(c.b)) || (c.b === neutral.net && sides.earth.has(c.a)),
        );
    if (!sides.earth.has(neutral.net) && hit.length === 0) continue;
    return [
      finding(plan, {
        id: 'neutral-earthed',
        severity: 'danger',
        question: 1,
        parts: [...hit.map((c) => c.part), source.part],
        terminals: [`${source.part}.N`, `${source.part}.PE`],
        message: `neutral and earth are joined after ${source.part}`,
        why: 'Working current then flows in the earth wire and in every metal part joined to it.',
        fix: 'Take neutral and earth apart everywhere after the plug.',
        basis: 'NEC 250.24(A)(5), 250.142(B) (from memory); BS 7671 section 411 (from memory)',
      }),
    ];
  }
  return [];
}

export function earthAsReturn(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const neutralNets = new Set(
    circuit.sources.filter((s) => s.mains).flatMap((s) => s.rails.map((r) => r.net)),
  );
  return circuit.passives
    .filter((p) => {
      const earthed = [p.a, p.b].filter((n) => sides.earth.has(n) && !neutralNets.has(n));
      const other = earthed[0] === p.a ? p.b : p.a;
      return earthed.length === 1 && sides.mains.has(other);
    })
    .map((p) =>
      finding(plan, {
        id: 'earth-as-return',
        severity: 'danger',
        question: 1,
        parts: [p.part],
        message: `${p.part} works between a mains conductor and earth`,
        why: 'The protective conductor carries its working current; metal parts go live when that conductor breaks.',
        fix: `Return ${p.part} to the neutral, or use one made for line-to-line voltage.`,
        basis: 'NEC 250.6, 300.3(B) (from memory); BS 7671 clause 543.1 (from memory)',
      }),
    );
}
