/** What has to be changed in a plan so that it has one gate more, or one less. */

import { nameProblem } from '../plan/names.ts';
import type { Plan, Run } from '../plan/plan.ts';
import { twinKey, twinWords } from '../text/alike.ts';
import { hint } from '../text/nearest-name.ts';
import { listOf } from '../text/word-list.ts';
import type { EndRef } from './edits.ts';
import { type GateCables, type GateCore, type GateRun, gateCables, isStar } from './gate-cables.ts';
import { Refusal } from './text-changes.ts';

/** A length as it is to be written, and in m. */
export interface Length {
  readonly text: string;
  readonly metres: number;
}

/** A new run: of the cable of run `like`, before it or behind it in the file. */
export interface FreshRun {
  readonly like: number;
  readonly where: 'before' | 'behind';
  readonly length: Length;
  readonly cores: readonly { readonly colour: string; readonly a: string; readonly b: string }[];
}

/** Another length of a run: the one stated, or its own and that of another run. */
export type NewLength = { readonly run: number; readonly metres: number } & (
  | { readonly text: string }
  | { readonly plus: number }
);

/** One gate more or less as changes of the plan; indices count in the plan as it stands. */
export interface Growth {
  readonly do: 'add' | 'remove';
  readonly gate: string;
  /** the gate whose switch, cable and intents the new one takes */
  readonly like: string | undefined;
  readonly fresh: FreshRun | undefined;
  readonly ends: readonly (EndRef & { readonly to: string })[];
  readonly lengths: readonly NewLength[];
  /** runs that go whole */
  readonly gone: readonly number[];
}

export interface Adding {
  readonly name: string;
  readonly after: string;
  readonly length: Length;
  readonly onward: Length | undefined;
}

const gatesOf = (plan: Plan) =>
  [...plan.parts.values()].flatMap((part) => (part.kind === 'gate' ? [part.name] : []));

function knownGate(plan: Plan, name: string): void {
  const part = plan.parts.get(name);
  if (part === undefined) {
    const gates = gatesOf(plan);
    const near = hint(name, gates) || hint(name, plan.parts.keys());
    throw new Refusal(`no part is called "${name}"${near}`);
  }
  if (part.kind !== 'gate') throw new Refusal(`${name} is no gate but a ${part.kind}`);
}

function newName(plan: Plan, name: string): void {
  const problem = nameProblem(name);
  if (problem !== undefined) throw new Refusal(problem);
  const twin = [...plan.parts.keys()].find((part) => twinKey(part) === twinKey(name));
  if (twin !== undefined)
    throw new Refusal(
      twin === name ? `the plan has a part ${name} already` : `${name} and ${twin} ${twinWords(name, twin)}`,
    );
}

/** The other terminal of the same mark, `planer.NO` for `router.NO`. */
const onGate = (written: string, gate: string) => `${gate}${written.slice(written.indexOf('.'))}`;

/** One core for each terminal that the gate uses. */
function oneEach(cables: GateCables, { cores }: GateRun): GateCore[] {
  return cables.used.map((terminal) => {
    const core = cores.find((c) => c.terminal === terminal);
    if (core === undefined)
      throw new Refusal('the cores of this gate come in several cables; write the new gate by hand');
    return core;
  });
}

/** The one gate at which the cable ends, which a new gate comes after; throws a `Refusal` where there are several or none. */
export function lastGate(plan: Plan): string {
  const ends = gatesOf(plan).filter((gate) => {
    try {
      const { used, onward } = gateCables(plan, gate);
      return used.length === 2 && onward.length === 0;
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return false;
    }
  });
  const [only] = ends;
  if (only !== undefined && ends.length === 1) return only;
  throw new Refusal(
    ends.length === 0
      ? `the cable ends at no gate; say with --after which of ${listOf(gatesOf(plan))} the new one comes after`
      : `the cable ends at ${listOf(ends)}; say with --after which of them the new one comes after`,
  );
}

/** How a new gate is wired; throws a `Refusal` with the reason where it cannot be told. */
export function addGate(plan: Plan, adding: Adding): Growth {
  const { name, after, length, onward } = adding;
  knownGate(plan, after);
  newName(plan, name);
  const cables = gateCables(plan, after);
  if (cables.used.length !== 2)
    throw new Refusal(
      `${after} has cores on ${cables.used.length === 0 ? 'no terminal' : `${cables.used.length} of its terminals`}; a gate can be added beside one with cores on two`,
    );
  const common = { do: 'add', gate: name, like: after, gone: [] } as const;
  if (cables.onward.length === 1) return between(plan, adding, cables, common);
  if (onward !== undefined)
    throw new Refusal(
      cables.onward.length === 0
        ? `no cable goes on from ${after}, so there is nothing that --onward could be the length of`
        : `${cables.onward.length} cables go on from ${after}, so which to cut cannot be told; without --onward the new gate gets a branch of its own`,
    );
  const source = cables.runs.find((run) => run.cores.length >= 2 && coversAll(cables, run));
  if (source === undefined) throw new Refusal(severalCables(after));
  const star = source === cables.incoming && cables.onward.length === 0 && isStar(plan, after, source);
  const cores = inOrder(oneEach(cables, source)).map(({ colour, end, written, far }) => {
    const [start, finish] = [star ? far : written, onGate(written, name)];
    return star && end === 'a' ? { colour, a: finish, b: start } : { colour, a: start, b: finish };
  });
  return {
    ...common,
    fresh: { like: source.run.index, where: 'behind', length, cores },
    ends: [],
    lengths: [],
  };
}

