/** The columns of the tables by which conductors, their colours and what protects them are judged. */
import type { Practice } from '../plan/device-figures.ts';
import type { CoreColour } from '../text/core-colours.ts';
import type { RowBase } from './table-rows.ts';

export interface AmbientFactorRow extends RowBase {
  readonly rule: 'nec' | 'iec' | 'iec-cord';
  /** °C of the insulation */
  readonly rated: number;
  /** °C of the air up to which the factor holds */
  readonly upTo: number;
  readonly factor: number;
}
export interface LoadedCoresRow extends RowBase {
  readonly rule: 'nec' | 'nec-cord' | 'iec';
  /** count from which the factor holds */
  readonly from: number;
  readonly factor: number;
}
export interface LaidConductorRow extends RowBase {
  readonly way: 'insulated-wall' | 'clipped' | 'panel' | 'flexible';
  readonly loaded: number;
  /** mm² */
  readonly area: number;
  /** A at 30 °C */
  readonly amps: number;
  /** °C */
  readonly rated: number;
  readonly table: string;
}
/** A of the largest device ahead of a control conductor. */
export interface ControlProtectionRow extends RowBase {
  readonly awg: number;
  readonly own: number;
  readonly inside: number;
  readonly outside: number;
}
/** What an earth core has to have: by the device ahead of its circuit, or by the lines beside it. */
export type EarthConductorRow = RowBase &
  (
    | { readonly practice: 'nec' /** A */; readonly upTo: number; readonly awg: number }
    | {
        readonly practice: 'iec';
        /** mm² of the line */
        readonly upTo: number;
        readonly share: number;
        /** mm² */
        readonly least: number;
      }
  );
export interface FuseConventionalRow extends RowBase {
  readonly above: number;
  readonly upTo: number;
  /** multiple of the rated current */
  readonly opens: number;
}
/** A, and A²s. */
export interface FuseGateRow extends RowBase {
  readonly amps: number;
  readonly holds10s: number | null;
  readonly opens5s: number | null;
  readonly holds100ms: number | null;
  readonly opens100ms: number | null;
  readonly mostI2t: number | null;
}
export interface FuseBandRow extends RowBase {
  readonly fuse: 'BS 1362' | 'aM';
  readonly amps: number;
  readonly holds: number;
  readonly opens: number | null;
}

/** What a core is for. */
export type CoreUse = 'earth' | 'neutral' | 'line' | 'low-voltage';

/** The notes of the table say what each rule and each condition means. */
export interface CoreColourRow extends RowBase {
  readonly practice: Practice;
  readonly use: CoreUse;
  readonly rule: 'only' | 'wears' | 'also' | 're-marked' | 'usual';
  readonly colours: readonly CoreColour[];
  readonly as?: readonly CoreColour[];
  readonly when?: 'multicore' | 'flexible' | 'fixed' | 'no-neutral';
  readonly mostAwg?: number;
  readonly supplyOnly?: boolean;
  readonly noNeutral?: boolean;
  readonly stripes?: boolean;
  readonly pattern?: string;
  readonly mostVoltsAc?: number;
  readonly mostVoltsDc?: number;
  readonly clause: string;
}
