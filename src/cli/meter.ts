/** `pullin meter PLAN` */
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { formatOption, jsonOption, MADE, PLAN, widthOption } from './options.ts';
import { type Format, type LookOptions, print, printJson } from './print.ts';
import { progress } from './progress.ts';

interface MeterFlags extends LookOptions {
  readonly format: Format;
  readonly json?: boolean;
}

async function run(file: string, flags: MeterFlags, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const bar = progress('trying faults:', session);
  const sheet = await session.stages.meterSheet(study, bar.step);
  bar.done();
  if (flags.json) return printJson(sheet, session);
  const { meterDocument } = await import('./late/all.ts');
  await print(meterDocument(sheet), flags, session);
}

export function addMeter(program: Verb, session: Session): void {
  program
    .command('meter')
    .summary('print the readings to take before it first runs')
    .description(
      'Works out the fewest meter readings that show every single fault a reading can show, in the order to take them: first unplugged and dead, then with the loop live, mains last. Each tells where the probes go, what to expect, and what a wrong reading means.',
    )
    .argument(...PLAN)
    .addOption(formatOption('text', 'markdown'))
    .addOption(jsonOption('the sheet', 'format'))
    .addOption(widthOption())
    .ends({
      notes: [
        'The sheet is worked out from the plan as it is. When the plan fails the check, the sheet says so first; when it puts somebody in danger, there is nothing to measure until that is put right.',
      ],
      statuses: { pass: MADE, unreadable: 'the plan cannot be read' },
      examples: ['pullin meter shop.yaml', 'pullin meter --format markdown shop.yaml'],
    })
    .action((file: string, flags: MeterFlags) => run(file, flags, session));
}
