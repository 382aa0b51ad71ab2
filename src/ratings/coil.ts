/** What a relay or contactor coil needs and draws. */

import type { Coil, CurrentKind, Limit } from '../plan/device-figures.ts';
import { because, type Default, defaultDropOut, defaultPullIn, defaults, percent } from './defaults.ts';

export interface CoilModel {
  /** V */
  readonly rated: number;
  readonly kind: CurrentKind;
  /** ohm; DC: copper at 20 °C; AC: magnitude of the impedance with the armature sealed */
  readonly ohms?: number;
  /** ohm, AC only: magnitude of the impedance with the armature open */
  readonly inrushOhms?: number;
  /** ohm of copper at 20 °C; for AC only where the plan states a resistance */
  readonly copperOhms?: number;
  /** cosine, AC sealed and inrush, where stated */
  readonly powerFactor?: number;
  readonly inrushPowerFactor?: number;
  /** V at a coil temperature of 20 °C, or of the warm coil where it is at least `warmFrom` */
  readonly pullInVolts: number;
  /**
   * V from which on a pull-in figure already holds for a warmed-up coil: a contactor's limit of operation does, in 40 °C
   * air, by IEC 60947-4-1 8.2.1.2. That clause lets it open at 75 % of its voltage (from memory), so a figure below that
   * is none of operation
   */
  readonly warmFrom: number;
  /** V at 20 °C */
  readonly dropOutVolts: number;
  /** V the coil stands continuously */
  readonly mostVolts: number;
  /** electronics and no winding: no copper warms up, and what is printed holds in all the air it is made for */
  readonly electronic: boolean;
  /** takes AC and DC alike */
  readonly either: boolean;
  /** V at which `ohms` and `inrushOhms` hold, where that is not the rated voltage */
  readonly at?: number;
  /** K above the air, at rated voltage */
  readonly hotRise: number;
  /** share of the resistance */
  readonly tolerance: number;
  /** sentences for the report */
  readonly defaults: readonly string[];
}

/** Share of the rated voltage at which a contactor may open, IEC 60947-4-1 8.2.1.2, from memory. */
const CONTACTOR_OPENS = 0.75;

/** Annealed copper would lose its resistance at -234.5 °C, IEC 60228 and IEC 60034-1. */
const COPPER = 234.5;

/** Resistance of copper at a temperature (°C) against that at 20 °C. */
export function copperFactor(celsius: number): number {
  return (COPPER + celsius) / (COPPER + 20);
}

const volts = (limit: Limit, rated: number): number =>
  'volts' in limit ? limit.volts : limit.fraction * rated;

/** ohm of a DC coil at 20 °C from whichever of resistance, current and power is printed. */
function dcOhms(coil: Coil): number | undefined {
  if (coil.resistance !== undefined) return coil.resistance;
  if (coil.current !== undefined && coil.current > 0) return coil.rated.volts / coil.current;
  if (coil.power !== undefined && coil.power.watts > 0) return coil.rated.volts ** 2 / coil.power.watts;
  return undefined;
}

/** VA of a sealed AC coil; watts count only together with a power factor. */
function sealedVA(coil: Coil): number | undefined {
  if (coil.power?.unit === 'VA') return coil.power.watts;
  if (coil.current !== undefined) return coil.current * coil.rated.volts;
  if (coil.power !== undefined && coil.powerFactor !== undefined && coil.powerFactor > 0)
    return coil.power.watts / coil.powerFactor;
  return undefined;
}

/**
 * @param options.contactor whether the device is a contactor; its pull-in, stated or
 *   not, is the limit of operation of IEC 60947-4-1 8.2.1.2, which holds for the warm coil already
 */
export function coilModel(
  coil: Coil,
  options: {
    readonly contactor: boolean;
    readonly drawsAsContactor?: boolean;
    readonly electronic?: boolean;
  },
): CoilModel {
  if (options.electronic === true) return electronicModel(coil, options.contactor);
  const { volts: rated, kind } = coil.rated;
  const used: string[] = [];
  const limit = (given: Limit | undefined, fallback: Default, what: string): number => {
    if (given !== undefined) return volts(given, rated);
    used.push(`coil ${what} taken as ${percent(fallback.value)} of rated (${because(fallback)})`);
    return fallback.value * rated;
  };
  const pullInVolts = limit(coil.pullIn, defaultPullIn(kind, options.contactor), 'pull-in');
  if (coil.pullIn !== undefined && options.contactor && kind === 'dc')
    used.push('coil pull-in taken as of the warm coil, as a contactor’s is (IEC 60947-4-1 8.2.1.2, memory)');
  const dropOutVolts = limit(coil.dropOut, defaultDropOut(kind, options.contactor), 'drop-out');
  const mostVolts = limit(coil.most, defaults.mostCoil, 'highest continuous voltage');

  const rise = options.contactor ? defaults.hotRiseContactor : defaults.hotRiseRelay;
  if (coil.hotRise === undefined)
    used.push(`coil self-heating at rated voltage taken as ${rise.value} K (${because(rise)})`);
  if (coil.tolerance === undefined)
    used.push(
      `coil resistance tolerance taken as ±${percent(defaults.coilTolerance.value)} (${because(defaults.coilTolerance)})`,
    );

  const base = {
    rated,
    kind,
    pullInVolts,
    warmFrom: options.contactor ? CONTACTOR_OPENS * rated : Number.POSITIVE_INFINITY,
    dropOutVolts,
    mostVolts,
    electronic: false,
    either: false,
    hotRise: coil.hotRise ?? rise.value,
    tolerance: coil.tolerance ?? defaults.coilTolerance.value,
    ...(coil.powerFactor !== undefined && { powerFactor: coil.powerFactor }),
    ...(coil.inrushPowerFactor !== undefined && { inrushPowerFactor: coil.inrushPowerFactor }),
  };
  if (kind === 'dc') {
    const ohms = dcOhms(coil);
    return { ...base, ...(ohms !== undefined && { ohms, copperOhms: ohms }), defaults: used };
  }
  const sealed = sealedVA(coil);
  let inrush = coil.inrush;
  if (inrush === undefined && sealed !== undefined) {
    const heavy = options.contactor || options.drawsAsContactor === true;
    const ratio = heavy ? defaults.inrushRatioContactor : defaults.inrushRatioRelay;
    used.push(`coil inrush taken as ${ratio.value} times its sealed VA (${because(ratio)})`);
    inrush = ratio.value * sealed;
  }
  return {
    ...base,
    ...(sealed !== undefined && sealed > 0 && { ohms: rated ** 2 / sealed }),
    ...(inrush !== undefined && inrush > 0 && { inrushOhms: rated ** 2 / inrush }),
    ...(coil.resistance !== undefined && { copperOhms: coil.resistance }),
    defaults: used,
  };
}

