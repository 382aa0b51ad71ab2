/** The schema of a whole plan file. */
import * as z from 'zod';
import * as q from './quantity.ts';
import { choice, figure, list, once, quantity, text } from './schema-fields.ts';

const terminal = () => text('A terminal, PART.TERMINAL; a joint is written by its name alone.');
const pair = () =>
  z.array(terminal()).meta({ minItems: 2, maxItems: 2, description: 'The two terminals this core joins.' });

export const runSchema = once(() =>
  z.strictObject({
    cable: z.unknown().describe('The cable: a name from stock, or its data in place.').optional(),
    length: quantity(q.metres, 'Length of the cable, one way.').optional(),
    cores: z.record(z.string(), pair()).describe('Core colour: the two terminals it joins.').optional(),
    'marked-as': z
      .record(z.string(), text('A colour.'))
      .describe('Core colour: the colour that both its ends are marked with for good, by sleeve or tape.')
      .optional(),
    name: text('A name for the run.').optional(),
    route: text('Where it goes.').optional(),
    slack: quantity(q.share, 'Extra length.').optional(),
    link: pair()
      .describe('A short bare jumper between two terminals, up to 20 cm; instead of cable, length, cores.')
      .optional(),
  }),
);

const entry = () => z.union([text('An input.'), list(text('An input.'), 'All of these together.')]);
const names = (description: string) =>
  z.union([text('A name.'), list(text('A name.'), description)]).describe(description);
export const intentSchema = once(() =>
  z
    .strictObject({
      'runs-on': list(
        entry(),
        'The load runs when at least one entry is in its working position; an inner list means all of these together.',
      ).optional(),
      'blocked-by': list(
        text('A cut-out, switch, button or selector position.'),
        'While one of these blocks, the load must not run.',
      ).optional(),
      'stays-on-after': names('A button whose release must not stop the load.').optional(),
      'stopped-by': names('What ends a load that stays on.').optional(),
      'run-on': quantity(
        q.seconds,
        'How long the load must go on at least once the last entry of runs-on has gone back.',
      ).optional(),
      'if-supply-fails': choice(
        ['stopped', 'running'],
        'What the load must do while a low-voltage supply is dead; default stopped.',
      ).optional(),
      'lit-when': z
        .union([
          choice(['any-open', 'all-shut'], 'Any gate open, or all of them shut.'),
          list(entry(), 'At least one entry in its working position, as for runs-on.'),
        ])
        .describe('Of a lamp or led only: when it is to give light.')
        .optional(),
    })
    .describe('What this load is meant to do.'),
);

const entries = (description: string) => z.record(z.string(), z.unknown()).describe(description);
/** The top level; the entries of each map are checked one by one. */
export const fileSchema = once(() =>
  z.strictObject({
    format: figure([1], 'Version of the format of this file: 1.'),
    title: text("Printed on every page; default the file's name.").optional(),
    practice: choice(
      ['nec', 'iec'],
      'Which published tables and wording apply: nec (North America) or iec (most other places). If left out, taken from the patterns of plugs and outlets where they agree, else a doubt.',
    ).optional(),
    ambient: quantity(q.celsius, 'Warmest air round the parts; default 40 °C.').optional(),
    stock: entries(
      'Named specifications of what you buy; a part takes one with from, a run with cable.',
    ).optional(),
    parts: entries('The parts, by name.'),
    runs: list(z.unknown(), 'The cable runs.'),
    intent: entries(
      'What each load is meant to do; default: it runs when any gate is open, and only then.',
    ).optional(),
  }),
);
