/** `pullin wirelist PLAN` */
import { Option } from 'commander';
import type { Plan } from '../plan/plan.ts';
import type { WireListPart } from '../report/wire-list.ts';
import { printable } from '../text/escape.ts';
import { hint } from '../text/nearest-name.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { chosen, formatOption, jsonOption, LISTED, PLAN, widthOption } from './options.ts';
import { type Format, type LookOptions, print, printJson, warn } from './print.ts';
import { Problem } from './status.ts';

interface WireListOptions extends LookOptions {
  readonly reel?: readonly string[];
  readonly list?: WireListPart;
  readonly format: Format;
  readonly json?: boolean;
}

const collect = (text: string, before: readonly string[] = []): string[] => [...before, text];

/** The names and lengths (cm) that `--reel` gives. */
async function reelsOf(plan: Plan, texts: readonly string[]) {
  const { metres, cableNames } = await import('./late/all.ts');
  const names = cableNames(plan);
  const any: number[] = [];
  const own = new Map<string, number[]>();
  for (const text of texts) {
    const at = text.lastIndexOf('=');
    const read = metres.parse(text.slice(at + 1).trim());
    if ('problem' in read) throw new Problem(`--reel: ${read.problem}`);
    // A reel cannot be longer than it is, so parts of a tenth of a millimetre are dropped.
    const cm = Math.floor(read.value * 10_000 + 1e-6) / 100;
    if (cm < 1) throw new Problem('--reel: expected at least 1 cm');
    if (at < 0) any.push(cm);
    else {
      const name = text.slice(0, at).trim();
      if (!names.includes(name))
        throw new Problem(
          `--reel: no cable of this plan is called "${printable(name)}"${hint(name, names) || '.'} It has ${names.map(printable).join(', ') || 'none'}`,
        );
      own.set(name, [...(own.get(name) ?? []), cm]);
    }
  }
  return { any, own };
}

async function run(file: string, options: WireListOptions, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const { plan } = study;
  const { wireList } = await import('./late/all.ts');
  const list = wireList(study, await reelsOf(plan, options.reel ?? []));
  if ('tooLong' in list) {
    const { tooLongText } = await import('./late/all.ts');
    throw new Problem(tooLongText(list.tooLong));
  }
  if (options.json) return printJson(list, session);
  const { METHOD_WORDS, sectionNotes, WIRE_LISTS, wireListDocument, wireListTable } = await import(
    './late/all.ts'
  );
  if (options.format === 'csv') {
    await warn(list.check, session);
    return print(wireListTable(list, options.list ?? 'wires'), options, session);
  }
  const parts = options.list === undefined ? WIRE_LISTS : [options.list];
  const words = { methods: METHOD_WORDS, notes: sectionNotes(plan) };
  await print(wireListDocument(list, plan.title, words, parts), options, session);
}

export function addWireList(program: Verb, session: Session): void {
  program
    .command('wirelist')
    .summary('list the wires in the order of wiring, what to cut, and labels')
    .description(
      'Lists every core in the order in which to wire it: low voltage first, from the supply outwards, mains last; then the pieces of cable to cut, and a label for each end. Lengths have their slack in them: what the run states, else 10 % and at least 10 cm at each end. How ends are joined and stripped is common practice; the part itself counts.',
    )
    .argument(...PLAN)
    .option(
      '--reel <length>',
      'length of the reels to cut from, such as 15m, "50 ft" or bell=30m for one cable; may be given again for other sizes',
      collect,
    )
    .addOption(
      chosen(new Option('--list <which>', 'print one list only (CSV holds one: default wires)'), [
        'wires',
        'cuts',
        'labels',
      ]),
    )
    .addOption(formatOption('text', 'markdown', 'csv'))
    .addOption(jsonOption('all lists', 'format', 'list'))
    .addOption(widthOption())
    .ends({
      notes: ['Reels are taken as many as needed of every size.'],
      statuses: {
        pass: LISTED,
        unreadable: 'the plan or the command line cannot be read, or a piece is longer than any reel',
      },
      examples: [
        'pullin wirelist --reel 30m shop.yaml',
        'pullin wirelist --list labels --format csv shop.yaml',
      ],
    })
    .action((file: string, options: WireListOptions) => run(file, options, session));
}
