import { sayMoved } from '../../circuit/input-words.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { SharedVolts } from '../../logic/model.ts';
import type { Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-in-series',
  title: 'the coil shares the supply with another part in line',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'A lamp or another coil lies in the wire to this coil, and each gets part of the volts. The lamp glows faintly and the relay does not pull in. Put the two side by side.',
  wrong: extract(
    '  - {cable: bell, length: 20 cm, cores: {white: [call, pilot.1]}}',
    '  - {link: [pilot.2, K1.A1]}',
  ),
  right: extract(
    '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    '  - {link: [pilot.1, K1.A1]}',
    '  - {link: [pilot.2, K1.A2]}',
  ),
  basis: 'Ohm’s law over the joined parts, ideal wires',
  followsFrom: [],
  goneByOneMove: true,
};

export const coilInSeries: Check = { entry, find };

/** A coil that shares the supply's volts with another coil, a lamp or an indicator, and so does not pull in. */
function find(study: Study): Finding[] {
  const v = study.verified;
  if (!v) return [];
  const told = new Map<string, Finding>();
  for (const shared of v.model.shared) {
    const name = study.circuit.relays[shared.relay]!.part;
    const inLine = told.has(name) ? undefined : inSeries(study, v, shared);
    if (inLine) told.set(name, inLine);
  }
  return [...told.values()];
}

function inSeries(study: Study, v: Verified, shared: SharedVolts): Finding | undefined {
  const { circuit, plan } = study;
  const relay = circuit.relays[shared.relay]!;
  const sense = relay.senses[shared.sense]!;
  if (sense.by !== 'volts' || sense.what === 'input') return undefined;
  const seen = Math.abs(shared.volts);
  const full = Math.max(...circuit.sources.filter((s) => !s.mains).map((s) => Math.abs(s.rails[0]!.re)), 0);
  if (seen >= sense.pullIn - 1e-9 || seen > 0.93 * full || seen < 0.02 * full) return undefined;
  const moved = everIn(v, shared.states);
  // What leaks through at rest is judged with true volts in coil-holds-in.ts.
  if (!moved || moved.length === 0) return undefined;
  const others = [
    ...circuit.passives
      .filter((p) => p.part !== relay.part && study.sides.low.has(p.a) && p.what !== 'input')
      .map((p) => p.part),
    ...circuit.diodes.filter((d) => d.load).map((d) => d.part),
  ].filter((name) => name !== relay.part);
  return found(plan, entry, {
    parts: [relay.part, ...new Set(others)],
    message: `${relay.part} shares the supply with ${listOf([...new Set(others)], 3) || 'another part'} in line and gets only ${rounded(seen)} V`,
    why: `With ${sayMoved(circuit, moved)} the current to its coil passes through another coil, lamp or indicator.`,
    fix: 'Connect the other part side by side with the coil, not in line with it.',
    figures: [
      { name: 'volts at the coil', value: rounded(seen, 4), unit: 'V' },
      { name: 'pull-in', value: rounded(sense.pullIn, 4), unit: 'V' },
    ],
    basis: 'Ohm’s law over the joined parts, ideal wires',
    twin: {
      alike: [...new Set([relay.part, ...others])].sort().join(),
      badness: sense.pullIn / seen,
      several: (names) => ({
        message: `${listOf(names)} share the supply in line with one another; ${names[0]} gets only ${rounded(seen)} V`,
        fix: 'Connect them side by side, each from the switches to the other pole.',
      }),
    },
  });
}
