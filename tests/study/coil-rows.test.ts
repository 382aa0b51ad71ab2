/** Volts at every coil against an oracle that tries every state and every corner on a dense network. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';
import { share } from '../helpers/share.ts';
import { coilVolts } from '../oracles/coil-volts.ts';
import { randomLoop } from '../oracles/random-loop.ts';

function rowsOf(text: string) {
  const read = readPlan(new TextEncoder().encode(text), 'random.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judge(Study.of(read.plan)).coils;
}

/** The report rounds to four digits. */
const near = (mine: number | null, theirs: number) =>
  Math.abs(mine! - theirs) <= 6e-4 * Math.abs(theirs) + 1e-9;

describe('least, nominal and greatest volts at the coil', () => {
  it('are those of full enumeration, on random loops', () => {
    fc.assert(
      fc.property(randomLoop(), (text) => {
        const theirs = coilVolts(text);
        const mine = rowsOf(text);
        for (const row of theirs) {
          const own = mine.find((r) => r.relay === row.relay && (r.gate === row.gate || r.gate === null));
          expect(own, `${row.relay} ${row.gate}\n${text}`).toBeDefined();
          const told = `${row.relay} ${row.gate}: ${JSON.stringify(own)} against ${JSON.stringify(row)}\n${text}`;
          expect(near(own!.volts.min, row.volts.min), `min ${told}`).toBe(true);
          expect(near(own!.volts.nominal, row.volts.nominal), `nominal ${told}`).toBe(true);
          expect(near(own!.volts.max, row.volts.max), `max ${told}`).toBe(true);
          expect(near(own!.pullIn, row.pullIn), `pull-in ${told}`).toBe(true);
          expect(Math.abs(own!.margin! - row.margin)).toBeLessThan(1e-3);
        }
      }),
      { numRuns: share(50) },
    );
  }, 120_000);
});
