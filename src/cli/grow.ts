/** `pullin add gate NAME PLAN` and `pullin remove gate NAME PLAN` */
import { resolve } from 'node:path';
import { InvalidArgumentError, Option } from 'commander';
import type { Growth, Length } from '../edit/growth.ts';
import type { Plan } from '../plan/plan.ts';
import type { Grown } from '../report/growth.ts';
import { printable, printableLines } from '../text/escape.ts';
import { directory, loadPlanFile, studyOf } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { jsonOption, PLAN, widthOption } from './options.ts';
import { type LookOptions, print, printJson, textOf } from './print.ts';
import { Problem, STATUS, type Statuses, statusOf } from './status.ts';

interface GrowOptions extends LookOptions {
  readonly dryRun?: boolean;
  readonly force?: boolean;
  readonly json?: boolean;
}

interface AddOptions extends GrowOptions {
  readonly after?: string;
  readonly length: string;
  readonly onward?: string;
}

const nameOf = (file: string) => (file === '-' ? 'standard input' : printable(file));

async function lengthOf(text: string, option: string): Promise<Length> {
  const { metres } = await import('./late/all.ts');
  const parsed = metres.parse(text);
  if ('problem' in parsed) throw new Problem(`${option}: ${parsed.problem}`);
  return { text: text.trim().replace(/^([\d.]+)([A-Za-z]+)$/, '$1 $2'), metres: parsed.value };
}

/** What `make` plans, or why it cannot, as a problem of that file. */
async function planned<T>(file: string, make: () => T): Promise<T> {
  const { Refusal } = await import('./late/all.ts');
  try {
    return make();
  } catch (error) {
    if (error instanceof Refusal) throw new Problem(`${nameOf(file)}: ${error.message}`);
    throw error;
  }
}

async function compared(plan: Plan, growth: Growth, text: string, session: Session): Promise<Grown> {
  const { compare } = await import('./late/all.ts');
  const result = await session.stages.readPlan(Buffer.from(text), plan.file);
  if (!result.ok) throw new Error('a grown plan cannot be read');
  const before = await session.stages.check(await studyOf(plan));
  const after = await session.stages.check(await studyOf(result.plan));
  return { plan, growth, before, after, compared: compare(before, after, growth.gate) };
}

async function run(
  file: string,
  options: GrowOptions,
  session: Session,
  make: (plan: Plan) => Promise<Growth>,
): Promise<void> {
  if (file === '-' && !options.dryRun)
    throw new Problem('standard input cannot be written to; --dry-run prints the change as a diff');
  const read = await loadPlanFile(file, session);
  if (read === undefined) return;
  const { grow, growthAnswer, growthDocument, isWorse, unifiedDiff } = await import('./late/all.ts');
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(read.bytes);
  const growth = await make(read.plan);
  const applied = grow(text, read.plan, growth);
  if ('refused' in applied)
    throw new Problem(`${nameOf(file)}: this cannot be written into the file. ${applied.refused}`);
  const grown = await compared(read.plan, growth, applied.text, session);
  session.exit(statusOf(grown.after.verdict));
  const { before, after } = grown;
  const diff = unifiedDiff(text, applied.text, nameOf(file));
  const refused = isWorse(before, after, grown.compared) && !options.force;
  if (options.dryRun && options.json) return printJson(growthAnswer(grown, false, diff), session);
  if (options.dryRun) {
    // Nothing but the diff belongs on the standard output.
    session.err.write(
      await textOf(growthDocument(`Not written into ${nameOf(file)}:`, grown), options, session, session.err),
    );
    session.out.write(session.io.stdout.isTTY === true ? printableLines(diff) : diff);
    return;
  }
  if (refused) {
    session.exit(STATUS.fail);
    if (options.json) return printJson(growthAnswer(grown, false, diff), session);
    const head = `Not written into ${nameOf(file)}: the check finds more wrong with it than without. --force writes it all the same.`;
    return print(growthDocument(head, grown), options, session);
  }
  const { replaceFile } = await import('./replace.ts');
  const path = resolve(directory(session.io), file);
  await replaceFile(path, nameOf(file), read.bytes, Buffer.from(applied.text));
  if (options.json) return printJson(growthAnswer(grown, true, diff), session);
  await print(growthDocument(`Written into ${nameOf(file)}:`, grown), options, session);
}

const LENGTHS = new Set(['--length', '--onward']);
const FIGURE = /^[\d.]+$/;
const UNIT = /^(?:mm|cm|m|in|inch|inches|ft|foot|feet)$/i;

