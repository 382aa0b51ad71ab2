import { push } from '../../plan/map-entries.ts';
import type { CoilRow } from '../../study/coil-row.ts';
import { lossesOnWay } from '../../study/mains/way-losses.ts';
import type { Study } from '../../study/study.ts';
import { rounded, roundedApart } from '../../text/numbers.ts';
import { runsText } from '../../text/run-names.ts';
import { listOf } from '../../text/word-list.ts';
import { type Check, extract, type FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { isShort, type LowCoil, lowCoils } from './low-volts.ts';
import { gatesByZone, lowVolts, needsMoreWarm, whyLow } from './low-volts-words.ts';

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
  followsFrom: ['supply-input', 'coil-in-series', 'supply-shorted', 'coil-shorted', 'supplies-joined'],
};

export const coilTooLow: Check = { entry, find };

/** One finding a source: what makes one coil short makes its neighbours short as well. */
function find(study: Study): Finding[] {
  const bySource = new Map<string, LowCoil[]>();
  for (const low of lowCoils(study)) if (low.fails) push(bySource, low.state.fed.source.part, low);
  return [...bySource.values()].map((lows) => tooLow(study, lows));
}

function tooLow(study: Study, lows: readonly LowCoil[]): Finding {
  const lack = ({ state, row }: LowCoil) => (state.pullIn - row.least) / state.fed.model.rated;
  const low = lows.reduce((x, y) => (lack(y) > lack(x) ? y : x));
  const { state, row } = low;
  const short = state.rows.filter((r) => isShort(state, r) && r.gate !== undefined);
  const everywhere = short.length === state.rows.length;
  const from = row.gate === undefined || (everywhere && state.rows.length > 1) ? '' : ` from ${row.gate}`;
  const warm = needsMoreWarm(state) ? ' warm' : '';
  const [gets, needs] = roundedApart([row.least, state.pullIn]);
  const others = lows.filter((x) => x !== low).map((x) => x.state.fed.part.name);
  const alike =
    others.length === 0 ? '' : `; ${listOf(others)} ${others.length === 1 ? 'is' : 'are'} short too`;
  const told = lowVolts(study, low);
  return found(study.plan, entry, {
    ...told,
    parts: [state.fed.part.name, ...others, ...told.parts.slice(1)],
    message: `${state.fed.part.name} gets ${gets} V${from} at worst and needs ${needs} V to pull in${warm}${alike}`,
    why: `${whyLow(study, low)}${inCommon(study, lows)}${otherWays(study, short, row, everywhere)}`,
  });
}

/** What the wire takes that all of the coils have before them; nothing where one is short alone. */
function inCommon(study: Study, lows: readonly LowCoil[]): string {
  const own = study.electrics;
  if (!own || lows.length < 2) return '';
  const lost = lows.map(({ state, row }) => lossesOnWay(own, state, row.leastIn));
  const runs = [...lost[0]!.keys()].filter((run) => lost.every((l) => l.has(run)));
  const volts = lost.map((l) => runs.reduce((sum, run) => sum + l.get(run)!, 0));
  if (runs.length === 0) return '';
  return ` ${rounded(Math.max(...volts))} V stay in the trunk that all of them have (${runsText(runs.map((r) => study.plan.runs[r]!))}).`;
}

/** The other ways of starting that are short of volts. */
function otherWays(study: Study, short: readonly CoilRow[], row: CoilRow, everywhere: boolean): string {
  const others = short.map((r) => r.gate!).filter((gate) => gate !== row.gate);
  if (others.length === 0) return '';
  return everywhere
    ? ' Every other way of starting it is short too.'
    : ` Short too: ${listOf(gatesByZone(study, others, row.gate))}.`;
}
