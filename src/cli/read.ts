/** `pullin read PLAN [A B]` */
import { terminalNamed } from '../machine/named.ts';
import type { Probe } from '../machine/read-meter.ts';
import type { Plan } from '../plan/plan.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { jsonOption, PLAN, widthOption } from './options.ts';
import { addPositions, collect, inputsOf, named, type PositionFlags } from './positions.ts';
import { type LookOptions, print, printJson } from './print.ts';
import { Problem } from './status.ts';

interface ReadFlags extends PositionFlags, LookOptions {
  readonly dead?: boolean;
  readonly loop?: boolean;
  readonly clip?: readonly string[];
  readonly json?: boolean;
}

const probeOf = (plan: Plan, text: string): Probe => named(() => terminalNamed(plan, text));

async function run(
  file: string,
  a: string | undefined,
  b: string | undefined,
  flags: ReadFlags,
  session: Session,
): Promise<void> {
  if (a !== undefined && b === undefined) throw new Problem('name two terminals, or none for a table of all');
  if (flags.dead && b === undefined) throw new Problem('--dead needs the two terminals the meter is on');
  if (flags.loop && !flags.dead) throw new Problem('--loop goes with --dead; without it every supply is on');
  if (flags.clip && !flags.dead)
    throw new Problem('--clip goes with --dead: nothing is joined with power on');
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const { plan } = study;
  const moved = inputsOf(plan, flags);
  const clipped = (flags.clip ?? []).map((text) => probeOf(plan, text));
  if (clipped.length === 1) throw new Problem('--clip needs two terminals or more, separated by commas');
  const reading = await session.stages.readMeter(study, {
    moved,
    dead: flags.dead === true,
    loop: flags.loop === true,
    clipped,
    ...(a !== undefined && b !== undefined ? { between: [probeOf(plan, a), probeOf(plan, b)] } : {}),
  });
  if (flags.json) return printJson(reading, session);
  const { readingDocument } = await import('./late/all.ts');
  await print(readingDocument(reading), flags, session);
}

export function addRead(program: Verb, session: Session): void {
  const command = program
    .command('read')
    .summary('tell what a meter reads between two terminals')
    .description(
      'Tells what a meter between terminals A and B reads in one position of gates and switches: volts, or with --dead ohms. Without A and B: the volts of every conductor and the current in every core. Figures as printed on the parts, everything at 20 °C.',
    )
    .argument(...PLAN)
    .argument('[a]', 'terminal of the red probe, such as K1.A1')
    .argument('[b]', 'terminal of the black probe');
  addPositions(command)
    .option('--dead', 'power off: supplies taken off, the meter on ohms')
    .option('--loop', 'with --dead: low-voltage supplies on, and out each plug they can do without')
    .option(
      '--clip <terminals>',
      'with --dead: terminals that a clip lead joins, separated by commas',
      collect,
    )
    .addOption(jsonOption('the reading'))
    .addOption(widthOption())
    .ends({
      notes: [
        'What is not named stands at rest. A reading is what the plan leads to expect; a real one may differ by the tolerances that "pullin check" counts with.',
      ],
      statuses: {
        pass: 'told, whatever the check says of the plan',
        unreadable: 'the plan or the command line cannot be read',
      },
      examples: [
        'pullin read --open planer shop.yaml K1.A1 K1.A2',
        'pullin read --dead --open router shop.yaml K1.A1 PS1.+',
      ],
    })
    .action((file: string, a: string | undefined, b: string | undefined, flags: ReadFlags) =>
      run(file, a, b, flags, session),
    );
}
