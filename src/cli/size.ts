/** `pullin size PLAN` */
import type { Size } from '../lists/size/size-model.ts';
import type { Plan } from '../plan/plan.ts';
import { printable } from '../text/escape.ts';
import { loadPlanFile, studyOf } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { writeMade } from './made.ts';
import {
  forceOption,
  formatOption,
  gathered,
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

async function draw(
  file: string,
  title: string,
  { plot, unit, check }: Size,
  flags: SizeFlags & { readonly output: string },
  session: Session,
): Promise<void> {
  if (plot === null) throw new Problem('there is nothing to draw: no gate is fed by a loop of cable');
  const { plotSvg } = await import('./late/size.ts');
  const { toldLine } = await import('./late/all.ts');
  const svg = plotSvg({ plot, unit, title, told: toldLine(check, '') });
  if (flags.output === '-') return session.out.write(svg);
  const name = await writeMade({ file, output: flags.output, force: flags.force === true }, svg, session);
  session.err.write(`${name}: a sheet of A4 with the volts at ${printable(plot.coil)} by distance\n`);
}

/** The plan with the what-ifs in it, and with what has to go along with them; undefined where it cannot be read. */
async function changedPlan(
  file: string,
  typed: readonly string[],
  session: Session,
): Promise<{ readonly plan: Plan; readonly done: readonly string[] } | undefined> {
  const { WhatIfs, withAlong } = await import('./late/size.ts');
  const whatIfs = new WhatIfs(typed);
  const refuse = () => {
    if (whatIfs.problems.length > 0) throw new Problem(whatIfs.problems.map((p) => `--with ${p}`).join('; '));
  };
  refuse();
  const read = await loadPlanFile(file, session, whatIfs);
  refuse();
  return read && withAlong(read.bytes, file, typed, read.plan, whatIfs);
}

async function run(file: string, flags: SizeFlags, session: Session): Promise<void> {
  const read = await changedPlan(file, flags.with ?? [], session);
  if (read === undefined) return;
  const { size, sizeDocument } = await import('./late/size.ts');
  const { plan, done } = read;
  const sizes = size(await studyOf(plan), done);
  const { output } = flags;
  if (output !== undefined) await draw(file, plan.title, sizes, { ...flags, output }, session);
  if (output === '-') return;
  if (flags.json) return printJson(sizes, session);
  await print(sizeDocument(sizes, plan.title, output !== undefined), flags, session);
}

export function addSize(program: Verb, session: Session): void {
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
    .ends({
      notes: [
        'A what-if names a part, a group of parts or a stock item, and gives it figures in the words of a plan: each goes to the field that reads it (of a motor power, volts, amps; of a supply output, limit; of a relay coil volts and watts; of an overload relay its setting, which otherwise goes with the amps of the motor whose plate it is set to; of a cable its gauge). NAME.FIELD=VALUE says the field, such as K1.coil.pull-in=70 %. "run 3=12 m" sets the length of a run, "ambient=35 °C" the air. What the plan says of the old thing and no longer holds is left out, and told. The file stays as it is.',
      ],
      statuses: {
        pass: 'told, whatever the check says of the plan',
        unreadable: 'the plan or the command line cannot be read, or the file cannot be written',
      },
      examples: ['pullin size shop.yaml', "pullin size --with 'collector=3 hp 240 V' shop.yaml"],
    })
    .action((file: string, flags: SizeFlags) => run(file, flags, session));
}
