import type { Source } from '../../circuit/circuit.ts';
import type { FusePart } from '../../plan/part-types.ts';
import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { ampsFigure } from './amps-figure.ts';
import { ampsThrough, busiestFlows } from './busiest-flows.ts';

const entry: FindingEntry = {
  id: 'fuse-too-small',
  title: 'the loop itself blows the fuse',
  severity: 'fault',
  question: 5,
  base: 'battery',
  meaning:
    'With every coil in that can be in together, more current flows than the fuse is made for. It holds for a while and blows one day with two gates open. Fit a slow fuse above that current, but not above what the wire carries.',
  wrong: '  F1: {kind: fuse, rating: 50 mA}',
  right: '  F1: {kind: fuse, rating: 1 A}',
  basis: 'common practice: wire at least as good as the fuse, fuse above the holding current',
  followsFrom: ['supply-shorted', 'diode-backwards'],
};

export const fuseTooSmall: Check = { entry, find };

/** A fuse that its own loop blows. */
function find(study: Study): Finding[] {
  return busiestFlows(study).flatMap((busiest) =>
    busiest.flows.island.contacts.flatMap((contact) => {
      const fuse = study.plan.parts.get(contact.part);
      if (fuse?.kind !== 'fuse') return [];
      const amps = ampsThrough(busiest, contact);
      return amps > fuse.rating + 1e-9 ? [blows(study, fuse, busiest.source, amps)] : [];
    }),
  );
}

function blows({ plan }: Study, fuse: FusePart, source: Source, amps: number): Finding {
  return found(plan, entry, {
    parts: [fuse.name, source.part],
    at: fuse.where.get('rating') ?? fuse.at,
    message: `fuse ${fuse.name} of ${ampsText(fuse.rating)} has to carry ${ampsText(amps)} and blows`,
    why: 'That is the current with every coil pulled in that can be in together.',
    fix: `${fuse.name} is ${ampsText(amps - fuse.rating)} short.`,
    figures: [ampsFigure('current', amps), { name: 'fuse', value: fuse.rating, unit: 'A' }],
    basis: entry.basis,
    twin: { alike: `${fuse.rating}`, badness: amps },
  });
}
