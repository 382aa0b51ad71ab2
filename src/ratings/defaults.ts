/**
 * What is assumed where a plan says nothing: the reader of `tables/defaults.json`. A value the plan states always beats
 * these, and a report names every one it used.
 */

import type { CurrentKind, Practice } from '../plan/device-figures.ts';
import file from './tables/defaults.json' with { type: 'json' };

/**
 * How well a default is known. source: read in the standard, a copy of it, or data of several makers; memory: known from
 * the named standard, not re-read; common practice: no source.
 */
export type DefaultMark = 'source' | 'memory' | 'common practice';

export interface Default {
  readonly value: number;
  /** what the value counts: a share of rated, V, A, W, VA, K, °C, ohm, m, h, s or a plain multiple */
  readonly unit:
    | 'share'
    | 'V'
    | 'A'
    | 'W'
    | 'VA'
    | 'K'
    | '°C'
    | 'ohm'
    | 'm'
    | 'h'
    | 's'
    | 'times'
    | 'per hour';
  /** ends between which a figure left out may lie; the verdict is tried at both */
  readonly low?: number;
  readonly high?: number;
  readonly mark: DefaultMark;
  readonly basis: string;
}

/** Each row as what it is, with the range that the file gives it. */
function typed<R extends object>(rows: R) {
  return rows as { readonly [N in keyof R]: Default & Readonly<R[N]> };
}

/** The rows of the table by name. */
export const defaults = typed(file.rows);
export type DefaultName = keyof typeof defaults;

/** `15 %` of a share. */
export function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}

/** Where a default is from, for the sentence that reports it. */
export function because(d: Pick<Default, 'mark' | 'basis'>): string {
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

/** No-load rise of a small transformer of the given output, VA; of one for control circuits, it is less. */
export function defaultTransformerRise(va: number, control = false): Default {
  if (control && va <= 60) return defaults.transformerRiseControlTo60VA;
  if (control)
    return va <= 175 ? defaults.transformerRiseControlTo175VA : defaults.transformerRiseControlAbove175VA;
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
