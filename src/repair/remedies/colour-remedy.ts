/** Cores in another colour, or marked at both ends. */
import { type MiscolouredCore, miscolouredCores } from '../../findings/apart/coloured-cores.ts';
import type { Finding } from '../../findings/report-model.ts';
import type { Core, Plan, Run } from '../../plan/plan.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { colourOf } from '../../text/core-colours.ts';
import { runsText } from '../../text/run-names.ts';
import { listOf } from '../../text/word-list.ts';
import type { Bench } from './bench.ts';
import type { Change } from './change.ts';
import type { Option } from './search.ts';

/** The runs of the miscoloured cores that a finding is about, and of those that are wrong in the same way. */
function runsOf(bench: Bench, f: Finding): Run[] {
  const of = f.id === 'colour-of-earth' ? 'earth' : 'neutral';
  const all = miscolouredCores(bench.study).filter(({ fault }) => fault.of === of);
  const alike = ({ core, role, fault }: MiscolouredCore) => `${role.use} ${fault.what} ${core.colour}`;
  const told = all
    .filter(({ core }) =>
      [core.a, core.b].every((e) => f.terminals.includes(terminalKey(e.part, e.terminal))),
    )
    .map(alike);
  return [...new Set(all.filter((w) => told.includes(alike(w))).map(({ run }) => run))];
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

type Colours = ReadonlyMap<string, string>;

interface Recolouring {
  /** which colours take the place of which; undefined where that cannot be in this run */
  readonly colours: (run: Run, wrong: readonly MiscolouredCore[]) => Colours | undefined;
  readonly told: (run: number, colours: Readonly<Record<string, string>>) => Change['told'];
  readonly core: (core: Core, to: string) => Core;
  /** an instruction for runs that have the same done to them */
  readonly words: (colours: Colours, runs: string) => string;
}

/** One change a run, for all that is wrong in it; none where a run has no change that serves. */
function inEachRun(bench: Bench, f: Finding, how: Recolouring): Option[] {
  const all = miscolouredCores(bench.study);
  const own = runsOf(bench, f).map((run) => ({
    run,
    colours: how.colours(
      run,
      all.filter((w) => w.run === run),
    ),
  }));
  const keyOf = (colours: Colours) => JSON.stringify([...colours]);
  const changes = own.flatMap(({ run, colours }): Change[] => {
    if (colours === undefined) return [];
    const same = own.filter((o) => o.colours !== undefined && keyOf(o.colours) === keyOf(colours));
    const change = (core: Core) => {
      const to = colours.get(core.colour);
      return to === undefined ? core : how.core(core, to);
    };
    return [
      {
        told: how.told(run.index + 1, Object.fromEntries(colours)),
        // Runs that are marked or taken alike are told at once.
        words: same[0]!.run === run ? how.words(colours, runsText(same.map((o) => o.run))) : '',
        apply: (plan: Plan) => ({
          ...plan,
          runs: plan.runs.map((r) => (r.index === run.index ? { ...r, cores: r.cores.map(change) } : r)),
        }),
        anew: false,
      },
    ];
  });
  return changes.length === 0 || changes.length < own.length ? [] : [{ sizes: [changes] }];
}

/** Both ends marked, where the rules let that for all that is wrong in the run. */
export function markedEnds(bench: Bench, f: Finding): Option[] {
  return inEachRun(bench, f, {
    colours: (run, wrong) => assigned(run.cores, wrong, ({ fault }) => fault.remark),
    told: (run, marks) => ({ change: 'marked-as', run, marks }),
    core: (core, marked) => ({ ...core, marked }),
    words: (marks, runs) => {
      const told = [...marks].map(([core, mark]) => `the ${core} core ${mark}`);
      return `mark ${listOf(told)} for good at both ends of ${runs}, and say so with marked-as`;
    },
  });
}

/** Cores of the right colours: all of the run that are wrong, since two of them may have changed places. */
export function otherColours(bench: Bench, f: Finding): Option[] {
  return inEachRun(bench, f, {
    colours: (run, wrong) => {
      const kept = run.cores.filter((c) => !wrong.some((w) => w.core === c));
      // Bare copper is no core to be had for the asking.
      return assigned(kept, wrong, ({ fault }) => fault.wears.filter((c) => c !== 'bare'));
    },
    told: (run, colours) => ({ change: 'core-colours', run, colours }),
    core: ({ marked: _, ...core }, colour) => ({ ...core, colour }),
    words: (colours, runs) => {
      const told = [...colours].map(([from, to]) => `${to} in place of ${from}`);
      return `in ${runs} use a core in ${listOf(told)}`;
    },
  });
}
