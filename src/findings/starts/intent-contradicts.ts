import { inputText } from '../../edit/said-plan.ts';
import { FALSE } from '../../logic/bdd.ts';
import { blockedForGood, type Wanted } from '../../logic/intent.ts';
import type { InputRef } from '../../plan/plan.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
  id: 'intent-contradicts',
  title: 'the plan asks an input to start a load and to block it',
  severity: 'doubt',
  question: 2,
  base: 'seal-in',
  meaning:
    'The intent names an input among what starts the load and among what blocks it in the same position. Then there is no state in which it has to start the load, and nothing is proved of it. One of the two lists is wrong.',
  wrong:
    '  fan: {runs-on: [saw, START], blocked-by: [STOP, START], stays-on-after: [START], stopped-by: [STOP]}',
  right: '  fan: {runs-on: [saw, START], blocked-by: [STOP], stays-on-after: [START], stopped-by: [STOP]}',
  basis: 'limit of the method',
  followsFrom: [],
};

export const intentContradicts: Check = { entry, find };

function find({ plan, verified }: Study): Finding[] {
  if (!verified) return [];
  const { bdd, valid } = verified.model;
  return verified.intents.wanted.flatMap((w) =>
    // What names a relay is asked of the relay itself.
    (w.through === undefined ? blockedForGood(w, bdd, valid) : []).map(({ refs, works }) => {
      const names = listOf(refs.map(inputText));
      const isNever = bdd.and(works, valid) === FALSE;
      return found(plan, entry, {
        parts: [w.target, ...refs.map((r) => r.part)],
        at: refs[0]?.at,
        ...(isNever ? neverWords(w.target, names) : blockedWords(w, refs)),
        basis: entry.basis,
        twin: { name: names, alike: `${w.target} ${isNever}` },
      });
    }),
  );
}

const neverWords = (target: string, names: string) => ({
  message: `the plan asks ${names} together to start ${target}, and they are never together`,
  why: 'A selector is in one position at a time, so nothing is proved of this entry.',
  fix: `Write them as entries of their own in runs-on of ${target}, without the inner brackets.`,
});

function blockedWords({ target, blockers }: Wanted, refs: readonly InputRef[]) {
  const names = listOf(refs.map(inputText));
  const own = blockers.filter((b) => refs.some((r) => r.part === b.ref.part));
  const by = [...new Set((own.length > 0 ? own : blockers).map((b) => inputText(b.ref)))];
  return {
    message: `the plan asks ${names} to start ${target}, and ${listOf(by)} to keep it off at the same time`,
    why: 'There is no state in which it would have to run for that, so nothing is proved of it.',
    // An emergency stop among them is none to be taken out.
    fix:
      own.length > 0
        ? `Take ${names} out of runs-on and stays-on-after of ${target}, or ${listOf(by)} out of blocked-by and stopped-by.`
        : `Look at blocked-by and stopped-by of ${target}: between them they keep it off in every position, as where each position of a selector is named.`,
  };
}
