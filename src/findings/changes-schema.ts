/** Changes of a plan as zod schemas: of its wiring and words, and of its figures. */
import * as z from 'zod';

const run = z.int().min(0).describe('Place of the run in the plan, from nought');
const core = z.int().min(0).describe('Place of the core in its run, from nought');
const endSchema = z.object({
  run,
  core,
  end: z.enum(['a', 'b']).describe('The end that stands first in the plan, or the other'),
});

export const editSchema = z
  .discriminatedUnion('do', [
    endSchema.extend({ do: z.literal('move'), to: z.string() }),
    z.object({ do: z.literal('swap'), first: endSchema, second: endSchema }),
    z.object({
      do: z.literal('add'),
      from: z.string(),
      to: z.string(),
      like: z.int().min(0).optional().describe('Run whose cable the new core takes; a link where left out'),
      metres: z.number().optional().describe('Its length, m'),
    }),
    z.object({ do: z.literal('remove'), run, core }),
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
  ])
  .describe(
    'A change of wiring, or of what the plan says; runs and cores count from nought in the order of the plan',
  );

export const figureChangeSchema = z
  .discriminatedUnion('change', [
    z.object({
      change: z.literal('part').describe('What is changed'),
      part: z.string().describe('The part that is replaced by one with other figures'),
      fields: z
        .record(z.string(), z.string().nullable())
        .describe(
          'By dotted path, such as coil.rated: what the plan would say there; null where it is left out',
        ),
    }),
    z.object({
      change: z.literal('cable').describe('What is changed'),
      runs: z.array(z.int().min(1)).describe('Runs in another cable, counted from one'),
      gauge: z.string().describe('Its gauge, as printed'),
    }),
    z.object({
      change: z.literal('cable-flexible').describe('What is changed'),
      runs: z.array(z.int().min(1)).describe('Runs of cord that become fixed wire, counted from one'),
    }),
    z.object({
      change: z.literal('core-colours').describe('What is changed'),
      run: z.int().min(1).describe('Run with cores in other colours, counted from one'),
      colours: z.record(z.string(), z.string()).describe('Colour as it is: colour that takes its place'),
    }),
    z.object({
      change: z.literal('marked-as').describe('What is changed'),
      run: z.int().min(1).describe('Run with cores marked at both ends, counted from one'),
      marks: z.record(z.string(), z.string()).describe('Colour of the core: colour of the marks'),
    }),
    z.object({
      change: z.literal('fuse').describe('What is changed'),
      part: z.string().describe('Name of the new fuse'),
      terminal: z
        .string()
        .describe('Terminal next to which it stands; all that was there goes to its far side'),
      rating: z.string().describe('As printed, such as 1 A'),
      behind: z
        .array(z.int().min(1))
        .optional()
        .describe('Only the cores of these runs go to its far side, counted from one'),
    }),
    z.object({
      change: z.literal('relay').describe('What is changed'),
      part: z.string().describe('Name of the new relay'),
      coil: z.string().describe('Relay whose coil it switches; what was on that coil goes to the new one'),
      fields: z.record(z.string(), z.string()).describe('What the plan would say of the new relay'),
      feed: z
        .array(z.string())
        .length(2)
        .describe('Terminals that feed the old coil: through the contact, and straight'),
    }),
  ])
  .describe('A change of figures, each figure as the plan would write it');
