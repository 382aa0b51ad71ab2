/** `pullin hunt PLAN` */
import type { Hunt } from '../meter/hunt/hunt.ts';
import type { Said } from '../meter/hunt/plain-form.ts';
import type { Study } from '../study/study.ts';
import { printable } from '../text/escape.ts';
import { HuntLog } from './hunt-log.ts';
import { loadStudy } from './input.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { formatOption, gathered, jsonOption, PLAN, widthOption } from './options.ts';
import { type Format, type LookOptions, print, printJson } from './print.ts';
import { Problem, STATUS } from './status.ts';

interface HuntFlags extends LookOptions {
  readonly saw?: readonly string[];
  readonly reading?: readonly string[];
  readonly neverWorked?: boolean;
  readonly mended?: string;
  readonly log?: string;
  readonly format: Format;
  readonly json?: boolean;
}

/** What was said on the command line, in its order of kinds. Throws a `Problem` for what cannot be read. */
async function saidOn(study: Study, flags: HuntFlags): Promise<Said[]> {
  const { PlainForm } = await import('./late/hunt.ts');
  const form = new PlainForm(study);
  const said: Said[] = [];
  for (const text of flags.saw ?? []) {
    const read = form.saw(text);
    if (!read.ok) throw new Problem(`--saw: ${read.problem}`);
    said.push(...read.value);
  }
  for (const text of flags.reading ?? []) {
    const read = form.reading(text);
    if (!read.ok) throw new Problem(`--reading: ${read.problem}`);
    said.push(read.value);
  }
  return said;
}

/** What put it right, in whoever's words: a line, which the log has as well. Throws a `Problem` for none. */
function putRight(hunt: Hunt, text: string, log: HuntLog | undefined): void {
  const by = printable(text.replace(/\s+/g, ' ').trim().slice(0, LONGEST_CURE));
  if (by === '') throw new Problem('--mended: say what put it right, such as "the tab of K1.A1 was loose"');
  hunt.putRight(by);
  log?.say(`mended: ${by}`);
}

/** Characters of what put it right that are kept. */
const LONGEST_CURE = 300;

async function run(file: string, flags: HuntFlags, session: Session): Promise<void> {
  const study = await loadStudy(file, session);
  if (study === undefined) return;
  const late = await import('./late/hunt.ts');
  const danger = late.firstDanger(study);
  if (danger !== undefined)
    throw new Problem(
      `nothing that is wired like this plan is to be powered or measured, for it puts somebody in danger: ${danger}. Put the plan right first; "pullin check" has all of it`,
      STATUS.fail,
    );
  const said = await saidOn(study, flags);
  const hunt: Hunt = new late.Hunt(study, { worked: flags.neverWorked !== true });
  const log = flags.log === undefined ? undefined : await HuntLog.open(flags.log, session);
  log?.resume(hunt, new late.PlainForm(study));
  for (const one of said) {
    hunt.answer(one.observation, one.answer);
    log?.say(new late.PlainForm(study).line(one));
  }
  if (flags.mended !== undefined) putRight(hunt, flags.mended, log);
  const { io } = session;
  const asks =
    io.stdin.isTTY === true &&
    io.stdout.isTTY === true &&
    !flags.json &&
    said.length === 0 &&
    flags.mended === undefined;
  if (asks && file !== '-') {
    const { huntInTerminal } = await import('./hunt-prompts.ts');
    return huntInTerminal(hunt, log, flags, session);
  }
  await log?.written();
  const told = late.tellHunt(hunt);
  if (flags.json) return printJson(told, session);
  await print(late.huntDocument(told), flags, session);
}

export function addHunt(program: Verb, session: Session): void {
  program
    .command('hunt')
    .summary('find what is wrong with a circuit that is built')
    .description(
      'Hunts for the fault in a circuit that was built as planned and does not do what it should. In a terminal it asks one thing after the other, the one that tells most for its trouble first: what the machine does, a lamp in an outlet, a reading on the loop or unplugged; never a probe on live mains. With --saw and --reading it tells who is suspected and what to look at next.',
    )
    .argument(...PLAN)
    .option('--saw <what>', 'what was seen, such as "planer open: runs"; may be given again', gathered)
    .option(
      '--reading <what>',
      'what a meter showed, such as "K1.A1 K1.A2 = 0 V with planer open"; may be given again',
      gathered,
    )
    .option('--never-worked', 'it never worked as it is wired now, so that mistakes in the wiring are likely')
    .option('--mended <what>', 'it works again, and this was it; the log keeps it')
    .option('--log <file>', 'keep what was seen in this file, and go on from what is in it')
    .addOption(formatOption('text', 'markdown'))
    .addOption(jsonOption('the hunt', 'format'))
    .addOption(widthOption())
    .ends({
      notes: [
        'Positions: "all shut", or parts with their position and commas between: "planer open, bin tripped"; "after start pressed" for what was worked and let go of before; "by finger" for a switch pressed by hand. Seen: "runs", "off" or "chatters", of one of several loads "fan1 runs, fan2 off"; "K1 in", "LED1 lit", "X1 live" (a lamp lights in it). Readings: "11.8 V", "24 V AC", "155 ohm", "OL", "beeps".',
        'In a terminal: type what is asked for, "?" when you are not sure, "undo" to take back what was said last ("?" and what did not help as well), "quit" to leave. At the first prompt several things may be told, one a line. Readings count as bands, and an answer may be wrong: a suspect that one answer speaks against falls back and stays in.',
      ],
      statuses: {
        pass: 'told',
        fail: 'the plan puts somebody in danger as it is',
        unreadable: 'the plan, the command line or the log cannot be read',
      },
      examples: [
        "pullin hunt --saw 'planer open: off' --saw 'router open: runs' shop.yaml",
        "pullin hunt --reading 'K1.A1 K1.A2 = 0 V with planer open' --json shop.yaml",
      ],
    })
    .action((file: string, flags: HuntFlags) => run(file, flags, session));
}
