/** What a supply or a battery leaves out. */
import { isControlTransformer } from '../../circuit/thresholds.ts';
import type { Practice } from '../../plan/device-figures.ts';
import type { BatteryPart, SupplyPart } from '../../plan/part-types.ts';
import { class2MostVolts } from '../class2.ts';
import { defaults, defaultTransformerRise } from '../defaults.ts';
import { ends, putting, type Unsaid } from './ends.ts';

const LOOP = [1, 4, 5] as const;
/** A transformer's power says what may stand ahead of it. */
const LOOP_AND_MAINS = [...LOOP, 7] as const;

export function unsaidOfSupply(part: SupplyPart, practice: Practice): Unsaid[] {
  const { name, output } = part;
  const dc = output.kind === 'dc';
  const put = (change: (p: SupplyPart, value: never) => Partial<SupplyPart>) =>
    putting<SupplyPart>([name], (p, value) => ({ ...p, ...change(p, value as never) }));
  const about = { parts: [name], bears: LOOP };
  const found: Unsaid[] = [];
  if (part.limit === undefined) {
    const row = dc ? defaults.limitAdapter : defaults.limitTransformer;
    const amps = (value: number) => (dc ? value : value / output.volts);
    found.push({
      ...{ ...about, field: 'limit', row, unit: row.unit, bears: dc ? LOOP : LOOP_AND_MAINS },
      at: ends(row.low, row.high, row.high, row.low),
      put: put((_p, value: number) => ({
        limit: { amps: amps(value), printed: dc ? 'A' : 'VA', value },
      })),
    });
  }
  const regulation = part.regulation ?? (dc ? undefined : 'transformer');
  if (regulation === undefined && part.noLoad === undefined)
    found.push({
      ...{ ...about, field: 'regulation', unit: 'word' },
      row: { mark: 'source', basis: 'both kinds are sold at every rating' },
      at: ends('regulated', 'unregulated', 'unregulated', 'regulated', 'unregulated'),
      put: put((_p, value: 'regulated' | 'unregulated') => ({ regulation: value })),
    });
  if (regulation !== 'regulated' && part.noLoad === undefined) {
    const row = dc
      ? defaults.unregulatedRise
      : defaultTransformerRise(vaOf(part, practice), isControlTransformer(part));
    const rises = [row.low!, row.high!].map((rise) => output.volts * (1 + rise)) as [number, number];
    // With the mark it gives no more than its table has.
    const table = part.class2 === true ? class2MostVolts(output.kind) : 0;
    const limit = table < output.volts ? Number.POSITIVE_INFINITY : table;
    const [least, most] = rises.map((v) => Math.min(v, limit)) as [number, number];
    // A supply that is taken as regulated has none to state.
    const at =
      regulation === undefined
        ? { sag: most, many: most, ample: most }
        : ends(least, most, most, least, most);
    found.push({
      ...{ ...about, field: 'no-load', row, unit: 'V', at },
      put: put((p, value: number) => (p.regulation === 'regulated' ? {} : { noLoad: value })),
    });
  }
  if (part.tolerance === undefined) {
    const [tight, loose] = [defaults.regulatedTolerance, defaults.looseTolerance];
    const row = regulation === undefined || regulation === 'regulated' ? tight : loose;
    const risen = regulation === 'regulated' ? tight.high : loose.high;
    found.push({
      ...{ ...about, field: 'tolerance', row, unit: 'share' },
      at: ends(row.high, risen, 0, 0, risen),
      put: put((_p, value: number) => ({ tolerance: value })),
    });
  }
  return found;
}

const vaOf = ({ limit, output }: SupplyPart, practice: Practice): number =>
  limit === undefined ? (practice === 'iec' ? 10 : 20) : limit.amps * output.volts;

export function unsaidOfBattery(part: BatteryPart): Unsaid[] {
  if (part.internalResistance !== undefined) return [];
  const row = part.output.volts === 9 ? defaults.nineVoltOhms : defaults.batteryOhms;
  return [
    {
      ...{ parts: [part.name], bears: [4, 5], field: 'internal-resistance', row, unit: row.unit },
      at: ends(row.high, row.low, row.low, row.high),
      put: putting<BatteryPart>([part.name], (p, value) => ({ ...p, internalResistance: Number(value) })),
    },
  ];
}
