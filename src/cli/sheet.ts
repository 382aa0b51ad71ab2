/** `pullin sheet PLAN -o FILE` */
import { InvalidArgumentError, Option } from 'commander';
import type { PaperSize } from '../draw/paper-sizes.ts';
import type { Study } from '../study/study.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { besidePlan, dateOf, type Making, refusePlan, writeMade } from './made.ts';
import { forceOption, MADE, PLAN, sizeOption } from './options.ts';
import { progress } from './progress.ts';
import { Problem } from './status.ts';

interface SheetFlags {
  readonly output?: string;
  readonly size: PaperSize;
  readonly force?: boolean;
}

function parseOutput(text: string): string {
  if (text !== '-' && !/\.(html?|pdf)$/i.test(text))
    throw new InvalidArgumentError(
      'It takes a file that ends in .html or .pdf, or - for HTML on standard output.',
    );
  return text;
}

async function made(study: Study, file: string, size: PaperSize, session: Session): Promise<string> {
  const {
    cautionFacts,
    chooseCautions,
    drawnState,
    wireList,
    materials,
    meterSheet,
    METHOD_WORDS,
    shownState,
    printedSheet,
    readingsAsked,
  } = await import('./late/all.ts');
  const { plan, circuit, sides } = study;
  const wires = wireList(study, { any: [], own: new Map() });
  if ('tooLong' in wires) throw new Error('no reels were given');
  const bar = progress('working out the meter sheet', session);
  const meter = meterSheet(study, bar.step);
  bar.done();
  const report = await session.stages.check(study);
  const date = await dateOf(file, session);
  return printedSheet({
    plan,
    // What the sheet asks to be read calls for cautions of its own.
    report: {
      ...report,
      cautions: chooseCautions(cautionFacts(study, report.findings, readingsAsked(meter))),
    },
    circuit,
    sides,
    shown: shownState(circuit, { made: drawnState(study, []).made }),
    truth:
      study.undecided === undefined
        ? study.truthTable({ all: false })
        : 'This circuit is too involved for a truth table.',
    wires,
    methods: METHOD_WORDS,
    materials: materials(study),
    meter,
    size,
    ...(date === undefined ? {} : { date }),
  });
}

async function run(file: string, flags: SheetFlags, session: Session): Promise<void> {
  const output = flags.output ?? besidePlan(file, '-sheet.html');
  const making: Making = { file, output, force: flags.force === true };
  const wantsPdf = /\.pdf$/i.test(output);
  const { findChromium, printPdf } = await import('./pdf.ts');
  const browser = wantsPdf ? await findChromium(session.io.env) : undefined;
  if (wantsPdf && browser === undefined)
    throw new Problem(
      'no Chromium was found for the PDF; install one, name it in CHROMIUM, or write to a .html file and print that from any browser',
    );
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  if (output !== '-') await refusePlan(making, session);
  const html = await made(study, file, flags.size, session);
  if (output === '-') return session.out.write(html);
  const name = await writeMade(making, browser === undefined ? html : await printPdf(html, browser), session);
  session.err.write(`${name}: written\n`);
}

export function addSheet(program: Verb, session: Session): void {
  program
    .command('sheet')
    .summary('write everything for the bench as one document to print')
    .description(
      'Writes one document for A4 or letter paper: the verdict and the cautions, the diagram, what runs when, the wire list with boxes to tick, the cut list, the materials, the meter sheet with blanks for the readings, and lines to sign. A plan that fails is printed with its findings on the first page and a band on every page.',
    )
    .argument(...PLAN)
    .addOption(
      new Option(
        '-o, --output <file>',
        "file to write, .html or .pdf (default: the plan's name with -sheet.html); - is HTML on standard output",
      ).argParser(parseOutput),
    )
    .addOption(sizeOption('paper'))
    .addOption(forceOption())
    .ends({
      notes: [
        'A PDF is printed by an installed Chromium: the one named in the environment variable CHROMIUM, else chromium, chromium-browser or chrome on the search path.',
      ],
      statuses: { pass: MADE, unreadable: 'the plan cannot be read or the file cannot be written' },
      examples: ['pullin sheet shop.yaml', 'pullin sheet --size letter -o bench.html shop.yaml'],
    })
    .action((file: string, flags: SheetFlags) => run(file, flags, session));
}
