/** `pullin table PLAN` */
import type { Study } from '../study/study.ts';
import type { TruthTable } from '../study/table-model.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { formatOption, jsonOption, LISTED, PLAN, widthOption } from './options.ts';
import { type Format, type LookOptions, print, printJson, warn } from './print.ts';
import { Problem, STATUS } from './status.ts';

interface TableOptions extends LookOptions {
  readonly all?: boolean;
  readonly format: Format;
  readonly json?: boolean;
}

/** Throws a `Problem` where there is no table: of a circuit that was not decided, or of too many inputs. */
async function tableOf(study: Study, all: boolean, session: Session): Promise<TruthTable> {
  try {
    return await session.stages.truthTable(study, { all });
  } catch (error) {
    const { Undecided, TooManyInputs } = await import('./late/all.ts');
    if (error instanceof TooManyInputs) throw new Problem(error.message);
    if (!(error instanceof Undecided)) throw error;
    throw new Problem(`this circuit is too involved for a truth table: ${error.message}`, STATUS.cannotTell);
  }
}

async function run(file: string, options: TableOptions, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const table = await tableOf(study, options.all === true, session);
  const { foldedTable, toldBlocks, toldOf, truthTableDocument, zonesOf } = await import('./late/all.ts');
  const told = toldOf(study);
  if (options.json) return printJson({ format: 1, ...table, check: told }, session);
  const asItStands = 'The table is of the plan as it stands.';
  if (options.format === 'csv') await warn(told, session, asItStands);
  const blocks = options.format === 'csv' ? [] : toldBlocks(told, asItStands);
  // Comma-separated values are for programs, which fold for themselves.
  const shown = options.format === 'csv' ? table : foldedTable(table, zonesOf(study));
  await print([...blocks, ...truthTableDocument(shown, told.verdict)], options, session);
}

export function addTable(program: Verb, session: Session): void {
  program
    .command('table')
    .summary('list what runs in which position of the gates')
    .description(
      'Lists the states of gates and switches, and what each relay and load does in them at nominal volts: a coil that does not get its pull-in is out. Where a start button is to be remembered, rows follow with the moves that lead to them.',
    )
    .argument(...PLAN)
    .option('--all', 'every combination, not only rest and one input moved at a time')
    .addOption(formatOption('text', 'markdown', 'csv'))
    .addOption(jsonOption('the table', 'format'))
    .addOption(widthOption())
    .ends({
      statuses: {
        pass: LISTED,
        unreadable: 'the plan cannot be read, or has too many inputs for --all',
        cannotTell: 'the circuit is too involved for a table',
      },
      examples: ['pullin table shop.yaml', 'pullin table --all --format csv shop.yaml'],
    })
    .action((file: string, options: TableOptions) => run(file, options, session));
}
