/** Earths in the loop that one more fault turns into a start. */

import type { Relay, Source } from '../../circuit/circuit.ts';
import { FALSE, type Fn } from '../../logic/bdd.ts';
import type { Reach } from '../../logic/conduction.ts';
import { stateOf, type Verified } from '../../logic/verify.ts';
import { partOfKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { finding } from '../finding.ts';
import type { Finding } from '../report-model.ts';

/** A start by one touch on metal while every gate is shut. */
interface Touch {
  readonly relay: Relay;
  readonly source: Source;
  /** the earthed net */
  readonly earth: number;
  /** pin of the source whose touch starts the relay; undefined where it is the far end of the coil that must not touch */
  readonly pole: string | undefined;
}

/**
 * Some conductor of the loop is earthed, though no pole of a supply: then one touch of a pole on metal is a way for
 * current, and may feed a coil with every gate shut.
 */
export function oneTouch(study: Study, v: Verified): Finding[] {
  const { circuit, sides } = study;
  const low = circuit.sources.filter((s) => !s.mains && !s.rails.some((r) => sides.earth.has(r.net)));
  const touches = new Map<string, Touch>();
  for (const earth of sides.earth)
    for (const source of low)
      for (const touched of [0, 1] as const) {
        const touch = startAt(v, earth, source, touched);
        if (touch && !touches.has(touch.relay.part)) touches.set(touch.relay.part, touch);
      }
  return [...touches.values()].map((touch) => startsByTouch(study, touch));
}

/** The first relay that pulls in with every gate shut when one pole of a source touches metal. */
function startAt(v: Verified, earth: number, source: Source, touched: 0 | 1): Touch | undefined {
  const { bdd, conduction } = v.model;
  const rest = stateOf(v.circuit, bdd, []);
  const reach = (net: number, from: number): Reach =>
    source.kind === 'dc' ? conduction.throughDiodes(net, from === 0).at(-1)! : conduction.joined(net);
  const other = 1 - touched;
  const out = reach(earth, touched);
  const back = reach(source.rails[other]!.net, other);
  // A contact may earth a pole itself; then it is the end of the coil that must not touch metal.
  const earthed = reach(source.rails[touched]!.net, touched).get(earth) ?? FALSE;
  const starts = (r: Relay, fedFrom: (p: number, q: number) => Fn) =>
    r.senses.some((x) => {
      if (x.by !== 'volts' || x.what === 'input') return false;
      const fed = bdd.or(fedFrom(x.a, x.b), fedFrom(x.b, x.a));
      return bdd.and(v.settler.at(fed, v.restMode), rest) !== FALSE;
    });
  const byPole = (p: number, q: number) => bdd.and(out.get(p) ?? FALSE, back.get(q) ?? FALSE);
  const byCoil = (_: number, q: number) => bdd.and(earthed, back.get(q) ?? FALSE);
  const relay = v.circuit.relays.find((r) => starts(r, byPole) || starts(r, byCoil));
  if (!relay) return undefined;
  return { relay, source, earth, pole: starts(relay, byPole) ? source.rails[touched]!.terminal : undefined };
}

function startsByTouch({ plan, circuit }: Study, { relay, source, earth, pole }: Touch): Finding {
  const landed = circuit.terminals[earth]!.filter((t) => !t.endsWith('.PE'));
  const touched = pole === undefined ? `the line to the coil of ${relay.part}` : `${source.part}.${pole}`;
  return finding(plan, {
    id: 'low-voltage-earthed',
    severity: 'warning',
    question: 1,
    parts: [relay.part, ...landed.map((t) => partOfKey(t))],
    terminals: landed,
    message: `${listOf(landed, 3) || 'the loop'} ${landed.length > 1 ? 'are' : 'is'} earthed: one touch of ${touched} on metal starts ${relay.part} with every gate shut`,
    why:
      pole === undefined
        ? `A contact earths a pole of ${source.part} while every gate is shut; it is not the pole that the coil hangs on.`
        : `No pole of ${source.part} is earthed, so the first fault shows nothing and the second feeds the coil.`,
    fix: 'Take that earth off; if the loop is to be earthed, earth one pole of the supply and join the coil straight to it.',
    basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
  });
}
