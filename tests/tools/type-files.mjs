// What the files of types are that are made of the zod schemas: `types-of-schemas.mjs` writes them.

const EDIT = { from: 'src/edit/edits.ts', name: 'Edit' };
const CHANGE = { from: 'src/findings/figure-changes.ts', name: 'FigureChange' };
const LENGTH_UNIT = { from: 'src/text/lengths.ts', name: 'LengthUnit' };
const TOLD = { from: 'src/findings/report-types.ts', name: 'Told' };

/**
 * Each file of types: the schemas it is made from, what they are called there, which types come from elsewhere, and which of
 * them have all the fields of another.
 */
export const FILES = {
  'src/findings/report-types.ts': {
    about:
      'What a check says, as data: format 1 of the report. Volts are V (RMS for AC), currents A (RMS), shares fractions of one. A number that cannot be worked out from the plan is `null`, never 0.',
    schemas: 'src/findings/report-schema.ts',
    names: {
      figureSchema: 'Figure',
      remedySchema: 'Remedy',
      alsoSchema: 'Also',
      causeSchema: 'Cause',
      findingRepairSchema: 'FindingRepair',
      findingSchema: 'Finding',
      questionSchema: 'Question',
      stepSchema: 'LogicStep',
      counterexampleSchema: 'Counterexample',
      logicSchema: 'LogicProof',
      coilSchema: 'CoilFigures',
      contactSchema: 'ContactFigures',
      cautionSchema: 'Caution',
      reportSchema: 'Report',
      unreadableSchema: 'Unreadable',
      toldSchema: 'Told',
    },
    elsewhere: { editSchema: EDIT, figureChangeSchema: CHANGE },
  },
  'src/findings/figure-changes.ts': {
    about: 'Changes of the figures of a plan, as a report tells them.',
    schemas: 'src/findings/changes-schema.ts',
    names: { figureChangeSchema: 'FigureChange' },
    elsewhere: {},
  },
  'src/lists/size/size-model.ts': {
    about: 'What a plan allows and needs, as data: format 1 of `pullin size --json`.',
    schemas: 'src/lists/size/size-schema.ts',
    names: {
      limitSchema: 'Limit',
      figureSchema: 'SizeFigure',
      sectionSchema: 'Section',
      coilSchema: 'CoilChoice',
      pointSchema: 'PlotPoint',
      plotSchema: 'Plot',
      sizeSchema: 'Size',
    },
    elsewhere: { toldSchema: TOLD },
  },
  'src/meter/faults/table-model.ts': {
    about: 'The single-fault table as data: format 1 of `pullin faults --json`.',
    schemas: 'src/meter/faults/table-schema.ts',
    names: { rowSchema: 'FaultRow', faultTableSchema: 'FaultTable' },
    elsewhere: { toldSchema: TOLD },
  },
  'src/meter/hunt/hunt-model.ts': {
    about: 'What a hunt tells, as data: format 1 of `pullin hunt --json`.',
    schemas: 'src/meter/hunt/hunt-schema.ts',
    names: {
      suspectSchema: 'HuntSuspect',
      nextSchema: 'HuntNext',
      endSchema: 'HuntEnd',
      huntSchema: 'HuntTold',
    },
    elsewhere: { toldSchema: TOLD },
  },
  'src/lists/materials-model.ts': {
    about: 'What to buy for a plan, as data: format 1 of `pullin materials --json`.',
    schemas: 'src/lists/materials-schema.ts',
    names: {
      leastRatingSchema: 'LeastRating',
      leastRatingsSchema: 'LeastRatings',
      itemSchema: 'MaterialItem',
      cableSchema: 'MaterialCable',
      jointSchema: 'MaterialJoint',
      smallSchema: 'SmallPart',
      materialsSchema: 'Materials',
    },
    elsewhere: { toldSchema: TOLD, lengthUnitSchema: LENGTH_UNIT },
    fieldsOf: { itemSchema: 'leastRatingsSchema', cableSchema: 'leastRatingsSchema' },
  },
  'src/machine/reading.ts': {
    about: 'What a meter reads, as data: format 1 of `pullin read --json`.',
    schemas: 'src/machine/reading-schema.ts',
    names: {
      netSchema: 'NetReading',
      coreSchema: 'CoreReading',
      stateSchema: 'ReadState',
      readingSchema: 'Reading',
    },
    elsewhere: {},
  },
  'src/study/table-model.ts': {
    about: 'The truth table as data, as `pullin table --json` prints it.',
    schemas: 'src/study/table-schema.ts',
    names: {
      rowSchema: 'TableRow',
      momentSchema: 'Moment',
      inTimeSchema: 'InTime',
      tableSchema: 'TruthTable',
    },
    elsewhere: {},
  },
  'src/repair/mended.ts': {
    about: 'What the search for repairs found, as data: format 1 of `pullin mend --json`.',
    schemas: 'src/repair/mended-schema.ts',
    names: { stateLineSchema: 'StateLine', repairSchema: 'Repair', mendedSchema: 'Mended' },
    elsewhere: { editSchema: EDIT },
  },
  'src/meter/sheet/sheet-model.ts': {
    about: 'The commissioning sheet as data: format 1 of `pullin meter --json`.',
    schemas: 'src/meter/sheet/sheet-schema.ts',
    names: {
      stageSchema: 'MeterStage',
      showsSchema: 'MeterShows',
      wrongSchema: 'Wrong',
      expectedSchema: 'Expected',
      meaningSchema: 'Meaning',
      checkStepSchema: 'CheckStep',
      readStepSchema: 'ReadStep',
      stepSchema: 'MeterStep',
      setupSchema: 'StageSetup',
      hiddenSchema: 'HiddenFault',
      meterSheetSchema: 'MeterSheet',
    },
    elsewhere: {
      toldSchema: TOLD,
      probeSchema: { from: 'src/machine/read-meter.ts', name: 'Probe' },
    },
  },
  'src/lists/wirelist-model.ts': {
    about: 'The wire list as data: format 1 of `pullin wirelist --json`.',
    schemas: 'src/lists/wirelist-schema.ts',
    names: {
      wireEndSchema: 'WireEnd',
      overloadSchema: 'WireOverload',
      wireRowSchema: 'WireRow',
      pieceSchema: 'CutPiece',
      reelSchema: 'CutPlanReel',
      cutsSchema: 'CableCuts',
      labelSchema: 'WireLabel',
      wireListSchema: 'WireList',
    },
    elsewhere: {
      toldSchema: TOLD,
      lengthUnitSchema: LENGTH_UNIT,
      sectionSchema: { from: 'src/lists/wiring-section.ts', name: 'Section' },
    },
  },
};
