/** The plan again from what `packPlan` made of it. Places in the file are gone, and so are terminals' marks. */

import type { Position } from '../plan/device-figures.ts';
import type { Part } from '../plan/part-types.ts';
import type { InputRef, Intent, Plan, Run, TerminalRef } from '../plan/plan.ts';
import type { Links } from './links.ts';
import type { PackedChanges, PackedIntent, PackedPlan, PackedRun } from './pack.ts';

/** What a page holds beside the words of one of its plans. */
interface VersionData {
  /** see `isArming` */
  readonly arming: boolean;
  readonly links: Links;
  /** cores that the repair moves, as `RUN/CORE`: where they are, and where they come to be */
  readonly moved: readonly string[];
}

/** What a page holds beside its words: the plan as drawn, and where a repair was proved the plan as mended. */
export interface PageData {
  readonly drawn: VersionData & { readonly plan: PackedPlan };
  readonly mended?: VersionData & { readonly plan: PackedChanges };
}

/** The second of two plans again from what `packChanges` made of it. */
export function unpackChanges(from: PackedPlan, changes: PackedChanges): Plan {
  const runs = changes.runs.map((run) => (typeof run === 'number' ? from.runs[run]! : run));
  return unpackPlan({ ...from, ...changes, runs });
}

const NOWHERE: Position = { line: 1, column: 1 };

export function unpackPlan(packed: PackedPlan): Plan {
  return {
    format: 1,
    file: '',
    title: '',
    practice: packed.practice,
    practiceFrom: 'plan',
    ...(packed.ambient === undefined ? {} : { ambient: packed.ambient }),
    parts: new Map(
      packed.parts.map(([name, kind]): [string, Part] => [
        name,
        { ...packed.kinds[kind]!, name, at: NOWHERE, where: new Map() },
      ]),
    ),
    runs: packed.runs.map((run, index) => unpackRun(run, index, packed.cables)),
    terminals: new Map(),
    ...(packed.intents === undefined ? {} : { intents: packed.intents.map(unpackIntent) }),
    defaults: [],
  };
}

function unpackRun(run: PackedRun, index: number, cables: PackedPlan['cables']): Run {
  const ref = ([part, terminal]: readonly [string, string]): TerminalRef => ({
    part,
    terminal,
    written: terminal === '' ? part : `${part}.${terminal}`,
    at: NOWHERE,
  });
  return {
    index,
    entry: index + 1,
    at: NOWHERE,
    link: run.link === true,
    ...(run.cable === undefined ? {} : { cable: cables[run.cable]! }),
    ...(run.length === undefined ? {} : { length: run.length }),
    cores: run.cores.map(([a, b]) => ({ run: index, colour: '', a: ref(a), b: ref(b), at: NOWHERE })),
  };
}

function unpackIntent(intent: PackedIntent): Intent {
  const inputs = (refs: PackedIntent['blockedBy']): InputRef[] =>
    refs.map((ref) => ({ ...ref, at: NOWHERE }));
  return {
    target: intent.target,
    at: NOWHERE,
    runsOn: intent.runsOn.map(inputs),
    blockedBy: inputs(intent.blockedBy),
    staysOnAfter: inputs(intent.staysOnAfter),
    stoppedBy: inputs(intent.stoppedBy),
    ifSupplyFails: intent.ifSupplyFails,
  };
}
