/** A plan after changes of its words. */
import type { Part } from '../plan/part-types.ts';
import type { InputRef, Intent, Plan } from '../plan/plan.ts';
import type { Saying } from './edits.ts';
import { Refusal } from './text-changes.ts';

type Intended = Saying & { readonly do: 'intend' };

/** The lists of an intent by the key of the file. */
const LISTS = {
  'runs-on': 'runsOn',
  'blocked-by': 'blockedBy',
  'stays-on-after': 'staysOnAfter',
  'stopped-by': 'stoppedBy',
} as const;

/** As the plan writes it: `planer`, `mode.hand`. */
export const inputText = ({ part, position }: Pick<InputRef, 'part' | 'position'>): string =>
  position === undefined ? part : `${part}.${position}`;

/** The plan with other words in it; refuses what it does not have. */
export function saidAfter(plan: Plan, said: readonly Saying[]): Plan {
  return said.reduce((now, s) => (s.do === 'say' ? saying(now, s) : intending(now, s)), plan);
}

function saying(plan: Plan, said: Saying & { readonly do: 'say' }): Plan {
  const part = plan.parts.get(said.part);
  const after = part && saidOf(part, said);
  if (after === undefined) throw new Refusal(`the plan has no ${said.part} that could be said otherwise`);
  const where = new Map([...after.where, [said.field, after.where.get(said.field) ?? after.at] as const]);
  const parts = [...plan.parts].map(([n, p]) => [n, n === said.part ? { ...after, where } : p] as const);
  return { ...plan, parts: new Map(parts) };
}

function saidOf(part: Part, said: Saying & { readonly do: 'say' }): Part | undefined {
  if (said.field === 'pressed-when')
    return part.kind === 'gate' ? { ...part, pressedWhen: said.value } : undefined;
  return part.kind === 'board' ? { ...part, input: said.value } : undefined;
}

function intending(plan: Plan, change: Intended): Plan {
  if (!plan.intents?.some((i) => i.target === change.load))
    throw new Refusal(`the plan has no intent ${change.load}`);
  return {
    ...plan,
    intents: plan.intents.map((intent) =>
      intent.target === change.load || intent.sameAs === change.load ? changed(plan, intent, change) : intent,
    ),
  };
}

function changed(plan: Plan, intent: Intent, { field, input, instead }: Intended): Intent {
  const ref = refOf(plan, intent, input);
  const list = intent[LISTS[field]];
  if (instead === undefined)
    return { ...intent, [LISTS[field]]: [...list, field === 'runs-on' ? [ref] : ref] };
  const put = (old: InputRef) => (inputText(old) === instead ? ref : old);
  const isNested = (entry: InputRef | readonly InputRef[]): entry is readonly InputRef[] =>
    Array.isArray(entry);
  const after = list.map((entry) => (isNested(entry) ? entry.map(put) : put(entry)));
  return { ...intent, [LISTS[field]]: after };
}

function refOf(plan: Plan, { at }: Intent, input: string): InputRef {
  const dot = input.indexOf('.');
  const [part, position] = dot < 0 ? [input, undefined] : [input.slice(0, dot), input.slice(dot + 1)];
  if (!plan.parts.has(part)) throw new Refusal(`the plan has no part ${part}`);
  return position === undefined ? { part, at } : { part, position, at };
}
