/** Changes of a plan's words that could be what is wrong with it, in place of its wiring. */
import type { Edit, Saying } from '../edit/edits.ts';
import { inputText } from '../edit/said-plan.ts';
import type { Finding } from '../findings/report-model.ts';
import type { GatePart, Part } from '../plan/part-types.ts';
import type { InputRef, Intent, Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { Candidate } from './rewired.ts';

/** How many slips of a hand a wrong word stands for. */
const SLIPS = {
  /** all gates of one mounting, or all of a shop */
  mounted: 1,
  /** one gate mounted unlike the others */
  mountedApart: 2,
  /** a gate that no intent names */
  forgotten: 1,
  /** a gate that another load's intent names */
  shared: 1.4,
  /** a button whose release, as the plan has it, stops the load, though a relay holds itself: no one slip does that; with a guess at what ends it */
  held: 0.7,
  heldTill: 1.1,
  /** another position of a selector */
  position: 1.3,
  /** a switch or cut-out that no intent names */
  meant: 1.8,
} as const;
/** Changes of words that are tried: each costs a whole check. */
const MOST_TRIED = 16;
/** Gates that are tried one by one. */
const MOST_GATES = 4;

type Field = (Saying & { readonly do: 'intend' })['field'];

/** Candidates in the order of their likelihood; `wrong`: what is found wrong with the wiring as the words have it. */
export function otherWords(plan: Plan, wrong: readonly Finding[]): Candidate[] {
  const named = new Set(wrong.flatMap((f) => f.parts));
  const all = [...mountings(plan, named), ...boards(plan), ...intended(plan, named)];
  return all.sort((x, y) => x.slips! - y.slips!).slice(0, MOST_TRIED);
}

const candidate = (edits: readonly Edit[], slips: number): Candidate => ({
  edits,
  ends: 0,
  added: 0,
  oddness: 0,
  slips,
});

/** Levers that are pressed the other way: all gates, those said to be mounted one way, or one by itself. */
function mountings(plan: Plan, named: ReadonlySet<string>): Candidate[] {
  const gates = [...plan.parts.values()].filter((p): p is GatePart => p.kind === 'gate');
  const turned = (list: readonly GatePart[]): Edit[] =>
    list.map((g) => ({
      do: 'say',
      part: g.name,
      field: 'pressed-when',
      value: g.pressedWhen === 'open' ? 'shut' : 'open',
    }));
  const groups = [
    gates,
    ...(['open', 'shut'] as const).map((way) => gates.filter((g) => g.pressedWhen === way)),
  ];
  const whole = groups.filter((g, i) => g.length > 1 && (i === 0 || g.length < gates.length));
  const single = gates.filter((g) => named.has(g.name)).slice(0, MOST_GATES);
  return [
    ...whole.map((g) => candidate(turned(g), SLIPS.mounted)),
    ...single.map((g) => candidate(turned([g]), gates.length === 1 ? SLIPS.mounted : SLIPS.mountedApart)),
  ];
}

/** Boards that pull in by the other pole: one jumper on it, or one word of its data sheet. */
function boards(plan: Plan): Candidate[] {
  return [...plan.parts.values()].flatMap((part) =>
    part.kind === 'board'
      ? [
          candidate(
            [{ do: 'say', part: part.name, field: 'input', value: part.input === 'low' ? 'high' : 'low' }],
            SLIPS.mounted,
          ),
        ]
      : [],
  );
}

/** Which lists of an intent an input of a kind can be missing from. */
const LISTS: Partial<Record<Part['kind'], readonly Field[]>> = {
  gate: ['runs-on'],
  switch: ['runs-on', 'blocked-by'],
  // Never that a button starts the load while it is held: that would make a stop wired wrongly look right.
  button: ['blocked-by'],
  cutout: ['blocked-by'],
};

function intended(plan: Plan, named: ReadonlySet<string>): Candidate[] {
  // What another load shares word for word is changed where it is written out.
  const intents = (plan.intents ?? []).filter((i) => i.sameAs === undefined);
  const known = new Set(intents.flatMap((i) => refsOf(i).map((r) => r.ref.part)));
  const parts = [...plan.parts.values()].filter((p) => named.has(p.name));
  return intents.flatMap((intent) => [
    ...parts.filter((p) => !known.has(p.name)).flatMap((part) => forgottenIn(intent, part, SLIPS.forgotten)),
    // An input of another load that this one may share, where both are named.
    ...parts
      .filter((p) => known.has(p.name) && p.kind === 'gate' && named.has(intent.target))
      .filter((p) => !refsOf(intent).some((r) => r.ref.part === p.name))
      .flatMap((part) => forgottenIn(intent, part, SLIPS.shared)),
    ...held(plan, intent),
    ...positions(plan, intent, named),
  ]);
}

/** An input put into each list that such inputs belong in. */
function forgottenIn({ target }: Intent, part: Part, slips: number): Candidate[] {
  return (LISTS[part.kind] ?? []).map((field) =>
    candidate([put(target, field, part.name)], part.kind === 'gate' ? slips : SLIPS.meant),
  );
}

const put = (load: string, field: Field, input: string, instead?: string): Edit => ({
  do: 'intend',
  load,
  field,
  input,
  instead,
});

/** A button whose release stops nothing, with what ends that. */
function held(plan: Plan, intent: Intent): Candidate[] {
  const { target, staysOnAfter, stoppedBy, blockedBy } = intent;
  // What blocks the load while it is pressed starts nothing.
  const said = new Set([...staysOnAfter, ...stoppedBy, ...blockedBy].map((r) => r.part));
  const ends = plan.runs.flatMap((run) => run.cores.flatMap((c) => [c.a, c.b]));
  const landed = new Set(ends.map((end) => terminalKey(end.part, end.terminal)));
  const isMake = (name: string) => {
    const on = (tab: string) => landed.has(terminalKey(name, tab));
    return on('NO') && !on('NC');
  };
  const buttons = [...plan.parts.values()].filter(
    (p) => p.kind === 'button' && !said.has(p.name) && isMake(p.name),
  );
  const stops = stoppedBy.length > 0 ? [[]] : stoppers(plan, intent);
  return buttons.flatMap(({ name }) =>
    stops
      .filter((stop) => !stop.includes(name))
      .map((stop) =>
        candidate(
          [put(target, 'stays-on-after', name), ...stop.map((s) => put(target, 'stopped-by', s))],
          stop === stops[0] ? SLIPS.held : SLIPS.heldTill,
        ),
      ),
  );
}

/** What could end what a button began: everything that blocks the load, or one button or cut-out. */
function stoppers(plan: Plan, { blockedBy }: Intent): string[][] {
  const blocking = [...new Set(blockedBy.map(inputText))];
  const others = [...plan.parts.values()].filter((p) => p.kind === 'button' || p.kind === 'cutout');
  return [...(blocking.length > 0 ? [blocking] : []), ...others.slice(0, MOST_GATES).map((p) => [p.name])];
}

/** Every input of an intent with the list it stands in. */
function refsOf(i: Intent): { readonly field: Field; readonly ref: InputRef }[] {
  const of = (field: Field, refs: readonly InputRef[]) => refs.map((ref) => ({ field, ref }));
  return [
    ...of('runs-on', i.runsOn.flat()),
    ...of('blocked-by', i.blockedBy),
    ...of('stays-on-after', i.staysOnAfter),
    ...of('stopped-by', i.stoppedBy),
  ];
}

/** A selector named with another of its positions. */
function positions(plan: Plan, intent: Intent, named: ReadonlySet<string>): Candidate[] {
  return refsOf(intent).flatMap(({ field, ref }) => {
    const part = plan.parts.get(ref.part);
    if (part?.kind !== 'selector' || ref.position === undefined || !named.has(ref.part)) return [];
    const instead = `${ref.part}.${ref.position}`;
    return part.positions
      .filter((p) => p !== ref.position)
      .map((p) => candidate([put(intent.target, field, `${ref.part}.${p}`, instead)], SLIPS.position));
  });
}
