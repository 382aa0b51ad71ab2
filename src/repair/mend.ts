/** The least changes after which questions 1 to 3 hold, each verified by the whole check: nothing here says what is right. */
import { judgeAsTaken } from '../findings/judge.ts';
import type { Study } from '../study/study.ts';
import { grave } from './grave.ts';
import type { Mended } from './mended.ts';
import { readingsOf } from './required-states.ts';
import { Search } from './search.ts';

export interface Options {
  readonly thorough: boolean;
  readonly quick?: boolean;
}

/**
 * Never throws for a plan that was read. `thorough: false` looks for one change only and checks few candidates; `quick: true`
 * gives up sooner where it finds none.
 */
export function mend(study: Study, options: Options = { thorough: true }): Mended {
  const report = judgeAsTaken(study);
  const none = { format: 1 as const, repairs: [], tried: 0 };
  const wrong = grave(report.findings, true);
  if (!study.verified) {
    const why = `The circuit could not be decided (${study.undecided}), so no repair can be verified.`;
    return { ...none, needed: wrong.length > 0 || null, why };
  }
  const search = () => new Search(study, report, readingsOf(study.verified!), options);
  if (wrong.length > 0 || report.logic.holds === false) return search().run();
  const other = grave(report.findings, false)[0];
  if (other === undefined) return { ...none, needed: false, why: null };
  const tidied = search().tidied();
  if (tidied.repairs.length > 0) return { ...none, ...tidied, needed: true, why: null };
  const why = `The plan fails all the same: ${other.message}. No end on another terminal cures that.`;
  return { ...none, ...tidied, needed: false, why };
}
