/** Earths in the loop that one more fault turns into a start. */

import type { Relay } from '../../circuit/circuit.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Reach } from '../../logic/conduction.ts';
import { stateOf, type Verified } from '../../logic/verify.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/**
 * Some conductor of the loop is earthed, though no pole of a supply: then one touch of a pole on metal is a way for
 * current, and may feed a coil with every gate shut.
 */
export function oneTouch(study: Study, v: Verified): Finding[] {
  const { circuit, plan, sides } = study;
  const { bdd, conduction } = v.model;
  const rest = stateOf(circuit, bdd, []);
  const found: Finding[] = [];
  const low = circuit.sources.filter((s) => !s.mains && !s.rails.some((r) => sides.earth.has(r.net)));
  for (const earth of sides.earth)
    for (const s of low)
      for (const [touch, other] of [
        [0, 1],
        [1, 0],
      ] as const) {
        const reach = (net: number, from: number): Reach =>
          s.kind === 'dc' ? conduction.throughDiodes(net, from === 0).at(-1)! : conduction.joined(net);
        const out = reach(earth, touch);
        const back = reach(s.rails[other]!.net, other);
        // A contact may earth a pole itself; then it is the end of the coil that must not touch metal.
        const earthed = reach(s.rails[touch]!.net, touch).get(earth) ?? FALSE;
        const starts = (r: Relay, fedFrom: (p: number, q: number) => number) =>
          r.senses.some((x) => {
            if (x.by !== 'volts' || x.what === 'input') return false;
            const fed = bdd.or(fedFrom(x.a, x.b), fedFrom(x.b, x.a));
            return bdd.and(v.settler.at(fed, v.restMode), rest) !== FALSE;
          });
        const byPole = (p: number, q: number) => bdd.and(out.get(p) ?? FALSE, back.get(q) ?? FALSE);
        const byCoil = (_: number, q: number) => bdd.and(earthed, back.get(q) ?? FALSE);
        const relay = circuit.relays.find((r) => starts(r, byPole) || starts(r, byCoil));
        if (!relay || found.some((f) => f.parts[0] === relay.part)) continue;
        const landed = circuit.terminals[earth]!.filter((t) => !t.endsWith('.PE'));
        const pole = starts(relay, byPole)
          ? `${s.part}.${s.rails[touch]!.terminal}`
          : `the line to the coil of ${relay.part}`;
        found.push(
          finding(plan, {
            id: 'low-voltage-earthed',
            severity: 'warning',
            question: 1,
            parts: [relay.part, ...landed.map((t) => partOfKey(t))],
            terminals: landed,
            message: `${listOf(landed, 3) || 'the loop'} ${landed.length > 1 ? 'are' : 'is'} earthed: one touch of ${pole} on metal starts ${relay.part} with every gate shut`,
            why: starts(relay, byPole)
              ? `No pole of ${s.part} is earthed, so the first fault shows nothing and the second feeds the coil.`
              : `A contact earths a pole of ${s.part} while every gate is shut; it is not the pole that the coil hangs on.`,
            fix: 'Take that earth off; if the loop is to be earthed, earth one pole of the supply and join the coil straight to it.',
            basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
          }),
        );
      }
  return found;
}
