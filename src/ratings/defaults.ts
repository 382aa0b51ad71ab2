/**
 * What is assumed where a plan says nothing. A value the plan states always beats these, and a report
 * names every one it used.
 */
import type { CurrentKind, Practice } from '../plan/plan.ts';

/**
 * source: read in the standard, a copy of it, or data of several makers; memory: known from the named
 * standard, not re-read; common practice: no source.
 */
export type DefaultMark = 'source' | 'memory' | 'common practice';

export interface Default {
  readonly value: number;
  /** what the value counts: a share of rated, V, A, K, °C, ohm, h or a plain multiple */
  readonly unit: 'share' | 'V' | 'A' | 'K' | '°C' | 'ohm' | 'h' | 'times' | 'per hour';
  /** range to sweep */
  readonly low?: number;
  readonly high?: number;
  readonly mark: DefaultMark;
  readonly basis: string;
}

export const defaults = {
  pullInDcRelay: {
    value: 0.75,
    unit: 'share',
    low: 0.7,
    high: 0.8,
    mark: 'source',
    basis: 'data of several makers',
  },
  pullInAcRelay: {
    value: 0.8,
    unit: 'share',
    low: 0.8,
    high: 0.85,
    mark: 'source',
    basis: 'data of several makers',
  },
  pullInContactor: {
    value: 0.85,
    unit: 'share',
    low: 0.8,
    high: 0.85,
    mark: 'memory',
    basis: 'IEC 60947-4-1',
  },
  mostCoil: {
    value: 1.1,
    unit: 'share',
    low: 1.1,
    high: 1.3,
    mark: 'source',
    basis: 'data of several makers',
  },
  dropOutDc: {
    value: 0.1,
    unit: 'share',
    low: 0.05,
    high: 0.1,
    mark: 'source',
    basis: 'data of several makers',
  },
  dropOutAcRelay: {
    value: 0.3,
    unit: 'share',
    low: 0.15,
    high: 0.3,
    mark: 'memory',
    basis: 'usual relay data',
  },
  dropOutAcContactor: { value: 0.2, unit: 'share', mark: 'memory', basis: 'IEC 60947-4-1' },
  holdDcRelay: {
    value: 0.5,
    unit: 'share',
    low: 0.4,
    high: 0.5,
    mark: 'source',
    basis: 'data of one maker',
  },
  holdAcRelay: { value: 0.8, unit: 'share', mark: 'source', basis: 'data of one maker' },
  holdContactor: { value: 0.75, unit: 'share', mark: 'memory', basis: 'IEC 60947-4-1' },
  coilTolerance: {
    value: 0.1,
    unit: 'share',
    low: 0.1,
    high: 0.15,
    mark: 'source',
    basis: 'relay data sheets',
  },
  hotRiseRelay: {
    value: 30,
    unit: 'K',
    low: 20,
    high: 40,
    mark: 'common practice',
    basis: 'common practice',
  },
  hotRiseContactor: { value: 50, unit: 'K', low: 40, high: 85, mark: 'memory', basis: 'IEC 60947-1' },
  ambient: {
    value: 40,
    unit: '°C',
    low: 0,
    high: 50,
    mark: 'common practice',
    basis: 'closed box in a warm shop',
  },
  inrushRatioRelay: { value: 1.6, unit: 'times', low: 1.3, high: 2, mark: 'memory', basis: 'AC relay data' },
  inrushRatioContactor: {
    value: 4,
    unit: 'times',
    low: 3,
    high: 13,
    mark: 'source',
    basis: 'AC contactor data',
  },
  contactResistance: {
    value: 0.05,
    unit: 'ohm',
    low: 0.015,
    high: 0.1,
    mark: 'source',
    basis: 'switch data sheets',
  },
  agedContactResistance: { value: 1, unit: 'ohm', mark: 'common practice', basis: 'common practice' },
  silverLeastAmps: {
    value: 0.1,
    unit: 'A',
    low: 0.1,
    high: 0.16,
    mark: 'source',
    basis: 'silver snap switches at 5 to 12 V',
  },
  goldLeastAmps: {
    value: 0.001,
    unit: 'A',
    low: 0.001,
    high: 0.005,
    mark: 'source',
    basis: 'gold snap switches at 5 V DC',
  },
  goldMostAmps: { value: 0.1, unit: 'A', mark: 'source', basis: 'gold snap switches at 30 V DC' },
  unregulatedRise: {
    value: 0.5,
    unit: 'share',
    low: 0.3,
    high: 0.75,
    mark: 'source',
    basis: 'readings on plug-in adapters',
  },
  unregulatedRiseSmall: {
    value: 0.6,
    unit: 'share',
    low: 0.3,
    high: 0.75,
    mark: 'source',
    basis: 'readings on adapters under 200 mA',
  },
  transformerRiseTo10VA: {
    value: 0.25,
    unit: 'share',
    low: 0.125,
    high: 0.5,
    mark: 'memory',
    basis: 'bell transformer data',
  },
  transformerRiseTo30VA: {
    value: 0.2,
    unit: 'share',
    low: 0.1,
    high: 0.4,
    mark: 'memory',
    basis: 'bell transformer data',
  },
  transformerRiseAbove30VA: {
    value: 0.15,
    unit: 'share',
    low: 0.075,
    high: 0.3,
    mark: 'memory',
    basis: 'control transformer data',
  },
  regulatedTolerance: {
    value: 0.05,
    unit: 'share',
    low: 0.05,
    high: 0.1,
    mark: 'memory',
    basis: 'switch-mode adapter data',
  },
  mainsNorthAmerica: { value: 0.05, unit: 'share', mark: 'memory', basis: 'ANSI C84.1, range A, service' },
  mainsLow: { value: 0.06, unit: 'share', mark: 'memory', basis: 'supply range of the EU and UK, -6 %' },
  mainsHigh: { value: 0.1, unit: 'share', mark: 'memory', basis: 'supply range of the EU and UK, +10 %' },
  batteryLow: {
    value: 0.2,
    unit: 'share',
    mark: 'common practice',
    basis: 'rules of reading of the plan file',
  },
  batteryHigh: {
    value: 0.1,
    unit: 'share',
    mark: 'common practice',
    basis: 'rules of reading of the plan file',
  },
  nineVoltOhms: {
    value: 3,
    unit: 'ohm',
    low: 1.7,
    high: 5,
    mark: 'source',
    basis: 'tests of alkaline 9 V blocks',
  },
  batteryUsable: { value: 0.6, unit: 'share', mark: 'common practice', basis: 'common practice' },
  workingWeek: { value: 40, unit: 'h', mark: 'common practice', basis: 'common practice' },
  fineStranding: {
    value: 1.08,
    unit: 'times',
    low: 1.02,
    high: 1.08,
    mark: 'memory',
    basis: 'flexible cord against solid copper of its gauge',
  },
  motorStart: {
    value: 6,
    unit: 'times',
    low: 5,
    high: 8,
    mark: 'source',
    basis: 'UL motor ratings; switch makers agree',
  },
  screeningPass: {
    value: 1 / 6,
    unit: 'share',
    mark: 'source',
    basis: 'six times the motor current within a resistive rating',
  },
  screeningWarn: {
    value: 1 / 3,
    unit: 'share',
    mark: 'common practice',
    basis: 'switch data: motor against resistive rating',
  },
  coilMargin: {
    value: 0.1,
    unit: 'share',
    mark: 'source',
    basis: 'equipment standard of a state transport agency',
  },
  efficiencySinglePhase: {
    value: 0.75,
    unit: 'share',
    low: 0.6,
    high: 0.82,
    mark: 'common practice',
    basis: 'common practice',
  },
  powerFactorSinglePhase: {
    value: 0.9,
    unit: 'share',
    low: 0.7,
    high: 0.98,
    mark: 'common practice',
    basis: 'common practice',
  },
  efficiencyThreePhase: {
    value: 0.8,
    unit: 'share',
    low: 0.7,
    high: 0.88,
    mark: 'common practice',
    basis: 'common practice',
  },
  powerFactorThreePhase: {
    value: 0.8,
    unit: 'share',
    low: 0.7,
    high: 0.88,
    mark: 'common practice',
    basis: 'common practice',
  },
  bestEfficiency: { value: 0.9, unit: 'share', mark: 'common practice', basis: 'common practice' },
  startsSinglePhase: {
    value: 20,
    unit: 'per hour',
    mark: 'source',
    basis: 'start capacitor data, starts of three seconds',
  },
  plugFuseBs1363: { value: 13, unit: 'A', mark: 'source', basis: 'BS 1363 with BS 1362 fuse' },
} as const satisfies Record<string, Default>;
export type DefaultName = keyof typeof defaults;

