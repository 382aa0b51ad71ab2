import { FALSE } from '../../logic/bdd.ts';
import type { Verified } from '../../logic/verify.ts';
import type { Study } from '../../study/study.ts';

/** The proof of a plan in which every load does what is meant; else what a broken wire would do is the lesser worry. */
export function worksAsMeant({ verified: v }: Study): Verified | undefined {
  return v && v.intents.wanted.length > 0 && v.deviations.length === 0 && v.chatter === FALSE ? v : undefined;
}
