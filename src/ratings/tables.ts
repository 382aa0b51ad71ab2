/**
 * What published tables say of parts and wires, and the arithmetic on it: judgements of figures. Nothing in this folder
 * knows a circuit, a state or a finding.
 *
 * This is the one door to the tables. Each is a JSON file with its title, source, clause and units at its head; it is
 * looked at (and frozen) only when first asked for.
 */

import type { CoreColourRow } from './colour-rows.ts';
import type {
  AmbientFactorRow,
  ControlProtectionRow,
  FuseBandRow,
  FuseConventionalRow,
  FuseGateRow,
  LaidConductorRow,
  LoadedCoresRow,
} from './protection-rows.ts';
import type {
  BoxFillRow,
  BoxVolumeRow,
  BreakerCurveRow,
  Class2Row,
  CodeLetterRow,
  ConductorNecRow,
  ControlWireRow,
  CordIecRow,
  CordNecRow,
  DcBreakingRow,
  ExtraLowRow,
  FailureShareRow,
  FailureWeightRow,
  HorsepowerRatingRow,
  InrushRow,
  MotorBranchRow,
  MotorBranchTable,
  MotorRow,
  OverloadRow,
  PilotDutyRow,
  ReceptacleCircuitRow,
  ReceptacleRow,
  RowBase,
  SocketRuleRow,
  StartsRow,
  Table,
  TableStatus,
  UtilizationRow,
  VoltageClassRow,
  WireAwgRow,
  WireIecRow,
} from './table-rows.ts';
import ambientFactorsFile from './tables/ambient-factors.json' with { type: 'json' };
import boxFillFile from './tables/box-fill.json' with { type: 'json' };
import boxVolumesFile from './tables/box-volumes.json' with { type: 'json' };
import breakerCurvesFile from './tables/breaker-curves.json' with { type: 'json' };
import class2File from './tables/class-2.json' with { type: 'json' };
import codeLettersFile from './tables/code-letters.json' with { type: 'json' };
import laidConductorsFile from './tables/conductor-ampacity-iec.json' with { type: 'json' };
import conductorAmpacityNecFile from './tables/conductor-ampacity-nec.json' with { type: 'json' };
import controlProtectionFile from './tables/control-protection-nec.json' with { type: 'json' };
import controlWireFile from './tables/control-wire.json' with { type: 'json' };
import cordAmpacityIecFile from './tables/cord-ampacity-iec.json' with { type: 'json' };
import cordAmpacityNecFile from './tables/cord-ampacity-nec.json' with { type: 'json' };
import coreColoursFile from './tables/core-colours.json' with { type: 'json' };
import dcBreakingFile from './tables/dc-breaking.json' with { type: 'json' };
import extraLowFile from './tables/extra-low-limits.json' with { type: 'json' };
import failureSharesFile from './tables/failure-shares.json' with { type: 'json' };
import failureWeightsFile from './tables/failure-weights.json' with { type: 'json' };
import fuseBandsFile from './tables/fuse-bands.json' with { type: 'json' };
import fuseConventionalFile from './tables/fuse-conventional.json' with { type: 'json' };
import fuseGatesFile from './tables/fuse-gates-gg.json' with { type: 'json' };
import horsepowerRatingsFile from './tables/horsepower-ratings.json' with { type: 'json' };
import inrushFile from './tables/inrush.json' with { type: 'json' };
import loadedCoresFile from './tables/loaded-core-factors.json' with { type: 'json' };
import lockedRotorSingleFile from './tables/locked-rotor-single-phase.json' with { type: 'json' };
import lockedRotorThreeFile from './tables/locked-rotor-three-phase.json' with { type: 'json' };
import motorBranchFile from './tables/motor-branch.json' with { type: 'json' };
import motorFlcSingleFile from './tables/motor-flc-single-phase.json' with { type: 'json' };
import motorFlcThreeFile from './tables/motor-flc-three-phase.json' with { type: 'json' };
import overloadSettingsFile from './tables/overload-settings.json' with { type: 'json' };
import pilotDutyFile from './tables/pilot-duty.json' with { type: 'json' };
import receptacleCircuitsFile from './tables/receptacle-circuits.json' with { type: 'json' };
import receptaclesFile from './tables/receptacles.json' with { type: 'json' };
import socketRulesFile from './tables/socket-rules.json' with { type: 'json' };
import startsPerHourFile from './tables/starts-per-hour.json' with { type: 'json' };
import utilizationFile from './tables/utilization-categories.json' with { type: 'json' };
import voltageClassesFile from './tables/voltage-classes.json' with { type: 'json' };
import wireAwgFile from './tables/wire-awg.json' with { type: 'json' };
import wireIec60228File from './tables/wire-iec60228.json' with { type: 'json' };

function deepFreeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return;
  Object.freeze(value);
  for (const inner of Object.values(value)) deepFreeze(inner);
}

