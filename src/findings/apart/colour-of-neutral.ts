import type { Study } from '../../study/study.ts';
import type { Check, FindingEntry } from '../entry.ts';
import type { Finding } from '../report-model.ts';
import { miscoloured, miscolouredCores } from './coloured-cores.ts';

const entry: FindingEntry = {
  id: 'colour-of-neutral',
  title: 'the colour of the neutral on a line, or the neutral in another',
  severity: 'warning',
  question: 1,
  ofWiring: false,
  base: 'battery',
  meaning:
    'White and grey in North America, blue in most other places, are for the neutral. A line in that colour is taken for the neutral by whoever opens the box next. Some practices let a core of a cable be marked at both ends for another use: say that with marked-as in its run.',
  wrong: '{blue: [P1.L, K1.13], brown: [P1.N, K1.23], green-yellow: [P1.PE, earth]}',
  right: '{brown: [P1.L, K1.13], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}',
  basis: 'NEC 200.6, 200.7, 210.5(A); IEC 60445; BS 7671 514.3',
  followsBeside: { but: ['mains-meets-low-voltage', 'mains-through-gate'] },
  followsFrom: [
    'mains-meets-low-voltage',
    'mains-through-gate',
    'line-neutral-swapped',
    'line-not-switched',
    'mains-shorted',
    'two-feeds',
  ],
};

export const colourOfNeutral: Check = { entry, find };

function find(study: Study): Finding[] {
  return miscolouredCores(study)
    .filter(({ fault }) => fault.of === 'neutral')
    .map((core) => miscoloured(study, entry, core, 'warning'));
}