/** Words of a command line with lengths in one: a person types `--length 8 ft 6 in` without a thought of the shell. */
export function withWholeLengths(argv: readonly string[]): string[] {
  const words: string[] = [];
  for (let i = 0; i < argv.length; i++) {
    words.push(argv[i]!);
    if (!LENGTHS.has(argv[i]!)) continue;
    const parts: string[] = [];
    while (FIGURE.test(argv[i + 1] ?? '') && UNIT.test(argv[i + 2] ?? '')) {
      parts.push(argv[i + 1]!, argv[i + 2]!);
      i += 2;
    }
    if (parts.length > 0) words.push(parts.join(' '));
  }
  return words;
}

function lengthText(text: string): string {
  if (/^[\d.]+$/.test(text.trim()))
    throw new InvalidArgumentError('It takes a length with its unit, such as 3 m.');
  return text;
}

const STATUSES: Statuses = {
  pass: 'the check afterwards passes',
  fail: 'the check afterwards fails, or nothing was written because it would find more wrong than before',
  unreadable: 'the plan or the command line cannot be read, or the change cannot be written',
  cannotTell: 'the check afterwards cannot tell',
};

const shared = (command: Verb) =>
  command
    .option('--dry-run', 'write nothing, and print the change as a unified diff of the plan file')
    .option('--force', 'write it even if the check then finds more wrong')
    .addOption(jsonOption('what is changed, and the check before and after,'))
    .addOption(widthOption());

function addAdd(program: Verb, session: Session): void {
  const command = program
    .command('add')
    .summary('add a gate to a plan, in the file')
    .description('Adds to a plan file.')
    .command('gate')
    .summary('add a gate')
    .description(
      'Adds a gate to the plan file: its switch, cable, cores, colours and terminals are those of the gate it comes after, and every intent that names that gate names it too. Comments and layout stay. Tells the check before and after.',
    )
    .argument('<name>', 'name of the new gate')
    .argument(...PLAN)
    .option('--after <gate>', 'the gate it comes after (default: the one at which the cable ends)')
    .addOption(
      new Option('--length <length>', 'length of the new cable').argParser(lengthText).makeOptionMandatory(),
    )
    .addOption(
      new Option(
        '--onward <length>',
        'where a cable goes on from that gate: its length from the new gate to the next',
      ).argParser(lengthText),
    );
  shared(command)
    .ends({
      notes: [
        'Behind the last gate of a cable the new one hangs on it; between two the cable is cut in two; where each gate has a cable from the same place, the new one has one from there too.',
      ],
      statuses: STATUSES,
      examples: [
        'pullin add gate lathe --after router --length 3 m shop.yaml',
        'pullin add gate lathe --after planer --length 1 m --onward 2 m shop.yaml',
      ],
    })
    .action((name: string, file: string, options: AddOptions) =>
      run(file, options, session, async (plan) => {
        const { addGate, lastGate } = await import('./late/all.ts');
        const length = await lengthOf(options.length, '--length');
        const onward = options.onward === undefined ? undefined : await lengthOf(options.onward, '--onward');
        const after = options.after ?? (await planned(file, () => lastGate(plan)));
        if (options.after === undefined)
          session.err.write(
            `pullin: --after was not given; ${printable(name)} comes after ${printable(after)}, where the cable ends.\n`,
          );
        return planned(file, () => addGate(plan, { name, after, length, onward }));
      }),
    );
}

function addRemove(program: Verb, session: Session): void {
  const command = program
    .command('remove')
    .summary('take a gate out of a plan, in the file')
    .description('Takes out of a plan file.')
    .command('gate')
    .summary('take a gate out')
    .description(
      'Takes a gate out of the plan file, out of every intent, and with its cable; what hung behind it is joined to what it hung on, as long as both cables together. Comments and layout stay. Tells the check before and after.',
    )
    .argument('<gate>', 'name of the gate')
    .argument(...PLAN);
  shared(command)
    .ends({
      statuses: STATUSES,
      examples: ['pullin remove gate router shop.yaml', 'pullin remove gate planer --dry-run shop.yaml'],
    })
    .action((name: string, file: string, options: GrowOptions) =>
      run(file, options, session, async (plan) => {
        const { removeGate } = await import('./late/all.ts');
        return planned(file, () => removeGate(plan, name));
      }),
    );
}

export function addGrowing(program: Verb, session: Session): void {
  addAdd(program, session);
  addRemove(program, session);
}
