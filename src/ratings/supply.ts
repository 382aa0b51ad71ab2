/** A supply or battery as an ideal voltage behind a resistance. */

import { isControlTransformer } from '../circuit/thresholds.ts';
import type { Practice } from '../plan/device-figures.ts';
import type { BatteryPart, SupplyPart } from '../plan/part-types.ts';
import {
  because,
  defaults,
  defaultTransformerRise,
  defaultUnregulatedRise,
  mainsVariation,
  percent,
} from './defaults.ts';

export interface Spread {
  readonly min: number;
  readonly nominal: number;
  readonly max: number;
}

export interface SupplyModel {
  /** V behind sourceOhms */
  readonly openCircuit: Spread;
  /** V at the terminals at no load with the mains at its nominal voltage; what limits are judged on */
  readonly noLoad: number;
  /** ohm */
  readonly sourceOhms: number;
  /** A; undefined where nothing is printed (a battery) */
  readonly limitAmps?: number;
  /** sentences for the report */
  readonly defaults: readonly string[];
}

/** A at the rated output: as stated, else what is usual for its kind. */
export function ratedAmps({ limit, output }: SupplyPart): number {
  if (limit !== undefined) return limit.amps;
  return output.kind === 'dc' ? defaults.limitAdapter.value : defaults.limitTransformer.value / output.volts;
}

const around = (nominal: number, low: number, high = low): Spread => ({
  min: nominal * (1 - low),
  nominal,
  max: nominal * (1 + high),
});

/**
 * Regulated: the rated voltage within its tolerance, no resistance. Unregulated and transformers:
 * Voc = Vr·(1 + rise), Rs = Vr·rise/Ir, the rise being no-load against rated load, and the mains may
 * stand high or low on top of the tolerance. `share`: of the volts that its winding is wired for, what it gets.
 */
export function supplyModel(part: SupplyPart | BatteryPart, practice: Practice, share = 1): SupplyModel {
  if (part.kind === 'battery') return batteryModel(part);
  const model = adapterModel(part, practice);
  if (share === 1) return model;
  const { min, nominal, max } = model.openCircuit;
  return {
    ...model,
    openCircuit: { min: min * share, nominal: nominal * share, max: max * share },
    noLoad: model.noLoad * share,
  };
}

function adapterModel(part: SupplyPart, practice: Practice): SupplyModel {
  const used: string[] = [];
  const rated = part.output.volts;
  const limitAmps = ratedAmps(part);
  if (part.limit === undefined) used.push(limitWords(part));
  const regulation = regulationOf(part, used);
  if (regulation === 'regulated') {
    const tolerance = part.tolerance ?? defaults.regulatedTolerance.value;
    if (part.tolerance === undefined)
      used.push(
        `${part.name}: output tolerance taken as ±${percent(tolerance)} (${because(defaults.regulatedTolerance)})`,
      );
    const spread = around(rated, tolerance);
    const max = Math.max(spread.max, part.noLoad ?? 0);
    return { openCircuit: { ...spread, max }, noLoad: max, sourceOhms: 0, limitAmps, defaults: used };
  }
  const rise = riseOf(part, used);
  const mains = mainsVariation(practice);
  used.push(
    `${part.name}: mains taken as -${percent(mains.low.value)} to +${percent(mains.high.value)} (${because(mains.low)})`,
  );
  const noLoad = rated * (1 + rise);
  return {
    openCircuit: around(
      noLoad,
      (part.tolerance ?? 0) + mains.low.value,
      (part.tolerance ?? 0) + mains.high.value,
    ),
    noLoad,
    sourceOhms: limitAmps > 0 ? (rated * rise) / limitAmps : 0,
    limitAmps,
    defaults: used,
  };
}

function limitWords({ name, output }: SupplyPart): string {
  const row = output.kind === 'dc' ? defaults.limitAdapter : defaults.limitTransformer;
  return `${name}: limit taken as ${row.value} ${row.unit} (${because(row)})`;
}

/** Whether it is a transformer, as it says or as alternating current has it where it says nothing. */
export function isTransformer({ regulation, output }: SupplyPart): boolean {
  return (regulation ?? (output.kind === 'ac' ? 'transformer' : 'regulated')) === 'transformer';
}

/** Where the plan does not say, a no-load voltage well above rated tells an unregulated supply. */
function regulationOf(part: SupplyPart, used: string[]): 'regulated' | 'unregulated' | 'transformer' {
  if (part.regulation !== undefined) return part.regulation;
  const kind = part.output.kind;
  const loose = kind === 'dc' ? 'unregulated' : 'transformer';
  const told =
    part.noLoad !== undefined && part.noLoad > part.output.volts * (1 + defaults.regulatedTolerance.high);
  const taken = told || kind === 'ac' ? loose : 'regulated';
  const why = told ? 'its no-load voltage is well above rated' : 'regulation is not stated';
  used.push(`${part.name}: taken as ${taken === 'transformer' ? 'a transformer' : taken} (${why})`);
  return taken;
}

function riseOf(part: SupplyPart, used: string[]): number {
  const rated = part.output.volts;
  if (part.noLoad !== undefined) return Math.max(0, (part.noLoad - rated) / rated);
  const fallback =
    part.output.kind === 'dc'
      ? defaultUnregulatedRise(ratedAmps(part))
      : defaultTransformerRise(rated * ratedAmps(part), isControlTransformer(part));
  used.push(
    `${part.name}: no-load voltage taken as ${percent(fallback.value)} above rated (${because(fallback)})`,
  );
  return fallback.value;
}

function batteryModel(part: BatteryPart): SupplyModel {
  const used: string[] = [];
  const nominal = part.output.volts;
  const min = part.lowest ?? nominal * (1 - defaults.batteryLow.value);
  const max = part.highest ?? nominal * (1 + defaults.batteryHigh.value);
  if (part.lowest === undefined)
    used.push(`${part.name}: lowest voltage taken as ${percent(defaults.batteryLow.value)} below rated`);
  if (part.highest === undefined)
    used.push(`${part.name}: highest voltage taken as ${percent(defaults.batteryHigh.value)} above rated`);
  let sourceOhms = part.internalResistance;
  if (sourceOhms === undefined) {
    // lowest is a voltage at the terminals, so only a 9 V block, known to be weak, gets a resistance
    const block = nominal === 9;
    sourceOhms = block ? defaults.nineVoltOhms.value : 0;
    used.push(
      block
        ? `${part.name}: internal resistance taken as ${sourceOhms} ohm (${because(defaults.nineVoltOhms)})`
        : `${part.name}: internal resistance taken as none`,
    );
  }
  return {
    openCircuit: { min: Math.min(min, nominal), nominal, max: Math.max(max, nominal) },
    noLoad: Math.max(max, nominal),
    sourceOhms,
    defaults: used,
  };
}
