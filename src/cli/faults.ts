/** `pullin faults PLAN` */
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { formatOption, jsonOption, LISTED, PLAN, widthOption } from './options.ts';
import { type Format, type LookOptions, print, printJson, warn } from './print.ts';
import { progress } from './progress.ts';

interface FaultFlags extends LookOptions {
  readonly all?: boolean;
  readonly format: Format;
  readonly json?: boolean;
}

async function run(file: string, flags: FaultFlags, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const { faultTable, faultsDocument, faultsTable } = await import('./late/hunt.ts');
  const bar = progress('trying failures:', session);
  const table = faultTable(study, bar.step);
  bar.done();
  if (flags.json) return printJson(table, session);
  if (flags.format === 'csv') {
    await warn(table.check, session, 'The failures are of the plan as it stands.');
    return print(faultsTable(table), flags, session);
  }
  await print(faultsDocument(table, flags.all === true), flags, session);
}

export function addFaults(program: Verb, session: Session): void {
  program
    .command('faults')
    .summary('list what each single failure would do')
    .description(
      'Lists every single failure of the plan once it is built right: what fails and how, what the machine then does, how it shows, and what in the design would take the effect away. Each failure is put into the circuit and tried in every position of the gates and switches.',
    )
    .argument(...PLAN)
    .option('--all', 'in the text also those that nothing at the machine shows')
    .addOption(formatOption('text', 'markdown', 'csv'))
    .addOption(jsonOption('the table', 'format'))
    .addOption(widthOption())
    .ends({
      notes: [
        'A plan says by "likely" of a part which of its failures come more often than with such parts in general, such as likely: {never-makes: 5}; that orders the table and "pullin hunt".',
      ],
      statuses: { pass: LISTED, unreadable: 'the plan cannot be read' },
      examples: ['pullin faults shop.yaml', 'pullin faults --format csv shop.yaml'],
    })
    .action((file: string, flags: FaultFlags) => run(file, flags, session));
}
