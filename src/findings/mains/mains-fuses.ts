/** Fuses wired into the mains, with what hangs on each. */
import type { ContactEdge } from '../../circuit/circuit.ts';
import type { FusePart } from '../../plan/part-types.ts';
import { coilAmps } from '../../ratings/coil.ts';
import { sumFigures } from '../../ratings/load.ts';
import { motorCurrents } from '../../ratings/motor.ts';
import type { FedCoil } from '../../study/fed-coils.ts';
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
  /** coils that lose an end of theirs with it */
  readonly coils: readonly FedCoil[];
  /** supplies that lose their mains with it, by their index in the circuit */
  readonly supplies: readonly number[];
}

export const mainsFuses = perStudy((study): readonly MainsFuse[] =>
  guardedSources(study).flatMap((from) =>
    study.wired.contacts.flatMap((contact) => {
      const fuse = study.plan.parts.get(contact.part);
      const lies = from.live.has(contact.a) ? 'live' : from.neutral.has(contact.a) ? 'neutral' : undefined;
      if (fuse?.kind !== 'fuse' || lies === undefined) return [];
      const isLost = losing(study, from, contact);
      const coils = study.fedCoils.filter(({ relay, source }) => {
        const sense = source.mains ? relay.senses[0] : undefined;
        return sense?.by === 'volts' && coilNets(study, relay.part).some(isLost);
      });
      const supplies = study.wired.sources
        .filter(({ feed }) => feed.by === 'nets' && [feed.a, feed.b].some(isLost))
        .map((s) => s.index);
      return [{ from, fuse, contact, lies, loads: loadsOn(study, isLost), coils, supplies } as const];
    }),
  ),
);

/** Whether a net hangs on the pins by this contact alone. */
function losing({ wired }: Study, from: GuardedSource, contact: ContactEdge): (net: number) => boolean {
  const starts = from.source.rails.map((r) => r.net);
  const left = reachable(
    starts,
    neighbours({ ...wired, contacts: wired.contacts.filter((c) => c !== contact) }),
    undefined,
  );
  const whole = reachable(starts, neighbours(wired), undefined);
  return (net) => whole.has(net) && !left.has(net);
}

function loadsOn({ wired, plan }: Study, isLost: (net: number) => boolean): Load[] {
  return wired.consumers
    .filter((c) => [...c.nets.values()].some(isLost))
    .map((c) => plan.parts.get(c.part))
    .filter((p): p is Load => p?.kind === 'motor' || p?.kind === 'load');
}

const coilNets = ({ wired }: Study, relay: string): number[] =>
  wired.passives.filter((p) => p.part === relay && p.what === 'coil').flatMap((p) => [p.a, p.b]);

/** A of the coils while they are in, of those whose current the plan tells. */
export function heldBy(coils: readonly FedCoil[]): number {
  return coils.reduce((sum, { model }) => sum + (coilAmps(model) ?? 0), 0);
}

/** A of all that hangs on a fuse while it runs, at least; undefined where none of it is known. */
export function runningOn({ plan }: Study, loads: readonly Load[]): number | undefined {
  const figure = sumFigures(loads.map((l) => motorCurrents(l, plan.practice).running));
  // A rule of thumb counts by its lower end.
  return figure?.rough === true ? (figure.least ?? figure.amps) : figure?.amps;
}
