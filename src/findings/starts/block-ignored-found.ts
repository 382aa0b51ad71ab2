/** A cut-out, stop or selector that ought to keep the load off and does not. */

import { sayMoved } from '../../circuit/input-words.ts';
import type { Fn } from '../../logic/bdd.ts';
import type { Wanted } from '../../logic/intent.ts';
import { movedIn, type Verified } from '../../logic/verify.ts';
import { fedBy } from '../../study/closed-path.ts';
import type { Study } from '../../study/study.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { wrongTabOfOther } from './wrong-tab.ts';

export function blockIgnored(study: Study, v: Verified, w: Wanted, states: Fn): Finding[] {
  const { bdd } = v.model;
  const found: Finding[] = [];
  const tab = wrongTabOfOther(study);
  for (const { ref, blocks } of w.blockers) {
    const others = bdd.any(w.blockers.filter((b) => b.ref !== ref).map((b) => b.blocks));
    const moved = movedIn(v.circuit, bdd, bdd.diff(bdd.and(states, blocks), others)) ?? undefined;
    if (!moved) continue;
    found.push(
      finding(study.plan, {
        id: 'block-ignored',
        severity: 'danger',
        question: 3,
        parts: [ref.part, w.target],
        message: `${w.target} runs although ${ref.part}${ref.position ? ` at ${ref.position}` : ''} ought to stop it`,
        why: `It runs with ${sayMoved(v.circuit, moved)}${moved.length === 0 ? ` (${ref.part} is off)` : ''}.${fedBy(study, v, w.target, moved)}`,
        terminals: tab?.part === ref.part ? [`${tab.part}.${tab.from}`, `${tab.part}.${tab.to}`] : [],
        fix:
          tab?.part === ref.part
            ? `Move the core from ${tab.part}.${tab.from} to ${tab.part}.${tab.to}; that one change was proved to mend it.`
            : `Wire the break contact of ${ref.part} in line with the coil, ahead of every gate and override.`,
        basis: 'NEC 430.74; IEC 60204-1 clause 9.2 (from memory); common practice',
      }),
    );
  }
  if (found.length === 0) {
    const moved = movedIn(v.circuit, bdd, states);
    const ref = w.blockers[0]?.ref;
    if (moved && ref)
      found.push(
        finding(study.plan, {
          id: 'block-ignored',
          severity: 'danger',
          question: 3,
          parts: [ref.part, w.target],
          message: `${w.target} runs although it is blocked`,
          why: `It runs with ${sayMoved(v.circuit, moved)}.`,
          fix: 'Wire the blocking contacts in line with the coil, ahead of every gate and override.',
          basis: 'NEC 430.74; IEC 60204-1 clause 9.2 (from memory); common practice',
        }),
      );
  }
  return found;
}

/** A block that is ignored at once need not be told again for the states reached later. */
export function oncePerBlock(found: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return found.filter((f) => {
    if (f.id !== 'block-ignored') return true;
    const key = f.parts.join();
    return seen.has(key) ? false : seen.add(key);
  });
}
