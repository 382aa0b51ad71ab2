/**
 * The types of reports are written by `tests/tools/types-of-schemas.mjs`. The compiler compares each with what zod itself
 * infers from the schema; a type that is written wrong does not compile here.
 */
import { describe, expect, it } from 'vitest';
import type * as z from 'zod';
import { figureChangeSchema } from '../../src/findings/changes-schema.ts';
import { explanationSchema } from '../../src/findings/explanation-schema.ts';
import type { Explanation } from '../../src/findings/explanations.ts';
import type { FigureChange } from '../../src/findings/figure-changes.ts';
import * as reports from '../../src/findings/report-schema.ts';
import type * as Reports from '../../src/findings/report-types.ts';
import type * as Materials from '../../src/lists/materials-model.ts';
import * as materials from '../../src/lists/materials-schema.ts';
import type * as Sizes from '../../src/lists/size/size-model.ts';
import * as sizes from '../../src/lists/size/size-schema.ts';
import type { WireList } from '../../src/lists/wirelist.ts';
import { wireListSchema } from '../../src/lists/wirelist-schema.ts';
import type { Reading } from '../../src/machine/reading.ts';
import { readingSchema } from '../../src/machine/reading-schema.ts';
import type * as Faults from '../../src/meter/faults/table-model.ts';
import * as faults from '../../src/meter/faults/table-schema.ts';
import type * as Hunts from '../../src/meter/hunt/hunt-model.ts';
import * as hunts from '../../src/meter/hunt/hunt-schema.ts';
import type { MeterSheet } from '../../src/meter/sheet/sheet-model.ts';
import { meterSheetSchema } from '../../src/meter/sheet/sheet-schema.ts';
import type { Mended } from '../../src/repair/mended.ts';
import type { mendedSchema } from '../../src/repair/mended-schema.ts';
import type { growthSchema } from '../../src/report/answer-schemas.ts';
import type { GrowthAnswer } from '../../src/report/growth.ts';
import type { TruthTable } from '../../src/study/table-model.ts';
import { tableSchema } from '../../src/study/table-schema.ts';

/** Tuples stay tuples. */
type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/** Whether each of two types can stand for the other, field by field. */
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;

/** `true` where a type is what the schema infers; else the compiler refuses the argument. */
function same<Schema extends z.ZodType, Type>(
  schema: Schema,
  _is: Same<Frozen<z.infer<Schema>>, Type>,
): z.ZodType {
  return schema;
}

/** Edits have a type of their own, with the fields that a schema lets be left out. */
type WithEdits<T> = Omit<T, 'repair'>;

