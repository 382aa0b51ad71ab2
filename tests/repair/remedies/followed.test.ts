/** Every remedy of questions 4 to 7, written into the plan's own text, does what it is offered for. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleNames, examplePath } from '../../helpers/example-plans.ts';
import { WHOLE } from '../../helpers/share.ts';
import { randomLoop } from '../../oracles/random-loop.ts';
import { faultsOf, type Tally } from './followed.ts';
import { spoilt } from './spoilt-plans.ts';

const textOf = (name: string) => readFileSync(examplePath(name), 'utf8');
const right = exampleNames().map(textOf);

function holds(plans: fc.Arbitrary<string>, numRuns: number): Tally {
  const tally: Tally = { remedies: 0, lesser: 0, byId: {} };
  fc.assert(
    fc.property(plans, (text) => {
      expect(faultsOf(text, tally)).toEqual([]);
    }),
    { numRuns },
  );
  return tally;
}

describe('a remedy that is followed ends in its finding gone and none as grave that was not there', () => {
  it.each(exampleNames('wrong').filter((_, i) => i % (WHOLE ? 6 : 25) === 1))('%s', (name) => {
    expect(faultsOf(textOf(name), { remedies: 0, lesser: 0, byId: {} })).toEqual([]);
  });

  it.runIf(WHOLE)(
    'in right plans with figures spoilt',
    () => {
      const tally = holds(spoilt(right), WHOLE ? 60 : 6);
      expect(tally.remedies).toBeGreaterThan(WHOLE ? 30 : 2);
    },
    600_000,
  );

  it.runIf(WHOLE)(
    'in random loops',
    () => {
      holds(randomLoop(), WHOLE ? 20 : 2);
    },
    600_000,
  );
});
