/** `pullin check PLAN...` */
import { Option } from 'commander';
import type { CheckStages } from './check-stages.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { type Asked, type CheckForm, checked, statusOfFate } from './many/checked.ts';
import { atOnceOption, widthOption } from './options.ts';
import { BETWEEN, type LookOptions, print, textOf } from './print.ts';
import { Problem } from './status.ts';

interface CheckOptions extends LookOptions {
  readonly json?: boolean;
  readonly format?: 'text' | 'json' | 'sarif';
  readonly atOnce?: number;
  readonly quiet?: boolean;
  readonly all?: boolean;
  readonly watch?: boolean;
}

/** How the plans are told; `--json` is short for one of the forms. */
function formOf({ json, quiet, watch, format }: CheckOptions): CheckForm {
  const form = json ? 'json' : (format ?? 'text');
  const asked = json ? '--json' : `--format ${form}`;
  const refuse = (other: string) => {
    throw new Problem(`${asked} cannot be used with ${other}`);
  };
  if (json && format !== undefined && format !== 'json') refuse(`--format ${format}`);
  if (form === 'text') return quiet ? 'quiet' : 'text';
  if (quiet) refuse('--quiet');
  if (watch) refuse('--watch');
  return form;
}

async function run(
  files: readonly string[],
  options: CheckOptions,
  session: Session<CheckStages>,
): Promise<void> {
  if (files.filter((f) => f === '-').length > 1)
    throw new Problem('standard input (-) can be named only once');
  const form = formOf(options);
  if (options.watch) return watched(files, options, session);
  const asked: Asked = { ...options, form };
  const [file, ...others] = files;
  if (others.length > 0 || form === 'sarif') {
    const { checkMany } = await import('./many/many.ts');
    return checkMany(files, asked, options.atOnce, session);
  }
  const { fate, out, err } = await checked(
    { file: file!, artifact: { index: 0, uri: null } },
    asked,
    session,
  );
  session.exit(statusOfFate(fate));
  session.err.write(err);
  session.out.write(form === 'json' ? `${out}\n` : out);
}

/** The whole report once, then what each save changes. */
async function watched(
  files: readonly string[],
  options: CheckOptions,
  session: Session<CheckStages>,
): Promise<void> {
  if (files.includes('-')) throw new Problem('--watch needs files; standard input is not saved again');
  const { checkDocument, quietDocument } = await import('./late/check.ts');
  const { watch } = await import('./watch.ts');
  let count = 0;
  await watch(files, options, session, async (report) => {
    if (count++ > 0 && !options.quiet) session.out.write(BETWEEN);
    if (options.quiet) await print(quietDocument(report), {}, session);
    else session.out.write(await textOf(checkDocument(report, options), options, session));
  });
}

export function addCheck(program: Verb, session: Session<CheckStages>): void {
  program
    .command('check')
    .summary('judge wiring plans before anything is soldered')
    .description(
      'Says of each wiring plan what to do first, answers seven questions with a figure each, and lists what stands behind them and the cautions.',
    )
    .argument('<plan...>', 'plan files; - is standard input')
    .addOption(
      new Option(
        '--format <format>',
        'how to print it: text, json (for several plans an array with an entry for each) or sarif (one run of SARIF 2.1.0)',
      ).choices(['text', 'json', 'sarif']),
    )
    .addOption(new Option('--json', 'short for --format json').conflicts('quiet'))
    .option('--quiet', 'print one line a finding and the verdict')
    .option('--all', 'list the volts at every coil for every gate, not for the worst alone')
    .addOption(
      new Option('--watch', 'check again on every save, and tell what that changed').conflicts('json'),
    )
    .addOption(atOnceOption())
    .addOption(widthOption())
    .ends({
      notes: [
        'Several plans are told in the order named, each as soon as it and all before it are done, and at last how many failed: in the report, with --quiet on standard error.',
        '--watch reports once, and after each save what came and what went; Ctrl-C ends it with the status of the last check.',
        'Of several plans the worst exit status counts, in the order 70, 2, 1, 3, 0.',
      ],
      statuses: {
        pass: 'nothing failed',
        fail: 'something failed',
        unreadable: 'a plan or the command line cannot be read',
        cannotTell: 'cannot tell',
        interrupted: 'Ctrl-C cut a run over several plans short, which is told with how many were checked',
        ended: 'the same by SIGTERM',
      },
      examples: ['pullin check shop.yaml', 'pullin check --watch --quiet shop.yaml'],
    })
    .action((files: string[], options: CheckOptions) => run(files, options, session));
}
