import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/edit/apply-edits.ts';
import { check } from '../../src/repair/check.ts';
import { mend } from '../../src/repair/mend.ts';
import { Study } from '../../src/study/study.ts';
import { good } from './helpers.ts';
import { answers, longText, shortText, zonesArb } from './short-forms.ts';

describe('short forms', { timeout: 600_000 }, () => {
  it('are the plan written out: same findings with their repairs, wire list, cut list and drawing', () => {
    fc.assert(
      fc.property(zonesArb, (zones) => {
        expect(answers(shortText(zones), check)).toEqual(answers(longText(zones), check));
      }),
      { numRuns: 16, endOnFailure: true },
    );
  });

  it('are mended by the same moves, and the file then reads as the mended long one', () => {
    let mended = 0;
    fc.assert(
      fc.property(zonesArb, (zones) => {
        const [short, long] = [shortText(zones), longText(zones)];
        const [first] = mend(Study.of(good(long))).repairs;
        const [other] = mend(Study.of(good(short))).repairs;
        expect(other?.edits).toEqual(first?.edits);
        if (first === undefined) return;
        const texts = [short, long].map((text) => applyEdits(text, good(text), first.edits));
        if (texts.some((t) => 'refused' in t)) throw new Error(JSON.stringify(texts));
        const [a, b] = texts.map((t) => answers('text' in t ? t.text : '', check));
        expect(a).toEqual(b);
        mended++;
      }),
      { numRuns: 8, endOnFailure: true },
    );
    expect(mended).toBeGreaterThan(0);
  });
});
