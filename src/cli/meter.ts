/** `pullin meter PLAN` */
import { type Command, Option } from 'commander';
import { parseWidth } from './check.ts';
import { loadStudy } from './input.ts';
import { type Session, wantsUnicode, widthFor } from './io.ts';

interface MeterFlags {
  readonly format: 'text' | 'markdown';
  readonly json?: boolean;
  readonly width?: number;
}

/** ms after which, and between which, progress is told. */
const PATIENCE = 500;
/** Moves to the start of the line and clears it (ECMA-48). */
const CLEAR = '\r\u001b[K';

/** Tells on a terminal how far the work is once it takes longer than half a second. */
function progressOn({ io, err }: Session): { tell(done: number, of: number): void; end(): void } {
  let last = Date.now();
  let shown = false;
  return {
    tell(done, of) {
      const now = Date.now();
      if (io.stderr.isTTY !== true || now - last < PATIENCE) return;
      last = now;
      shown = true;
      err.write(`${CLEAR}trying faults: ${Math.floor((100 * done) / Math.max(1, of))} %`);
    },
    end() {
      if (shown) err.write(CLEAR);
    },
  };
}

async function run(file: string, flags: MeterFlags, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const progress = progressOn(session);
  const sheet = await session.stages.meterSheet(study, progress.tell);
  progress.end();
  if (flags.json) return session.out.write(`${JSON.stringify(sheet, null, 2)}\n`);
  const { renderMeterMarkdown, renderMeterText } = await import('../report/meter.ts');
  const { stdout, env } = session.io;
  if (flags.format === 'markdown') return session.out.write(renderMeterMarkdown(sheet));
  session.out.write(renderMeterText(sheet, widthFor(flags.width, stdout), wantsUnicode(stdout, env)));
}

export function addMeter(program: Command, session: Session): void {
  program
    .command('meter')
    .summary('print the readings to take before it first runs')
    .description(
      'Works out the fewest meter readings that show every single fault a reading can show, in the order to take them: first unplugged and dead, then with the loop live, mains last. Each tells where the probes go, what to expect, and what a wrong reading means.',
    )
    .argument('<plan>', 'plan file; - is standard input')
    .addOption(
      new Option('--format <format>', 'how to print it').choices(['text', 'markdown']).default('text'),
    )
    .addOption(new Option('--json', 'print the sheet as JSON').conflicts('format'))
    .option('--width <columns>', 'fill lines to this width (default: the terminal, else 80)', parseWidth)
    .addHelpText(
      'after',
      '\nThe sheet is worked out from the plan as it is. When the plan fails the check, the\nsheet says so first; when it puts somebody in danger, there is nothing to measure\nuntil that is put right. The exit status says whether the sheet was made: 0 made,\n2 the plan cannot be read, 70 a mistake in pullin.',
    )
    .action((file: string, flags: MeterFlags) => run(file, flags, session));
}
