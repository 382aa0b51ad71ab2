/** Two cores changed over: of one run, or of different cables at one part. */
import { push } from '../plan/map-entries.ts';
import type { Core, Plan, Run } from '../plan/plan.ts';
import { bothCores, coreFromTo, theCore } from '../text/core-names.ts';
import { type Fault, type Moved, RANK, withCore } from './fault.ts';
import { keyOf, partsOf } from './probe-words.ts';

type End = 'a' | 'b';
const ENDS = ['a', 'b'] as const;
const FAR = { a: 'b', b: 'a' } as const;
/** Wired terminals of a part up to which cores of different cables are changed over there. */
const FEW_TERMINALS = 6;

/** Ends of cores at one part of which every two are changed over; of more each and so many that come next in the plan. */
const MANY_TIPS = 60;
const NEAR_TIPS = 3;

/** One end of one core. */
interface Tip {
  readonly run: Run;
  readonly index: number;
  readonly core: Core;
  readonly end: End;
}

/** Two cores of one run changed over at the same end; none where they share that terminal. */
export function swapped(run: Run, i: number, j: number, end: End): Fault[] {
  const [x, y] = [run.cores[i]!, run.cores[j]!];
  if (keyOf(x[end]) === keyOf(y[end])) return [];
  const at = x[end].part === y[end].part ? x[end].part : `${x[end].written} and ${y[end].written}`;
  const far = FAR[end];
  const text = `${at}: ${bothCores(x.colour, y.colour)} from ${x[far].written} and ${y[far].written} are changed over`;
  return [exchanged({ run, index: i, core: x, end }, { run, index: j, core: y, end }, text)];
}

/** Cores of different cables changed over between two terminals of one part that has few of them; joints have but one. */
export function crossed(plan: Plan): Fault[] {
  const faults: Fault[] = [];
  for (const [part, tips] of tipsByPart(plan)) {
    if (new Set(tips.map((t) => keyOf(t.core[t.end]))).size > FEW_TERMINALS) continue;
    for (const [i, x] of tips.entries())
      for (const y of tips.slice(i + 1, tips.length > MANY_TIPS ? i + 1 + NEAR_TIPS : undefined))
        if (isCrossing(x, y)) faults.push(exchanged(x, y, crossedWords(x, y)));
    if (tips.length > MANY_TIPS) faults.push(othersAt(part, tips.length));
  }
  return faults;
}

/** What is not tried where hundreds of cores end at one part. */
function othersAt(part: string, count: number): Fault {
  return {
    text: `${part}: any other two of its ${count} cores are changed over`,
    item: part,
    mode: 'changed-over',
    parts: [part],
    at: [],
    rank: RANK.swapped,
    untried:
      'so many cores end at that part that only those that stand next to each other in the plan are tried',
  };
}

function tipsByPart(plan: Plan): Map<string, Tip[]> {
  const tips = new Map<string, Tip[]>();
  for (const run of plan.runs)
    run.cores.forEach((core, index) => {
      for (const end of ENDS) {
        const { part } = core[end];
        if (plan.parts.get(part)?.kind === 'joint') continue;
        push(tips, part, { run, index, core, end });
      }
    });
  return tips;
}

/** Not of one run at one end, which is tried for every run, and neither the same terminal here nor there. */
function isCrossing(x: Tip, y: Tip): boolean {
  if (x.run === y.run && (x.end === y.end || x.index === y.index)) return false;
  return (
    keyOf(x.core[x.end]) !== keyOf(y.core[y.end]) && keyOf(x.core[FAR[x.end]]) !== keyOf(y.core[FAR[y.end]])
  );
}

function crossedWords(x: Tip, y: Tip): string {
  const words = ({ core, run, end }: Tip) =>
    `${theCore({ colour: core.colour, link: run.link })} from ${core[FAR[end]].written} on ${core[end].written}`;
  return `${x.core[x.end].part}: ${words(x)} and ${words(y)} are changed over`;
}

/** Where the cores of two tips then end; both tips may be of one core. */
function movedTips(x: Tip, y: Tip): readonly (Moved & { readonly ends: readonly [string, string] })[] {
  const ends = (tip: Tip, other: Tip): readonly [string, string] => {
    const here = keyOf(other.core[other.end]);
    const there = keyOf(tip.core[FAR[tip.end]]);
    return tip.end === 'a' ? [here, there] : [there, here];
  };
  return [
    { run: x.run.index, core: x.index, ends: ends(x, y) },
    { run: y.run.index, core: y.index, ends: ends(y, x) },
  ];
}

function exchanged(x: Tip, y: Tip, text: string): Fault {
  const refs = [x.core.a, x.core.b, y.core.a, y.core.b];
  const put = (plan: Plan, tip: Tip, other: Tip) =>
    withCore(plan, tip.run.index, tip.index, { ...tip.core, [tip.end]: other.core[other.end] });
  return {
    text,
    item: [x, y]
      .map(({ core, run }) =>
        coreFromTo({ colour: core.colour, link: run.link, a: core.a.written, b: core.b.written }),
      )
      .join(' and '),
    mode: 'changed-over',
    parts: partsOf(...refs),
    at: refs.map(keyOf),
    rank: RANK.swapped,
    plan: (p) => put(put(p, x, y), y, x),
    moved: movedTips(x, y),
    change: {
      parted: [{ ends: [keyOf(x.core.a), keyOf(x.core.b)] }, { ends: [keyOf(y.core.a), keyOf(y.core.b)] }],
      joined: movedTips(x, y).map((m) => m.ends),
    },
  };
}
