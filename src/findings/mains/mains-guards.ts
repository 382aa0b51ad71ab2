/** The breakers and fuses of the mains, and which of them stands ahead of each conductor. */
import type { Source } from '../../circuit/circuit.ts';
import type { FusePart, PlugPart } from '../../plan/part-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { neededShare, neededShareAsGg, type OvercurrentDevice } from '../../ratings/conductor-protection.ts';
import { defaults } from '../../ratings/defaults.ts';
import { patternAmps } from '../../ratings/receptacle.ts';
import { type Guard, guardsFrom } from '../../study/mains/guards.ts';
import { neighbours, paralleled, reachable, type Step } from '../../study/mains/motor-path.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { ampsText } from '../../text/numbers.ts';

export interface MainsGuard extends Guard {
  /** undefined where the plan says of no breaker or fuse ahead */
  readonly device: OvercurrentDevice | undefined;
  /** A a conductor must be good for if a fuse of unsaid class is a gG one */
  readonly needAtBest: number;
  readonly part: PlugPart | FusePart;
}

/** One plug with what stands ahead of the nets it reaches, cores apart. */
export interface GuardedSource {
  readonly source: Source;
  readonly plug: PlugPart;
  readonly own: MainsGuard;
  /** by the live pins */
  readonly live: ReadonlyMap<number, MainsGuard>;
  /** the same as if there were no fuse but those ahead of motors */
  readonly branch: ReadonlyMap<number, MainsGuard>;
  /** those that stand ahead of an AC motor, wired in or plugged in */
  readonly ofMotors: ReadonlySet<MainsGuard>;
  /** the tightest fuse ahead of each net, whatever the breaker; the own guard, with no limit, where there is none */
  readonly fuses: () => ReadonlyMap<number, MainsGuard>;
  /** outlets that hang on it */
  readonly outlets: readonly string[];
  /** by the neutral pin */
  readonly neutral: ReadonlySet<number>;
  /** nets that no pin reaches once one wire is taken away with those side by side with it, however the contacts are */
  readonly cutOff: (wire: number) => ReadonlySet<number>;
}

export const guardedSources = perStudy((study): readonly GuardedSource[] =>
  study.wired.sources.flatMap((source) => {
    const plug = study.plan.parts.get(source.part);
    return source.mains && plug?.kind === 'plug' ? [guarded(study, source, plug)] : [];
  }),
);

function guarded(study: Study, source: Source, plug: PlugPart): GuardedSource {
  const { wired, plan } = study;
  const own = tightest(plan, plug);
  const parallel = paralleled(wired);
  const starts = (live: boolean) => source.rails.filter((r) => r.live === live).map((r) => r.net);
  const fuses = fuseGuards(plan);
  const guards = (fuse: typeof fuses, guard = own) =>
    guardsFrom(
      wired,
      starts(true).map((net) => ({ net, guard })),
      fuse,
    );
  const live = guards(fuses);
  const ofMotors = motorGuards(study, live);
  const others = [...new Set([...live.values()])].some((g) => g.part.kind === 'fuse' && !ofMotors.has(g));
  const around = neighbours(wired);
  const all = source.rails.map((r) => r.net);
  const whole = reachable(all, around, undefined);
  return {
    source,
    plug,
    own,
    live,
    branch: others ? guards((part) => [fuses(part)].find((g) => g !== undefined && ofMotors.has(g))) : live,
    ofMotors,
    fuses: () => guards(fuses, { ...own, need: Infinity, needAtBest: Infinity }),
    outlets: wired.consumers
      .filter((c) => c.kind === 'outlet' && [...c.nets.values()].some((n) => live.has(n)))
      .map((c) => c.part),
    neutral: reachable(starts(false), around, undefined),
    cutOff: (wire) => lost(whole, all, around, parallel(wire)),
  };
}

function motorGuards({ wired, plan }: Study, live: ReadonlyMap<number, MainsGuard>): ReadonlySet<MainsGuard> {
  const fed = new Set(
    [...plan.parts.values()].flatMap((p) => (p.kind === 'motor' ? [p.pluggedInto ?? p.name] : [])),
  );
  const nets = wired.consumers.filter((c) => fed.has(c.part)).flatMap((c) => [...c.nets.values()]);
  return new Set(nets.flatMap((n) => live.get(n) ?? []));
}

function lost(
  whole: ReadonlySet<number>,
  starts: readonly number[],
  around: ReadonlyMap<number, readonly Step[]>,
  wires: ReadonlySet<number>,
): Set<number> {
  const left = reachable(starts, around, wires);
  return new Set([...whole].filter((net) => !left.has(net)));
}

function guardOf(plan: Plan, part: PlugPart | FusePart, device: OvercurrentDevice): MainsGuard | undefined {
  const share = neededShare(device, plan.practice);
  const atBest = neededShareAsGg(device, plan.practice);
  if (share === undefined || atBest === undefined) return undefined;
  return { need: device.amps * share, needAtBest: device.amps * atBest, device, part };
}

/** Fuse parts as guards, each one object. */
function fuseGuards(plan: Plan): (part: string) => MainsGuard | undefined {
  const made = new Map(
    [...plan.parts.values()].flatMap((p) => {
      const own =
        p.kind === 'fuse' && p.rating !== undefined
          ? guardOf(plan, p, { amps: p.rating, kind: 'fuse', class: p.class })
          : undefined;
      return own ? [[p.name, own] as const] : [];
    }),
  );
  return (part) => made.get(part);
}

/** The fuse in a plug: as stated, else that of BS 1363. */
export function plugFuse(plug: PlugPart): OvercurrentDevice | undefined {
  const ofPattern = patternAmps(plug)?.basis.startsWith('BS 1363') === true;
  const amps = plug.fuse ?? (ofPattern ? defaults.plugFuseBs1363.value : undefined);
  if (amps === undefined) return undefined;
  const kind = ofPattern && plug.fuseClass === undefined ? 'plug-fuse' : 'fuse';
  return { amps, kind, class: plug.fuseClass };
}

export function plugBreaker(plug: PlugPart): OvercurrentDevice | undefined {
  return plug.breaker === undefined ? undefined : { amps: plug.breaker, kind: 'breaker' };
}

function tightest(plan: Plan, plug: PlugPart): MainsGuard {
  const devices = [plugBreaker(plug), plugFuse(plug)].flatMap((d) => {
    const guard = d && guardOf(plan, plug, d);
    return guard ? [guard] : [];
  });
  const unknown: MainsGuard = { need: Infinity, needAtBest: Infinity, device: undefined, part: plug };
  return devices.reduce((a, b) => (b.need < a.need ? b : a), unknown);
}

/** `the 32 A breaker of P1`, `the 13 A fuse in P1`, `fuse F1 of 10 A`. */
export function deviceWords({ device, part }: MainsGuard): string {
  if (device === undefined) return `what stands ahead of ${part.name}`;
  const amps = ampsText(device.amps);
  if (part.kind === 'fuse') return `fuse ${part.name} of ${amps}`;
  return device.kind === 'breaker'
    ? `the ${amps} breaker of ${part.name}`
    : `the ${amps} fuse in ${part.name}`;
}
