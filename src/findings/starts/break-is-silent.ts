import { isLanded } from '../../circuit/terminals.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedByBreak } from './started-by-break.ts';
import { worksAsMeant } from './works-as-meant.ts';

const entry: FindingEntry = {
  id: 'break-is-silent',
  title: 'a broken core looks like a gate that is never opened',
  severity: 'notice',
  question: 2,
  base: 'one-gate',
  meaning:
    'The switches make the circuit, so a break anywhere in the loop is the same as a shut gate and nothing reports it. It shows when somebody saws without extraction. Open every gate in turn once a month and listen.',
  wrong: extract(
    '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
    '  - {cable: bell, length: 4 m, cores: {red: [bandsaw.COM, planer.COM], white: [bandsaw.NO, planer.NO]}}',
    '',
    'intent:',
    '  collector: {runs-on: [bandsaw, planer]}',
  ),
  right: extract(
    '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
    '',
    'intent:',
    '  collector: {runs-on: [bandsaw]}',
  ),
  basis: 'common practice',
  followsFrom: [],
};

export const breakIsSilent: Check = { entry, find };

/** Make contacts side by side: a broken core only looks like a gate that is never opened. */
function find(study: Study): Finding[] {
  const v = worksAsMeant(study);
  if (!v || startedByBreak(study).length > 0) return [];
  const gates = study.circuit.inputs.filter(
    (i) => i.kind === 'gate' && isLanded(study.circuit, i.part, 'COM'),
  );
  if (gates.length < 2) return [];
  return [
    found(study.plan, entry, {
      parts: [v.intents.wanted[0]!.target],
      message: 'a broken core looks like a shut gate',
      why: 'The switches make the circuit; a break looks like a shut gate, and nothing reports it.',
      fix: 'Open every gate in turn once a month and listen for the collector.',
      basis: entry.basis,
    }),
  ];
}
