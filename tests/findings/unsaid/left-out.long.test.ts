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

it.each(exampleNames())('%s without each of its figures', (name) => {
  expect(turned(readFileSync(examplePath(name), 'utf8'))).toEqual([]);
});

it('500 random loops without a figure', () => {
  fc.assert(
    fc.property(randomLoop(), fc.nat(), (text, pick) => {
      const all = leavingOut(text);
      const some = all.filter((_, i) => (i + pick) % Math.ceil(all.length / 4) === 0);
      expect(turned(text, some)).toEqual([]);
    }),
    { numRuns: 500 },
  );
});