const WRITTEN: readonly z.ZodType[] = [
  same<typeof reports.figureSchema, Reports.Figure>(reports.figureSchema, true),
  same<typeof figureChangeSchema, FigureChange>(figureChangeSchema, true),
  same<typeof reports.remedySchema, Reports.Remedy>(reports.remedySchema, true),
  same<typeof reports.alsoSchema, Reports.Also>(reports.alsoSchema, true),
  same<typeof reports.causeSchema, Reports.Cause>(reports.causeSchema, true),
  same<typeof reports.questionSchema, Reports.Question>(reports.questionSchema, true),
  same<typeof reports.stepSchema, Reports.LogicStep>(reports.stepSchema, true),
  same<typeof reports.counterexampleSchema, Reports.Counterexample>(reports.counterexampleSchema, true),
  same<typeof reports.logicSchema, Reports.LogicProof>(reports.logicSchema, true),
  same<typeof reports.coilSchema, Reports.CoilFigures>(reports.coilSchema, true),
  same<typeof reports.contactSchema, Reports.ContactFigures>(reports.contactSchema, true),
  same<typeof reports.cautionSchema, Reports.Caution>(reports.cautionSchema, true),
  same<typeof reports.unreadableSchema, Reports.Unreadable>(reports.unreadableSchema, true),
  same<typeof reports.toldSchema, Reports.Told>(reports.toldSchema, true),
  same<typeof sizes.limitSchema, Sizes.Limit>(sizes.limitSchema, true),
  same<typeof sizes.figureSchema, Sizes.SizeFigure>(sizes.figureSchema, true),
  same<typeof sizes.sectionSchema, Sizes.Section>(sizes.sectionSchema, true),
  same<typeof sizes.coilSchema, Sizes.CoilChoice>(sizes.coilSchema, true),
  same<typeof sizes.pointSchema, Sizes.PlotPoint>(sizes.pointSchema, true),
  same<typeof sizes.plotSchema, Sizes.Plot>(sizes.plotSchema, true),
  same<typeof sizes.sizeSchema, Sizes.Size>(sizes.sizeSchema, true),
  same<typeof faults.rowSchema, Faults.FaultRow>(faults.rowSchema, true),
  same<typeof faults.faultTableSchema, Faults.FaultTable>(faults.faultTableSchema, true),
  same<typeof hunts.suspectSchema, Hunts.HuntSuspect>(hunts.suspectSchema, true),
  same<typeof hunts.nextSchema, Hunts.HuntNext>(hunts.nextSchema, true),
  same<typeof hunts.endSchema, Hunts.HuntEnd>(hunts.endSchema, true),
  same<typeof hunts.huntSchema, Hunts.HuntTold>(hunts.huntSchema, true),
  same<typeof materials.leastRatingSchema, Materials.LeastRating>(materials.leastRatingSchema, true),
  same<typeof materials.leastRatingsSchema, Materials.LeastRatings>(materials.leastRatingsSchema, true),
  same<typeof materials.itemSchema, Materials.MaterialItem>(materials.itemSchema, true),
  same<typeof materials.cableSchema, Materials.MaterialCable>(materials.cableSchema, true),
  same<typeof materials.jointSchema, Materials.MaterialJoint>(materials.jointSchema, true),
  same<typeof materials.smallSchema, Materials.SmallPart>(materials.smallSchema, true),
  same<typeof materials.materialsSchema, Materials.Materials>(materials.materialsSchema, true),
];

/** Types that are written by hand, with what a program needs to know of them, beside the schemas of what is printed. */
const BY_HAND: readonly z.ZodType[] = [
  same<typeof wireListSchema, WireList>(wireListSchema, true),
  same<typeof readingSchema, Reading>(readingSchema, true),
  same<typeof meterSheetSchema, MeterSheet>(meterSheetSchema, true),
  same<typeof tableSchema, TruthTable>(tableSchema, true),
  same<typeof explanationSchema, Explanation>(explanationSchema, true),
];
const MENDED: Same<Omit<Frozen<z.infer<typeof mendedSchema>>, 'repairs'>, Omit<Mended, 'repairs'>> = true;
type Findings = 'came' | 'went' | 'changed';
const GROWTH: Same<Omit<Frozen<z.infer<typeof growthSchema>>, Findings>, Omit<GrowthAnswer, Findings>> = true;

/** The same of what holds edits, but for them. */
const FINDING: Same<
  WithEdits<Frozen<z.infer<typeof reports.findingSchema>>>,
  WithEdits<Reports.Finding>
> = true;
const REPORT: Same<
  Omit<Frozen<z.infer<typeof reports.reportSchema>>, 'findings'>,
  Omit<Reports.Report, 'findings'>
> = true;

describe('the types of what --json prints', () => {
  it('are what zod infers from the schemas, each of which says what it is', () => {
    expect([FINDING, REPORT, MENDED, GROWTH]).toEqual([true, true, true, true]);
    expect(BY_HAND.length).toBeGreaterThan(0);
    const whole = [...WRITTEN, reports.findingRepairSchema, reports.findingSchema, reports.reportSchema];
    expect(whole.filter((schema) => (schema.description ?? '') === '')).toEqual([]);
  });
});
