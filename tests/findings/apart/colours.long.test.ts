/** What is advised of colours, followed; and what colours must not change. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import type { Finding, Report } from '../../../src/findings/report-model.ts';
import { check } from '../../../src/repair/check.ts';
import { Study } from '../../../src/study/study.ts';
import { planOf } from '../../helpers/plan-of.ts';
import { withChanges } from '../../repair/remedies/written-plan.ts';
import { type Shop, shop } from './colour-plans.ts';

const IDS = ['colour-of-earth', 'colour-of-neutral'] as const;
const OF = (text: string): Finding[] =>
  judge(Study.of(planOf(text))).findings.filter((f) => (IDS as readonly string[]).includes(f.id));

describe('what is advised', () => {
  const wrong: readonly Shop[] = [
    { practice: 'nec', feed: ['white', 'black', 'green'] },
    { practice: 'nec', switched: 'white' },
    { practice: 'nec', switched: 'green-yellow' },
    { practice: 'iec', switched: 'blue' },
    { practice: 'iec', feed: ['green', 'blue', 'black'] },
    { practice: 'iec', loop: ['green-yellow', 'blue'] },
  ];
  it.each(wrong)('%o is right once it is done', (s) => {
    const text = shop(s);
    const { findings } = check(Study.of(planOf(text)));
    const own = findings.filter((f) => (IDS as readonly string[]).includes(f.id));
    expect(own.length).toBeGreaterThan(0);
    for (const f of own) {
      expect(f.remedies.length).toBeGreaterThan(0);
      for (const r of f.remedies) {
        const after = OF(withChanges(text, r.changes));
        expect(after.filter((x) => x.id === f.id && x.message === f.message)).toEqual([]);
        expect(after.length).toBeLessThan(own.length);
      }
    }
  });

  it('no mark is advised for green-and-yellow', () => {
    const { findings } = check(Study.of(planOf(shop({ practice: 'nec', switched: 'green-yellow' }))));
    const f = findings.find((x) => x.id === 'colour-of-earth')!;
    expect(f.remedies.flatMap((r) => r.changes.map((c) => c.change))).toEqual(['core-colours']);
  });
});

describe('colours alone', () => {
  const FREE = {
    nec: ['black', 'red', 'blue', 'brown', 'orange', 'yellow', 'violet', 'pink'],
    iec: ['brown', 'black', 'grey', 'red', 'orange', 'violet', 'white'],
  } as const;
  const NEUTRALS = { nec: ['white', 'grey', 'gray', 'WH'], iec: ['blue', 'light blue', 'BU'] } as const;
  const EARTHS = {
    nec: ['green', 'green-yellow', 'bare', 'GN'],
    iec: ['green-yellow', 'yellow/green', 'GNYE'],
  } as const;
  const judged = (x: Shop) => judge(Study.of(planOf(shop(x))));
  /** The shop in its usual colours, judged once. */
  const once = (practice: 'nec' | 'iec') => {
    let report: Report | undefined;
    return () => (report ??= judged({ practice }));
  };
  const usual = { nec: once('nec'), iec: once('iec') };
  const practices = fc.constantFrom('nec' as const, 'iec' as const);

  it('renaming to colours that are allowed adds no finding', () => {
    fc.assert(
      fc.property(
        practices.chain((practice) =>
          fc.record({
            practice: fc.constant(practice),
            feed: fc.tuple(
              fc.constantFrom(...FREE[practice]),
              fc.constantFrom(...NEUTRALS[practice]),
              fc.constantFrom(...EARTHS[practice]),
            ),
            switched: fc.constantFrom(...FREE[practice]),
          }),
        ),
        (s) => {
          const ids = ({ findings }: Report) => findings.map((f) => f.id);
          expect(ids(judged(s))).toEqual(ids(usual[s.practice]()));
        },
      ),
      { numRuns: 67 },
    );
  });

  it('whatever they are, they change no answer to questions 2 to 6', () => {
    const any = fc.constantFrom('green', 'green-yellow', 'white', 'blue', 'black', 'x1', 'bare');
    fc.assert(
      fc.property(
        practices,
        fc.uniqueArray(any, { minLength: 3, maxLength: 3 }),
        any.filter((c) => !['green', 'green-yellow'].includes(c)),
        (practice, [line, neutral, earth], switched) => {
          const answers = ({ questions }: Report) => questions.slice(1, 6);
          expect(answers(judged({ practice, feed: [line!, neutral!, earth!], switched }))).toEqual(
            answers(usual[practice]()),
          );
        },
      ),
      { numRuns: 67 },
    );
  });
});
