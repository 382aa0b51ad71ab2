/** `pullin schema [NAME]` */
import { Argument } from 'commander';
import { nearest } from '../../text/nearest-name.ts';
import type { Session } from '../io.ts';
import type { Verb } from '../line/verb.ts';
import { Problem } from '../status.ts';
import { SCHEMA_WORDS, SCHEMAS, schemaNamed } from './schema-names.ts';
import { readShipped } from './shipped.ts';

/** `report (check)`, or the name alone where the command is called the same. */
const told = (Object.entries(SCHEMAS) as [string, readonly string[]][]).map(([name, commands]) =>
  commands.length === 0 || commands.includes(name) ? name : `${name} (${commands.join(', ')})`,
);

async function run(word: string, { out }: Session): Promise<void> {
  const name = schemaNamed(word);
  if (name === undefined) {
    const near = nearest(word, SCHEMA_WORDS);
    throw new Problem(
      `there is no schema called "${word}"; ${near === undefined ? `there are ${told.join(', ')}` : `did you mean ${near}?`}`,
    );
  }
  out.write(await readShipped(`schemas/${name}.schema.json`));
}

export function addSchema(program: Verb, session: Session): void {
  program
    .command('schema')
    .summary('print the JSON Schema of plans, or of what --json prints')
    .description(
      'Prints the JSON Schema (draft 2020-12) of a plan, which an editor can use while you type, or of what a command prints with --json.',
    )
    .addArgument(
      new Argument('[name]', 'which one')
        .choices(SCHEMA_WORDS)
        .argParser((text) => text)
        .default('plan'),
    )
    .ends({
      notes: [
        `Names, with the commands where those are called otherwise: ${told.join(', ')}. With several plans "check --json" prints a list, and the schema is that of an entry.`,
      ],
      statuses: { pass: 'printed', unreadable: 'there is no schema of that name' },
      examples: ['pullin schema', 'pullin schema check'],
    })
    .action((word: string) => run(word, session));
}
