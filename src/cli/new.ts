/** `pullin new` */
import { existsSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { Option } from 'commander';
import type { NewPlan } from '../lists/new/new-plan.ts';
import type { Key } from '../lists/new/questions.ts';
import { printable } from '../text/escape.ts';
import { directory, readInput } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { endingIn, forceOption, widthOption } from './options.ts';
import { type LookOptions, print, textOf } from './print.ts';
import { shipped } from './self/shipped.ts';
import { Problem, STATUS } from './status.ts';
import { writeOutput } from './write-new.ts';

type Texts = Map<Key, string>;

const NOT_MADE = 'no plan was made';

interface NewOptions extends LookOptions {
  readonly answers?: string;
  readonly output?: string;
  readonly force?: boolean;
  readonly [flag: string]: unknown;
}

const camel = (key: string) => key.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

/** The schema as seen from the folder of a plan, for the first line of the file. */
function schemaFrom(folder: string): string | undefined {
  const path = shipped('schemas/plan.schema.json');
  return path === undefined ? undefined : relative(folder, path).split(sep).join('/');
}

/** A file name made of a title: its letters and digits. */
function fileNamed(title: string): string {
  const words = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .match(/[\p{L}\p{N}]+/gu);
  return `${(words ?? ['shop']).join('-').slice(0, 60)}.yaml`;
}

/** Answers of the file and the flags, or undefined where they cannot be read, which is told. */
async function given(options: NewOptions, session: Session) {
  const { formatPlanErrors } = await import('./late/all.ts');
  const { KEYS, readAnswersFile } = await import('./late/new.ts');
  const flags: Texts = new Map(
    KEYS.flatMap((key) => {
      const text = options[camel(key)];
      return typeof text === 'string' ? [[key, text] as const] : [];
    }),
  );
  if (options.answers === undefined) return { texts: flags, flags, file: undefined };
  const file = readAnswersFile(await readInput(options.answers, session.io), options.answers);
  if (!('texts' in file)) {
    session.err.write(formatPlanErrors(file, NOT_MADE));
    session.exit(STATUS.unreadable);
    return undefined;
  }
  return { texts: new Map([...file.texts, ...flags]), flags, file };
}

type Given = NonNullable<Awaited<ReturnType<typeof given>>>;

/** The plan of what was given; tells all problems and gives undefined where there are any. */
async function madeOf({ texts, flags, file }: Given, schema: string | undefined, session: Session) {
  const { formatPlanErrors } = await import('./late/all.ts');
  const { newPlan } = await import('./late/new.ts');
  const made = newPlan(texts, schema);
  const problems = 'problems' in made ? made.problems : [];
  const inFile = file?.errorsWith(problems.filter(({ key }) => !flags.has(key))) ?? [];
  if (inFile.length > 0) session.err.write(formatPlanErrors(inFile, NOT_MADE));
  for (const { key, problem } of problems)
    if (file === undefined || flags.has(key)) session.err.write(`pullin: --${key}: ${printable(problem)}\n`);
  if (!('problems' in made) && inFile.length === 0) return made;
  if (file === undefined)
    session.err.write(
      'pullin: answer with flags, with --answers FILE, or in a terminal; "pullin new --help" lists them.\n',
    );
  session.exit(STATUS.unreadable);
  return undefined;
}

const isTerminal = ({ io }: Session): boolean => io.stdin.isTTY === true && io.stdout.isTTY === true;

async function run(options: NewOptions, session: Session): Promise<void> {
  const cwd = directory(session.io);
  if (
    options.output !== undefined &&
    options.output !== '-' &&
    !options.force &&
    existsSync(resolve(cwd, options.output))
  )
    throw new Problem(
      `${printable(options.output)}: is there already, so it is left as it is; --force replaces it`,
    );
  const start = await given(options, session);
  if (start === undefined) return;
  const folder =
    options.output === undefined || options.output === '-' ? cwd : dirname(resolve(cwd, options.output));
  const schema = schemaFrom(folder);
  const { answersOf } = await import('./late/new.ts');
  const asks =
    isTerminal(session) && answersOf(start.texts).problems?.some(({ key }) => !start.texts.has(key));
  if (!asks) {
    const made = await madeOf(start, schema, session);
    if (made !== undefined) await deliver(made, options.output ?? fileNamed(made.title), options, session);
    return;
  }
  const { askAll } = await import('./new-prompts.ts');
  const asked = await askAll(
    start.texts,
    (texts) => madeOf({ ...start, texts, file: undefined }, schema, session),
    options,
    session,
  );
  if (asked === undefined) {
    session.err.write('Nothing was written.\n');
    return session.exit(STATUS.unreadable);
  }
  const { made, fileName } = asked;
  const output =
    options.output ??
    (await fileName(fileNamed(made.title), (name) => existsSync(resolve(cwd, name)) && !options.force));
  if (output === undefined) {
    session.err.write('Nothing was written.\n');
    return session.exit(STATUS.unreadable);
  }
  await deliver(made, output, options, session);
}

/** Writes the plan and tells what it is, or tells why there is none. */
async function deliver(made: NewPlan, output: string, options: NewOptions, session: Session): Promise<void> {
  const { impossiblePlan, writtenPlan } = await import('./late/new.ts');
  if (!made.passes) {
    session.exit(STATUS.fail);
    return print(impossiblePlan(made), options, session);
  }
  if (output === '-') {
    session.out.write(made.text);
    // Nothing but the plan belongs on the standard output.
    session.err.write(await textOf(writtenPlan(made, undefined), options, session, session.err));
    return;
  }
  const name = printable(output);
  await writeOutput(resolve(directory(session.io), output), name, made.text, options.force === true);
  await print(writtenPlan(made, name), options, session);
}

export function addNew(program: Verb, session: Session): void {
  program
    .command('new')
    .summary('make a plan from a dozen answers, with parts that pass')
    .description(
      'Makes a plan for a shop that has none: asks a dozen plain questions in a terminal, or takes the answers as flags or from a small file, chooses the least ordinary parts with which the plan passes its check, and writes it with comments that say what to look for. Where no parts pass, it tells what stands in the way and the nearest answers that pass.',
    )
    .option('--answers <file>', 'take the answers from a YAML file; - is standard input')
    .addOption(
      new Option(
        '-o, --output <file>',
        'plan file to write; - is standard output (default: named after the shop)',
      ).argParser(endingIn('.yaml', '.yml')),
    )
    .addOption(forceOption())
    .addOption(widthOption())
    .ends({
      notes: [
        'Questions that have a usual answer may be left out; the plan tells which were, and why that is usual. In a terminal what is missing is asked; "back" goes to the question before and "quit" leaves, with nothing written. A key of the answers file is the name of a flag without its dashes.',
      ],
      statuses: {
        pass: 'written, and it passes its check',
        fail: 'no plan passes with these answers, so none was written',
        unreadable: 'the answers cannot be read, one is missing, the file cannot be written, or you quit',
      },
      examples: [
        'pullin new',
        "pullin new --practice nec --motor '1 hp 13 A' --protector manual --lever open \\\n    --gates 'saw 6 ft, planer 4 ft' -o garage.yaml",
      ],
    })
    .action((options: NewOptions) => run(options, session));
}

/** The flags of the questions, which stand with these; loaded only where the command line is of this command. */
export async function withQuestions(program: Verb, argv: readonly string[]): Promise<void> {
  if (argv[0] !== 'new') return;
  const command = program.commands.find((c) => c.name() === 'new');
  if (command === undefined) return;
  const { KEYS, flagOf } = await import('./late/new.ts');
  for (const key of KEYS) {
    const { placeholder, words } = flagOf(key);
    command.option(`--${key} ${placeholder}`, words);
  }
}
