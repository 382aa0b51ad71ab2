/** `pullin mend PLAN` */
import { resolve } from 'node:path';
import { Option } from 'commander';
import type { Mended, Repair } from '../repair/mended.ts';
import { printable, printableLines } from '../text/escape.ts';
import { directory, loadPlanFile, type PlanFile, studyOf } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { jsonOption, PLAN, widthOption } from './options.ts';
import { type LookOptions, print, printJson, textOf } from './print.ts';
import { Problem, STATUS } from './status.ts';

interface MendOptions extends LookOptions {
  readonly diff?: boolean;
  readonly write?: boolean;
  readonly json?: boolean;
}

const nameOf = (file: string) => (file === '-' ? 'standard input' : printable(file));

/** The text of the file with the repair in it. */
async function mendedText(file: string, { plan, bytes }: PlanFile, repair: Repair) {
  const { applyEdits } = await import('./late/all.ts');
  const before = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  const applied = applyEdits(before, plan, repair.edits);
  if ('refused' in applied) {
    throw new Problem(
      `${nameOf(file)}: the repair cannot be written into this file; make it by hand. ${applied.refused}`,
    );
  }
  return { before, after: applied.text };
}

async function printDiff(file: string, read: PlanFile, repair: Repair, session: Session): Promise<void> {
  const { before, after } = await mendedText(file, read, repair);
  const { unifiedDiff } = await import('./late/all.ts');
  const diff = unifiedDiff(before, after, nameOf(file));
  // A file gets the bytes as they are, so that the diff can be applied; a terminal gets none that moves its cursor.
  session.out.write(session.io.stdout.isTTY === true ? printableLines(diff) : diff);
}

async function write(file: string, read: PlanFile, repair: Repair, session: Session): Promise<void> {
  const { after } = await mendedText(file, read, repair);
  const { replaceFile } = await import('./replace.ts');
  await replaceFile(resolve(directory(session.io), file), nameOf(file), read.bytes, Buffer.from(after));
}

async function run(file: string, options: MendOptions, session: Session): Promise<void> {
  if (options.write && file === '-')
    throw new Problem('--write needs a file; standard input cannot be written to');
  const read = await loadPlanFile(file, session);
  if (read === undefined) return;
  const mended: Mended = await session.stages.mend(await studyOf(read.plan));
  const [first] = mended.repairs;
  const status = mended.needed === null ? STATUS.cannotTell : mended.needed ? STATUS.fail : STATUS.pass;
  if (options.json) printJson(mended, session);
  else {
    const { repairsDocument, writtenDocument } = await import('./late/all.ts');
    if (first === undefined || !mended.needed) {
      // Nothing but a diff belongs on the standard output of --diff.
      const to = options.diff ? session.err : session.out;
      to.write(await textOf(repairsDocument(mended), options, session, to));
    } else if (options.diff) await printDiff(file, read, first, session);
    else if (options.write) {
      await write(file, read, first, session);
      return print(writtenDocument(first, nameOf(file)), options, session);
    } else await print(repairsDocument(mended), options, session);
  }
  session.exit(status);
}

export function addMend(program: Verb, session: Session): void {
  program
    .command('mend')
    .summary('find the least change of wiring that puts a plan right')
    .description(
      'Looks for the fewest ends of cores to move so that everything starts and stops as the plan intends, and tells it as instructions for the bench. Every repair it names has gone through the whole check.',
    )
    .argument(...PLAN)
    .addOption(
      new Option('--diff', 'print the first repair as a unified diff of the plan file').conflicts([
        'write',
        'json',
      ]),
    )
    .addOption(new Option('--write', 'write the first repair into the plan file').conflicts('json'))
    .addOption(jsonOption('the repairs'))
    .addOption(widthOption())
    .ends({
      statuses: {
        pass: 'nothing to mend, or written',
        fail: 'the plan as it stands is wrong, whether a repair was found or not',
        unreadable: 'the plan cannot be read or the repair cannot be written',
        cannotTell: 'the circuit could not be decided',
      },
      examples: ['pullin mend shop.yaml', 'pullin mend --diff shop.yaml'],
    })
    .action((file: string, options: MendOptions) => run(file, options, session));
}
