import { sayMoved } from '../../circuit/input-words.ts';
import { endKey } from '../../circuit/nets.ts';
import type { Sides } from '../../circuit/sides.ts';
import { FALSE } from '../../logic/bdd.ts';
import { relayVariable } from '../../logic/conduction.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Core } from '../../plan/plan.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { coreFromTo } from '../../text/core-names.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** `mains-meets-low-voltage`: a mains conductor joined to the loop, at once or in some position of the contacts. */
export function netsMeeting(study: Study): Finding[] {
  const { circuit, sides, plan } = study;
  const met = [...sides.low].filter((net) => sides.mains.has(net));
  if (met.length === 0) return [];
  const touching = met.flatMap((net) => circuit.terminals[net] ?? []);
  const culprit = crossingCore(study);
  const named = culprit
    ? [culprit.a, culprit.b].map((e) => (e.terminal === '' ? e.part : `${e.part}.${e.terminal}`))
    : touching.slice(0, 4);
  return [
    finding(plan, {
      id: 'mains-meets-low-voltage',
      severity: 'danger',
      question: 1,
      parts: named.map((t) => partOfKey(t)),
      terminals: named,
      at: culprit?.at,
      message: culprit
        ? `${coreFromTo({ colour: culprit.colour, a: culprit.a.written, b: culprit.b.written })} puts mains on the low-voltage loop`
        : `mains reaches the low-voltage loop at ${listOf(named)}`,
      why: `${whenMet(study, met)} Every gate switch and its wire can then be at mains voltage.`,
      fix: culprit
        ? `Take that core off; nothing of the loop may land on a mains terminal.`
        : 'Separate the two circuits at the terminals named.',
      basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory)',
    }),
  ];
}

/** The smallest state in which a mains rail is joined by contacts to a net of the loop. */
function whenMet(study: Study, met: readonly number[]): string {
  const { circuit, verified: v } = study;
  if (!v) return 'They are joined in some position of the contacts.';
  const { bdd } = v.model;
  const lowRails = circuit.sources.filter((s) => !s.mains).flatMap((s) => s.rails.map((r) => r.net));
  const reaches = circuit.sources.filter((s) => s.mains).flatMap((s) => v.model.railReach[s.index]!);
  const at = (nets: readonly number[]) => bdd.any(reaches.flatMap((r) => nets.map((n) => r.get(n) ?? FALSE)));
  const f = at(lowRails) === FALSE ? at(met) : at(lowRails);
  const moved = everIn(v, f);
  if (moved) return `It happens with ${sayMoved(circuit, moved)}.`;
  const state = bdd.nearest(f, () => false);
  const relays = circuit.relays.filter((r) => state?.get(relayVariable(r.index))).map((r) => r.part);
  const inputs = circuit.inputs
    .filter((i) => state?.get(circuit.relays.length + i.index))
    .map((i) => i.index);
  const parts = [
    ...relays.map((r) => `${r} pulled in`),
    ...(inputs.length > 0 ? [sayMoved(circuit, inputs)] : []),
  ];
  return `It happens with ${parts.length > 0 ? parts.join(' and ') : 'everything at rest'}.`;
}

const MOST_TRIES = 200;

/** The one core without which mains and loop stay apart, if there is one. */
function crossingCore(study: Study): Core | undefined {
  const candidates: { core: Core; index: number }[] = [];
  for (const run of study.plan.runs)
    run.cores.forEach((core, index) => {
      const net = study.circuit.netOf.get(
        core.a.terminal === '' ? core.a.part : `${core.a.part}.${core.a.terminal}`,
      );
      if (net !== undefined && study.sides.mains.has(net) && study.sides.low.has(net))
        candidates.push({ core, index });
    });
  if (candidates.length > MOST_TRIES) return undefined;
  const good = candidates.filter(({ core, index }) => {
    return !meets(study.rewired(new Map([[endKey(core.run, index, 'b'), '#lifted']])).sides);
  });
  // Several cores may each be the bridge; the one that ends on parts of both sides is the odd one.
  const odd = good.find(({ core }) => isMainsEnd(study, core.a) !== isMainsEnd(study, core.b));
  return (odd ?? good[0])?.core;
}

/** The terminal belongs to mains by what the part is. */
function isMainsEnd(study: Study, end: { part: string; terminal: string }): boolean {
  const part = study.plan.parts.get(end.part);
  if (!part) return false;
  if (['plug', 'outlet', 'motor', 'load'].includes(part.kind)) return true;
  if (part.kind === 'supply') return end.terminal.startsWith('L') || end.terminal === 'N';
  if (part.kind === 'relay' || part.kind === 'board' || part.kind === 'timer')
    return part.poles.some((p) => [p.common, p.make, p.break].includes(end.terminal));
  return false;
}

function meets({ low, mains }: Sides): boolean {
  return [...low].some((net) => mains.has(net));
}
