/** `pullin check PLAN...` */
import { Option } from 'commander';
import type { Report, Unreadable } from '../findings/report-model.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { widthOption } from './options.ts';
import { type LookOptions, print, printJson } from './print.ts';
import { Problem, statusOf } from './status.ts';

interface CheckOptions extends LookOptions {
  readonly json?: boolean;
  readonly quiet?: boolean;
  readonly all?: boolean;
  readonly watch?: boolean;
}

const BETWEEN = `\n${'='.repeat(20)}\n\n`;

async function run(files: readonly string[], options: CheckOptions, session: Session): Promise<void> {
  if (files.filter((f) => f === '-').length > 1)
    throw new Problem('standard input (-) can be named only once');
  if (options.watch) return watched(files, options, session);
  const answers: (Report | Unreadable)[] = [];
  let first = true;
  const { checkDocument, quietDocument } = await import('./late.ts');
  for (const file of files) {
    const study = await loadStudy(file, session, (why) => answers.push(why));
    if (study === undefined) continue;
    const report = await session.stages.check(study);
    session.exit(statusOf(report.verdict));
    if (!first && !options.quiet && !options.json) session.out.write(BETWEEN);
    first = false;
    answers.push(report);
    if (options.quiet) await print(quietDocument(report), {}, session);
    else if (!options.json) await print(checkDocument(report, options), options, session);
  }
  if (!options.json) return;
  // One plan named: its report alone, or why there is none. Several named: always an array, an entry for each.
  printJson(files.length > 1 ? answers : answers[0], session);
}

/** The whole report once, then what each save changes. */
async function watched(files: readonly string[], options: CheckOptions, session: Session): Promise<void> {
  if (files.includes('-')) throw new Problem('--watch needs files; standard input is not saved again');
  const { checkDocument, quietDocument } = await import('./late.ts');
  const { watch } = await import('./watch.ts');
  let count = 0;
  await watch(files, options, session, async (report) => {
    if (count++ > 0 && !options.quiet) session.out.write(BETWEEN);
    if (options.quiet) await print(quietDocument(report), {}, session);
    else await print(checkDocument(report, options), options, session);
  });
}

export function addCheck(program: Verb, session: Session): void {
  program
    .command('check')
    .summary('judge wiring plans before anything is soldered')
    .description(
      'Says of each wiring plan what to do first, answers seven questions with a figure each, and lists what stands behind them and the cautions.',
    )
    .argument('<plan...>', 'plan files; - is standard input')
    .addOption(
      new Option(
        '--json',
        'print the report as JSON; for several plans an array with an entry for each',
      ).conflicts('quiet'),
    )
    .option('--quiet', 'print one line a finding and the verdict')
    .option('--all', 'list the volts at every coil for every gate, not for the worst alone')
    .addOption(
      new Option('--watch', 'check again on every save, and tell what that changed').conflicts('json'),
    )
    .addOption(widthOption())
    .ends({
      notes: [
        '--watch reports once, and after each save what came and what went; Ctrl-C ends it with the status of the last check.',
        'Of several plans the worst exit status counts, in the order 2, 1, 3, 0.',
      ],
      statuses: {
        pass: 'nothing failed',
        fail: 'something failed',
        unreadable: 'a plan or the command line cannot be read',
        cannotTell: 'cannot tell',
      },
      examples: ['pullin check shop.yaml', 'pullin check --watch --quiet shop.yaml'],
    })
    .action((files: string[], options: CheckOptions) => run(files, options, session));
}
