/** A plan as plain data, for a page to take along: what its circuit and its intents need, and nothing of the file. */

import type { Part } from '../plan/part-types.ts';
import type { Intent, Plan, Run, TerminalRef } from '../plan/plan.ts';

/** What a page does without: places in the file, and what a person pays. */
type Dropped = 'at' | 'where' | 'price';
/** Each kind of part without it. */
export type PackedPart = Part extends infer P ? (P extends Part ? Omit<P, Dropped> : never) : never;

type PackedRef = readonly [part: string, terminal: string];

export interface PackedRun {
  readonly cable?: Run['cable'];
  readonly length?: number;
  readonly link: boolean;
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

/** JSON data; parts are entries of a map, in the order of the plan. */
export interface PackedPlan {
  readonly practice: Plan['practice'];
  readonly ambient?: number;
  readonly parts: readonly (readonly [string, PackedPart])[];
  readonly runs: readonly PackedRun[];
  readonly intents?: readonly PackedIntent[];
}

export function packPlan(plan: Plan): PackedPlan {
  return {
    practice: plan.practice,
    ...(plan.ambient === undefined ? {} : { ambient: plan.ambient }),
    parts: [...plan.parts].map(([name, part]) => [name, packPart(part)] as const),
    runs: plan.runs.map(packRun),
    ...(plan.intents === undefined ? {} : { intents: plan.intents.map(packIntent) }),
  };
}

function packPart(part: Part): PackedPart {
  const { at: _at, where: _where, price: _price, ...rest } = part;
  return rest;
}

function packRun(run: Run): PackedRun {
  const ref = (end: TerminalRef): PackedRef => [end.part, end.terminal];
  return {
    ...(run.cable === undefined ? {} : { cable: run.cable }),
    ...(run.length === undefined ? {} : { length: run.length }),
    link: run.link,
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
