import { FALSE, type Fn } from '../logic/bdd.ts';
import { difference } from '../logic/model.ts';
import type { Verified } from '../logic/verify.ts';
import type { PlugPart } from '../plan/plan.ts';
import type { Finding } from '../report/model.ts';
import { netsMeeting } from './meeting.ts';
import { COMMON_PRACTICE, everIn, finding, listOf, netAt, type Study, sayMoved } from './study.ts';

/** Question 1, as far as connections decide it: mains and low voltage, shorts, polarity, switching and earth. */
export function checkApart(study: Study): Finding[] {
  const { verified } = study;
  const plugs = [...study.plan.parts.values()].filter((p): p is PlugPart => p.kind === 'plug');
  const found: Finding[] = [...netsMeeting(study)];
  if (plugs.length === 0) return found;
  if (found.length === 0) found.push(...mainsThroughGate(study));
  found.push(...earthBroken(study), ...neutralEarthed(study), ...earthAsReturn(study));
  if (verified) {
    found.push(
      ...mainsShorted(study, verified),
      ...polarity(study, verified),
      ...notSwitched(study, verified),
    );
    found.push(...phaseOrder(study, verified), ...phaseMissing(study, verified));
  }
  return found;
}

function mainsThroughGate(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const found: Finding[] = [];
  const hit = [...plan.parts.values()]
    .filter((part) => part.kind === 'gate')
    .flatMap((part) => ['COM', 'NO', 'NC'].map((t) => `${part.name}.${t}`))
    .filter((key) => circuit.landed.has(key) && sides.mains.has(circuit.netOf.get(key) ?? -1));
  if (hit.length > 0) {
    const gates = [...new Set(hit.map((key) => key.split('.')[0]!))];
    found.push(
      finding(plan, {
        id: 'mains-through-gate',
        severity: 'danger',
        question: 1,
        parts: gates,
        terminals: hit,
        message: `mains runs through the gate switch${gates.length > 1 ? 'es' : ''} ${listOf(gates)}`,
        why: `${hit[0]} is joined to a mains conductor. The switch, its wire and the gate can be touched.`,
        fix: `Take the mains conductors off ${listOf(gates)} and let the gate switches work the coil of a relay at low voltage.`,
        basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory); common practice',
      }),
    );
    return found;
  }
  const lowRuns = new Set<string>();
  for (const run of plan.runs)
    if (
      run.cable?.stock !== undefined &&
      run.cores.some((c) => sides.low.has(netAt(circuit, c.a.part, c.a.terminal) ?? -1))
    )
      lowRuns.add(run.cable.stock);
  for (const run of plan.runs) {
    const stock = run.cable?.stock;
    if (stock === undefined || !lowRuns.has(stock) || (run.cable?.insulation ?? 0) >= 300) continue;
    const core = run.cores.find((c) => sides.mains.has(netAt(circuit, c.a.part, c.a.terminal) ?? -1));
    if (!core) continue;
    found.push(
      finding(plan, {
        id: 'mains-through-gate',
        severity: 'danger',
        question: 1,
        parts: [core.a.part, core.b.part],
        terminals: [core.a.written, core.b.written],
        at: core.at,
        message: `the ${core.colour} core of the loop cable "${stock}" carries mains from ${core.a.written} to ${core.b.written}`,
        why: `"${stock}" is the cable of the low-voltage loop${run.cable?.insulation === undefined ? '' : `, insulated for ${run.cable.insulation} V`}.`,
        fix: 'Use cord or cable made for mains there.',
        basis: 'NEC 725.136; IEC 60364-5-52 clause 528.1 (from memory)',
      }),
    );
  }
  return found;
}