export function defaultOf(name: DefaultName): Default {
  return defaults[name];
}

/** `15 %` of a share. */
export function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}

/** Where a default is from, for the sentence that reports it. */
export function because(d: Default): string {
  if (d.mark === 'source' || d.basis === d.mark) return d.basis;
  return `${d.basis}, ${d.mark}`;
}

/** Share of rated voltage at which a coil at 20 °C is promised to have pulled in. */
export function defaultPullIn(kind: CurrentKind, contactor: boolean): Default {
  if (contactor) return defaults.pullInContactor;
  return kind === 'dc' ? defaults.pullInDcRelay : defaults.pullInAcRelay;
}

/** Share of rated voltage at which a coil is promised to have let go. */
export function defaultDropOut(kind: CurrentKind, contactor: boolean): Default {
  if (kind === 'dc') return defaults.dropOutDc;
  return contactor ? defaults.dropOutAcContactor : defaults.dropOutAcRelay;
}

/** No-load rise of a small transformer of the given output, VA. */
export function defaultTransformerRise(va: number): Default {
  if (va <= 10) return defaults.transformerRiseTo10VA;
  return va <= 30 ? defaults.transformerRiseTo30VA : defaults.transformerRiseAbove30VA;
}

/** No-load rise of an unregulated DC adapter of the given rated current, A. */
export function defaultUnregulatedRise(amps: number): Default {
  return amps < 0.2 ? defaults.unregulatedRiseSmall : defaults.unregulatedRise;
}

/** Shares by which mains may stand below and above nominal. */
export function mainsVariation(practice: Practice): { readonly low: Default; readonly high: Default } {
  if (practice === 'nec') return { low: defaults.mainsNorthAmerica, high: defaults.mainsNorthAmerica };
  return { low: defaults.mainsLow, high: defaults.mainsHigh };
}
