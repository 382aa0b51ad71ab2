/** The report as zod schemas, from which its types and `schemas/report.schema.json` are made. Not loaded by a check. */
import * as z from 'zod';
import { FINDING_IDS } from './finding-ids.ts';
import { ANSWERS, LEVELS, SEVERITIES, VERDICTS } from './report-words.ts';

const known = z.number().nullable();
const questionNumber = z.int().min(1).max(7);

export const figureSchema = z.object({
  name: z.string().describe('What the figure is, in plain words'),
  value: known.describe('The number, or null where the plan does not settle it'),
  unit: z.string().describe('SI unit or the trade unit it is printed in; empty for a plain number'),
});

const endSchema = z.object({ run: z.int().min(0), core: z.int().min(0), end: z.enum(['a', 'b']) });

/** A change of wiring, or of what the plan says; runs and cores count from nought in the order of the plan. */
export const editSchema = z.discriminatedUnion('do', [
  endSchema.extend({ do: z.literal('move'), to: z.string() }),
  z.object({ do: z.literal('swap'), first: endSchema, second: endSchema }),
  z.object({
    do: z.literal('add'),
    from: z.string(),
    to: z.string(),
    like: z.int().min(0).optional().describe('Run whose cable the new core takes; a link where left out'),
    metres: z.number().optional().describe('Its length, m'),
  }),
  z.object({ do: z.literal('remove'), run: z.int().min(0), core: z.int().min(0) }),
  z.object({
    do: z.literal('say'),
    part: z.string(),
    field: z.enum(['pressed-when', 'input']),
    value: z.enum(['open', 'shut', 'low', 'high']),
  }),
  z.object({
    do: z.literal('intend'),
    load: z.string(),
    field: z.enum(['runs-on', 'blocked-by', 'stays-on-after', 'stopped-by']),
    input: z.string().describe('As the plan writes it, `planer` or `mode.hand`'),
    instead: z.string().optional().describe('The input whose place it takes; one more where left out'),
  }),
]);

/** A change of figures, each figure as the plan would write it. */
const figureChangeSchema = z.discriminatedUnion('change', [
  z.object({
    change: z.literal('part'),
    part: z.string().describe('The part that is replaced by one with other figures'),
    fields: z
      .record(z.string(), z.string().nullable())
      .describe(
        'By dotted path, such as coil.rated: what the plan would say there; null where it is left out',
      ),
  }),
  z.object({
    change: z.literal('cable'),
    runs: z.array(z.int().min(1)).describe('Runs in another cable, counted from one'),
    gauge: z.string(),
  }),
  z.object({
    change: z.literal('cable-flexible'),
    runs: z.array(z.int().min(1)).describe('Runs of cord that become fixed wire, counted from one'),
  }),
  z.object({
    change: z.literal('core-colours'),
    run: z.int().min(1).describe('Run with cores in other colours, counted from one'),
    colours: z.record(z.string(), z.string()).describe('Colour as it is: colour that takes its place'),
  }),
  z.object({
    change: z.literal('marked-as'),
    run: z.int().min(1).describe('Run with cores marked at both ends, counted from one'),
    marks: z.record(z.string(), z.string()).describe('Colour of the core: colour of the marks'),
  }),
  z.object({
    change: z.literal('fuse'),
    part: z.string().describe('Name of the new fuse'),
    terminal: z
      .string()
      .describe('Terminal next to which it stands; all that was there goes to its far side'),
    rating: z.string(),
    behind: z
      .array(z.int().min(1))
      .optional()
      .describe('Only the cores of these runs go to its far side, counted from one'),
  }),
  z.object({
    change: z.literal('relay'),
    part: z.string().describe('Name of the new relay'),
    coil: z.string().describe('Relay whose coil it switches; what was on that coil goes to the new one'),
    fields: z.record(z.string(), z.string()).describe('What the plan would say of the new relay'),
    feed: z
      .array(z.string())
      .length(2)
      .describe('Terminals that feed the old coil: through the contact, and straight'),
  }),
]);

export const remedySchema = z.object({
  words: z.string().describe('What to do, as a sentence'),
  changes: z.array(figureChangeSchema).describe('The least changes that do it, all of them together'),
  leaves: z.array(z.enum(FINDING_IDS)).describe('Lesser findings that it brings with it'),
});

export const alsoSchema = z.object({
  id: z
    .enum(FINDING_IDS)
    .describe('What follows; the id of the finding itself where another part has the same'),
  message: z.string(),
});

export const causeSchema = z.object({
  what: z
    .enum(['tab', 'diode'])
    .describe('tab: ends of cores on the wrong tab; diode: a diode the wrong way round'),
  terminals: z.array(z.string()).describe('Terminals to look at, as PART.TERMINAL'),
});

