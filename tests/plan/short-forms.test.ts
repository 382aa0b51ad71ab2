import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judge } from '../../src/findings/judge.ts';
import { answers, longText, shortText, zonesArb } from './short-forms.ts';

it('short forms are the plan written out: same findings, wire list, cut list and drawing', () => {
  fc.assert(
    fc.property(zonesArb, (zones) => {
      expect(answers(shortText(zones), judge)).toEqual(answers(longText(zones), judge));
    }),
    { numRuns: 1, endOnFailure: true },
  );
});
