import { endKey } from '../../circuit/nets.ts';
import { baseState, runsFromRest } from '../../logic/entry-states.ts';
import { type Moved, runsAt } from '../../logic/verify.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { standsIn } from './departures/tried.ts';
import { worksAsMeant } from './works-as-meant.ts';

interface StartedByBreak {
  readonly load: string;
  readonly relay: string;
}

/** Loads that start when a relay lets go which is held in at rest: a broken wire does the same. Each load once. */
export const startedByBreak = perStudy((study): readonly StartedByBreak[] => {
  const v = worksAsMeant(study);
  if (!v) return [];
  const found: StartedByBreak[] = [];
  for (const { part: relay } of study.circuit.relays)
    for (const w of v.intents.wanted) {
      const load = w.target;
      if (load === relay || found.some((f) => f.load === load || f.relay === load)) continue;
      const base = baseState(v, w);
      if (standsIn(v, base, runsFromRest(v, load)) || runsAt(v, relay, base) !== true) continue;
      if (runsWithoutCoil(study, relay, load, base)) found.push({ load, relay });
    }
  return found;
});

function runsWithoutCoil(study: Study, relay: string, load: string, base: Moved): boolean {
  const moves = new Map<string, string>();
  for (const run of study.plan.runs)
    run.cores.forEach((core, i) => {
      for (const end of ['a', 'b'] as const)
        if (core[end].part === relay && (core[end].terminal === 'A1' || core[end].terminal === 'VCC'))
          moves.set(endKey(run.index, i, end), `#${relay}`);
    });
  const { verified } = study.rewired(moves);
  return verified !== undefined && runsAt(verified, load, base) === true;
}