/** The shape of each file is held by the tests; here it is only taken once and frozen. */
export function lazy<T>(file: unknown): () => T {
  let taken = false;
  return () => {
    if (!taken) deepFreeze(file);
    taken = true;
    return file as T;
  };
}

export const tables = {
  fuseGates: lazy<Table<FuseGateRow>>(fuseGatesFile),
  fuseBands: lazy<Table<FuseBandRow>>(fuseBandsFile),
  fuseConventional: lazy<Table<FuseConventionalRow>>(fuseConventionalFile),
  controlProtection: lazy<Table<ControlProtectionRow>>(controlProtectionFile),
  laidConductors: lazy<Table<LaidConductorRow>>(laidConductorsFile),
  loadedCores: lazy<Table<LoadedCoresRow>>(loadedCoresFile),
  ambientFactors: lazy<Table<AmbientFactorRow>>(ambientFactorsFile),
  boxFill: lazy<Table<BoxFillRow>>(boxFillFile),
  boxVolumes: lazy<Table<BoxVolumeRow>>(boxVolumesFile),
  breakerCurves: lazy<Table<BreakerCurveRow>>(breakerCurvesFile),
  class2: lazy<Table<Class2Row>>(class2File),
  codeLetters: lazy<Table<CodeLetterRow>>(codeLettersFile),
  conductorAmpacityNec: lazy<Table<ConductorNecRow>>(conductorAmpacityNecFile),
  controlWire: lazy<Table<ControlWireRow>>(controlWireFile),
  cordAmpacityIec: lazy<Table<CordIecRow>>(cordAmpacityIecFile),
  cordAmpacityNec: lazy<Table<CordNecRow>>(cordAmpacityNecFile),
  coreColours: lazy<Table<CoreColourRow>>(coreColoursFile),
  dcBreaking: lazy<Table<DcBreakingRow>>(dcBreakingFile),
  extraLow: lazy<Table<ExtraLowRow>>(extraLowFile),
  failureShares: lazy<Table<FailureShareRow>>(failureSharesFile),
  failureWeights: lazy<Table<FailureWeightRow>>(failureWeightsFile),
  horsepowerRatings: lazy<Table<HorsepowerRatingRow>>(horsepowerRatingsFile),
  inrush: lazy<Table<InrushRow>>(inrushFile),
  lockedRotorSingle: lazy<Table<MotorRow>>(lockedRotorSingleFile),
  lockedRotorThree: lazy<Table<MotorRow>>(lockedRotorThreeFile),
  motorBranch: lazy<MotorBranchTable>(motorBranchFile),
  motorFlcSingle: lazy<Table<MotorRow>>(motorFlcSingleFile),
  motorFlcThree: lazy<Table<MotorRow>>(motorFlcThreeFile),
  overloadSettings: lazy<Table<OverloadRow>>(overloadSettingsFile),
  pilotDuty: lazy<Table<PilotDutyRow>>(pilotDutyFile),
  receptacleCircuits: lazy<Table<ReceptacleCircuitRow>>(receptacleCircuitsFile),
  receptacles: lazy<Table<ReceptacleRow>>(receptaclesFile),
  socketRules: lazy<Table<SocketRuleRow>>(socketRulesFile),
  startsPerHour: lazy<Table<StartsRow>>(startsPerHourFile),
  utilization: lazy<Table<UtilizationRow>>(utilizationFile),
  voltageClasses: lazy<Table<VoltageClassRow>>(voltageClassesFile),
  wireAwg: lazy<Table<WireAwgRow>>(wireAwgFile),
  wireIec60228: lazy<Table<WireIecRow>>(wireIec60228File),
} as const;
export type TableName = keyof typeof tables;

/** Status of one cell: its own, else its column's, else its row's. */
export function cellStatus<R extends RowBase>(
  table: Table<R>,
  row: R,
  column: Extract<keyof R, string>,
): TableStatus {
  return row.cellStatus?.[column] ?? table.columnStatus?.[column] ?? row.status;
}

/** Making and breaking multiples of a category's rated current, from the capacity test. */
export function capacityOf(category: 'AC-1' | 'AC-3' | 'AC-4', ratedAmps: number): UtilizationRow {
  const row = tables
    .utilization()
    .rows.find(
      (r) =>
        r.category === category &&
        r.test === 'capacity' &&
        ratedAmps > r.above &&
        ratedAmps <= (r.upTo ?? Infinity),
    );
  // ratedAmps is never zero or below in a read plan; the first row serves if it is
  return row ?? tables.utilization().rows.find((r) => r.category === category)!;
}

/** Value of a motor branch rule by its name in the table, with its clause. */
export function branchRule(name: string): MotorBranchRow {
  const row = tables.motorBranch().rows.find((r) => r.name === name);
  if (row === undefined) throw new Error(`no motor branch rule named ${name}`);
  return row;
}

/** Multiple of a socket's rating that a rule of thumb names. */
export function socketRule(name: SocketRuleRow['name']): number {
  return tables.socketRules().rows.find((r) => r.name === name)!.value;
}
