/** A larger breaker never stands before a cord that carries less: no check would say so. */
import { expect, it } from 'vitest';
import { checkedReportOf } from '../../findings/contact-plans.ts';
import { shop } from '../../findings/mains-plans.ts';

it('a larger circuit comes with cords that carry its breaker', () => {
  // 14 A on a 15 A circuit, of which NEC 210.21(B)(2) lets 12 A be used; 14 AWG cord carries 15 A or 18 A, 20 A is more.
  const run = (cores: string) =>
    `{cable: {gauge: 14 AWG, cores: 3, insulation: 600 V, flexible: true}, length: 1 m, cores: {${cores}}}`;
  const text = shop({
    plug: 'pattern: NEMA 5-20, breaker: 15 A, volts: 120 V AC',
    motor: 'volts: 120 V AC, protector: manual, amps: 14 A',
    runs: [run('1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'), run('1: [K1.2, M.L]')],
  });
  const found = checkedReportOf(text).findings.find((f) => f.id === 'circuit-overloaded')!;
  expect(found.fix).toMatch(
    /^Put P1 on a circuit of its own of 20 A, its wire in the wall made for that and use 1[02] AWG for runs 4 and 5/,
  );
});
