/**
 * Leaving a figure out never turns a fail into a pass, nor a pass into a fail. What is left out may be anything within the
 * ends of `tables/defaults.json`, which come from the sources named there; the figures of the plans lie within them.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { exampleNames, examplePath } from '../../helpers/example-plans.ts';
import { randomLoop } from '../../oracles/random-loop.ts';
import { leavingOut, turned } from './left-out.ts';
import './left-out.test.ts';

/** Of every so many figures one is left out here, each plan beginning with another; all of them were tried at times. */
const EVERY = 8;

it.each(exampleNames().map((name, i) => [name, i] as const))(
  '%s without its figures',
  (name, nth) => {
    const text = readFileSync(examplePath(name), 'utf8');
    const some = leavingOut(text).filter((_, i) => i % EVERY === nth % EVERY);
    expect(turned(text, some)).toEqual([]);
  },
  120_000,
);

it('random loops without a figure', { timeout: 300_000 }, () => {
  fc.assert(
    fc.property(randomLoop(), fc.nat(), (text, pick) => {
      const all = leavingOut(text);
      const some = all.filter((_, i) => (i + pick) % Math.ceil(all.length / 4) === 0);
      expect(turned(text, some)).toEqual([]);
    }),
    { numRuns: 9 },
  );
});
