import { extract, type FindingEntry } from '../entry.ts';

export const breakIsSilent: FindingEntry = {
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
