import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedByBreak } from './started-by-break.ts';

const entry: FindingEntry = {
  id: 'break-starts-load',
  title: 'a broken wire in the loop starts the load',
  severity: 'caution',
  question: 3,
  base: 'one-gate',
  meaning:
    'The relay is held in while all gates are shut and lets go when one opens. A broken wire, a loose joint or a dead supply does the same, and the load starts with nobody near it. Keep it only where running extraction is the wanted answer to a fault.',
  wrong: extract(
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NC, X1.L]}}',
    '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NC]}}',
  ),
  right: extract(
    '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
    '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
  ),
  basis: 'common practice',
  followsFrom: [],
};

export const breakStartsLoad: Check = { entry, find };

function find(study: Study): Finding[] {
  return startedByBreak(study).map(({ load, relay }) =>
    found(study.plan, entry, {
      parts: [load, relay],
      message: `a broken wire in the loop of ${relay} starts ${load}`,
      why: `${relay} is held in while all gates are shut; ${load} runs as soon as it lets go, be it by a gate or by a break.`,
      fix: `Keep it only if running extraction is the wanted answer to a fault; else let the gates make the coil circuit of a relay that is out at rest.`,
      basis: entry.basis,
      twin: { alike: relay },
    }),
  );
}
