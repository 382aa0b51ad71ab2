/** `pullin page PLAN -o FILE.html` */
import { loadPlanFile, studyOf } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { besidePlan, writeMade } from './made.ts';
import { forceOption, MADE, outputOption, PLAN } from './options.ts';

interface PageFlags {
  readonly output?: string;
  readonly force?: boolean;
}

async function run(file: string, flags: PageFlags, session: Session): Promise<void> {
  const output = flags.output ?? besidePlan(file, '.html');
  const read = await loadPlanFile(file, session);
  if (read === undefined) return;
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(read.bytes);
  const html = await session.stages.page(await studyOf(read.plan), text);
  if (output === '-') return session.out.write(html);
  const name = await writeMade({ file, output, force: flags.force === true }, html, session);
  session.err.write(`${name}: written\n`);
}

export function addPage(program: Verb, session: Session): void {
  program
    .command('page')
    .summary('write a page in which gates can be opened')
    .description(
      'Writes one HTML file that shows the plan at work: open a gate in it and see the coil pull in and the collector start, or why not. It needs no network and opens from disk, on a phone as well. The drawing stands beside the gates, and findings and drawing lead to each other. A wrong plan for which mend has a repair is shown as drawn and as mended; the plan file stays as it is. Also in it: the truth table, the wires and the cautions.',
    )
    .argument(...PLAN)
    .addOption(
      outputOption(
        "HTML file to write (default: the plan's name with .html); - is standard output",
        '.html',
        '.htm',
      ),
    )
    .addOption(forceOption())
    .ends({
      statuses: { pass: MADE, unreadable: 'the plan cannot be read or the page cannot be written' },
      examples: ['pullin page shop.yaml', 'pullin page --force -o bench.html shop.yaml'],
    })
    .action((file: string, flags: PageFlags) => run(file, flags, session));
}
