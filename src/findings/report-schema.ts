/** The report as zod schemas, from which its types and `schemas/report.schema.json` are made. Not loaded by a check. */
import * as z from 'zod';
import { editSchema, figureChangeSchema } from './changes-schema.ts';
import { FINDING_IDS } from './finding-ids.ts';
import { ANSWERS, LEVELS, SEVERITIES, VERDICTS } from './report-words.ts';

const known = z.number().nullable();
const questionNumber = z.int().min(1).max(7);

/** What other products tell of the check. */
export const toldSchema = z
  .object({
    verdict: z.enum(VERDICTS).describe('What `check` says of the plan'),
    finding: z
      .string()
      .nullable()
      .describe('Message of the gravest finding that led to it; null where the plan passes'),
  })
  .describe('What `check` says of the plan that something else was made from');

export const figureSchema = z
  .object({
    name: z.string().describe('What the figure is, in plain words'),
    value: known.describe('The number, or null where the plan does not settle it'),
    unit: z.string().describe('SI unit or the trade unit it is printed in; empty for a plain number'),
  })
  .describe('A figure that a finding rests on');

export const remedySchema = z
  .object({
    words: z.string().describe('What to do, as a sentence'),
    changes: z.array(figureChangeSchema).describe('The least changes that do it, all of them together'),
    leaves: z.array(z.enum(FINDING_IDS)).describe('Lesser findings that it brings with it'),
  })
  .describe('Other figures that do away with a finding, tried in the plan');

export const alsoSchema = z
  .object({
    id: z
      .enum(FINDING_IDS)
      .describe('What follows; the id of the finding itself where another part has the same'),
    message: z.string().describe('What happens, as a sentence without its full stop'),
  })
  .describe('What follows from a finding');

export const causeSchema = z
  .object({
    what: z
      .enum(['tab', 'diode'])
      .describe('tab: ends of cores on the wrong tab; diode: a diode the wrong way round'),
    terminals: z.array(z.string()).describe('Terminals to look at, as PART.TERMINAL'),
  })
  .describe('The one change of wiring that was proved to do away with a finding');

export const findingRepairSchema = z
  .object({
    words: z.array(z.string()).describe('What to do at the bench, a sentence a step'),
    edits: z.array(editSchema).describe('The same as changes of the plan'),
  })
  .describe('What has to be changed in the wiring; verified by the whole check');

export const findingSchema = z
  .object({
    id: z.enum(FINDING_IDS).describe('Stable name of the finding; `pullin explain ID` tells more'),
    severity: z
      .enum(SEVERITIES)
      .describe(
        'Signal word of ISO 3864-2 and ANSI Z535; fault: does not do what is intended; doubt: cannot be decided',
      ),
    question: questionNumber.describe('The question, 1 to 7, that the finding bears on'),
    parts: z.array(z.string()).describe('Names of the parts concerned, the one at fault first'),
    terminals: z.array(z.string()).describe('Terminals concerned, as PART.TERMINAL'),
    line: z.int().min(1).describe('Line in the plan file, from one'),
    column: z.int().min(1).describe('Column in that line, from one'),
    message: z.string().describe('What happens at the machine'),
    why: z.string().describe('The path or the figures that show it'),
    fix: z.string().describe('What to do'),
    figures: z.array(figureSchema).describe('The figures it rests on'),
    basis: z.string().describe('Standard and clause, or "common practice"'),
    cause: causeSchema
      .nullable()
      .describe(
        'The one change that was proved to do away with it and all that follows; null where none is known',
      ),
    also: z.array(alsoSchema).describe('What follows from this finding and is not counted on its own'),
    repair: findingRepairSchema
      .nullable()
      .describe(
        'The least change of wiring that was verified to mend it; null where none was sought or found',
      ),
    remedies: z
      .array(remedySchema)
      .describe(
        'Changes of figures, any one of which was put into the plan and did away with it; empty where none was sought or found',
      ),
  })
  .describe('One thing that is wrong, or cannot be told, or is worth knowing');

export const questionSchema = z
  .object({
    number: questionNumber.describe('1 to 7'),
    question: z.string().describe('Put so that yes is the good answer'),
    answer: z.enum(ANSWERS).describe('no and cannot tell have a finding behind them'),
    figure: z.string().describe('The one figure or fact that decides the answer'),
  })
  .describe('One of the seven questions with its answer');

export const stepSchema = z
  .object({
    moved: z.record(z.string(), z.string()).describe('Inputs moved in this step, each with its new position'),
  })
  .describe('Inputs that are moved together');

export const counterexampleSchema = z
  .object({
    steps: z.array(stepSchema).describe('From rest, in order; the fewest inputs that show it'),
    target: z.string().describe('Load or relay that does not do what is intended'),
    expected: z.boolean().describe('Whether it ought to run'),
    found: z.boolean().describe('Whether it runs'),
  })
  .describe('The fewest moves after which something is not as intended');

