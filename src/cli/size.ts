/** `pullin size PLAN` */
import type { Command } from 'commander';
import type { Size } from '../lists/size/size-model.ts';
import { printable } from '../text/escape.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import { writeMade } from './made.ts';
import {
  exitStatus,
  forceOption,
  formatOption,
  helpEnd,
  jsonOption,
  outputOption,
  PLAN,
  widthOption,
} from './options.ts';
import { type Format, type LookOptions, print, printJson } from './print.ts';
import { Problem } from './status.ts';

interface SizeFlags extends LookOptions {
  readonly with?: readonly string[];
  readonly format: Format;
  readonly json?: boolean;
  readonly output?: string;
  readonly force?: boolean;
}

/** Each `--with` is one what-if; a comma may stand in it. */
const gathered = (text: string, before: readonly string[] = []): string[] => [...before, text];

async function draw(
  file: string,
  title: string,
  { plot, unit, check }: Size,
  flags: SizeFlags & { readonly output: string },
  session: Session,
): Promise<void> {
  if (plot === null) throw new Problem('there is nothing to draw: no gate is fed by a loop of cable');
  const { plotSvg } = await import('./late-size.ts');
  const { toldLine } = await import('./late.ts');
  const svg = plotSvg({ plot, unit, title, told: toldLine(check, '') });
  if (flags.output === '-') return session.out.write(svg);
  const name = await writeMade({ file, output: flags.output, force: flags.force === true }, svg, session);
  session.err.write(`${name}: a sheet of A4 with the volts at ${printable(plot.coil)} by distance\n`);
}

async function run(file: string, flags: SizeFlags, session: Session): Promise<void> {
  const { WhatIfs } = await import('./late-size.ts');
  const whatIfs = new WhatIfs(flags.with ?? []);
  const refuse = () => {
    const [first, ...more] = whatIfs.problems;
    if (first !== undefined) throw new Problem(`--with ${[first, ...more].join('; --with ')}`);
  };
  refuse();
  const study = await loadStudy(file, session, whatIfs);
  refuse();
  if (study === undefined) return;
  const { size, sizeDocument } = await import('./late-size.ts');
  const sizes = size(study, whatIfs.done);
  const { output } = flags;
  if (output !== undefined) await draw(file, study.plan.title, sizes, { ...flags, output }, session);
  if (output === '-') return;
  if (flags.json) return printJson(sizes, session);
  await print(sizeDocument(sizes, study.plan.title), flags, session);
}

export function addSize(program: Command, session: Session): void {
  program
    .command('size')
    .summary('tell what the design allows and needs')
    .description(
      'Tells the thinnest wire, how far the farthest gate could be, how many gates more the loop bears, the least supply, coils of 12, 24 and 48 V side by side, the contacts to look for, fuse, breaker and box. Each figure was tried in the plan and passed; one step beyond it the check that is named says no.',
    )
    .argument(...PLAN)
    .option(
      '--with <what-if>',
      'NAME=QUANTITIES: work it out with another figure; may be given several times',
      gathered,
    )
    .addOption(outputOption('draw volts against distance as an SVG file; - is standard output', '.svg'))
    .addOption(forceOption())
    .addOption(formatOption('text', 'markdown'))
    .addOption(jsonOption('the sizes', 'format'))
    .addOption(widthOption())
    .addHelpText(
      'after',
      helpEnd(
        'A what-if names a part, a group of parts or a stock item, and gives it figures in the words of a plan: each goes to the field that reads it (of a motor power, volts, amps; of a supply output, limit; of a relay coil volts and watts; of a cable its gauge). NAME.FIELD=VALUE says the field, such as K1.coil.pull-in=70 %. "run 3=12 m" sets the length of a run, "ambient=35 °C" the air. What the plan says of the old thing and no longer holds is left out, and told. The file stays as it is.',
        exitStatus(
          '0 told, whatever the check says of the plan',
          '2 the plan or the command line cannot be read, or the file cannot be written',
        ),
        'Examples:',
      ) +
        '\n  pullin size examples/saltmarsh-lane.yaml' +
        "\n  pullin size examples/saltmarsh-lane.yaml --with 'collector=3 hp 240 V'",
    )
    .action((file: string, flags: SizeFlags) => run(file, flags, session));
}
