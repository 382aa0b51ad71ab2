/** Each core of the mains with what stands ahead of it and what hangs behind it. */
import type { Consumer } from '../../circuit/circuit.ts';
import type { Cable, Run } from '../../plan/plan.ts';
import type { Laid } from '../../ratings/laid-conductor.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { type GuardedSource, guardedSources, type MainsGuard } from './mains-guards.ts';
import type { Load } from './plug-loads.ts';
import { terminalRatingOf } from './terminal-rating.ts';
import { withinOneBox } from './within-box.ts';

/** What loses a conductor when one core is taken away. */
export interface Behind {
  /** machines and lamps wired to it */
  readonly loads: readonly Load[];
  /** outlets, whatever is plugged in */
  readonly outlets: readonly string[];
  /** coils, primaries of supplies, indicators: parts with little current of their own */
  readonly control: readonly string[];
}

export interface ConductorDuty {
  readonly from: GuardedSource;
  readonly run: Run;
  readonly cable: Cable;
  /** of all the cores of the run, the one that lets most through */
  readonly guard: MainsGuard;
  /** the same past fuses that carry no motor: the device of the motor circuit that a control conductor is tapped from */
  readonly branch: MainsGuard;
  readonly behind: Behind;
  readonly laid: Laid;
}

interface Core {
  readonly guard: MainsGuard;
  readonly branch: MainsGuard;
  readonly behind: Behind;
}

/** Every run of the mains behind every plug that reaches it. */
export const conductorDuties = perStudy((study): readonly ConductorDuty[] =>
  guardedSources(study).flatMap((from) => {
    const byRun = new Map<number, Core[]>();
    study.wired.wires.forEach((wire, index) => {
      const core = coreDuty(study, from, wire.a, index);
      if (core) byRun.set(wire.run, [...(byRun.get(wire.run) ?? []), core]);
    });
    return [...byRun].flatMap(([index, cores]) => {
      const run = study.plan.runs[index]!;
      return run.cable ? [duty(study, from, { run, cable: run.cable }, cores)] : [];
    });
  }),
);

/** Undefined for a core that no pin of the plug reaches, or its earth pin alone. */
function coreDuty(study: Study, from: GuardedSource, net: number, wire: number): Core | undefined {
  const live = from.live.get(net);
  if (live === undefined && !from.neutral.has(net)) return undefined;
  const lost = from.cutOff(wire);
  const behind = behindOf(study, lost);
  const ahead = (guards: Guards) => guards.get(net) ?? returnGuard(study, from.own, guards, lost);
  return { guard: ahead(from.live), branch: ahead(from.branch), behind };
}

type Guards = ReadonlyMap<number, MainsGuard>;

/** A neutral carries what its loads let through: the widest guard on their other ends. */
function returnGuard({ wired }: Study, own: MainsGuard, live: Guards, lost: ReadonlySet<number>): MainsGuard {
  const ends = [
    ...wired.consumers.map((c) => [...c.nets.values()]),
    ...wired.passives.map((p) => [p.a, p.b]),
    ...wired.diodes.map((d) => [d.anode, d.cathode]),
  ].filter((nets) => nets.some((n) => lost.has(n)));
  const guards = ends.flat().flatMap((n) => live.get(n) ?? []);
  return guards.length === 0 ? own : guards.reduce((a, b) => (b.need > a.need ? b : a));
}

function behindOf({ wired, plan }: Study, lost: ReadonlySet<number>): Behind {
  const touches = (c: Consumer) => [...c.nets.values()].some((n) => lost.has(n));
  const consumers = wired.consumers.filter(touches).map((c) => plan.parts.get(c.part)!);
  const passives = wired.passives.filter((p) => p.what !== 'load' && (lost.has(p.a) || lost.has(p.b)));
  const diodes = wired.diodes.filter((d) => lost.has(d.anode) || lost.has(d.cathode));
  return {
    loads: consumers.filter((p): p is Load => p.kind === 'motor' || p.kind === 'load'),
    outlets: consumers.filter((p) => p.kind === 'outlet').map((p) => p.name),
    control: [...new Set([...passives, ...diodes].map((p) => p.part))],
  };
}

/** Of the cores of a run the one that lets most through decides, and all that hangs on any of them. */
function duty(
  study: Study,
  from: GuardedSource,
  { run, cable }: { readonly run: Run; readonly cable: Cable },
  cores: readonly Core[],
): ConductorDuty {
  const widest = (guards: readonly MainsGuard[]) => guards.reduce((a, b) => (b.need > a.need ? b : a));
  const all = <T>(pick: (b: Behind) => readonly T[]) => [...new Set(cores.flatMap((c) => pick(c.behind)))];
  return {
    from,
    run,
    cable,
    guard: widest(cores.map((c) => c.guard)),
    branch: widest(cores.map((c) => c.branch)),
    behind: {
      loads: all((b) => b.loads),
      outlets: all((b) => b.outlets),
      control: all((b) => b.control),
    },
    laid: laidOf(study, from, run),
  };
}

function laidOf({ plan, wired }: Study, from: GuardedSource, run: Run): Laid {
  const own = wired.wires.filter((w) => w.run === run.index);
  const live = own.filter((w) => from.live.has(w.a)).length;
  const neutral = own.filter((w) => !from.live.has(w.a) && from.neutral.has(w.a)).length;
  const lives = from.source.rails.filter((r) => r.live).length;
  // The neutral of a balanced circuit carries what the phases do not.
  const balanced = lives > 1 && live >= lives;
  return {
    practice: plan.practice,
    ambient: plan.ambient,
    terminal: terminalRatingOf(plan, from.plug, run),
    loaded: Math.max(live + (balanced ? 0 : neutral), 2),
    inBox: withinOneBox(plan, run),
  };
}
