/**
 * The tables, each by its name. Every one is an export of its own, so that what is bundled for a page leaves out those that
 * it never asks for; whoever wants them imports the file as `tables`.
 */
import { lazy } from './lazy.ts';
import type {
  AmbientFactorRow,
  ControlProtectionRow,
  CoreColourRow,
  EarthConductorRow,
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
  MotorBranchTable,
  MotorRow,
  OverloadRow,
  PilotDutyRow,
  ReceptacleCircuitRow,
  ReceptacleRow,
  SocketRuleRow,
  StartsRow,
  Table,
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
import earthConductorsFile from './tables/earth-conductors.json' with { type: 'json' };
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

export const fuseGates = /* @__PURE__ */ lazy<Table<FuseGateRow>>(fuseGatesFile);
export const fuseBands = /* @__PURE__ */ lazy<Table<FuseBandRow>>(fuseBandsFile);
export const fuseConventional = /* @__PURE__ */ lazy<Table<FuseConventionalRow>>(fuseConventionalFile);
export const controlProtection = /* @__PURE__ */ lazy<Table<ControlProtectionRow>>(controlProtectionFile);
export const laidConductors = /* @__PURE__ */ lazy<Table<LaidConductorRow>>(laidConductorsFile);
export const loadedCores = /* @__PURE__ */ lazy<Table<LoadedCoresRow>>(loadedCoresFile);
export const ambientFactors = /* @__PURE__ */ lazy<Table<AmbientFactorRow>>(ambientFactorsFile);
export const boxFill = /* @__PURE__ */ lazy<Table<BoxFillRow>>(boxFillFile);
export const boxVolumes = /* @__PURE__ */ lazy<Table<BoxVolumeRow>>(boxVolumesFile);
export const breakerCurves = /* @__PURE__ */ lazy<Table<BreakerCurveRow>>(breakerCurvesFile);
export const class2 = /* @__PURE__ */ lazy<Table<Class2Row>>(class2File);
export const codeLetters = /* @__PURE__ */ lazy<Table<CodeLetterRow>>(codeLettersFile);
export const conductorAmpacityNec = /* @__PURE__ */ lazy<Table<ConductorNecRow>>(conductorAmpacityNecFile);
export const controlWire = /* @__PURE__ */ lazy<Table<ControlWireRow>>(controlWireFile);
export const cordAmpacityIec = /* @__PURE__ */ lazy<Table<CordIecRow>>(cordAmpacityIecFile);
export const cordAmpacityNec = /* @__PURE__ */ lazy<Table<CordNecRow>>(cordAmpacityNecFile);
export const coreColours = /* @__PURE__ */ lazy<Table<CoreColourRow>>(coreColoursFile);
export const dcBreaking = /* @__PURE__ */ lazy<Table<DcBreakingRow>>(dcBreakingFile);
export const earthConductors = /* @__PURE__ */ lazy<Table<EarthConductorRow>>(earthConductorsFile);
export const extraLow = /* @__PURE__ */ lazy<Table<ExtraLowRow>>(extraLowFile);
export const failureShares = /* @__PURE__ */ lazy<Table<FailureShareRow>>(failureSharesFile);
export const failureWeights = /* @__PURE__ */ lazy<Table<FailureWeightRow>>(failureWeightsFile);
export const horsepowerRatings = /* @__PURE__ */ lazy<Table<HorsepowerRatingRow>>(horsepowerRatingsFile);
export const inrush = /* @__PURE__ */ lazy<Table<InrushRow>>(inrushFile);
export const lockedRotorSingle = /* @__PURE__ */ lazy<Table<MotorRow>>(lockedRotorSingleFile);
export const lockedRotorThree = /* @__PURE__ */ lazy<Table<MotorRow>>(lockedRotorThreeFile);
export const motorBranch = /* @__PURE__ */ lazy<MotorBranchTable>(motorBranchFile);
export const motorFlcSingle = /* @__PURE__ */ lazy<Table<MotorRow>>(motorFlcSingleFile);
export const motorFlcThree = /* @__PURE__ */ lazy<Table<MotorRow>>(motorFlcThreeFile);
export const overloadSettings = /* @__PURE__ */ lazy<Table<OverloadRow>>(overloadSettingsFile);
export const pilotDuty = /* @__PURE__ */ lazy<Table<PilotDutyRow>>(pilotDutyFile);
export const receptacleCircuits = /* @__PURE__ */ lazy<Table<ReceptacleCircuitRow>>(receptacleCircuitsFile);
export const receptacles = /* @__PURE__ */ lazy<Table<ReceptacleRow>>(receptaclesFile);
export const socketRules = /* @__PURE__ */ lazy<Table<SocketRuleRow>>(socketRulesFile);
export const startsPerHour = /* @__PURE__ */ lazy<Table<StartsRow>>(startsPerHourFile);
export const utilization = /* @__PURE__ */ lazy<Table<UtilizationRow>>(utilizationFile);
export const voltageClasses = /* @__PURE__ */ lazy<Table<VoltageClassRow>>(voltageClassesFile);
export const wireAwg = /* @__PURE__ */ lazy<Table<WireAwgRow>>(wireAwgFile);
export const wireIec60228 = /* @__PURE__ */ lazy<Table<WireIecRow>>(wireIec60228File);
