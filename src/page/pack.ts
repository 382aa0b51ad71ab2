/** A plan as plain data, for a page to take along: what its circuit and its intents need, and nothing of the file. */

import { kept } from '../plan/map-entries.ts';
import type { Part } from '../plan/part-types.ts';
import type { Intent, Plan, Run, TerminalRef } from '../plan/plan.ts';

/** What a second plan has otherwise: whatever is left out is as in the first, and so is a run that is a number, its place there. */
export type PackedChanges = Partial<Omit<PackedPlan, 'runs'>> & {
  readonly runs: readonly (number | PackedRun)[];
};

/** What a page does without, or has elsewhere: places in the file, what a person pays, the name. */
type Dropped = 'at' | 'where' | 'price' | 'name';
/** Each kind of part without it. */
export type PackedPart = Part extends infer P ? (P extends Part ? Omit<P, Dropped> : never) : never;

type PackedRef = readonly [part: string, terminal: string];

export interface PackedRun {
  /** place in the list of cables */
  readonly cable?: number;
  readonly length?: number;
  readonly link?: true;
  readonly cores: readonly (readonly [PackedRef, PackedRef])[];
}

interface PackedInput {
  readonly part: string;
  readonly position?: string;
}

export interface PackedIntent {
  readonly target: string;
  readonly runsOn: readonly (readonly PackedInput[])[];
  readonly blockedBy: readonly PackedInput[];
  readonly staysOnAfter: readonly PackedInput[];
  readonly stoppedBy: readonly PackedInput[];
  readonly ifSupplyFails: Intent['ifSupplyFails'];
}

/** JSON data; parts are names, each with the place of what it is, in the order of the plan; what many have alike stands once. */
export interface PackedPlan {
  readonly practice: Plan['practice'];
  readonly ambient?: number;
  readonly parts: readonly (readonly [string, number])[];
  readonly kinds: readonly PackedPart[];
  readonly cables: readonly NonNullable<Run['cable']>[];
  readonly runs: readonly PackedRun[];
  readonly intents?: readonly PackedIntent[];
}

export function packPlan(plan: Plan): PackedPlan {
  const kinds = new Alike<PackedPart>();
  const cables = new Alike<NonNullable<Run['cable']>>();
  return {
    practice: plan.practice,
    ...(plan.ambient === undefined ? {} : { ambient: plan.ambient }),
    parts: [...plan.parts].map(([name, part]) => [name, kinds.place(packPart(part))] as const),
    runs: plan.runs.map((run) => packRun(run, cables)),
    kinds: kinds.all,
    cables: cables.all,
    ...(plan.intents === undefined ? {} : { intents: plan.intents.map(packIntent) }),
  };
}

/** A plan told by what it has otherwise than one that is there already. */
export function packChanges(from: PackedPlan, to: PackedPlan): PackedChanges {
  const text = JSON.stringify;
  const alike = (key: keyof PackedPlan) => text(from[key]) === text(to[key]);
  const { runs: _, ...rest } = to;
  const changed = Object.fromEntries(
    Object.entries(rest).filter(([key]) => !alike(key as keyof PackedPlan)),
  ) as Partial<Omit<PackedPlan, 'runs'>>;
  // A run counts its cable in the list of its own plan.
  const known = new Map(alike('cables') ? from.runs.map((run, i) => [text(run), i]) : []);
  return { ...changed, runs: to.runs.map((run) => known.get(text(run)) ?? run) };
}

function packPart(part: Part): PackedPart {
  const { at: _at, where: _where, price: _price, name: _name, ...rest } = part;
  return rest;
}

/** Things of which those that are alike count as one. */
class Alike<T> {
  readonly all: T[] = [];
  private readonly places = new Map<string, number>();

  place(thing: T): number {
    return kept(this.places, JSON.stringify(thing), () => this.all.push(thing) - 1);
  }
}

function packRun(run: Run, cables: Alike<NonNullable<Run['cable']>>): PackedRun {
  const ref = (end: TerminalRef): PackedRef => [end.part, end.terminal];
  return {
    ...(run.cable === undefined ? {} : { cable: cables.place(run.cable) }),
    ...(run.length === undefined ? {} : { length: run.length }),
    ...(run.link ? { link: true } : {}),
    cores: run.cores.map((core) => [ref(core.a), ref(core.b)] as const),
  };
}

function packIntent(intent: Intent): PackedIntent {
  const inputs = (refs: Intent['blockedBy']): PackedInput[] => refs.map(({ at: _, ...ref }) => ref);
  return {
    target: intent.target,
    runsOn: intent.runsOn.map(inputs),
    blockedBy: inputs(intent.blockedBy),
    staysOnAfter: inputs(intent.staysOnAfter),
    stoppedBy: inputs(intent.stoppedBy),
    ifSupplyFails: intent.ifSupplyFails,
  };
}
