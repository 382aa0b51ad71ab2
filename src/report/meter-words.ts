/** Sentences of the commissioning sheet, the same for a terminal and for Markdown; nothing is escaped here. */
import type {
  HiddenFault,
  MeterSheet,
  MeterStage,
  MeterStep,
  ReadStep,
  Wrong,
} from '../meter/sheet/sheet-model.ts';
import { push } from '../plan/map-entries.ts';
import { rounded } from '../text/numbers.ts';
import { listOf } from '../text/word-list.ts';
import { toldLine } from './told.ts';

export const STAGE_TITLES: Readonly<Record<MeterStage, string>> = {
  1: 'Unplugged and dead',
  2: 'Loop live, no load on the line',
  3: 'Mains last, with a lamp as first load',
};

/** The title over the readings of one zone, or over those that go across the trunk. */
export function sectionTitle(zone: string | undefined): string {
  return zone === undefined
    ? 'The trunk, and what goes beyond one zone'
    : `The zone of ${zone}: probes and gates of this zone alone`;
}

/** When to leave it; common practice. */
export const STOP: readonly string[] = [
  'anything on the mains side is wet, burnt, cracked, or is not what the plan says it is',
  'the meter shows mains volts on the loop, or between the loop and earth',
  'earth is not continuous from where it comes in to every part it ought to reach',
  'a breaker, a fuse or a residual current device opens',
  'a relay contact does not break the line, or the load is live with its relay out',
  'a wrong reading stays and no cause named beside it is found',
];

export const INTRO =
  'Work from the top. Put right what a step shows before going on: each step names only causes that the steps before it have not excluded, and after a change the steps of its stage are done again. What a step does not name stands at rest: gates shut, switches off, buttons free. A band is what the circuit may give; a plain meter adds up to 2 % and five of its last digits.';

/** On paper, where the causes are that a step counts without naming them. */
export const MORE =
  'Where a step counts more causes than it names, `pullin meter` on the same plan names more, and `pullin meter --json` all of them.';

const AS_IT_STANDS = 'The readings are of the plan as it stands.';
const DANGER =
  'The plan puts somebody in danger as drawn: put it right first (`pullin check`, `pullin mend`); nothing is to be measured or powered until then.';

/** Whether there is nothing to measure because the plan puts somebody in danger. */
export function isWithheld({ setup, steps, check }: MeterSheet): boolean {
  return check.verdict === 'fail' && setup.length === 0 && steps.length === 0;
}

/** What a sheet begins with when the plan does not pass `check`; undefined for one that passes. */
export function checkLine(sheet: MeterSheet): string | undefined {
  return toldLine(sheet.check, isWithheld(sheet) ? DANGER : AS_IT_STANDS);
}

/** A number with three figures. */
function figures(value: number): string {
  return String(rounded(value));
}

function quantity(value: number, unit: string): string {
  if (unit === 'ohm' && Math.abs(value) >= 1000) return `${figures(value / 1000)} kohm`;
  return `${figures(value)} ${unit}`;
}

/** What the meter ought to show. */
export function expectWords({ expect }: ReadStep): string {
  const { shows, nominal, low, high, unit, kind } = expect;
  if (shows === 'open') return 'no way through (over range)';
  if (shows === 'nothing') return `nothing (under ${quantity(high ?? 0, unit)})`;
  if (shows === 'below') return `some ohms, under ${quantity(high ?? 0, unit)} (a winding)`;
  const about = `${quantity(nominal ?? 0, unit)}${kind === null ? '' : ` ${kind.toUpperCase()}`}`;
  const band = `${quantity(low ?? 0, unit)} to ${quantity(high ?? 0, unit)}`;
  if (shows === 'beeps')
    return `it beeps (${nominal !== null && nominal >= 1 ? `about ${quantity(nominal, unit)}` : 'under 1 ohm'})`;
  return `${about} (${band})`;
}

