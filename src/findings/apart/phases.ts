/** Three-phase loads: phases that change places, and phases that do not arrive. */

import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Verified } from '../../logic/verify.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import { COMMON_PRACTICE, finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

export function phaseOrder(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  const found: Finding[] = [];
  for (const c of circuit.consumers) {
    for (const source of circuit.sources.filter((s) => s.mains && s.rails.length >= 3)) {
      const reach = v.model.railReach[source.index]!;
      const order = [...c.nets.values()].map((net) => [0, 1, 2].find((i) => reach[i]!.has(net)));
      if (order.some((o) => o === undefined) || new Set(order).size !== 3) continue;
      const [first, second] = order;
      // All three passed on by a place turn the same way round.
      if (second === (first! + 1) % 3) continue;
      if (isPlugIn(study, c.part)) continue;
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

export function phaseMissing(study: Study, v: Verified): Finding[] {
  const { plan, circuit } = study;
  return circuit.consumers.flatMap((c) => {
    const partly = v.model.partlyFed.get(c.part) ?? FALSE;
    const moved = partly === FALSE || isPlugIn(study, c.part) ? undefined : everIn(v, partly);
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