/**
 * An input that draws about the same power whatever its volts (data of a wide-range timer), so that its ohms grow with
 * the square of them; those here hold at the lower end of its range, see `coilAt`.
 */
function electronicModel(coil: Coil, contactor: boolean): CoilModel {
  const { volts: rated, kind } = coil.rated;
  const top = coil.upTo ?? rated;
  const used: string[] = [];
  const limit = (given: Limit | undefined, of: number, fallback: Default, what: string): number => {
    if (given !== undefined) return volts(given, of);
    used.push(`coil ${what} taken as ${percent(fallback.value)} of ${of} V (${because(fallback)})`);
    return fallback.value * of;
  };
  const watts = coil.power?.watts ?? (coil.current !== undefined ? coil.current * rated : undefined);
  const drawn = watts ?? (coil.resistance !== undefined ? rated ** 2 / coil.resistance : undefined);
  const { inrushRatioElectronic: ratio } = defaults;
  let inrush = coil.inrush;
  if (inrush === undefined && contactor && drawn !== undefined) {
    used.push(`coil inrush taken as ${ratio.value} times what it holds with (${because(ratio)})`);
    inrush = ratio.value * drawn;
  }
  return {
    rated,
    kind,
    pullInVolts: limit(coil.pullIn, rated, defaults.pullInElectronic, 'pull-in'),
    warmFrom: 0,
    dropOutVolts: limit(coil.dropOut, rated, defaults.dropOutElectronic, 'drop-out'),
    mostVolts: limit(coil.most, top, defaults.mostCoil, 'highest continuous voltage'),
    electronic: true,
    either: coil.either === true,
    hotRise: 0,
    tolerance: coil.tolerance ?? 0,
    ...(drawn !== undefined && drawn > 0 && { ohms: rated ** 2 / drawn }),
    ...(inrush !== undefined && inrush > 0 && { inrushOhms: rated ** 2 / inrush }),
    defaults: used,
  };
}

/** The same coil fed at other volts: what is no winding draws less current at more volts. */
export function coilAt(model: CoilModel, fed: number | undefined): CoilModel {
  if (!model.electronic || fed === undefined || fed <= model.rated) return model;
  const share = (fed / model.rated) ** 2;
  return {
    ...model,
    at: fed,
    ...(model.ohms !== undefined && { ohms: model.ohms * share }),
    ...(model.inrushOhms !== undefined && { inrushOhms: model.inrushOhms * share }),
  };
}

/** A once it is in; undefined where the plan does not tell. */
export function coilAmps({ at, rated, ohms }: CoilModel): number | undefined {
  return ohms === undefined ? undefined : (at ?? rated) / ohms;
}

/** What is printed on a coil: `12 V`, `24-240 V AC/DC`. */
export function printedVolts({ rated, upTo, either }: Coil): string {
  const range = upTo === undefined ? `${rated.volts}` : `${rated.volts}-${upTo}`;
  return `${range} V ${either === true ? 'AC/DC' : rated.kind.toUpperCase()}`;
}

/** Whether a coil is made for this kind of current. */
export const takesKind = ({ either, kind }: CoilModel, fed: CurrentKind): boolean => either || kind === fed;

/**
 * V needed to pull in with the copper at the given temperature (°C). The ampere-turns needed do not
 * change, so a DC coil's voltage rises as its resistance; an AC coil's current is set by reactance.
 */
export function pullInAt(model: CoilModel, copperCelsius: number): number {
  const { kind, pullInVolts, warmFrom } = model;
  if (kind === 'ac' || pullInVolts >= warmFrom) return pullInVolts;
  return Math.min(pullInVolts * copperFactor(copperCelsius), warmFrom);
}

/**
 * °C of a DC coil's copper after a long run: T = Ta + θ·V²/(R20·k(T)), five rounds from T = Ta.
 * @param risePerWatt K per W; rise at rated voltage over rated power
 */
export function coilTemperature(
  ambient: number,
  risePerWatt: number,
  coilVolts: number,
  ohms20: number,
): number {
  let t = ambient;
  for (let round = 0; round < 5; round++)
    t = ambient + (risePerWatt * coilVolts ** 2) / (ohms20 * copperFactor(t));
  return t;
}