/** The name of a wrong reading on the range in use. */
export function wrongWords({ expect }: ReadStep, wrong: Wrong): string {
  const volts = expect.unit === 'V';
  switch (wrong) {
    case 'open':
      return volts ? 'nothing' : expect.shows === 'beeps' ? 'no beep, no way through' : 'no way through';
    case 'shorted':
      // A meter beeps on continuity alone, and there nothing reads shorted.
      return expect.shows === 'open' ? 'a low reading' : 'next to nothing';
    case 'too low':
      return expect.shows === 'open' ? 'some ohms' : 'too low';
    case 'too high':
      return expect.shows === 'nothing'
        ? 'volts'
        : expect.shows === 'beeps'
          ? 'no beep, some ohms'
          : 'too high';
    case 'tells nothing':
      return "a figure that jumps or makes no sense (the loop's supply may be at the probes: take them off at once)";
    default:
      return 'minus sign';
  }
}

/** Where everything stands, with what is worked first and let go of, and what takes a third hand. */
export function positionWords({ first, positions, held, alone }: ReadStep): string {
  if (alone !== null) return `${alone} by itself`;
  const now = positions.length === 0 ? 'everything at rest' : positions.join(', ');
  const where = first.length === 0 ? now : `first ${first.join(', ')}; let go, then read with ${now}`;
  if (held.length === 0) return where;
  return `${where} (keep ${held.join(' and ')} so while you read: a second person is needed)`;
}

/** Where the probes go. */
export function probeWords(step: ReadStep): string {
  return `red on ${step.red}, black on ${step.black}${step.far ? ' (with a long lead)' : ''}`;
}

/** What is done before a step is read: a supply by itself, a clip lead put on, gates adjusted; a sentence each. */
export function beforeWords(step: ReadStep): string[] {
  const lead = `${step.clipped.length > 2 ? 'Clip leads join' : 'A clip lead joins'} ${step.clipped.slice(0, -1).join(', ')} and ${step.clipped.at(-1)} for this reading, and off again after it.`;
  const own = `Nothing is on the poles of ${step.alone} yet, and nothing is connected to it until it reads as it should. Unless it is a battery, it gets power for this reading alone, a plug-in one from any socket that works.`;
  return [
    ...(step.alone === null ? [] : [own]),
    ...(step.clipped.length === 0 ? [] : [lead]),
    ...step.adjust,
  ];
}

/** One line of a wrong reading with what it means, the likeliest `most` faults; the data have them all. */
export function meaningLines(
  step: ReadStep,
  most = 6,
  where = ' (--json lists all)',
): { readonly wrong: string; readonly means: string }[] {
  return step.wrong.map(({ wrong, faults }) => {
    const shown = faults.slice(0, most);
    const more = faults.length - shown.length;
    const rest = more > 0 ? `; and ${more} more${where}` : '';
    return { wrong: wrongWords(step, wrong), means: `${shown.join('; ')}${rest}` };
  });
}

/** One line for all that is hidden for one reason; what is the same at several parts is told once. */
export function silentLines(silent: readonly HiddenFault[]): string[] {
  const reasons = new Map<string, HiddenFault[]>();
  for (const hidden of silent) push(reasons, hidden.why, hidden);
  return [...reasons].map(([why, of]) => {
    const told = alikeOf(of);
    return of.length === 1
      ? `${told[0]}: ${why}`
      : `Of each of these ${of.length}, ${why}: ${told.join('; ')}`;
  });
}

/** `K1: contact COM-NC never makes (likewise K2 and K3)`. */
function alikeOf(hidden: readonly HiddenFault[]): string[] {
  const alike = new Map<string, HiddenFault[]>();
  for (const h of hidden) {
    const own = h.item !== '' && h.fault.startsWith(h.item);
    push(alike, own ? `of a part${h.fault.slice(h.item.length)}` : `as it is ${h.fault}`, h);
  }
  return [...alike.values()].map(([first, ...others]) => {
    const items = [...new Set(others.map((h) => h.item))].filter((item) => item !== first!.item);
    return items.length === 0 ? first!.fault : `${first!.fault} (likewise ${listOf(items)})`;
  });
}

/** Steps of one stage, in order. */
export function stepsOf(steps: readonly MeterStep[], stage: MeterStage): readonly MeterStep[] {
  return steps.filter((s) => s.stage === stage);
}
