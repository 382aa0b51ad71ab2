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
import { lengthUnitSchema } from '../../src/lists/length-schema.ts';
import type * as Materials from '../../src/lists/materials-model.ts';
import * as materials from '../../src/lists/materials-schema.ts';
import type * as Sizes from '../../src/lists/size/size-model.ts';
import * as sizes from '../../src/lists/size/size-schema.ts';
import type * as Wires from '../../src/lists/wirelist-model.ts';
import * as wires from '../../src/lists/wirelist-schema.ts';
import type { Section } from '../../src/lists/wiring-section.ts';
import type { Probe } from '../../src/machine/read-meter.ts';
import type * as Readings from '../../src/machine/reading.ts';
import * as readings from '../../src/machine/reading-schema.ts';
import type * as Faults from '../../src/meter/faults/table-model.ts';
import * as faults from '../../src/meter/faults/table-schema.ts';
import type * as Hunts from '../../src/meter/hunt/hunt-model.ts';
import * as hunts from '../../src/meter/hunt/hunt-schema.ts';
import type * as Sheets from '../../src/meter/sheet/sheet-model.ts';
import * as sheets from '../../src/meter/sheet/sheet-schema.ts';
import type * as Mends from '../../src/repair/mended.ts';
import * as mends from '../../src/repair/mended-schema.ts';
import type { growthSchema } from '../../src/report/answer-schemas.ts';
import type { GrowthAnswer } from '../../src/report/growth.ts';
import type * as Tables from '../../src/study/table-model.ts';
import * as tables from '../../src/study/table-schema.ts';
import type { LengthUnit } from '../../src/text/lengths.ts';

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
  same<typeof readings.netSchema, Readings.NetReading>(readings.netSchema, true),
  same<typeof readings.coreSchema, Readings.CoreReading>(readings.coreSchema, true),
  same<typeof readings.stateSchema, Readings.ReadState>(readings.stateSchema, true),
  same<typeof readings.readingSchema, Readings.Reading>(readings.readingSchema, true),
  same<typeof tables.rowSchema, Tables.TableRow>(tables.rowSchema, true),
  same<typeof tables.momentSchema, Tables.Moment>(tables.momentSchema, true),
  same<typeof tables.inTimeSchema, Tables.InTime>(tables.inTimeSchema, true),
  same<typeof tables.tableSchema, Tables.TruthTable>(tables.tableSchema, true),
  same<typeof sheets.stageSchema, Sheets.MeterStage>(sheets.stageSchema, true),
  same<typeof sheets.showsSchema, Sheets.MeterShows>(sheets.showsSchema, true),
  same<typeof sheets.wrongSchema, Sheets.Wrong>(sheets.wrongSchema, true),
  same<typeof sheets.expectedSchema, Sheets.Expected>(sheets.expectedSchema, true),
  same<typeof sheets.meaningSchema, Sheets.Meaning>(sheets.meaningSchema, true),
  same<typeof sheets.checkStepSchema, Sheets.CheckStep>(sheets.checkStepSchema, true),
  same<typeof sheets.readStepSchema, Sheets.ReadStep>(sheets.readStepSchema, true),
  same<typeof sheets.stepSchema, Sheets.MeterStep>(sheets.stepSchema, true),
  same<typeof sheets.setupSchema, Sheets.StageSetup>(sheets.setupSchema, true),
  same<typeof sheets.hiddenSchema, Sheets.HiddenFault>(sheets.hiddenSchema, true),
  same<typeof sheets.meterSheetSchema, Sheets.MeterSheet>(sheets.meterSheetSchema, true),
  same<typeof wires.wireEndSchema, Wires.WireEnd>(wires.wireEndSchema, true),
  same<typeof wires.overloadSchema, Wires.WireOverload>(wires.overloadSchema, true),
  same<typeof wires.wireRowSchema, Wires.WireRow>(wires.wireRowSchema, true),
  same<typeof wires.pieceSchema, Wires.CutPiece>(wires.pieceSchema, true),
  same<typeof wires.reelSchema, Wires.CutPlanReel>(wires.reelSchema, true),
  same<typeof wires.cutsSchema, Wires.CableCuts>(wires.cutsSchema, true),
  same<typeof wires.labelSchema, Wires.WireLabel>(wires.labelSchema, true),
  same<typeof wires.wireListSchema, Wires.WireList>(wires.wireListSchema, true),
  same<typeof mends.stateLineSchema, Mends.StateLine>(mends.stateLineSchema, true),
];

/** Types that are written by hand, because a program makes or asks for them as well, beside the schemas of what is printed. */
const BY_HAND: readonly z.ZodType[] = [
  same<typeof explanationSchema, Explanation>(explanationSchema, true),
  same<typeof sheets.probeSchema, Probe>(sheets.probeSchema, true),
  same<typeof lengthUnitSchema, LengthUnit>(lengthUnitSchema, true),
  same<typeof wires.sectionSchema, Section>(wires.sectionSchema, true),
];
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

const REPAIR: Same<
  Omit<Frozen<z.infer<typeof mends.repairSchema>>, 'edits'>,
  Omit<Mends.Repair, 'edits'>
> = true;
const MENDED: Same<
  Omit<Frozen<z.infer<typeof mends.mendedSchema>>, 'repairs'>,
  Omit<Mends.Mended, 'repairs'>
> = true;

describe('the types of what --json prints', () => {
  it('are what zod infers from the schemas, each of which says what it is', () => {
    expect([FINDING, REPORT, REPAIR, MENDED, GROWTH]).toEqual([true, true, true, true, true]);
    expect(BY_HAND.length).toBeGreaterThan(0);
    const withEdits = [reports.findingRepairSchema, reports.findingSchema, reports.reportSchema];
    const whole = [...WRITTEN, ...withEdits, mends.repairSchema, mends.mendedSchema];
    expect(whole.filter((schema) => (schema.description ?? '') === '')).toEqual([]);
  });
});
