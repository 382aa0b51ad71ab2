/** `pullin page PLAN -o FILE.html` */
import type { Command } from 'commander';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import { endingIn, writeMade } from './made.ts';

interface PageFlags {
  readonly output: string;
  readonly force?: boolean;
}

async function run(file: string, { output, force }: PageFlags, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const html = await session.stages.page(study);
  if (output === '-') return session.out.write(html);
  const name = await writeMade({ file, output, force: force === true }, html, session);
  session.err.write(`${name}: written\n`);
}

export function addPage(program: Command, session: Session): void {
  program
    .command('page')
    .summary('write a page in which gates can be opened')
    .description(
      'Writes one HTML file that shows the plan at work: open a gate in it and see the coil pull in and the collector start, or why not. It needs no network and opens from disk, on a phone as well. Also in it: the drawing, what the check found, the truth table, the wires and the cautions.',
    )
    .argument('<plan>', 'plan file; - is standard input')
    .requiredOption(
      '-o, --output <file>',
      'HTML file to write; - is standard output',
      endingIn('.html', '.htm'),
    )
    .option('--force', 'write over a file that exists')
    .addHelpText(
      'after',
      '\nThe exit status says whether the page was made, not whether the plan is right:\n0 made, 2 the plan cannot be read or the page cannot be written, 70 a mistake in\npullin.',
    )
    .action((file: string, flags: PageFlags) => run(file, flags, session));
}
