/** Repairs told for single slips in shops made for it, before a judge that shares no code with what finds them. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { cases } from '../helpers/cases.ts';
import { planOf } from '../helpers/plan-of.ts';
import { WHOLE } from '../helpers/share.ts';
import { sample } from '../oracles/corpus/corpus.ts';
import { planWithSlips, slips } from '../oracles/repair/slips.ts';
import { trial } from '../oracles/repair/trial.ts';
import { isHarmful, RULES, type Rule } from '../oracles/repair-judge.ts';

const FOLDER = 'tests/repair/shops';
const SEED = 20261129;
const EACH = WHOLE ? 5 : 1;

/**
 * Rules that some repair told today still breaks, so that nothing is asserted of them: in the first repair, and in those
 * told after it. `npm run repairs:judge -- --verbose` shows where. What is mended is struck out here; none is to be added.
 */
const STILL_BROKEN: { first: readonly Rule[]; later: readonly Rule[] } = {
  first: ['finding', 'reach'],
  later: ['reach'],
};
/** Slips of a shop that are not restored by what is told: of all that the judge tries, 1 in 100. */
const LOST = WHOLE ? 1 : 0;

const shops = readdirSync(FOLDER)
  .filter((f) => f.endsWith('.yaml'))
  .map((file) => ({ file, plan: planOf(readFileSync(`${FOLDER}/${file}`, 'utf8'), file) }));

describe('repairs before an independent judge', () => {
  test.each(shops)('$file is right before a mistake is made in it', ({ plan }) => {
    const report = judge(Study.of(plan));
    expect(isHarmful(report)).toBe(false);
    expect(report.verdict).toBe('pass');
  });

  test.each(shops)('no repair told for a slip in $file breaks a rule, and one restores it', ({ plan }) => {
    const tried = sample(slips(plan), EACH, SEED).flatMap((slip) => {
      const wrong = planWithSlips(plan, [slip]);
      const t = wrong && trial(plan, wrong, [slip]);
      return t ? [{ slip, t }] : [];
    });
    cases(tried.length);
    const broken = tried.flatMap(({ slip, t }) =>
      t.breaches
        .filter(({ rule, repair }) => !STILL_BROKEN[repair === 0 ? 'first' : 'later'].includes(rule))
        .map((b) => `${slip.words}: ${t.repairs[b.repair]} ${b.rule}: ${b.what}`),
    );
    expect(broken).toEqual([]);
    expect(tried.flatMap(({ t }) => t.apart)).toEqual([]);
    const lost = tried.filter(({ t }) => !t.restored).map(({ slip, t }) => `${slip.words}: ${t.repairs[0]}`);
    expect(lost.slice(LOST)).toEqual([]);
  });

  test('every rule is asserted or named as still broken', () => {
    for (const list of Object.values(STILL_BROKEN)) expect(RULES).toEqual(expect.arrayContaining([...list]));
  });
});

describe('what a repair says of itself', () => {
  test.each(shops.filter((_, i) => WHOLE || i % 4 === 0))('of $file: ends, new cores, order', ({ plan }) => {
    for (const slip of sample(slips(plan), WHOLE ? 4 : 2, SEED + 1)) {
      const wrong = planWithSlips(plan, [slip]);
      if (!wrong) continue;
      const { repairs, needed } = mend(Study.of(wrong));
      if (!needed) continue;
      for (const { edits, ends, metres } of repairs) {
        // An end moved is one; a core taken out, put in or changed over with another has two.
        const touched = edits.reduce(
          (sum, e) => sum + (e.do === 'move' ? 1 : e.do === 'say' || e.do === 'intend' ? 0 : 2),
          0,
        );
        expect(ends, slip.words).toBe(touched);
        // How long a new core has to be is not known; nothing else takes wire.
        expect(metres, slip.words).toBe(edits.some((e) => e.do === 'add') ? null : 0);
      }
      // Those that are as likely as the first stand before those that are not.
      const likely = repairs.map((r) => r.asLikely);
      expect(likely, slip.words).toEqual([...likely].sort((x, y) => Number(y) - Number(x)));
      if (repairs.length > 0) expect(likely[0], slip.words).toBe(true);
    }
  });
});
