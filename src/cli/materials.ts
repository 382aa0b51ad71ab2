/** `pullin materials PLAN` */
import { type Command, Option } from 'commander';
import { printable } from '../text/escape.ts';
import { parseWidth } from './check.ts';
import { loadStudy } from './input.ts';
import { type Session, wantsUnicode, widthFor } from './io.ts';

interface MaterialsOptions {
  readonly format: 'text' | 'markdown' | 'csv';
  readonly json?: boolean;
  readonly width?: number;
}

async function run(file: string, options: MaterialsOptions, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const { plan } = study;
  const { materials } = await import('../lists/materials.ts');
  const list = materials(study);
  const { out, err, io } = session;
  if (options.json) return out.write(`${JSON.stringify(list, null, 2)}\n`);
  const [report, { toldLine }] = await Promise.all([
    import('../report/materials.ts'),
    import('../report/lists.ts'),
  ]);
  if (options.format === 'csv') {
    const told = toldLine(list.check);
    if (told !== undefined) err.write(`${printable(told)}\n`);
    return out.write(report.renderMaterialsCsv(list));
  }
  if (options.format === 'markdown') return out.write(report.renderMaterialsMarkdown(list, plan.title));
  const look = { width: widthFor(options.width, io.stdout), unicode: wantsUnicode(io.stdout, io.env) };
  out.write(report.renderMaterialsText(list, plan.title, look));
}

export function addMaterials(program: Command, session: Session): void {
  program
    .command('materials')
    .summary('list what to buy, with the least rating that still passes')
    .description(
      'Lists the parts by what is printed on them, and for each the least rating with which the plan would still pass its check; cable by the metre and foot; joints by their wires; ferrules, tabs and labels. Prices of the plan are summed, and what has none is named.',
    )
    .argument('<plan>', 'plan file; - is standard input')
    .addOption(
      new Option('--format <format>', 'how to print it').choices(['text', 'markdown', 'csv']).default('text'),
    )
    .addOption(new Option('--json', 'print the list as JSON').conflicts('format'))
    .option('--width <columns>', 'fill lines to this width (default: the terminal, else 80)', parseWidth)
    .addHelpText(
      'after',
      '\nExit status: 0 listed, whatever the check says of the plan; 2 the plan cannot be\nread; 70 a mistake in pullin.',
    )
    .action((file: string, options: MaterialsOptions) => run(file, options, session));
}
