/** Mains in the gate switches or in the cable of the loop. */

import { isLow, isMains } from '../../circuit/sides.ts';
import { netAt } from '../../circuit/terminals.ts';
import type { Core } from '../../plan/plan.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { theCore } from '../../text/core-names.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** `mains-through-gate`: a tab of a gate switch, else a core of the loop's stock cable, lies in a path of the mains. */
export function mainsThroughGate(study: Study): Finding[] {
  const onGates = gatesOnMains(study);
  return onGates.length > 0 ? onGates : loopCableOnMains(study);
}

function gatesOnMains(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const hit = [...plan.parts.values()]
    .filter((part) => part.kind === 'gate')
    .flatMap((part) => ['COM', 'NO', 'NC'].map((t) => `${part.name}.${t}`))
    .filter((key) => circuit.landed.has(key) && isMains(sides, circuit.netOf.get(key)));
  if (hit.length === 0) return [];
  const gates = [...new Set(hit.map((key) => partOfKey(key)))];
  return [
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
  ];
}

function loopCableOnMains(study: Study): Finding[] {
  const { plan, circuit, sides } = study;
  const found: Finding[] = [];
  const mainsAt = (c: Core) => isMains(sides, netAt(circuit, c.a.part, c.a.terminal));
  const lowAt = (c: Core) => isLow(sides, netAt(circuit, c.a.part, c.a.terminal));
  const lowRuns = new Set<string>();
  for (const run of plan.runs)
    if (run.cable?.stock !== undefined && run.cores.some(lowAt)) lowRuns.add(run.cable.stock);
  for (const run of plan.runs) {
    const stock = run.cable?.stock;
    if (stock === undefined || !lowRuns.has(stock) || (run.cable?.insulation ?? 0) >= 300) continue;
    const core = run.cores.find(mainsAt);
    if (!core) continue;
    found.push(
      finding(plan, {
        id: 'mains-through-gate',
        severity: 'danger',
        question: 1,
        parts: [core.a.part, core.b.part],
        terminals: [core.a.written, core.b.written],
        at: core.at,
        message: `${theCore(core)} of the loop cable "${stock}" carries mains from ${core.a.written} to ${core.b.written}`,
        why: `"${stock}" is the cable of the low-voltage loop${run.cable?.insulation === undefined ? '' : `, insulated for ${run.cable.insulation} V`}.`,
        fix: 'Use cord or cable made for mains there.',
        basis: 'NEC 725.136; IEC 60364-5-52 clause 528.1 (from memory)',
      }),
    );
  }
  return found;
}
