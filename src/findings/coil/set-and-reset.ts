import { sayMoved } from '../../circuit/input-words.ts';
import { FALSE } from '../../logic/bdd.ts';
import { everIn } from '../../logic/entry-states.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { COMMON_PRACTICE, found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'set-and-reset',
  title: 'both coils of a set-reset relay are fed at once',
  severity: 'fault',
  question: 4,
  ofWiring: true,
  base: 'set-reset',
  meaning:
    'One coil puts the relay in and the other lets it go. With both fed nobody can say where its contacts go, and it may hum or change over at random. Lead the two so that no position of gates and switches feeds both: over the break and the make tab of the same switch.',
  wrong: extract(
    '  - {cable: bell, length: 3 m, cores: {red: [planer.NC, saw.COM], white: [planer.NO, saw.NO]}}',
    '  - {link: [planer.COM, planer.NC]}',
  ),
  right: '  - {cable: bell, length: 3 m, cores: {red: [planer.NC, saw.COM], white: [planer.NO, saw.NO]}}',
  basis: COMMON_PRACTICE,
  followsFrom: ['mains-meets-low-voltage', 'supply-shorted'],
  goneByOneMove: true,
};

export const setAndReset: Check = { entry, find };

function find(study: Study): Finding[] {
  const { verified: v, circuit, plan } = study;
  if (!v) return [];
  const { bdd, pull } = v.model;
  return circuit.relays.flatMap(({ index, part: name, latch }) => {
    if (latch?.by !== 'reset') return [];
    const both = bdd.and(pull[index]!, pull[latch.relay]!);
    const moved = both === FALSE ? undefined : everIn(v, both);
    if (moved === undefined) return [];
    return [
      found(plan, entry, {
        parts: [name, ...moved.map((i) => circuit.inputs[i]!.part)],
        terminals: [`${name}.A1`, `${name}.B1`],
        message: `both coils of ${name} are fed with ${sayMoved(circuit, moved)}`,
        why: 'What the contacts do then is not assured; here they are taken to stay as they were.',
        fix: `Lead the way to B1 B2 of ${name} over contacts that are open whenever A1 A2 are fed.`,
        basis: entry.basis,
      }),
    ];
  });
}
