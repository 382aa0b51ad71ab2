/** `pullin check PLAN...` */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Report } from '../findings/report-model.ts';
import { loadStudy } from './input.ts';
import { type ColourChoice, type Session, wantsColour, wantsUnicode, widthFor } from './io.ts';
import { Problem, statusOf } from './status.ts';

interface CheckOptions {
  readonly json?: boolean;
  readonly quiet?: boolean;
  readonly color: ColourChoice;
  readonly width?: number;
}

/** A width in columns, from the command line. */
export function parseWidth(text: string): number {
  const width = Number(text);
  if (!/^\d+$/.test(text) || width < 20 || width > 1000) {
    throw new InvalidArgumentError('It takes a whole number of columns from 20 to 1000.');
  }
  return width;
}

async function renderer(options: CheckOptions, { io }: Session): Promise<(report: Report) => string> {
  const { renderQuiet, renderText } = await import('../report/text.ts');
  if (options.quiet) return renderQuiet;
  const look = {
    width: widthFor(options.width, io.stdout),
    colour: wantsColour(options.color, io.stdout, io.env),
    unicode: wantsUnicode(io.stdout, io.env),
  };
  return (report) => renderText(report, look);
}

async function run(files: readonly string[], options: CheckOptions, session: Session): Promise<void> {
  if (files.filter((f) => f === '-').length > 1)
    throw new Problem('standard input (-) can be named only once');
  const reports: Report[] = [];
  const render = options.json ? undefined : await renderer(options, session);
  for (const file of files) {
    const study = await loadStudy(file, session);
    if (study === undefined) continue;
    const report = await session.stages.check(study);
    session.exit(statusOf(report.verdict));
    const between = reports.length > 0 && !options.quiet ? `\n${'='.repeat(20)}\n\n` : '';
    reports.push(report);
    if (render !== undefined) session.out.write(between + render(report));
  }
  if (!options.json) return;
  // One plan named: its report alone, and nothing when it cannot be read. Several named: always an array.
  const answer = files.length > 1 ? reports : reports[0];
  if (answer !== undefined) session.out.write(`${JSON.stringify(answer, null, 2)}\n`);
}

export function addCheck(program: Command, session: Session): void {
  program
    .command('check')
    .summary('judge wiring plans before anything is soldered')
    .description('Answers seven questions about each wiring plan and lists what is wrong with it.')
    .argument('<plan...>', 'plan files; - is standard input')
    .addOption(
      new Option('--json', 'print the report as JSON; an array for several plans').conflicts('quiet'),
    )
    .option('--quiet', 'print one line a finding and the verdict')
    .addOption(
      new Option('--color <when>', 'colour the report').choices(['always', 'never', 'auto']).default('auto'),
    )
    .option('--width <columns>', 'fill lines to this width (default: the terminal, else 80)', parseWidth)
    .addHelpText(
      'after',
      '\nExit status: 0 nothing failed, 1 something failed, 3 cannot tell, 2 a plan or\nthe command line cannot be read, 70 a mistake in pullin. Of several plans the\nworst counts, in the order 2, 1, 3, 0.',
    )
    .action((files: string[], options: CheckOptions) => run(files, options, session));
}