const severalCables = (gate: string) =>
  `the cores of ${gate} come in several cables, so what a new gate hangs on cannot be told; write it by hand`;

const coversAll = ({ used }: GateCables, { cores }: GateRun) =>
  used.every((terminal) => cores.some((core) => core.terminal === terminal));

const inOrder = (cores: readonly GateCore[]) => [...cores].sort((x, y) => x.core - y.core);

/** In the middle: the cable behind the neighbour is cut in two. */
function between(
  plan: Plan,
  { name, after, length, onward }: Adding,
  cables: GateCables,
  common: Pick<Growth, 'do' | 'gate' | 'like' | 'gone'>,
): Growth {
  const next = cables.onward[0]!;
  const to = [...new Set(next.cores.map((core) => core.farPart))].join(' and ');
  if (onward === undefined)
    throw new Refusal(
      `a cable goes on from ${after} to ${to} and would be cut in two: say with --onward how long it is from ${name} to ${to}`,
    );
  const run = plan.runs[next.run.index]!;
  if (next.cores.length !== run.cores.length)
    throw new Refusal(`the cable from ${after} to ${to} has a core that passes ${after} by; cut it by hand`);
  const cores = inOrder(oneEach(cables, next)).map(({ colour, written }) => ({
    colour,
    a: written,
    b: onGate(written, name),
  }));
  return {
    ...common,
    fresh: { like: run.index, where: 'before', length, cores },
    ends: next.cores.map(({ core, end, written }) => ({
      run: run.index,
      core,
      end,
      to: onGate(written, name),
    })),
    lengths: [{ run: run.index, text: onward.text, metres: onward.metres }],
  };
}

/** The cable alone, without its place in the file. */
const cableText = ({ cable, slack }: Run) =>
  JSON.stringify([cable, slack], (key, value: unknown) => (key === 'at' ? undefined : value));

/** How a gate goes; what hung behind it is joined to what it hung on. */
export function removeGate(plan: Plan, gate: string): Growth {
  knownGate(plan, gate);
  if (gatesOf(plan).length === 1) throw new Refusal(`${gate} is the only gate of the plan`);
  const box = [...plan.parts.values()].find((part) => part.kind === 'box' && part.holds.includes(gate));
  if (box !== undefined) throw new Refusal(`the box ${box.name} holds ${gate}; take it off that list first`);
  const cables = gateCables(plan, gate);
  for (const { run, cores } of cables.runs)
    if (cores.length !== run.cores.length)
      throw new Refusal(
        `run ${run.entry} has a core that passes ${gate} by, so it cannot go with the gate; take it out by hand`,
      );
  const common = { do: 'remove', gate, like: undefined, fresh: undefined } as const;
  const goesOn = (run: GateRun) => run.cores.some((c) => plan.parts.get(c.farPart)?.kind === 'gate');
  const runs = cables.runs.map(({ run }) => run.index);
  if (cables.runs.length < 2 || !cables.runs.some(goesOn))
    return { ...common, ends: [], lengths: [], gone: runs };
  const first = cables.incoming;
  const healed =
    first !== undefined && coversAll(cables, first) ? first : cables.runs.find((r) => coversAll(cables, r));
  if (healed === undefined) throw new Refusal(severalCables(gate));
  const others = cables.runs.filter((run) => run !== healed);
  return {
    ...common,
    ends: others.flatMap((other) => joined(gate, healed, other)),
    lengths: others.map(({ run }) => ({
      run: run.index,
      plus: healed.run.index,
      metres: run.length! + healed.run.length!,
    })),
    gone: [healed.run.index],
  };
}

/** The ends of the cable behind the gate, put where the cable before it began. */
function joined(gate: string, before: GateRun, behind: GateRun): (EndRef & { readonly to: string })[] {
  if (cableText(before.run) !== cableText(behind.run))
    throw new Refusal(
      `the cables of runs ${before.run.entry} and ${behind.run.entry} on both sides of ${gate} are not alike; join them by hand`,
    );
  return behind.cores.map(({ core, end, terminal, farKey }) => {
    const from = before.cores.find((c) => c.terminal === terminal)!;
    if (from.farKey === farKey)
      throw new Refusal(`without ${gate} run ${behind.run.entry} would begin and end on ${from.far}`);
    return { run: behind.run.index, core, end, to: from.far };
  });
}
