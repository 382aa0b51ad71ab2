/** The library: read a plan, check it, tabulate it, make its lists and sheets. Every function is pure and throws nothing for bad plans. */

export { allCautions } from './findings/cautions/choose.ts';
export { explanations } from './findings/explanations.ts';
export type { Finding, Report } from './findings/report-model.ts';
export { reportJsonSchema } from './findings/report-schema.ts';
export { materials } from './lists/materials.ts';
export type { Materials } from './lists/materials-model.ts';
export { type NewPlan, newPlan } from './lists/new/new-plan.ts';
export { size } from './lists/size/size.ts';
export type { Size } from './lists/size/size-model.ts';
export { sizeJsonSchema } from './lists/size/size-schema.ts';
export { type Reels, type WireList, wireList } from './lists/wirelist.ts';
export { readMeter } from './machine/read-meter.ts';
export type { Reading } from './machine/reading.ts';
export { meterSheet } from './meter/meter-sheet.ts';
export type { MeterSheet } from './meter/sheet-model.ts';
export { planJsonSchema } from './plan/editor/editor-schema.ts';
export { formatPlanErrors } from './plan/errors.ts';
export type { Plan, PlanError, ReadResult } from './plan/plan.ts';
export { readPlan } from './plan/read.ts';
export { WhatIfs } from './plan/what-if/what-if.ts';
export { check } from './repair/check.ts';
export { mend } from './repair/mend.ts';
export type { Mended } from './repair/mended.ts';
export { renderText } from './report/check.ts';
export { Study, study } from './study/study.ts';
export type { TableRow, TruthTable } from './study/table-model.ts';
