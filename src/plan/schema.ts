/** The schema of a whole plan file. */
import * as z from 'zod/mini';
import * as q from './quantity.ts';
import { choice, described, figure, list, once, optional, quantity, text } from './schema-fields.ts';

const terminal = () => text('A terminal, PART.TERMINAL; a joint is written by its name alone.');
const pair = () =>
  described(z.array(terminal()), {
    minItems: 2,
    maxItems: 2,
    description: 'The two terminals this core joins.',
  });

export const runSchema = once(() =>
  z.strictObject({
    cable: optional(described(z.unknown(), 'The cable: a name from stock, or its data in place.')),
    length: optional(quantity(q.metres, 'Length of the cable, one way.')),
    cores: optional(described(z.record(z.string(), pair()), 'Core colour: the two terminals it joins.')),
    'marked-as': optional(
      described(
        z.record(z.string(), text('A colour.')),
        'Core colour: the colour that both its ends are marked with for good, by sleeve or tape.',
      ),
    ),
    name: optional(text('A name for the run.')),
    route: optional(text('Where it goes.')),
    slack: optional(quantity(q.share, 'Extra length.')),
    link: optional(
      described(
        pair(),
        'A short bare jumper between two terminals, up to 20 cm; instead of cable, length, cores.',
      ),
    ),
  }),
);

const entry = () => z.union([text('An input.'), list(text('An input.'), 'All of these together.')]);
const names = (description: string) =>
  described(z.union([text('A name.'), list(text('A name.'), description)]), description);
export const intentSchema = once(() =>
  described(
    z.strictObject({
      'runs-on': optional(
        list(
          entry(),
          'The load runs when at least one entry is in its working position; an inner list means all of these together.',
        ),
      ),
      'blocked-by': optional(
        list(
          text('A cut-out, switch, button or selector position.'),
          'While one of these blocks, the load must not run.',
        ),
      ),
      'stays-on-after': optional(names('A button whose release must not stop the load.')),
      'stopped-by': optional(names('What ends a load that stays on.')),
      'run-on': optional(
        quantity(
          q.seconds,
          'How long the load must go on at least once the last entry of runs-on has gone back.',
        ),
      ),
      'if-supply-fails': optional(
        choice(
          ['stopped', 'running'],
          'What the load must do while a low-voltage supply is dead; default stopped.',
        ),
      ),
      'lit-when': optional(
        described(
          z.union([
            choice(['any-open', 'all-shut'], 'Any gate open, or all of them shut.'),
            described(z.string(), 'The name of a load, an outlet or a relay: while it runs.'),
            list(entry(), 'At least one entry in its working position, as for runs-on.'),
          ]),
          'Of a lamp or led only: when it is to give light: any-open, all-shut, while a load or relay runs that is named, or by inputs as in runs-on. It is proved with the time of every timer run out.',
        ),
      ),
    }),
    'What this load is meant to do.',
  ),
);

const entries = (description: string) => described(z.record(z.string(), z.unknown()), description);
/** The top level; the entries of each map are checked one by one. */
export const fileSchema = once(() =>
  z.strictObject({
    format: figure([1], 'Version of the format of this file: 1.'),
    title: optional(text("Printed on every page; default the file's name.")),
    practice: optional(
      choice(
        ['nec', 'iec'],
        'Which published tables and wording apply: nec (North America) or iec (most other places). If left out, taken from the patterns of plugs and outlets where they agree, else a doubt.',
      ),
    ),
    ambient: optional(quantity(q.celsius, 'Warmest air round the parts; default 40 °C.')),
    stock: optional(
      entries('Named specifications of what you buy; a part takes one with from, a run with cable.'),
    ),
    parts: entries('The parts, by name.'),
    runs: list(z.unknown(), 'The cable runs.'),
    intent: optional(
      entries('What each load is meant to do; default: it runs when any gate is open, and only then.'),
    ),
  }),
);
