/** The columns of each published table, with their units. */
import type { CurrentKind, Practice } from '../plan/device-figures.ts';

/**
 * How well a figure is known. verified: two or more independent copies of the table agree;
 * one-source: seen in one copy; memory: known to the trade, not re-read.
 */
export type TableStatus = 'verified' | 'one-source' | 'memory';

export interface RowBase {
  readonly status: TableStatus;
  /** columns of this row that are known less well, or better, than the row */
  readonly cellStatus?: Readonly<Record<string, TableStatus>>;
}
export interface Table<R> {
  readonly title: string;
  readonly source: string;
  readonly clause: string;
  readonly units: string;
  readonly notes?: string;
  /** whole columns that are known less well than the rows */
  readonly columnStatus?: Readonly<Record<string, TableStatus>>;
  readonly rows: readonly R[];
}

export type MotorColumn = 'v115' | 'v200' | 'v208' | 'v230' | 'v460' | 'v575';
/** Amperes by motor voltage; null or absent where the table lists nothing. */
export type MotorRow = RowBase & { readonly horsepower: number; readonly label: string } & {
  readonly [column in MotorColumn]?: number | null;
};
export interface CodeLetterRow extends RowBase {
  readonly letter: string;
  /** kVA per horsepower */
  readonly low: number;
  /** kVA per horsepower; null for V, which has no upper end */
  readonly high: number | null;
}
export interface HorsepowerRatingRow extends RowBase {
  readonly horsepower: number;
  readonly label: string;
  /** A at 110-120 V and at 220-240 V */
  readonly running120: number;
  readonly running240: number;
  readonly starting120: number;
  readonly starting240: number;
}
export interface UtilizationRow extends RowBase {
  readonly category: string;
  readonly standard: string;
  readonly table: string;
  readonly test: 'capacity' | 'durability' | 'operation' | 'normal' | 'abnormal';
  /** the row is for rated currents above this, A */
  readonly above: number;
  /** and up to this, A; null without bound */
  readonly upTo: number | null;
  /** multiple of the rated current */
  readonly make: number;
  readonly makeVolts: number;
  readonly makePowerFactor: number | null;
  /** multiple of the rated current */
  readonly break: number;
  readonly breakVolts: number;
  readonly breakPowerFactor: number | null;
  readonly duty: string;
}
export interface InrushRow extends RowBase {
  readonly load: string;
  /** multiple of the steady current */
  readonly low: number;
  readonly high: number;
  /** s */
  readonly seconds: number | null;
}
export interface PilotDutyRow extends RowBase {
  readonly code: string;
  /** A */
  readonly thermal: number;
  readonly make120: number;
  readonly break120: number;
  readonly make240: number | null;
  readonly break240: number | null;
  readonly makeVA: number;
  readonly breakVA: number;
}
export interface BreakerCurveRow extends RowBase {
  /** B, C, D, or UL for a North American inverse-time breaker */
  readonly curve: string;
  readonly standard: string;
  readonly above: number;
  readonly upTo: number;
  /** multiple of the rated current that never trips it at once */
  readonly holds: number;
  /** multiple that always does */
  readonly trips: number;
  readonly thermalHolds: number;
  readonly thermalTrips: number;
  readonly thermalSeconds: number;
}
export interface ReceptacleRow extends RowBase {
  readonly names: readonly string[];
  /** everyday names; one that several rows have settles none of them */
  readonly also?: readonly string[];
  readonly standard: string;
  /** V; between lines where there are several */
  readonly volts: number;
  readonly nominal: number;
  readonly amps: number;
  readonly phases: number;
  readonly poles: string;
  /** terminals that it has a contact for: `L` or `L1` `L2` `L3`, `N`, `PE` */
  readonly contacts: readonly string[];
  readonly horsepower: number | null;
}
export interface ReceptacleCircuitRow extends RowBase {
  /** A of the breaker */
  readonly circuit: number;
  readonly leastSocket: number | null;
  readonly mostSocket: number;
  /** A of the socket that mostLoad is for */
  readonly socket: number | null;
  /** A */
  readonly mostLoad: number | null;
}
export interface CordNecRow extends RowBase {
  readonly awg: number;
  /** A with three current-carrying cores */
  readonly threePhase: number | null;
  /** A with two current-carrying cores */
  readonly singlePhase: number | null;
}
export interface ConductorNecRow extends RowBase {
  readonly awg: number;
  readonly mostBreaker: number | null;
  readonly at60: number | null;
  readonly at75: number | null;
  readonly at90: number | null;
  readonly before2011: number | null;
}
export interface CordIecRow extends RowBase {
  /** mm² */
  readonly area: number;
  readonly singlePhase: number;
  readonly threePhase: number | null;
  /** mV per A per m */
  readonly dropSinglePhase: number;
  readonly dropThreePhase: number | null;
}
export interface WireAwgRow extends RowBase {
  readonly awg: number;
  /** mm */
  readonly diameter: number;
  /** mm² */
  readonly area: number;
  /** ohm per km at 20 °C, solid */
  readonly ohmsPerKm: number;
  readonly publishedOhmsPerKm: number;
  /** thousandths of an inch, and ohm per km from that diameter */
  readonly mils: number;
  readonly roundedOhmsPerKm: number;
  /** ohm per 1000 ft at 75 °C */
  readonly solidPerKft75: number | null;
  readonly strandedPerKft75: number | null;
}
export interface WireIecRow extends RowBase {
  /** mm² */
  readonly area: number;
  /** ohm per km at 20 °C: class 1, 2 and 5 */
  readonly solid: number;
  readonly stranded: number;
  readonly fine: number;
  /** the same for tinned wire, class 1 and 2, and class 5 */
  readonly tinned: number;
  readonly tinnedFine: number;
}
export interface BoxFillRow extends RowBase {
  readonly awg: number;
  readonly in3: number;
  readonly cm3: number;
}
export interface BoxVolumeRow extends RowBase {
  readonly box: string;
  readonly kind: string;
  readonly in3: number;
  readonly cm3: number;
}
export interface StartsRow extends RowBase {
  readonly horsepower: number;
  /** starts per hour, starts times lb·ft², least rest in s; 2 poles */
  readonly starts2: number;
  readonly inertia2: number;
  readonly rest2: number;
  /** the same for 4 poles */
  readonly starts4: number;
  readonly inertia4: number;
  readonly rest4: number;
}
export interface OverloadRow extends RowBase {
  readonly name:
    | 'nec-least'
    | 'iec-most'
    | 'iec-least'
    | 'service-factor'
    | 'nec-automatic-horsepower'
    | 'iec-kilowatts';
  readonly clause: string;
  /** multiple of the plate's current; a service factor, hp or kW where the name says so */
  readonly value: number;
}
export interface MotorBranchRow extends RowBase {
  readonly name: string;
  readonly clause: string;
  readonly value: number;
  /** m of wire up to which it holds */
  readonly metres?: number;
}
export interface MotorBranchTable extends Table<MotorBranchRow> {
  /** A */
  readonly standardRatings: readonly number[];
  readonly standardRatingsClause: string;
  readonly standardRatingsStatus: TableStatus;
  /** A of the usual AC snap switches, and V up to which one may serve a motor */
  readonly snapSwitches: { readonly ratings: readonly number[]; readonly mostVolts: number };
  readonly snapSwitchesClause: string;
  readonly snapSwitchesStatus: TableStatus;
}
export interface ControlWireRow extends RowBase {
  readonly awg: number;
  readonly amps: number;
  readonly basis: string;
}
export interface Class2Row extends RowBase {
  readonly kind: string;
  /** V of the highest output */
  readonly above: number;
  readonly upTo: number;
  readonly mostAmps: number | null;
  readonly nameplateAmps: number | null;
  readonly nameplateVA: number | null;
  /** where given, the current limit is this over the highest voltage */
  readonly mostVA?: number;
}
export interface SocketRuleRow extends RowBase {
  readonly name: 'other-system-volts' | 'breaker-nec' | 'breaker' | 'breaker-fused-plug';
  readonly clause: string;
  readonly value: number;
}
export interface ExtraLowRow extends RowBase {
  readonly practice: Practice;
  readonly kind: CurrentKind;
  /** V */
  readonly volts: number;
  readonly clause: string;
  /** as far as SELV reaches, with conditions */
  readonly selv?: string;
}
export interface DcBreakingRow extends RowBase {
  /** V up to which the row holds; null for any above the others */
  readonly volts: number | null;
  /** shares of the resistive AC amperes: surely broken, and broken at most */
  readonly low: number;
  readonly high: number;
  /** A */
  readonly most: number | null;
}
export interface VoltageClassRow extends RowBase {
  /** column of the motor tables; null where they have none */
  readonly column: MotorColumn | null;
  /** V, nominal voltage of the class */
  readonly nominal: number;
  /** V a motor of this class may be marked with: least and most */
  readonly motor: readonly [number, number];
  /** V a switch or contact of this class may be marked with: least and most */
  readonly device: readonly [number, number];
}

/** How one sort of part fails: a share of its failures, in percent, from the lowest to the highest figure known. */
export interface FailureShareRow extends RowBase {
  readonly component: string;
  readonly mode: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}
/** How often one sort of part fails beside another; no unit. */
export interface FailureWeightRow extends RowBase {
  readonly component: string;
  readonly weight: number;
}
