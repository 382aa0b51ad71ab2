/** Edits as instructions for someone with a screwdriver. */
import { type Edit, isSaying, type Rewiring, type Saying } from '../edit/edits.ts';
import { push } from '../plan/map-entries.ts';
import type { Core, Plan } from '../plan/plan.ts';
import { splitTerminalKey, terminalKey } from '../plan/terminal-key.ts';
import { coreBetween } from '../text/core-names.ts';
import { runText } from '../text/run-names.ts';
import { listOf } from '../text/word-list.ts';
import { asWritten } from './plan-marks.ts';

/** Parts named in a sentence that speaks of the same change at several. */
const MOST_NAMED = 12;

/** Lamps that a repair leaves without use. */
export const darkText = (lamps: readonly string[]): string =>
  `Then ${listOf(lamps)} ${lamps.length === 1 ? 'gives' : 'give'} light in no position.`;

/** One sentence an edit, or one for the same change at several parts. */
export function instructionsFor(plan: Plan, edits: readonly Edit[]): string[] {
  const said = edits.filter(isSaying);
  const wiring = edits.filter((e) => !isSaying(e)) as Rewiring[];
  return [...(tabByTab(plan, wiring) ?? wiring.map((e) => sentence(plan, e))), ...inThePlan(said)];
}

const coreOf = (plan: Plan, at: { run: number; core: number }): Core => plan.runs[at.run]!.cores[at.core]!;

function named(plan: Plan, at: { run: number; core: number }): string {
  const run = plan.runs[at.run]!;
  const core = coreOf(plan, at);
  const { colour, a, b } = core;
  const ended = { colour, link: run.link, a: a.written, b: b.written };
  return coreBetween(ended, run.name ?? runText(run), core.at.line);
}

function sentence(plan: Plan, e: Rewiring): string {
  if (e.do === 'move')
    return `Move ${named(plan, e)} from ${coreOf(plan, e)[e.end].written} to ${asWritten(plan, e.to)}.`;
  if (e.do === 'remove') return `Take out ${named(plan, e)}.`;
  if (e.do === 'add') {
    const cable = e.like === undefined ? undefined : plan.runs[e.like]?.cable;
    const [from, to] = [asWritten(plan, e.from), asWritten(plan, e.to)];
    return cable
      ? `Join ${from} to ${to} with a new core of ${cable.gauge} cable (its length is taken from ${runText(plan.runs[e.like!]!)}: measure it).`
      : `Join ${from} to ${to} with a short jumper.`;
  }
  const [x, y] = [coreOf(plan, e.first)[e.first.end], coreOf(plan, e.second)[e.second.end]];
  const part = plan.parts.get(x.part);
  if (x.part === y.part && (part?.kind === 'diode' || part?.kind === 'led'))
    return `Turn ${x.part} round: what is on ${x.written} goes to ${y.written}, and the reverse.`;
  return `Let two ends change places: ${named(plan, e.first)} leaves ${x.written} for ${y.written}, and ${named(plan, e.second)} leaves ${y.written} for ${x.written}.`;
}

/** `At each of planer and router, move what is on NC to NO`, where that is all there is to do; else undefined. */
function tabByTab(plan: Plan, edits: readonly Rewiring[]): string[] | undefined {
  const moves = new Map<string, string[]>();
  for (const e of edits) {
    if (e.do !== 'move') return undefined;
    const { part, terminal: from } = coreOf(plan, e)[e.end];
    const to = splitTerminalKey(e.to);
    if (to.part !== part) return undefined;
    push(moves, `${from} to ${to.terminal}`, part);
  }
  const groups = [...moves].map(([tabs, parts]) => ({ tabs, parts: [...new Set(parts)] }));
  const [first] = groups;
  if (!first || (first.parts.length < 2 && groups.length < 2)) return undefined;
  if (groups.some((g) => g.parts.join() !== first.parts.join())) return undefined;
  const whole = first.parts.every((part) =>
    groups.every(({ tabs }) => {
      const from = tabs.slice(0, tabs.indexOf(' '));
      const ends = plan.runs.flatMap((run) => run.cores.flatMap((c) => [c.a, c.b]));
      const there = ends.filter((end) => end.part === part && end.terminal === from).length;
      return there === edits.filter((e) => e.do === 'move' && isFrom(plan, e, part, from)).length;
    }),
  );
  if (!whole) return undefined;
  // The tabs of parts that are changed alike are marked alike.
  const mark = (tab: string) => splitTerminalKey(asWritten(plan, terminalKey(first.parts[0]!, tab))).terminal;
  const what = groups
    .map(({ tabs }) => `what is on ${tabs.split(' to ').map(mark).join(' to ')}`)
    .join(' and ');
  if (first.parts.length === 1) return [`At ${first.parts[0]}, move ${what}.`];
  return [`At each of ${listOf(first.parts, MOST_NAMED)}, move ${what}.`];
}

function isFrom(plan: Plan, e: Rewiring & { readonly do: 'move' }, part: string, tab: string): boolean {
  const end = coreOf(plan, e)[e.end];
  return end.part === part && end.terminal === tab;
}

/** What the plan is to say, where that and not the wiring is wrong. */
function inThePlan(said: readonly Saying[]): string[] {
  const mounted = new Map<string, string[]>();
  const told: string[] = [];
  const lists = new Map<string, Intended[]>();
  for (const s of said) {
    if (s.do === 'say' && s.field === 'input')
      told.push(`If ${s.part} pulls in when its input is ${s.value}, say so in the plan: input: ${s.value}.`);
    else if (s.do === 'say') push(mounted, s.value, s.part);
    else if (s.instead !== undefined) told.push(replaced(s));
    else push(lists, `${s.load} ${s.field}`, s);
  }
  for (const list of lists.values()) told.push(added(list));
  const levers = [...mounted].map(([value, parts]) => {
    const whose =
      parts.length === 1 ? `the lever of ${parts[0]}` : `each lever of ${listOf(parts, MOST_NAMED)}`;
    return `If ${whose} is pressed while its gate is ${value}, say so in the plan: pressed-when: ${value}.`;
  });
  return [...levers, ...told];
}

type Intended = Saying & { readonly do: 'intend' };

function replaced({ load, field, input, instead }: Intended): string {
  return `If ${input} is meant, name it in ${field} of ${load} in the plan, in place of ${instead}.`;
}

/** Inputs that one list of an intent lacks. */
function added(list: readonly Intended[]): string {
  const { load, field } = list[0]!;
  const inputs = listOf(
    list.map((s) => s.input),
    MOST_NAMED,
  );
  const several = list.length > 1;
  const meant = {
    'runs-on': `start ${load}`,
    'blocked-by': `keep ${load} from running`,
    'stays-on-after': `start ${load}, or to arm it, and that lasts after it is let go`,
    'stopped-by': 'end that',
  }[field];
  return `If ${inputs} ${several ? 'are' : 'is'} meant to ${meant}, say so in the plan: add ${several ? 'them' : 'it'} to ${field} of ${load}.`;
}
