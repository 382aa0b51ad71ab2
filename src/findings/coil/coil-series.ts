/** Coils in line with something else. */

import { sayMoved } from '../../circuit/input-words.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** A coil that shares the supply's volts with another coil, a lamp or an indicator, and so does not pull in. */
export function inSeries(study: Study, v: Verified): Finding[] {
  const { circuit, plan } = study;
  const found: Finding[] = [];
  for (const shared of v.model.shared) {
    const relay = circuit.relays[shared.relay]!;
    const sense = relay.senses[shared.sense]!;
    if (sense.by !== 'volts' || sense.what === 'input' || found.some((f) => f.parts[0] === relay.part))
      continue;
    const seen = Math.abs(shared.volts);
    const full = Math.max(...circuit.sources.filter((s) => !s.mains).map((s) => Math.abs(s.rails[0]!.re)), 0);
    if (seen >= sense.pullIn - 1e-9 || seen > 0.93 * full || seen < 0.02 * full) continue;
    const moved = everIn(v, shared.states);
    // What leaks through at rest is judged with true volts in coil-holding.ts.
    if (!moved || moved.length === 0) continue;
    const others = [
      ...circuit.passives
        .filter((p) => p.part !== relay.part && study.sides.low.has(p.a) && p.what !== 'input')
        .map((p) => p.part),
      ...circuit.diodes.filter((d) => d.load).map((d) => d.part),
    ].filter((name) => name !== relay.part);
    found.push(
      finding(plan, {
        id: 'coil-in-series',
        severity: 'fault',
        question: 4,
        parts: [relay.part, ...new Set(others)],
        message: `${relay.part} shares the supply with ${listOf([...new Set(others)], 3) || 'another part'} in line and gets only ${rounded(seen)} V`,
        why: `With ${sayMoved(circuit, moved)} the current to its coil passes through another coil, lamp or indicator.`,
        fix: 'Connect the other part side by side with the coil, not in line with it.',
        figures: [
          { name: 'volts at the coil', value: rounded(seen, 4), unit: 'V' },
          { name: 'pull-in', value: rounded(sense.pullIn, 4), unit: 'V' },
        ],
        basis: 'Ohm’s law over the joined parts, ideal wires',
      }),
    );
  }
  return found;
}
