/** Fuses wired into the mains, with what hangs on each. */
import type { ContactEdge } from '../../circuit/circuit.ts';
import type { FusePart } from '../../plan/part-types.ts';
import { sumFigures } from '../../ratings/load.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import { neighbours, reachable } from '../../study/mains/motor-path.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { type GuardedSource, guardedSources } from './mains-guards.ts';
import type { Load } from './plug-loads.ts';

export interface MainsFuse {
  readonly from: GuardedSource;
  readonly fuse: FusePart;
  readonly contact: ContactEdge;
  /** in the way of a live pin, of the neutral pin, or of neither alone */
  readonly lies: 'live' | 'neutral';
  /** loads that lose a conductor when it opens, plugged in or wired */
  readonly loads: readonly Load[];
}

export const mainsFuses = perStudy((study): readonly MainsFuse[] =>
  guardedSources(study).flatMap((from) =>
    study.wired.contacts.flatMap((contact) => {
      const fuse = study.plan.parts.get(contact.part);
      const lies = from.live.has(contact.a) ? 'live' : from.neutral.has(contact.a) ? 'neutral' : undefined;
      if (fuse?.kind !== 'fuse' || lies === undefined) return [];
      return [{ from, fuse, contact, lies, loads: loadsOn(study, from, contact) } as const];
    }),
  ),
);

function loadsOn({ wired, plan }: Study, from: GuardedSource, contact: ContactEdge): Load[] {
  const starts = from.source.rails.map((r) => r.net);
  const left = reachable(
    starts,
    neighbours({ ...wired, contacts: wired.contacts.filter((c) => c !== contact) }),
    undefined,
  );
  const whole = reachable(starts, neighbours(wired), undefined);
  return wired.consumers
    .filter((c) => [...c.nets.values()].some((n) => whole.has(n) && !left.has(n)))
    .map((c) => plan.parts.get(c.part))
    .filter((p): p is Load => p?.kind === 'motor' || p?.kind === 'load');
}

/** A of all that hangs on a fuse while it runs, at least; undefined where none of it is known. */
export function runningOn({ plan }: Study, loads: readonly Load[]): number | undefined {
  const figure = sumFigures(loads.map((l) => motorCurrents(l, plan.practice).running));
  // A rule of thumb counts by its lower end.
  return figure?.rough === true ? (figure.least ?? figure.amps) : figure?.amps;
}
