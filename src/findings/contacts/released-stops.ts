/** Stops that end a load only for as long as they are held. */
import type { Wanted } from '../../logic/intent.ts';
import { restartsAfterTrip, type SelfStart } from '../../study/self-starts.ts';
import type { Study } from '../../study/study.ts';
import { isOverload } from './overload-relays.ts';

export interface ReleasedStop extends Pick<SelfStart, 'moved'> {
  readonly stop: string;
}

/**
 * Cut-outs and stop buttons that are meant to stop a load, and on whose release it runs again with nothing but gates and
 * hand switches calling. An overload relay is told of by motor-unprotected; a button that starts and stops by turns is none.
 */
export function releasedStops(study: Study, wanted: Wanted): ReleasedStop[] {
  const stops = new Set(wanted.blockers.map((b) => b.ref.part).filter((name) => isStop(study, wanted, name)));
  return [...stops].flatMap((stop) =>
    restartsAfterTrip(study, stop)
      .filter((s) => s.wanted === wanted)
      .map(({ moved }) => ({ stop, moved })),
  );
}

function isStop(study: Study, wanted: Wanted, name: string): boolean {
  const part = study.plan.parts.get(name);
  if (part?.kind === 'button') return wanted.alternating?.parts.has(name) !== true;
  return part?.kind === 'cutout' && !isOverload(study, part);
}
