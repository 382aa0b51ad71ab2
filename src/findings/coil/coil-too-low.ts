import type { CoilRow } from '../../study/coil-rows.ts';
import type { Study } from '../../study/study.ts';
import { rounded } from '../../text/numbers.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { isShort, lowCoils } from './low-volts.ts';
import { lowVolts, needsMoreWarm, whyLow } from './low-volts-words.ts';

const entry: FindingEntry = {
  id: 'coil-too-low',
  title: 'too few volts for the coil to pull in',
  severity: 'fault',
  question: 4,
  base: 'battery',
  meaning:
    'The least the coil can get is below what it needs to pull in: supply low, and volts lost in the wire both ways and in the contacts. A DC coil that has been on all day is warm, and needs about a fifth more than is printed on it. An AC coil counts with its armature open: it then draws several times its holding current, and a small transformer sags just then. So the relay pulls in from the near gate or in the morning, and not from the far one or in July.',
  wrong: extract('      rated: 24 V DC', '      resistance: 640 ohm'),
  right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
  basis:
    'pull-in as printed, or the usual must-operate figure; copper by (234.5 + T)/254.5; wire by ASTM B258 or IEC 60228',
  followsFrom: ['coil-in-series', 'supply-shorted', 'coil-shorted', 'supplies-joined'],
};

export const coilTooLow: Check = { entry, find };

function find(study: Study): Finding[] {
  return lowCoils(study)
    .filter((low) => low.fails)
    .map((low) => {
      const { state, row } = low;
      const short = state.rows.filter((r) => isShort(state, r) && r.gate !== undefined);
      const everywhere = short.length === state.rows.length;
      const from = row.gate === undefined || (everywhere && state.rows.length > 1) ? '' : ` from ${row.gate}`;
      const warm = needsMoreWarm(state) ? ' warm' : '';
      return found(study.plan, entry, {
        ...lowVolts(study, low),
        message: `${state.fed.part.name} gets ${rounded(row.least)} V${from} at worst and needs ${rounded(state.pullIn)} V to pull in${warm}`,
        why: `${whyLow(study, low)}${otherWays(short, row, everywhere)}`,
      });
    });
}

/** The other ways of starting that are short of volts. */
function otherWays(short: readonly CoilRow[], row: CoilRow, everywhere: boolean): string {
  const others = short.map((r) => r.gate!).filter((gate) => gate !== row.gate);
  if (others.length === 0) return '';
  return everywhere ? ' Every other way of starting it is short too.' : ` Short too: ${listOf(others)}.`;
}
