/** `pullin materials PLAN` */
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { formatOption, jsonOption, LISTED, PLAN, widthOption } from './options.ts';
import { type Format, type LookOptions, print, printJson, warn } from './print.ts';

interface MaterialsOptions extends LookOptions {
  readonly format: Format;
  readonly json?: boolean;
}

async function run(file: string, options: MaterialsOptions, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const { materials } = await import('./late/all.ts');
  const list = materials(study);
  if (options.json) return printJson(list, session);
  const { materialsDocument, materialsTable } = await import('./late/all.ts');
  if (options.format !== 'csv') return print(materialsDocument(list, study.plan.title), options, session);
  await warn(list.check, session);
  await print(materialsTable(list), options, session);
}

export function addMaterials(program: Verb, session: Session): void {
  program
    .command('materials')
    .summary('list what to buy, with the least rating that still passes')
    .description(
      'Lists the parts by what is printed on them, and for each the least rating with which the plan would still pass its check; cable by the metre and foot; joints by their wires; ferrules, tabs and labels. Prices of the plan are summed, and what has none is named.',
    )
    .argument(...PLAN)
    .addOption(formatOption('text', 'markdown', 'csv'))
    .addOption(jsonOption('the list', 'format'))
    .addOption(widthOption())
    .ends({
      statuses: { pass: LISTED, unreadable: 'the plan cannot be read' },
      examples: ['pullin materials shop.yaml', 'pullin materials --format csv shop.yaml'],
    })
    .action((file: string, options: MaterialsOptions) => run(file, options, session));
}
