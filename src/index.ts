/** The library: read a plan, check it, tabulate it. Every function is pure and throws nothing for bad plans. */
export { mend } from './bench/mend.ts';
export type { Mended } from './bench/mended.ts';
export { readMeter } from './bench/read.ts';
export type { Reading } from './bench/reading.ts';
export { check } from './checks/check.ts';
export { explanations } from './checks/explain.ts';
export { truthTable } from './checks/table.ts';
export { formatPlanErrors } from './plan/errors.ts';
export type { Plan, PlanError, ReadResult } from './plan/plan.ts';
export { readPlan } from './plan/read.ts';
export { planJsonSchema } from './plan/schema.ts';
export type { Finding, Report } from './report/model.ts';
export { reportJsonSchema } from './report/schema.ts';
export { renderText } from './report/text.ts';
