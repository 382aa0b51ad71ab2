import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { compare } from './compare.ts';
import { randomPlan } from './random-plan.ts';

/**
 * Random plans: every input state, every relay and load, and the verdict, against plain enumeration. Left out, each
 * for the reason given in compare.ts: volts at coils where mains meets the loop; a coil with a contact across it as
 * the only complaint; wrong polarity on a supply that no state feeds; harm that the oracle has no figures for.
 */
const BATCHES = 10;
const RUNS = 320;
const tapes = fc.array(fc.nat(119), { minLength: 20, maxLength: 90, size: 'max' });
const count = { plans: 0, states: 0, harmful: 0, undecided: 0 };

describe('random plans against enumeration', () => {
  it.each(Array.from({ length: BATCHES }, (_, i) => 100 + i))('seed %i', { timeout: 120_000 }, (seed) => {
    fc.assert(
      fc.property(tapes, (tape) => {
        const text = randomPlan(tape);
        const seen = compare(text);
        count.plans++;
        count.states += seen.states;
        if (seen.harmful) count.harmful++;
        if (seen.undecided) count.undecided++;
        if (seen.differ.length > 0) throw new Error(`${seen.differ.join('\n')}\n${text}`);
      }),
      { numRuns: RUNS, seed },
    );
  });

  afterAll(() => {
    console.log(
      `${count.plans} random plans, ${count.states} input states: ${count.harmful} plans do harm, ` +
        `${count.undecided} undecided, 0 differ`,
    );
    expect(count.plans).toBeGreaterThanOrEqual(3000);
    expect(count.undecided).toBe(0);
    // A comparison of nothing but faults, or of nothing but good plans, would prove little.
    expect(count.harmful).toBeGreaterThan(count.plans / 5);
    expect(count.harmful).toBeLessThan((count.plans * 4) / 5);
  });
});

const corpus = new URL('../corpus/', import.meta.url);

describe('plans kept from earlier differences', () => {
  it.each(readdirSync(corpus).filter((f) => f.endsWith('.yaml')))('%s', (file) => {
    expect(compare(readFileSync(new URL(file, corpus), 'utf8')).differ).toEqual([]);
  });
});
