import type { Consumer, Source } from '../../circuit/circuit.ts';
import { FALSE } from '../../logic/bdd.ts';
import type { Verified } from '../../logic/verify.ts';
import { isPlugIn } from '../../study/plug-in.ts';
import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { mainsSources, sideReaches } from './rail-reach.ts';

const entry: FindingEntry = {
  id: 'line-neutral-swapped',
  title: 'line and neutral change places',
  severity: 'danger',
  question: 1,
  base: 'battery',
  meaning:
    'The outlet has the line where the neutral belongs. The motor runs just as well, but the switch and fuse in whatever is plugged in then sit in the neutral, and the shell of a lamp holder is live. A plug-in socket tester shows it as reversed.',
  wrong: '{brown: [K1.14, X1.N], blue: [K1.24, X1.L], green-yellow: [earth, X1.PE]}',
  right: '{brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}',
  basis: 'NEC 200.11; IEC 60364-6 polarity test (from memory)',
  followsFrom: [],
};

export const lineNeutralSwapped: Check = { entry, find };

function find(study: Study): Finding[] {
  const { circuit, verified: v } = study;
  if (!v) return [];
  return circuit.consumers
    .filter((c) => c.kind === 'outlet' || !isPlugIn(study, c.part))
    .flatMap((c) =>
      mainsSources(circuit)
        .filter((source) => isSwapped(v, source, c))
        .map((source) => swapped(study, source.part, c.part)),
    );
}

/** The line arrives at N or the neutral at L, and neither where it belongs. */
function isSwapped(v: Verified, source: Source, { nets }: Consumer): boolean {
  const [l, n] = [nets.get('L'), nets.get('N')];
  if (l === undefined || n === undefined) return false;
  const reaches = (side: 'line' | 'neutral', net: number) => sideReaches(v, source, side, net) !== FALSE;
  if (reaches('line', l) || reaches('neutral', n)) return false;
  return reaches('neutral', l) || reaches('line', n);
}

function swapped({ plan }: Study, source: string, part: string): Finding {
  return found(plan, entry, {
    parts: [part, source],
    terminals: [`${part}.L`, `${part}.N`],
    message: `line and neutral change places between ${source} and ${part}`,
    why: `${part}.L comes from the neutral of ${source}, or ${part}.N from its line.`,
    fix: `Exchange the two cores at ${part}, so that L goes to L and N to N.`,
    basis: entry.basis,
    twin: { name: `${source} and ${part}`, alike: '' },
  });
}
