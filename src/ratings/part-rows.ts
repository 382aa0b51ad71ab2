/** The columns of the table of parts as they are ordinarily sold. */
import type { RowBase } from './table-rows.ts';

/** What switches a motor, with the coil it comes with. */
export interface SwitchRow extends RowBase {
  readonly part: 'switch';
  readonly style: 'relay' | 'contactor';
  readonly poles: 1 | 2 | 3;
  /** A of resistive or general use, at `volts` V AC */
  readonly amps: number;
  readonly volts: number;
  /** A, category AC-3; null where none is printed */
  readonly ac3: number | null;
  /** horsepower ratings as printed */
  readonly motor: readonly string[];
  /** W of a DC coil, and the V it is sold for */
  readonly dcWatts: number;
  readonly dcVolts: readonly number[];
  /** VA of a 24 V AC coil, held and while it pulls in; null where it is not sold so */
  readonly acHeld: number | null;
  readonly acPull: number | null;
}

/** Fields of a part in a plan's own words; a value is a text, a list, or fields again. */
export interface PartFields {
  readonly [field: string]: string | readonly string[] | PartFields;
}

export interface FieldsRow extends RowBase {
  readonly name: string;
  readonly fields: PartFields;
}

/** Sizes as a plan has them, from the least to the greatest. */
export interface SizesRow extends RowBase {
  readonly name: 'supply-dc' | 'supply-ac' | 'fuse' | 'loop' | 'mains' | 'box';
  readonly practice: 'nec' | 'iec';
  readonly sizes: readonly string[];
}

export interface PlugRow extends RowBase {
  readonly practice: 'nec' | 'iec';
  /** V between the conductors of the collector */
  readonly volts: number;
  readonly phases: 1 | 3;
  readonly pattern: string;
}
