/** Which cables serve a gate, and which way the feed is. */
import type { Core, Plan, Run } from '../plan/plan.ts';
import { Refusal } from './text-changes.ts';

/** One core of a run that ends at a gate. */
export interface GateCore {
  readonly core: number;
  readonly colour: string;
  /** which end is the gate's */
  readonly end: 'a' | 'b';
  /** the gate's terminal, and as it is written */
  readonly terminal: string;
  readonly written: string;
  /** the other end, as written, and its part */
  readonly far: string;
  readonly farPart: string;
  readonly farKey: string;
}

/** A run with the cores of it that end at the gate. */
export interface GateRun {
  readonly run: Run;
  readonly cores: readonly GateCore[];
}

export interface GateCables {
  /** terminals with a core on them */
  readonly used: readonly string[];
  /** in the order of the file; links are not among them */
  readonly runs: readonly GateRun[];
  /** the one that comes from the feed; of a ring the first in the file */
  readonly incoming: GateRun | undefined;
  /** the others that have a core on every terminal used */
  readonly onward: readonly GateRun[];
}

type Touching = ReadonlyMap<string, readonly Run[]>;

function touching(plan: Plan): Touching {
  const found = new Map<string, Run[]>();
  for (const run of plan.runs)
    for (const part of new Set(run.cores.flatMap(({ a, b }) => [a.part, b.part])))
      found.set(part, [...(found.get(part) ?? []), run]);
  return found;
}

function gateCore(core: Core, index: number, gate: string): GateCore[] {
  if (core.a.part !== gate && core.b.part !== gate) return [];
  if (core.a.part === core.b.part) throw new Refusal(`a core joins two terminals of ${gate}`);
  const end = core.a.part === gate ? 'a' : 'b';
  const [own, far] = end === 'a' ? [core.a, core.b] : [core.b, core.a];
  return [
    {
      core: index,
      colour: core.colour,
      end,
      terminal: own.terminal,
      written: own.written,
      far: far.written,
      farPart: far.part,
      farKey: `${far.part}.${far.terminal}`,
    },
  ];
}

const gateRun = (run: Run, gate: string): GateRun => ({
  run,
  cores: run.cores.flatMap((core, index) => gateCore(core, index, gate)),
});

const isGate = (plan: Plan, part: string) => plan.parts.get(part)?.kind === 'gate';

/** Whether a way from the gate through that run comes to something that is no gate, without passing the gate again. */
function leadsAway(plan: Plan, runs: Touching, gate: string, first: GateRun): boolean {
  const seen = new Set([gate]);
  const open = first.cores.map((core) => core.farPart);
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    if (seen.has(part)) continue;
    if (!isGate(plan, part)) return true;
    seen.add(part);
    for (const run of runs.get(part) ?? [])
      for (const { a, b } of run.cores) {
        if (a.part === part) open.push(b.part);
        if (b.part === part) open.push(a.part);
      }
  }
  return false;
}

/** Refuses a gate that has no cable of its own with a core on each terminal, or a bare link on one. */
export function gateCables(plan: Plan, gate: string): GateCables {
  const all = touching(plan);
  const own = all.get(gate) ?? [];
  if (own.some((run) => run.link))
    throw new Refusal(`${gate} has a bare link on it; what hangs on that has to be changed by hand`);
  const runs = own.map((run) => gateRun(run, gate));
  const used = [...new Set(runs.flatMap(({ cores }) => cores.map((core) => core.terminal)))].sort();
  const isFull = ({ cores }: GateRun) => used.every((t) => cores.some((core) => core.terminal === t));
  const away = runs.filter((run) => leadsAway(plan, all, gate, run));
  const incoming = away[0] ?? runs[0];
  return { used, runs, incoming, onward: runs.filter((run) => run !== incoming && isFull(run)) };
}

/** Whether another gate hangs by a run of its own on the same terminals as this gate by `incoming`. */
export function isStar(plan: Plan, gate: string, { run, cores }: GateRun): boolean {
  if (cores.some((core) => isGate(plan, core.farPart))) return false;
  const starts = new Set(cores.map((core) => core.farKey));
  return plan.runs.some((other) => {
    if (other.index === run.index || other.link) return false;
    const ends = other.cores.flatMap(({ a, b }) => [a, b]);
    const gates = new Set(ends.flatMap((ref) => (isGate(plan, ref.part) ? [ref.part] : [])));
    if (gates.size !== 1 || gates.has(gate)) return false;
    return [...starts].every((key) => ends.some((ref) => `${ref.part}.${ref.terminal}` === key));
  });
}