function mainsShorted(study: Study, v: Verified): Finding[] {
  const { plan, circuit, sides } = study;
  const { bdd } = v.model;
  const found: Finding[] = [];
  for (const source of circuit.sources.filter((s) => s.mains)) {
    const reach = v.model.railReach[source.index]!;
    const pairs: [string, string, Fn][] = [];
    source.rails.forEach((p, i) => {
      source.rails.slice(i + 1).forEach((q) => {
        if (difference(p, q) > 1) pairs.push([p.terminal, q.terminal, reach[i]!.get(q.net) ?? FALSE]);
      });
      if (p.live)
        pairs.push([p.terminal, 'PE', bdd.any([...sides.earth].map((net) => reach[i]!.get(net) ?? FALSE))]);
    });
    for (const [p, q, f] of pairs) {
      const moved = everIn(v, f);
      if (!moved) continue;
      found.push(
        finding(plan, {
          id: 'mains-shorted',
          severity: 'danger',
          question: 1,
          parts: [source.part],
          terminals: [`${source.part}.${p}`, `${source.part}.${q}`],
          message: `${source.part}: ${p} and ${q} are joined with nothing between them`,
          why: `This happens with ${sayMoved(circuit, moved)}.`,
          fix: `Trace ${p} and ${q} from ${source.part} and take away the conductor or contact that joins them.`,
          basis: COMMON_PRACTICE,
        }),
      );
      break;
    }
  }
  return found;
}

function polarity(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const { bdd } = v.model;
  const found: Finding[] = [];
  for (const c of circuit.consumers) {
    const line = c.nets.get('L');
    const neutral = c.nets.get('N');
    if (line === undefined || neutral === undefined) continue;
    for (const source of circuit.sources.filter((s) => s.mains)) {
      const reach = v.model.railReach[source.index]!;
      const at = (live: boolean, net: number) =>
        bdd.any(source.rails.map((r, i) => (r.live === live ? (reach[i]!.get(net) ?? FALSE) : FALSE)));
      if (bdd.or(at(false, line), at(true, neutral)) === FALSE) continue;
      if (at(true, line) !== FALSE || at(false, neutral) !== FALSE) continue;
      if (plan.parts.get(c.part)?.kind !== 'outlet' && pluggedSwapped(study, c.part)) continue;
      found.push(
        finding(plan, {
          id: 'line-neutral-swapped',
          severity: 'danger',
          question: 1,
          parts: [c.part, source.part],
          terminals: [`${c.part}.L`, `${c.part}.N`],
          message: `line and neutral change places between ${source.part} and ${c.part}`,
          why: `${c.part}.L comes from the neutral of ${source.part}, or ${c.part}.N from its line.`,
          fix: `Exchange the two cores at ${c.part}, so that L goes to L and N to N.`,
          basis: 'NEC 200.11; IEC 60364-6 polarity test (from memory)',
        }),
      );
    }
  }
  return found;
}

/** A plug-in load takes after its outlet; the outlet alone is named. */
function pluggedSwapped(study: Study, name: string): boolean {
  const part = study.plan.parts.get(name);
  return part !== undefined && 'pluggedInto' in part && part.pluggedInto !== undefined;
}

