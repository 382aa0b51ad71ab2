/** Ways in which loads do not do what is meant, as typed data with their causes; nothing here words a finding. */
import { FALSE } from '../../../logic/bdd.ts';
import { baseState, runsFromRest } from '../../../logic/entry-states.ts';
import type { Wanted } from '../../../logic/intent.ts';
import type { Verified } from '../../../logic/verify.ts';
import { perStudy } from '../../../study/per-study.ts';
import type { Study } from '../../../study/study.ts';
import { departureAtOnce } from './at-once.ts';
import type { Departure, DepartureOf } from './departure.ts';
import { entriesAlone } from './entries-alone.ts';
import { departureLater } from './later.ts';
import type { Tried } from './tried.ts';

/** Every way in which a load departs from its intent, each told once. None where nothing was decided. */
export const departures = perStudy((study): readonly Departure[] => {
  const v = study.verified;
  return v ? v.intents.wanted.flatMap((w) => ofOneLoad(study, v, w)) : [];
});

/** Those of one kind. */
export function departuresOf<K extends Departure['kind']>(study: Study, kind: K): DepartureOf<K>[] {
  return departures(study).filter((d): d is DepartureOf<K> => d.kind === kind);
}

function ofOneLoad(study: Study, v: Verified, wanted: Wanted): Departure[] {
  const own = v.deviations.filter((d) => d.target === wanted.target);
  if (own.length === 0) return [];
  const { bdd } = v.model;
  const tried: Tried = { v, wanted, base: baseState(v, wanted), runs: runsFromRest(v, wanted.target) };
  const alone = entriesAlone(study, tried);
  const rest = own.flatMap((d) => {
    const left = d.expected ? bdd.diff(d.states, alone.explained) : d.states;
    if (left === FALSE) return [];
    return d.direct ? departureAtOnce(tried, d.expected, left) : [departureLater(study, tried, d)];
  });
  return [...alone.departures, ...rest];
}
