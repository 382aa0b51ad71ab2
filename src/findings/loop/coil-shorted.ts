import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'coil-shorted',
  title: 'both coil ends are on one conductor',
  severity: 'warning',
  question: 5,
  ofWiring: true,
  base: 'dc-chain',
  meaning:
    'A wire joins the two ends of the coil. The relay never pulls in, and the gate that is opened puts the poles of the supply together. Look for a jumper meant for the neighbouring terminal.',
  wrong: '{link: [K1.A1, K1.A2]}',
  right: '{link: [D1.A, K1.A2]}',
  basis: 'common practice',
  followsFrom: [],
};

export const coilShorted: Check = { entry, find };

function find(study: Study): Finding[] {
  const { plan, circuit } = study;
  return circuit.relays.flatMap(({ part: name, senses }) => {
    const sense = senses.find((s) => s.by === 'volts' && s.what !== 'input');
    if (sense === undefined || sense.a !== sense.b) return [];
    const ends = plan.parts.get(name)!.kind === 'board' ? ['VCC', 'GND'] : ['A1', 'A2'];
    const terminals = ends.map((e) => `${name}.${e}`);
    return [
      found(plan, entry, {
        parts: [name],
        terminals,
        message: `both coil ends of ${name} are on one conductor: it never pulls in`,
        why: `${listOf(terminals)} are joined by wire.`,
        fix: `Lead one end of the coil to the switches and the other to the supply.`,
        basis: entry.basis,
        twin: { alike: ends.join() },
      }),
    ];
  });
}
