import type { Relay, Source } from '../../circuit/circuit.ts';
import { FALSE, TRUE } from '../../logic/bdd.ts';
import type { Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { oneTouch } from './one-touch.ts';

const entry: FindingEntry = {
  id: 'low-voltage-earthed',
  title: 'one side of the loop is earthed',
  severity: 'notice',
  question: 1,
  base: 'battery',
  meaning:
    'One pole of the supply is joined to the protective earth. That is common on machines and only noted, as long as the coil sits straight on the earthed pole. With the gate switches between the coil and the earthed pole it is a warning: the bare tab of a switch touching a metal duct then starts the motor.',
  wrong: extract('  - {link: [minus, earth]}', '  - {link: [minus, K1.A2]}'),
  right: '  - {link: [minus, K1.A2]}',
  basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
  followsFrom: ['mains-meets-low-voltage'],
};

export const lowVoltageEarthed: Check = { entry, find };

/** An earthed pole of a supply, and an earth elsewhere in the loop that one more fault turns into a start. */
function find(study: Study): Finding[] {
  const { circuit, sides, verified: v } = study;
  const poles = circuit.sources.flatMap((s) => {
    const pole = s.mains ? -1 : s.rails.findIndex((r) => sides.earth.has(r.net));
    return pole < 0 ? [] : [earthed(study, s, pole)];
  });
  return v ? [...poles, ...oneTouch(study, v)] : poles;
}

/** Relays that some contact parts from the earthed pole. */
function switchedFromEarth({ circuit, sides }: Study, v: Verified, source: Source, pole: number): Relay[] {
  const onPole = v.model.railReach[source.index]![pole]!;
  return circuit.relays.filter((r) =>
    r.senses.some((x) => {
      if (x.by !== 'volts') return false;
      const reached = [x.a, x.b].map((n) => onPole.get(n) ?? FALSE);
      return (
        [x.a, x.b].every((n) => sides.low.has(n)) &&
        reached.every((f) => f !== TRUE) &&
        reached.some((f) => f !== FALSE)
      );
    }),
  );
}

function earthed(study: Study, source: Source, pole: number): Finding {
  const { plan, verified: v } = study;
  const between = v ? switchedFromEarth(study, v, source, pole) : [];
  const bad = between.length > 0;
  const name = `${source.part}.${source.rails[pole]!.terminal}`;
  return found(plan, entry, {
    severity: bad ? 'warning' : 'notice',
    parts: [source.part, ...between.map((r) => r.part)],
    terminals: [name],
    message: bad
      ? `${name} is earthed and the gate switches sit between the coil and the earthed side`
      : `${name} is earthed`,
    why: bad
      ? 'One touch of the switched wire on metal starts the motor.'
      : 'Common on machines; then the switches belong on the other side, as here.',
    fix: bad
      ? 'Join the coil straight to the earthed side and put the switches in the other conductor.'
      : 'Nothing, if it is meant. An earthed loop is PELV, not SELV.',
    basis: entry.basis,
    twin: { name },
  });
}
