import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import { difference } from '../../logic/sense.ts';
import { movedIn, type Verified } from '../../logic/verify.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { PlugPart } from '../../plan/plan.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { earthBroken } from './earth-broken-found.ts';
import { earthAsReturn, neutralEarthed } from './earth-current.ts';
import { mainsThroughGate } from './mains-through-gate-found.ts';
import { netsMeeting } from './nets-meeting.ts';
import { phaseMissing, phaseOrder } from './phases.ts';

/** Question 1, as far as connections decide it: mains and low voltage, shorts, polarity, switching and earth. */
export function checkApart(study: Study): Finding[] {
  const { verified } = study;
  const plugs = [...study.plan.parts.values()].filter((p): p is PlugPart => p.kind === 'plug');
  const found: Finding[] = [...netsMeeting(study)];
  if (plugs.length === 0) return found;
  if (found.length === 0) found.push(...mainsThroughGate(study));
  const bonded = neutralEarthed(study);
  found.push(...earthBroken(study), ...bonded, ...earthAsReturn(study, bonded.length > 0));
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
      // A short can kill what holds the relay that makes it; then no position is settled, and the breaker opens all the same.
      const moved = everIn(v, f) ?? movedIn(circuit, bdd, bdd.and(f, v.chatter));
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
      if (plan.parts.get(c.part)?.kind !== 'outlet' && isPlugIn(study, c.part)) continue;
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

function notSwitched(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const { bdd, model } = { bdd: v.model.bdd, model: v.model };
  const found: Finding[] = [];
  for (const c of circuit.consumers) {
    if (c.kind !== 'outlet' && isPlugIn(study, c.part)) continue;
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
      const behindPlug = !isFixedFeed(plug);
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