export const findingSchema = z.object({
  id: z.enum(FINDING_IDS).describe('Stable name of the finding; `pullin explain ID` tells more'),
  severity: z.enum(SEVERITIES),
  question: questionNumber.describe('The question, 1 to 7, that the finding bears on'),
  parts: z.array(z.string()).describe('Names of the parts concerned, the one at fault first'),
  terminals: z.array(z.string()).describe('Terminals concerned, as PART.TERMINAL'),
  line: z.int().min(1).describe('Line in the plan file, from one'),
  column: z.int().min(1).describe('Column in that line, from one'),
  message: z.string().describe('What happens at the machine'),
  why: z.string().describe('The path or the figures that show it'),
  fix: z.string().describe('What to do'),
  figures: z.array(figureSchema),
  basis: z.string().describe('Standard and clause, or "common practice"'),
  cause: causeSchema
    .nullable()
    .describe(
      'The one change that was proved to do away with it and all that follows; null where none is known',
    ),
  also: z.array(alsoSchema).describe('What follows from this finding and is not counted on its own'),
  repair: z
    .object({
      words: z.array(z.string()).describe('What to do at the bench, a sentence a step'),
      edits: z.array(editSchema).describe('The same as changes of the plan'),
    })
    .nullable()
    .describe('The least change of wiring that was verified to mend it; null where none was sought or found'),
  remedies: z
    .array(remedySchema)
    .describe(
      'Changes of figures, any one of which was put into the plan and did away with it; empty where none was sought or found',
    ),
});

export const questionSchema = z.object({
  number: questionNumber,
  question: z.string(),
  answer: z.enum(ANSWERS),
  figure: z.string().describe('The one figure or fact that decides the answer'),
});

export const stepSchema = z.object({
  moved: z.record(z.string(), z.string()).describe('Inputs moved in this step, each with its new position'),
});

export const counterexampleSchema = z.object({
  steps: z.array(stepSchema).describe('From rest, in order; the fewest inputs that show it'),
  target: z.string().describe('Load or relay that does not do what is intended'),
  expected: z.boolean().describe('Whether it ought to run'),
  found: z.boolean().describe('Whether it runs'),
});

export const logicSchema = z.object({
  inputs: z.int().min(0).describe('Gates, switches, buttons and cut-outs that can be moved'),
  combinations: z
    .union([z.number(), z.string()])
    .describe('Positions of all inputs together; a text such as "2^200" where the number is too long'),
  holds: z
    .boolean()
    .nullable()
    .describe('By what is joined to what. True: proved for all of them; false: refuted; null: not decided'),
  counterexample: counterexampleSchema.nullable(),
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
});

export const coilSchema = z.object({
  relay: z.string(),
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
    .object({ min: known, nominal: known, max: known })
    .describe(
      'V at the coil: least over states and tolerances, as printed at 20 °C, most; an AC coil least and as printed with its armature open',
    ),
  pullIn: known.describe('V the warm coil needs to pull in'),
  dropOut: known.describe('V below which the coil lets go'),
  margin: known.describe('(least volts - pull-in) / rated volts, a share of one'),
  corner: z.string().describe('Supply, temperature and state in which the least volts occur'),
});

export const contactSchema = z.object({
  relay: z.string(),
  pole: z.int().min(1).describe('Pole of the relay, from one'),
  load: z.string().nullable(),
  running: known.describe('A, full-load current'),
  starting: known.describe('A, locked-rotor or inrush current'),
  ratingUsed: z
    .string()
    .nullable()
    .describe('The rating that was compared, as printed; null where none serves'),
  multiple: known.describe('Current the contact can make, as a multiple of its rating'),
  verdict: z.enum(ANSWERS),
  basis: z.string(),
});

export const cautionSchema = z.object({
  id: z.string(),
  level: z.enum(LEVELS),
  text: z.string(),
  basis: z.string().describe('Standard and clause; "(from memory)" where the clause was not read'),
});

export const reportSchema = z
  .object({
    format: z.literal(1),
    plan: z.object({
      file: z.string(),
      title: z.string(),
      practice: z.enum(['nec', 'iec']),
      practiceFrom: z
        .enum(['plan', 'patterns', 'taken'])
        .describe('Whether the plan states its practice, its plugs and outlets tell it, or neither does'),
      lengths: z.enum(['m', 'ft']).describe('What the plan gives most lengths in; sentences tell lengths so'),
    }),
    verdict: z
      .enum(VERDICTS)
      .describe('fail: a danger, warning or fault stands; cannot-tell: only doubts do; else pass'),
    questions: z.array(questionSchema),
    findings: z.array(findingSchema),
    logic: logicSchema,
    coils: z.array(coilSchema),
    contacts: z.array(contactSchema),
    cautions: z.array(cautionSchema),
    defaults: z.array(z.string()).describe('Figures the plan leaves out and the value taken instead'),
  })
  .describe('Report of `pullin check --json`, format 1');

export const unreadableSchema = z
  .object({
    format: z.literal(1),
    file: z.string(),
    errors: z
      .array(
        z.object({
          line: z.int().nullable().describe('From one; null where the file itself cannot be read'),
          column: z.int().nullable(),
          message: z.string(),
        }),
      )
      .min(1),
  })
  .describe('What stands in place of the report of a plan that cannot be read');

/** JSON Schema (draft 2020-12) of the report of one plan, or of why there is none. */
export function reportJsonSchema(): Record<string, unknown> {
  const either = z.union([reportSchema, unreadableSchema]);
  return { ...z.toJSONSchema(either), title: 'pullin report, format 1' };
}
