/**
 * The library: read a plan, put it under study, and ask of it what the commands print. Every function is pure: it reads no
 * file, prints nothing, and gives the same for the same plan. Numbers are SI (V, A, ohm, m, s) unless a field says otherwise;
 * AC is RMS; shares are fractions of one. A bad plan is never thrown: it comes back as errors or as findings.
 */

export type { PaperSize } from './draw/paper-sizes.ts';
export type { Edit, EndRef, Rewiring, Saying } from './edit/edits.ts';
export { allCautions } from './findings/cautions/choose.ts';
export { type Explanation, explanations } from './findings/explanations.ts';
export type { FigureChange } from './findings/figure-changes.ts';
export type { FindingId } from './findings/finding-ids.ts';
export { reportJsonSchema } from './findings/report-schema.ts';
export type * from './findings/report-types.ts';
export type { Answer, Level, QuestionNumber, Severity, Verdict } from './findings/report-words.ts';
export * from './library/answers.ts';
export * from './library/drawings.ts';
export * from './library/lists.ts';
export { NotAnswered, type Reason } from './library/not-answered.ts';
export * from './library/plans.ts';
export { Study, study } from './library/study.ts';
export type { EndMethod } from './lists/end-methods.ts';
export type * from './lists/materials-model.ts';
export type { OverloadWay } from './lists/overload-ways.ts';
export type * from './lists/size/size-model.ts';
export { sizeJsonSchema } from './lists/size/size-schema.ts';
export type * from './lists/wirelist-model.ts';
export type { Section as WiringSection } from './lists/wiring-section.ts';
export type { Positions } from './machine/named.ts';
export type { Probe } from './machine/read-meter.ts';
export type * from './machine/reading.ts';
export type * from './meter/faults/table-model.ts';
export { faultsJsonSchema } from './meter/faults/table-schema.ts';
export type * from './meter/hunt/hunt-model.ts';
export { huntJsonSchema } from './meter/hunt/hunt-schema.ts';
export type {
  CheckStep,
  Expected,
  HiddenFault,
  Meaning,
  MeterSheet,
  MeterShows,
  MeterStage,
  MeterStep,
  ReadStep,
  StageSetup,
  Wrong,
} from './meter/sheet/sheet-model.ts';
export type {
  Coil,
  Contact,
  CurrentKind,
  Limit as CoilLimit,
  MotorRating,
  PilotCode,
  Position,
  Power,
  Practice,
  Rating,
  Suppressor,
  Volts,
} from './plan/device-figures.ts';
export { planJsonSchema } from './plan/editor/editor-schema.ts';
export { formatPlanErrors } from './plan/errors.ts';
export type { FailureMode, Likely } from './plan/kinds/failure-modes.ts';
export type { PartBase } from './plan/kinds/part-base.ts';
export type {
  BatteryPart,
  BoardPart,
  BoxPart,
  ButtonPart,
  CoilDevice,
  CutoutPart,
  DiodePart,
  Feed,
  FuseClass,
  FusePart,
  GatePart,
  JointPart,
  LedPart,
  LoadPart,
  MainsBase,
  Midpoint,
  MotorPart,
  OutletPart,
  Part,
  PlugPart,
  Pole,
  RelayPart,
  ResistorPart,
  SelectorPart,
  SupplyPart,
  SwitchLike,
  SwitchPart,
  Tab,
  Thrown,
  TimerPart,
} from './plan/part-types.ts';
export type * from './plan/plan.ts';
export { type Changed, type ChangedResult, planWith } from './plan/what-if/plan-with.ts';
export type { Mended, Repair, StateLine } from './repair/mended.ts';
export { renderText } from './report/check.ts';
export type { TextLook } from './report/forms/text-look.ts';
export type { InTime, Moment, TableRow, TruthTable } from './study/table-model.ts';
export type { LengthUnit } from './text/lengths.ts';
