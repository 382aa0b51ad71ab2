/** The first load on the mains stage: no lamp is made for the volts between two lines. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { meterSheet } from '../../src/meter/meter-sheet.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

const sheet = (base: string): string => {
  const text = readFileSync(new URL(`../findings/bases/${base}.yaml`, import.meta.url), 'utf8');
  return meterSheet(Study.of(planOf(text)))
    .setup.flatMap((s) => s.text)
    .join('\n');
};

// two equal lamps in series share the volts equally: the trade's way, common practice, no source
describe('the first load', () => {
  it.each(['ac-contactor', 'three-phase'])('%s: two equal lamps in series between two lines', (base) => {
    expect(sheet(base)).toMatch(
      /^The first load is two equal lamps in series between two lines for the volts of P1, each for half of them or more/m,
    );
  });
  it('one lamp between line and neutral', () => {
    expect(sheet('dc-chain')).toMatch(/^The first load is a lamp for the volts of P1/m);
  });
});