export const logicSchema = z
  .object({
    inputs: z.int().min(0).describe('Gates, switches, buttons and cut-outs that can be moved'),
    combinations: z
      .union([z.number(), z.string()])
      .describe('Positions of all inputs together; a text such as "2^200" where the number is too long'),
    holds: z
      .boolean()
      .nullable()
      .describe('By what is joined to what. True: proved for all of them; false: refuted; null: not decided'),
    counterexample: counterexampleSchema
      .nullable()
      .describe('Where it does not hold; null where it does or is not decided'),
    holdsAtNominalVolts: z
      .boolean()
      .nullable()
      .describe(
        'The same at nominal volts, where a coil that does not get its pull-in is out; false wherever `holds` is',
      ),
    restsOn: z
      .enum(['joins', 'volts', 'some volts', 'no volts'])
      .nullable()
      .describe(
        'joins: nominal volts are ample, so what is joined settles it; volts: the volts of coils were solved in every state; some volts: in the states of the truth table alone; no volts: they were not; null: not decided',
      ),
  })
  .describe('What was proved of the whole plan, over every position of its inputs');

export const coilSchema = z
  .object({
    relay: z.string().describe('Name of the relay, timer or board'),
    gate: z
      .string()
      .nullable()
      .describe(
        'What is opened or moved to feed the coil; null where any gate gives the same, or none need be moved',
      ),
    atRest: z
      .literal(true)
      .optional()
      .describe('Where the coil is fed with nothing moved: its gates are break contacts'),
    metres: known.describe('m of conductor in the loop, there and back'),
    ohms: known.describe('ohm of wires and contacts in the loop at 20 °C'),
    volts: z
      .object({
        min: known.describe('V, the least'),
        nominal: known.describe('V, as printed at 20 °C'),
        max: known.describe('V, the most'),
      })
      .describe(
        'V at the coil: least over states and tolerances, as printed at 20 °C, most; an AC coil least and as printed with its armature open',
      ),
    pullIn: known.describe('V the warm coil needs to pull in'),
    dropOut: known.describe('V below which the coil lets go'),
    margin: known.describe('(least volts - pull-in) / rated volts, a share of one'),
    corner: z.string().describe('Supply, temperature and state in which the least volts occur'),
  })
  .describe('What one coil gets and needs');

export const contactSchema = z
  .object({
    relay: z.string().describe('Name of the relay'),
    pole: z.int().min(1).describe('Pole of the relay, from one'),
    load: z.string().nullable().describe('What it switches; null for a coil or a load without a name'),
    running: known.describe('A, full-load current'),
    starting: known.describe('A, locked-rotor or inrush current'),
    ratingUsed: z
      .string()
      .nullable()
      .describe('The rating that was compared, as printed; null where none serves'),
    multiple: known.describe('Current the contact can make, as a multiple of its rating'),
    verdict: z.enum(ANSWERS).describe('Whether the contact bears it'),
    basis: z.string().describe('Standard and clause, or "common practice"'),
  })
  .describe('What one contact switches, and what it is rated for');

export const cautionSchema = z
  .object({
    id: z.string().describe('Stable name of the caution'),
    level: z.enum(LEVELS).describe('Signal word of ISO 3864-2 and ANSI Z535'),
    text: z.string().describe('The caution, as sentences'),
    basis: z.string().describe('Standard and clause; "(from memory)" where the clause was not read'),
  })
  .describe('A caution that the plan calls for');

export const reportSchema = z
  .object({
    format: z.literal(1).describe('Number of the format; a number more where an old reader would go wrong'),
    plan: z
      .object({
        file: z.string().describe('Name of the file as it was given; - for standard input'),
        title: z.string().describe('What the plan calls itself'),
        practice: z.enum(['nec', 'iec']).describe('Which published tables it is judged by'),
        practiceFrom: z
          .enum(['plan', 'patterns', 'taken'])
          .describe('Whether the plan states its practice, its plugs and outlets tell it, or neither does'),
        lengths: z
          .enum(['m', 'ft'])
          .describe('What the plan gives most lengths in; sentences tell lengths so'),
      })
      .describe('Which plan it is of'),
    verdict: z
      .enum(VERDICTS)
      .describe('fail: a danger, warning or fault stands; cannot-tell: only doubts do; else pass'),
    questions: z.array(questionSchema).describe('All seven, in order'),
    findings: z
      .array(findingSchema)
      .describe('What was found; what only follows from another stands in its also'),
    logic: logicSchema.describe('What was proved'),
    coils: z.array(coilSchema).describe('Volts at each coil: a row for each gate that gives it other volts'),
    contacts: z.array(contactSchema).describe('Each contact with what it switches'),
    cautions: z
      .array(cautionSchema)
      .describe(
        'What to mind while building and using it: those of every plan, then those that this one gives cause for',
      ),
    defaults: z.array(z.string()).describe('Figures the plan leaves out and the value taken instead'),
  })
  .describe('Report of `pullin check --json`, format 1');

export const unreadableSchema = z
  .object({
    format: z.literal(1).describe('Number of the format; a number more where an old reader would go wrong'),
    file: z.string().describe('Name of the file as it was given'),
    errors: z
      .array(
        z.object({
          line: z.int().nullable().describe('From one; null where the file itself cannot be read'),
          column: z.int().nullable().describe('From one, in UTF-16 units; null likewise'),
          message: z.string().describe('What is wrong, and the nearest that would do'),
        }),
      )
      .min(1)
      .describe('In the order of the file'),
    ownMistake: z
      .literal(true)
      .optional()
      .describe('Where pullin made a mistake of its own, so that nothing is known of the plan'),
  })
  .describe('What stands in place of the report of a plan that cannot be read');

/** JSON Schema (draft 2020-12) of the report of one plan, or of why there is none. */
export function reportJsonSchema(): Record<string, unknown> {
  const either = z.union([reportSchema, unreadableSchema]);
  return { ...z.toJSONSchema(either), title: 'pullin report, format 1' };
}
