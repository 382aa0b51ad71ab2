/** Cores in another colour, or marked at both ends. */
import { type MiscolouredCore, miscolouredCores } from '../../findings/apart/coloured-cores.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Core, Plan, Run } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { colourOf } from '../../text/core-colours.ts';
import { listOf } from '../../text/word-list.ts';
import type { Bench } from './bench.ts';
import type { Change } from './change.ts';
import type { Option } from './search.ts';

/** The runs of the miscoloured cores that a finding is about. */
function runsOf(bench: Bench, f: Finding): Run[] {
  const of = f.id === 'colour-of-earth' ? 'earth' : 'neutral';
  const runs = miscolouredCores(bench.study)
    .filter(({ core, fault }) => {
      const ends = [core.a, core.b].map((e) => terminalKey(e.part, e.terminal));
      return fault.of === of && ends.every((end) => f.terminals.includes(end));
    })
    .map(({ run }) => run);
  return [...new Set(runs)];
}

const shade = (name: string): string => colourOf(name)?.colour ?? name;

/** Each core with the first colour of its list that none of the others has; undefined where one gets none. */
function assigned(
  others: readonly Core[],
  wrong: readonly MiscolouredCore[],
  choices: (core: MiscolouredCore) => readonly string[],
): ReadonlyMap<string, string> | undefined {
  const taken = new Set(
    others.flatMap((c) => [c.colour, ...(c.marked === undefined ? [] : [c.marked])]).map(shade),
  );
  const found = new Map<string, string>();
  for (const w of wrong) {
    const colour = choices(w).find((c) => !taken.has(c));
    if (colour === undefined) return undefined;
    taken.add(colour);
    found.set(w.core.colour, colour);
  }
  return found;
}

/** One change a run, or none where a run has no change that serves. */
function inEachRun(runs: readonly Run[], make: (run: Run) => Change | undefined): Option[] {
  const changes = runs.map(make);
  const all = changes.filter((c) => c !== undefined);
  return all.length === 0 || all.length < changes.length ? [] : [{ sizes: [all] }];
}

function withCores(index: number, change: (core: Core) => Core): (plan: Plan) => Plan {
  return (plan) => ({
    ...plan,
    runs: plan.runs.map((r) => (r.index === index ? { ...r, cores: r.cores.map(change) } : r)),
  });
}

/** Both ends marked, where the rules let that for all that is wrong in the run. */
export function markedEnds(bench: Bench, f: Finding): Option[] {
  const all = miscolouredCores(bench.study);
  return inEachRun(runsOf(bench, f), (run) => {
    const wrong = all.filter((w) => w.run === run);
    const marks = assigned(run.cores, wrong, ({ fault }) => fault.remark);
    if (marks === undefined) return undefined;
    const told = [...marks].map(([core, mark]) => `the ${core} core ${mark}`);
    return {
      told: { change: 'marked-as', run: run.index + 1, marks: Object.fromEntries(marks) },
      words: `mark ${listOf(told)} for good at both ends of run ${run.index + 1}, and say so with marked-as`,
      apply: withCores(run.index, (core) => {
        const marked = marks.get(core.colour);
        return marked === undefined ? core : { ...core, marked };
      }),
      anew: false,
    };
  });
}

/** Cores of the right colours: all of the run that are wrong, since two of them may have changed places. */
export function otherColours(bench: Bench, f: Finding): Option[] {
  const all = miscolouredCores(bench.study);
  return inEachRun(runsOf(bench, f), (run) => {
    const wrong = all.filter((w) => w.run === run);
    // Bare copper is no core to be had for the asking.
    const kept = run.cores.filter((c) => !wrong.some((w) => w.core === c));
    const colours = assigned(kept, wrong, ({ fault }) => fault.wears.filter((c) => c !== 'bare'));
    if (colours === undefined) return undefined;
    const told = [...colours].map(([from, to]) => `${to} in place of ${from}`);
    return {
      told: { change: 'core-colours', run: run.index + 1, colours: Object.fromEntries(colours) },
      words: `in run ${run.index + 1} use a core in ${listOf(told)}`,
      apply: withCores(run.index, (core) => {
        const colour = colours.get(core.colour);
        if (colour === undefined) return core;
        const { marked: _, ...rest } = core;
        return { ...rest, colour };
      }),
      anew: false,
    };
  });
}
