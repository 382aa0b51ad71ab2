/** What plugs, motors and fuses leave out. */
import type { Practice } from '../../plan/device-figures.ts';
import { isFixedFeed } from '../../plan/fixed-feed.ts';
import type { FusePart, MotorPart, PlugPart } from '../../plan/part-types.ts';
import { type Default, defaults } from '../defaults.ts';
import { horsepowerOf, phasesOf, printsInput } from '../horsepower.ts';
import { tableFullLoad } from '../motor.ts';
import { receptacleByName } from '../pattern-names.ts';
import { ends, putting, type Unsaid } from './ends.ts';

type Ranged = Default & { readonly low: number; readonly high: number };

const MAINS = [5, 6, 7] as const;

export function unsaidOfMotor(part: MotorPart, practice: Practice): Unsaid[] {
  const range = part.amps === undefined ? ampsRange(part, practice) : undefined;
  if (range === undefined) return [];
  return [
    {
      ...{ parts: [part.name], bears: [4, ...MAINS], field: 'amps', row: range.row, unit: 'A' },
      at: ends(range.high, range.low, range.low, range.low),
      put: putting<MotorPart>([part.name], (p, value) => ({ ...p, amps: Number(value) })),
    },
  ];
}

/** A between which the nameplate of a motor of that power lies; undefined where its power says nothing or everything. */
function ampsRange(
  part: MotorPart,
  practice: Practice,
):
  | { readonly low: number; readonly high: number; readonly row: Pick<Default, 'mark' | 'basis'> }
  | undefined {
  if (part.power === undefined || part.volts.kind === 'dc' || printsInput(part)) return undefined;
  const phases = phasesOf(part);
  const horsepower = horsepowerOf(part);
  const table =
    practice === 'nec' && horsepower !== undefined
      ? tableFullLoad(horsepower, part.volts.volts, phases)
      : undefined;
  if (table !== undefined) {
    const row = defaults.flcOfTable;
    return { low: row.low * table.amps, high: row.high * table.amps, row };
  }
  const three = phases === 3;
  const efficiency = defaults[three ? 'efficiencyThreePhase' : 'efficiencySinglePhase'];
  const factor = defaults[three ? 'powerFactorThreePhase' : 'powerFactorSinglePhase'];
  const least = part.power.watts / (part.volts.volts * (three ? Math.sqrt(3) : 1));
  const at = (end: 'low' | 'high') =>
    least / ((part.efficiency ?? efficiency[end]) * (part.powerFactor ?? factor[end]));
  return { low: at('high'), high: at('low'), row: efficiency };
}

export function unsaidOfPlug(part: PlugPart, practice: Practice): Unsaid[] {
  const found: Unsaid[] = [];
  const put = (change: (value: number) => Partial<PlugPart>) =>
    putting<PlugPart>([part.name], (p, value) => ({ ...p, ...change(Number(value)) }));
  const about = { parts: [part.name], bears: MAINS, unit: 'A' as const };
  const breaker = part.breaker === undefined ? breakerRange(part) : undefined;
  if (breaker !== undefined)
    found.push({
      ...{ ...about, field: 'breaker', row: breaker },
      at: ends(breaker.low, breaker.high, breaker.high, breaker.low),
      put: put((amps) => ({ breaker: amps })),
    });
  if (part.fuse === undefined && patternKey(part).startsWith('BS1363')) {
    const row = defaults.plugFuseBs1363;
    found.push({
      ...{ ...about, field: 'fuse', row },
      at: ends(row.low, row.high, row.high, row.low),
      put: put((amps) => ({ fuse: amps })),
    });
  }
  if (part.terminalRating === undefined && practice === 'nec') {
    const row = defaults.terminalNec;
    found.push({
      ...{ ...about, field: 'terminal-rating', row, unit: row.unit },
      at: { ample: row.high, mild: row.high },
      put: put((celsius) => ({ terminalRating: celsius })),
    });
  }
  return found;
}

function patternKey(part: PlugPart): string {
  const row = part.pattern === undefined ? undefined : receptacleByName(part.pattern);
  return (row?.names[0] ?? '').toUpperCase().replace(/[^A-Z0-9]/g, '');
}

/** The breaker ahead of a pattern; undefined where the pattern bounds none. */
function breakerRange(part: PlugPart): Ranged | undefined {
  const row = part.pattern === undefined || isFixedFeed(part) ? undefined : receptacleByName(part.pattern);
  if (row === undefined) return undefined;
  const key = patternKey(part);
  if (key.startsWith('NEMA')) {
    if (row.amps === 15) return defaults.breakerNema15;
    return row.amps === 20 ? defaults.breakerNema20 : row.amps === 30 ? defaults.breakerNema30 : undefined;
  }
  if (key.startsWith('CEE')) return defaults.breakerCee7;
  if (key.startsWith('BS1363')) return defaults.breakerBs1363;
  const shared = (key.startsWith('IEC60309') && row.amps === 16) || key.startsWith('ASNZS3112');
  return shared ? defaults.breaker16Or20 : undefined;
}

/** A fuse without its rating can be any: there is no telling, and it is asked for wherever it bears on something. */
export function unsaidOfFuse(part: FusePart): Unsaid[] {
  if (part.rating !== undefined) return [];
  const row = defaults.fuseAmps;
  return [
    {
      ...{ parts: [part.name], bears: MAINS, field: 'rating', row, unit: row.unit },
      at: ends(row.low, row.high, row.high, row.low),
      put: putting<FusePart>([part.name], (p, value) => ({ ...p, rating: Number(value) })),
    },
  ];
}
