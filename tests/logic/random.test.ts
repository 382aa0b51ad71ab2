import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { share, WHOLE } from '../helpers/share.ts';
import { compare } from './compare.ts';
import { randomPlan } from './random-plan.ts';

/**
 * Random plans: every input state, every relay and load, and the verdict, against plain enumeration. Left out, each
 * for the reason given in compare.ts: settled positions where a relay that holds hangs on one that follows; volts at coils where mains meets the loop; a coil with a contact across it as
 * the only complaint; wrong polarity on a supply that no state feeds; gates that may wait for a start
 * button; harm that the oracle has no figures for.
 */
const BATCHES = share(2);
const RUNS = WHOLE ? 110 : 15;
const tapes = fc.array(fc.nat(119), { minLength: 20, maxLength: 90, size: 'max' });
const count = { plans: 0, states: 0, harmful: 0, undecided: 0, followers: 0 };

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
        if (seen.followers) count.followers++;
        if (seen.differ.length > 0) throw new Error(`${seen.differ.join('\n')}\n${text}`);
      }),
      { numRuns: RUNS, seed },
    );
  });

  afterAll(() => {
    console.log(
      `${count.plans} random plans, ${count.states} input states: ${count.harmful} plans do harm, ` +
        `${count.undecided} undecided, ${count.followers} compared by verdict alone`,
    );
    expect(count.plans).toBeGreaterThanOrEqual(BATCHES * RUNS);
    expect(count.undecided).toBe(0);
    expect(count.followers).toBeLessThan(count.plans / 10);
    if (!WHOLE) return;
    // A comparison of nothing but faults, or of nothing but good plans, would prove little.
    expect(count.harmful).toBeGreaterThan(count.plans / 5);
    expect(count.harmful).toBeLessThan((count.plans * 4) / 5);
  });
});

const KEPT = [
  'both-relays-pull-in-at-power-up',
  'coil-shunted-by-switch',
  'diode-across-supply-that-is-never-fed',
  'gate-dead-beside-start-button',
  'hold-handed-over-by-second-relay',
  'intent-on-relay-load-on-break-contact',
  'mains-through-motor-into-coil',
];

describe('plans kept from earlier differences', () => {
  it.each(KEPT)('%s', (name) => {
    const text = readFileSync(new URL(`../corpus/${name}.yaml`, import.meta.url), 'utf8');
    expect(compare(text).differ).toEqual([]);
  });
});
