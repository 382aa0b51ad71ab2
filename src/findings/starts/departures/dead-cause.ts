/** Why one entry of an intent, worked alone, does not start its load. */
import { isLanded, netAt } from '../../../circuit/terminals.ts';
import { FALSE } from '../../../logic/bdd.ts';
import { inputVariable } from '../../../logic/conduction.ts';
import type { Wanted } from '../../../logic/intent.ts';
import { type Moved, movedIn } from '../../../logic/verify.ts';
import type { Tab } from '../../../plan/part-types.ts';
import type { InputRef } from '../../../plan/plan.ts';
import type { Study } from '../../../study/study.ts';
import { type DeadPath, deadPath } from './dead-path.ts';
import type { Tried } from './tried.ts';

/** What lands on the tabs of the switch itself; `right` is the tab that the return core belongs on. */
export type DeadTabs =
  | { readonly kind: 'unwired'; readonly right: Tab }
  | { readonly kind: 'com-empty'; readonly right: Tab; readonly landed: readonly Tab[] }
  | { readonly kind: 'one-conductor'; readonly net: number; readonly tab: Tab }
  | { readonly kind: 'com-only'; readonly right: Tab }
  | { readonly kind: 'wrong-tab'; readonly right: Tab; readonly wrong: Tab };

export type DeadCause =
  | DeadTabs
  | DeadPath
  /** that diode, turned round, makes every load do what is meant */
  | { readonly kind: 'diode'; readonly diode: string }
  /** it starts the load only `together` with others; gates behind one `head` lie in line for one reason */
  | {
      readonly kind: 'in-line';
      readonly others: readonly string[];
      readonly head: string;
      readonly together: Moved;
    };

export function deadCause(
  study: Study,
  tried: Tried,
  entry: Wanted['entries'][number],
  ref: InputRef,
  state: Moved,
): DeadCause {
  const tabs = deadTabs(study, ref.part);
  if (tabs !== undefined) return tabs;
  const line = inLine(study, tried, entry, ref, state);
  if (line !== undefined && !isRoundAbout(tried, line)) return line;
  return deadPath(study, tried.v, ref.part, tabsOf(ref), state);
}

/** The terminals a switch joins: its three tabs, or the common and the one position of a selector. */
function tabsOf(ref: InputRef): readonly string[] {
  return ref.position === undefined ? ['COM', 'NO', 'NC'] : ['COM', ref.position];
}

function deadTabs({ plan, circuit }: Study, name: string): DeadTabs | undefined {
  const part = plan.parts.get(name);
  if (part?.kind !== 'gate' && part?.kind !== 'switch' && part?.kind !== 'button' && part?.kind !== 'cutout')
    return undefined;
  const makes = part.kind !== 'gate' || part.pressedWhen === 'open';
  const [right, wrong] = makes ? (['NO', 'NC'] as const) : (['NC', 'NO'] as const);
  const landed = (['COM', 'NO', 'NC'] as const).filter((tab) => isLanded(circuit, part, tab));
  if (landed.length === 0) return { kind: 'unwired', right };
  if (!landed.includes('COM')) return { kind: 'com-empty', right, landed };
  const net = netAt(circuit, name, 'COM')!;
  const tab = landed.find((t) => t !== 'COM' && netAt(circuit, name, t) === net);
  if (tab) return { kind: 'one-conductor', net, tab };
  if (landed.length === 1) return { kind: 'com-only', right };
  return landed.includes(right) ? undefined : { kind: 'wrong-tab', right, wrong };
}

/** It makes a difference together with others: the load runs with it and not with it put back. */
function inLine(
  study: Study,
  tried: Tried,
  entry: Wanted['entries'][number],
  ref: InputRef,
  state: Moved,
): InLine | undefined {
  const { v, wanted, runs } = tried;
  const { bdd } = v.model;
  // The others of the entry stay as they are: with a key off nothing runs, whatever lies in line with what.
  const own = v.circuit.inputs.filter((i) => i.part === ref.part && i.position === ref.position);
  const without = bdd.compose(runs, new Map(own.map((i) => [inputVariable(v.circuit, i.index), FALSE])));
  const together = movedIn(
    v.circuit,
    bdd,
    bdd.every([runs, entry.works, bdd.not(without), bdd.not(wanted.blocked)]),
  );
  const others = together?.filter((i) => !state.includes(i)).map((i) => v.circuit.inputs[i]!.part) ?? [];
  if (together === undefined || others.length === 0) return undefined;
  const name = ref.part;
  const head =
    others.length === 1
      ? ([name, others[0]!].find((p) => isLineHead(study, tried, p)) ?? others[0]!)
      : others.join();
  return { kind: 'in-line', others, head, together };
}

type InLine = Extract<DeadCause, { kind: 'in-line' }>;

/**
 * Whether what it works with lends it a way round a core that is missing, and lies in no line with it: a gate of another load,
 * or gates of another trunk.
 */
function isRoundAbout({ v, wanted }: Tried, { others }: InLine): boolean {
  const named = (of: readonly Wanted[], least: number) =>
    new Set(
      of.flatMap((w) => w.entries.flatMap((e) => (e.refs.length >= least ? e.refs.map((r) => r.part) : []))),
    );
  const [own, inGroups] = [named([wanted], 1), named([wanted], 2)];
  const elsewhere = named(
    v.intents.wanted.filter((w) => w.target !== wanted.target && w.through === undefined),
    1,
  );
  return (
    others.some((part) => elsewhere.has(part) && !own.has(part)) ||
    (others.length > 1 && others.every((part) => inGroups.has(part)))
  );
}

/** The gate in whose place the through core was cut: more than one other gate works only while it is open. */
function isLineHead(study: Study, { v, wanted, runs }: Tried, name: string): boolean {
  const { bdd } = v.model;
  const own = wanted.entries.find((e) => e.refs.length === 1 && e.refs[0]!.part === name);
  if (!own) return false;
  const shut = bdd.compose(runs, new Map([...bdd.support(own.works)].map((x) => [x, FALSE])));
  const freed = wanted.entries.filter((e) => {
    if (e === own) return false;
    const both = bdd.every([own.works, e.works]);
    const vars = new Set([...bdd.support(e.works), ...bdd.support(own.works)]);
    const alone = bdd.every(
      study.circuit.inputs
        .map((i) => inputVariable(study.circuit, i.index))
        .filter((x) => !vars.has(x))
        .map((x) => bdd.not(bdd.variable(x))),
    );
    return bdd.and(bdd.and(both, alone), runs) !== FALSE && bdd.and(bdd.and(e.works, alone), shut) === FALSE;
  });
  return freed.length > 1;
}
