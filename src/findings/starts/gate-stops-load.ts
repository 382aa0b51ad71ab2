import { sayMoved } from '../../circuit/input-words.ts';
import type { Study } from '../../study/study.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { startedThrough } from './departure-words.ts';
import { departuresOf } from './departures/departures.ts';

const entry: FindingEntry = {
  id: 'gate-stops-load',
  title: 'opening one more gate stops the load',
  severity: 'fault',
  question: 2,
  base: 'battery',
  meaning:
    'The load runs with one gate open and stops when a second is opened as well. That is how two stair switches work one lamp, and it is wrong here. Use COM and NO of every switch and leave NC empty.',
  wrong: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, lathe.COM]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [bandsaw.NO, lathe.NC], black: [bandsaw.NC, lathe.NO]}}',
  ),
  right: extract(
    '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, bandsaw.NO]}}',
    '  - {cable: twin, length: 9 m, cores: {red: [barA, lathe.COM], black: [barB, lathe.NO]}}',
  ),
  basis: 'common practice',
  followsFrom: [
    'toggle-needs-button',
    'supply-shorted',
    'mains-shorted',
    'polarity-reversed',
    'diode-backwards',
    'runs-with-all-shut',
  ],
  goneByOneMove: true,
};

export const gateStopsLoad: Check = { entry, find };

function find(study: Study): Finding[] {
  return departuresOf(study, 'stopped-by-entry').map(({ wanted, moved, who }) =>
    found(study.plan, entry, {
      parts: [who, wanted.target],
      message: `opening one more gate stops ${wanted.target}: ${who}`,
      why: `With ${sayMoved(study.circuit, moved)} it ought to run and does not, though it runs without ${who}.${startedThrough(wanted)}`,
      fix: `Look at the wiring of ${who}: moved, its switch breaks the loop or joins the supply's poles.`,
      basis: entry.basis,
      twin: { alike: wanted.target },
    }),
  );
}
