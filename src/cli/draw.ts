/** `pullin draw PLAN` */
import { Option } from 'commander';
import type { PaperSize } from '../draw/paper-sizes.ts';
import type { Study } from '../study/study.ts';
import { printable } from '../text/escape.ts';
import { loadStudy } from './input.ts';
import { type Session, wantsUnicode, widthFor } from './io.ts';
import type { Verb } from './line/verb.ts';
import { dateOf, writeMade } from './made.ts';
import { forceOption, MADE, outputOption, PLAN, sizeOption, widthOption } from './options.ts';
import { addPositions, inputsOf, type PositionFlags } from './positions.ts';
import { Problem } from './status.ts';

interface DrawFlags extends PositionFlags {
  readonly output?: string;
  readonly size: PaperSize;
  readonly ascii?: boolean;
  readonly width?: number;
  readonly force?: boolean;
  readonly runs?: boolean;
}

/** What a drawing is made from; loaded when it is needed. */
async function prepared(study: Study, flags: PositionFlags) {
  const { drawingInput } = await import('./late/all.ts');
  const moved = inputsOf(study.plan, flags);
  const given = [flags.open, flags.on, flags.press, flags.trip].some((names) => names !== undefined);
  return drawingInput(study, given ? moved : undefined);
}

async function run(file: string, flags: DrawFlags, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  if (flags.runs === true) return mapOfRuns(study, file, flags, session);
  const input = await prepared(study, flags);
  if (flags.output === undefined) {
    const { renderDrawing } = await import('./late/all.ts');
    const { stdout, env } = session.io;
    const unicode = flags.ascii !== true && wantsUnicode(stdout, env);
    session.out.write(renderDrawing(input, widthFor(flags.width, stdout), unicode));
    return;
  }
  const { sheetsOf } = await import('./late/all.ts');
  const date = await dateOf(file, session);
  const { svgs, laid, paper } = sheetsOf({ ...input, ...(date === undefined ? {} : { date }) }, flags.size);
  if (flags.output === '-') {
    if (svgs.length > 1)
      throw new Problem(`the drawing takes ${svgs.length} sheets of ${paper}; name a file with -o for them`);
    return session.out.write(svgs[0]!);
  }
  const names = svgs.map((_, i) => sheetName(flags.output!, i, svgs.length));
  for (const [i, svg] of svgs.entries())
    await writeMade({ file, output: names[i]!, force: flags.force === true }, svg, session);
  const sheets = svgs.length === 1 ? `a sheet of ${paper}` : `${svgs.length} sheets of ${paper}`;
  const small = laid.legible ? '' : '; its words come out smaller than 8 points';
  session.err.write(`${printable(names.join(', '))}: ${sheets}${small}\n`);
}

/** `shop.svg`, or of several sheets `shop-1.svg`. */
function sheetName(output: string, index: number, count: number): string {
  return count === 1 ? output : output.replace(/\.svg$/i, (end) => `-${index + 1}${end}`);
}

/** The map of the runs in place of the circuit. */
async function mapOfRuns(study: Study, file: string, flags: DrawFlags, session: Session): Promise<void> {
  const { judge, paperOf, renderRuns, runsSheet } = await import('./late/all.ts');
  const { plan, circuit, sides } = study;
  const input = { plan, circuit, sides, report: judge(study) };
  const { output } = flags;
  if (output === undefined) {
    const { stdout, env } = session.io;
    const unicode = flags.ascii !== true && wantsUnicode(stdout, env);
    return session.out.write(renderRuns(input, widthFor(flags.width, stdout), unicode));
  }
  const date = await dateOf(file, session);
  const { svg, longer } = runsSheet({ ...input, ...(date === undefined ? {} : { date }) }, flags.size);
  if (output === '-') return session.out.write(svg);
  const name = await writeMade({ file, output, force: flags.force === true }, svg, session);
  const paper = paperOf(flags.size, false).name;
  session.err.write(
    `${name}: ${longer ? `a sheet as wide as ${paper}, and longer` : `a sheet of ${paper}`}\n`,
  );
}

export function addDraw(program: Verb, session: Session): void {
  const command = program
    .command('draw')
    .summary('draw the circuit as a ladder diagram')
    .description(
      'Draws the loop between its supply rails, and the mains side below it: on the terminal in characters, or with -o as an SVG file for print. Every core carries its run and colour, and a table below tells what each run is; the parts that findings speak of are marked. A wrong plan is drawn as it is wired, and the core that is wrong leaves the form. With --runs it draws a map of the cables instead: from where to where, how long, with how many cores.',
    )
    .argument(...PLAN)
    .addOption(outputOption('write an SVG file; - is standard output', '.svg'));
  addPositions(command)
    .addOption(
      new Option('--runs', 'the runs of cable between boxes and parts, in the order of the duct').conflicts([
        'open',
        'on',
        'press',
        'trip',
      ]),
    )
    .addOption(sizeOption('paper of the SVG'))
    .option('--ascii', 'plain letters, - | and + instead of line characters')
    .addOption(widthOption('fit the drawing'))
    .addOption(forceOption())
    .ends({
      notes: [
        'On paper no word is smaller than 8 points; what does not fit on one sheet is cut into several, each its own file (shop-1.svg, shop-2.svg), and an arrow at a cut names the sheet and the column where its conductor goes on. What is not named stands at rest; with a position given, live conductors are drawn heavier.',
      ],
      statuses: { pass: MADE, unreadable: 'the plan cannot be read or the file cannot be written' },
      examples: ['pullin draw --runs shop.yaml', 'pullin draw --open planer -o shop.svg shop.yaml'],
    })
    .action((file: string, flags: DrawFlags) => run(file, flags, session));
}
