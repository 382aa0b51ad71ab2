import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings, loop } from '../threshold-plans.ts';

it('without a plug there are no mains to keep apart', () => {
  const text = loop({
    parts: ['M: {kind: motor, volts: 120 V AC, amps: 4 A}'],
    more: ['{link: [K1.NO, M.L]}', '{link: [K1.COM, M.N]}'],
  });
  expect(findings(text).filter((f) => f.question === 1)).toEqual([]);
});

describe('earth-broken', () => {
  // NEC 250.124(B): nothing that switches or blows lies in a protective conductor.
  it.each([
    ['E: {kind: switch}', 'E.COM', 'E.NO'],
    ['E: {kind: fuse, rating: 5 A}', 'E.1', 'E.2'],
  ])('names what the earth passes: %s', (part, from, to) => {
    const text = shop({ parts: [part] })
      .replace(', pe: [P1.PE, M.PE]', '')
      .replace('intent:', `  - {link: [P1.PE, ${from}]}\n  - {link: [${to}, M.PE]}\nintent:`);
    const found = findings(text).find((f) => f.id === 'earth-broken');
    expect(found?.parts).toEqual(['M', 'E']);
    expect(found?.why).toContain('passes E');
  });
});
