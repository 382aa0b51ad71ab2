import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { type MainsFuse, mainsFuses } from './mains-fuses.ts';
import { type LoneBreak, loneBreaks } from './neutral-breaks.ts';

const entry: FindingEntry = {
  id: 'fuse-in-neutral',
  title: 'a fuse or a contact opens the neutral alone',
  severity: 'danger',
  question: 7,
  base: 'battery',
  meaning:
    'When it opens, the machine stands still and its windings stay joined to the line. Whoever takes it for dead touches mains, and a fault to earth goes past the fuse. A fuse belongs into the line; a contact may open the neutral only together with every line conductor. In the neutral of a coil it is a warning: one fault to earth beyond it starts the motor.',
  wrong: extract(
    '  FN: {kind: fuse, rating: 16 A}',
    '  B1: {kind: box, holds: [K1, FN, barA, barB, minus, earth], metal: false, divider: true}',
    '',
    'runs:',
    '  - {link: [K1.24, FN.1]}',
  ),
  right: extract(
    '  B1: {kind: box, holds: [K1, barA, barB, minus, earth], metal: false, divider: true}',
    '',
    'runs:',
  ),
  basis: 'NEC 240.22, 404.2(B), 430.85; IEC 60364-4-43 clause 431.2 (clauses from memory)',
  followsBeside: {},
  followsFrom: ['line-neutral-swapped', 'line-not-switched', 'two-feeds'],
};

export const fuseInNeutral: Check = { entry, find };

function find(study: Study): Finding[] {
  return [
    ...mainsFuses(study)
      .filter((f) => f.lies === 'neutral')
      .map((f) => fused(study, f)),
    ...loneBreaks(study).map((b) => broken(study, b)),
  ];
}

function fused({ plan }: Study, { fuse, contact, from }: MainsFuse): Finding {
  return found(plan, entry, {
    parts: [fuse.name, from.plug.name],
    terminals: contact.terminals.map((t) => `${fuse.name}.${t}`),
    at: fuse.at,
    message: `fuse ${fuse.name} lies in the neutral of ${from.plug.name}: when it opens, all behind it stays live`,
    why: 'The load stops, but its other end is still joined to the line; a fault to earth does not pass this fuse.',
    fix: 'The fuse is needed in the line conductor; the neutral goes through without one.',
    basis: entry.basis,
    twin: { alike: 'fuse' },
  });
}

function broken({ plan }: Study, { part, terminals, from, loads, coils }: LoneBreak): Finding {
  const told = {
    parts: [part, ...loads, ...coils, from.plug.name],
    terminals: terminals.map((t) => `${part}.${t}`),
    fix: 'The contact is needed in the line conductor, or a second pole of it there.',
    twin: { alike: loads.length > 0 ? 'contact' : 'coil' },
  };
  if (loads.length > 0)
    return found(plan, entry, {
      ...told,
      message: `${part} opens the neutral of ${listOf(loads)} and no line conductor with it`,
      why: 'With it open the load stops, but its other end is still joined to the line.',
      basis: entry.basis,
    });
  return found(plan, entry, {
    ...told,
    severity: 'warning',
    message: `${part} opens the neutral of the coil of ${listOf(coils)} and no line conductor with it`,
    why: `Where the wire between the two touches anything earthed, ${listOf(coils)} pulls in with every gate shut.`,
    basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
  });
}