function notSwitched(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const { bdd, model } = { bdd: v.model.bdd, model: v.model };
  const found: Finding[] = [];
  for (const c of circuit.consumers) {
    if (c.kind !== 'outlet' && pluggedSwapped(study, c.part)) continue;
    const fed = model.fed.get(c.part) ?? FALSE;
    if (!everIn(v, fed)) continue;
    for (const source of circuit.sources.filter((s) => s.mains)) {
      const reach = model.railReach[source.index]!;
      const hot = [...c.nets].map(([terminal, net]) => ({
        terminal,
        f: bdd.and(
          model.live[source.index]!,
          bdd.any(source.rails.map((r, i) => (r.live ? (reach[i]!.get(net) ?? FALSE) : FALSE))),
        ),
      }));
      const staying = hot.filter(({ f }) => everIn(v, bdd.diff(f, fed)) !== undefined);
      if (staying.length === 0) continue;
      const moved = everIn(v, bdd.diff(staying[0]!.f, fed))!;
      const plug = plan.parts.get(source.part) as PlugPart;
      const twoLegs = c.nets.size === 2 && c.nets.has('L1') && staying.length < 2;
      const behindPlug = plug.pattern?.toLowerCase() !== 'fixed';
      const names = staying.map((s) => `${c.part}.${s.terminal}`);
      found.push(
        finding(plan, {
          id: 'line-not-switched',
          severity: twoLegs && behindPlug ? 'warning' : 'danger',
          question: 1,
          parts: [c.part, ...new Set(switchParts(study, c.part))],
          terminals: names,
          message: `${c.part} stays live while it is off: ${listOf(names)} ${names.length > 1 ? 'are' : 'is'} still joined to the line`,
          why: `With ${sayMoved(circuit, moved)} the load is off, yet the contact has not broken every live conductor.`,
          fix: c.nets.has('N')
            ? `Put the contact in the line conductor (L), not the neutral.`
            : `Use a contact with ${c.nets.size} poles and take every live conductor through one of them.`,
          basis: 'NEC 404.2(B), 430.84, 430.85; BS 7671 clause 132.14 (sub-clauses from memory)',
        }),
      );
      break;
    }
  }
  return found;
}

function switchParts(study: Study, consumer: string): string[] {
  const { circuit, sides } = study;
  const nets = new Set(circuit.consumers.find((c) => c.part === consumer)?.nets.values());
  return circuit.contacts
    .filter((c) => c.when.by !== 'always' && sides.mains.has(c.a) && (nets.has(c.a) || nets.has(c.b)))
    .map((c) => c.part);
}

function earthBroken(study: Study): Finding[] {
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

function neutralEarthed(study: Study): Finding[] {
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

function earthAsReturn(study: Study): Finding[] {
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

function phaseOrder(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const found: Finding[] = [];
  for (const c of circuit.consumers) {
    if (c.nets.size !== 3) continue;
    for (const source of circuit.sources.filter((s) => s.mains && s.rails.length >= 3)) {
      const reach = v.model.railReach[source.index]!;
      const order = [...c.nets.values()].map((net) => [0, 1, 2].find((i) => reach[i]!.has(net)));
      if (order.some((o) => o === undefined) || new Set(order).size !== 3) continue;
      const inversions = [0, 1, 2].flatMap((i) =>
        [0, 1, 2].filter((j) => j > i && order[j]! < order[i]!),
      ).length;
      if (inversions % 2 === 0) continue;
      if (plan.parts.get(c.part)?.kind !== 'outlet' && pluggedSwapped(study, c.part)) continue;
      found.push(
        finding(plan, {
          id: 'phase-order',
          severity: 'caution',
          question: 1,
          parts: [c.part],
          terminals: [...c.nets.keys()].map((t) => `${c.part}.${t}`),
          message: `the phases change places on the way to ${c.part}: it will turn backwards`,
          why: `${[...c.nets.keys()].map((t, i) => `${t} comes from ${source.rails[order[i]!]!.terminal}`).join(', ')}.`,
          fix: `Exchange two of the three cores at ${c.part}, and check the direction at the first start.`,
          basis: COMMON_PRACTICE,
        }),
      );
    }
  }
  return found;
}

function phaseMissing(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  return circuit.consumers.flatMap((c) => {
    const partly = v.model.partlyFed.get(c.part) ?? FALSE;
    const moved =
      partly === FALSE || (c.kind !== 'outlet' && pluggedSwapped(study, c.part))
        ? undefined
        : everIn(v, partly);
    if (!moved) return [];
    return [
      finding(plan, {
        id: 'phase-missing',
        severity: 'warning',
        question: 7,
        parts: [c.part],
        terminals: [...c.nets.keys()].map((t) => `${c.part}.${t}`),
        message: `${c.part} gets only two of its three phases with ${sayMoved(circuit, moved)}`,
        why: 'A three-phase motor on two phases does not start, or hums and burns out.',
        fix: 'Take all three phases through the contactor and on to the motor.',
        basis: COMMON_PRACTICE,
      }),
    ];
  });
}
