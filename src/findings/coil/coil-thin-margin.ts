import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { lowCoils } from './low-volts.ts';
import { lowVolts, needsMoreWarm, whyLow } from './low-volts-words.ts';

const entry: FindingEntry = {
  id: 'coil-thin-margin',
  title: 'the coil pulls in with little to spare',
  severity: 'caution',
  question: 4,
  base: 'dc-chain',
  meaning:
    'At worst the coil gets what it needs to pull in, and less than a twentieth of its rated volts above that. One tarnished contact, a longer cable or a hotter day uses that up. Thicker wire, another supply or a coil that pulls in lower gives it room; what the check proposes was tried in the plan.',
  wrong: '      pull-in: 80 %',
  right: '      pull-in: 75 %',
  basis: '5 % of rated volts is common practice; pull-in of the warm coil by (234.5 + T)/254.5',
  followsFrom: ['coil-too-low', 'supply-input'],
};

export const coilThinMargin: Check = { entry, find };

function find(study: Study): Finding[] {
  return lowCoils(study)
    .filter((low) => !low.fails)
    .map((low) => {
      const { state, row } = low;
      const from = row.gate === undefined ? '' : ` from ${row.gate}`;
      const warm = needsMoreWarm(state) ? ' warm' : '';
      return found(study.plan, entry, {
        ...lowVolts(study, low),
        message: `${state.fed.part.name} gets ${rounded(row.least)} V${from} at worst, only ${rounded(row.least - state.pullIn, 2)} V above what it needs${warm}`,
        why: whyLow(study, low),
      });
    });
}
