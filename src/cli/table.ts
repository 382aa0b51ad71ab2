/** `pullin table PLAN` */
import { type Command, Option } from 'commander';
import { loadStudy } from './input.ts';
import { type Session, wantsUnicode, widthFor } from './io.ts';

interface TableOptions {
  readonly all?: boolean;
  readonly format: 'text' | 'markdown' | 'csv';
  readonly json?: boolean;
}

async function run(file: string, options: TableOptions, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const table = await session.stages.truthTable(study, { all: options.all === true });
  if (options.json) return session.out.write(`${JSON.stringify(table, null, 2)}\n`);
  const { renderTableCsv, renderTableMarkdown, renderTableText } = await import('../report/table.ts');
  const { stdout, env } = session.io;
  if (options.format === 'csv') session.out.write(renderTableCsv(table));
  else if (options.format === 'markdown') session.out.write(renderTableMarkdown(table));
  else session.out.write(renderTableText(table, widthFor(undefined, stdout), wantsUnicode(stdout, env)));
}

export function addTable(program: Command, session: Session): void {
  program
    .command('table')
    .summary('list what runs in which position of the gates')
    .description('Lists the states of gates and switches, and what each relay and load does in them.')
    .argument('<plan>', 'plan file; - is standard input')
    .option('--all', 'every combination, not only rest and one input moved at a time')
    .addOption(
      new Option('--format <format>', 'how to print it').choices(['text', 'markdown', 'csv']).default('text'),
    )
    .addOption(new Option('--json', 'print the table as JSON').conflicts('format'))
    .addHelpText(
      'after',
      '\nExit status: 0 listed, whatever the check says of the plan; 2 the plan cannot be\nread; 70 a mistake in pullin.',
    )
    .action((file: string, options: TableOptions) => run(file, options, session));
}
