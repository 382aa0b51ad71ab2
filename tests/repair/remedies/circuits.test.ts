/**
 * What is advised where a circuit, its socket and its wire do not suit each other: NEC Tables 210.21(B)(2) and (3), 240.4(D), 430.22
 * by Table 430.248 (1.5 hp at 115 V: 20 A); a breaker protects the socket behind it (IEC 60364-5-53, from memory).
 */
import { describe, expect, it } from 'vitest';
import { checkedReportOf } from '../../findings/contact-plans.ts';
import { shop } from '../../findings/mains-plans.ts';
import { withChanges } from './written-plan.ts';

interface Circuit {
  readonly plug: string;
  readonly motor: string;
  readonly gauge: string;
  readonly flexible?: boolean;
  readonly practice?: 'nec' | 'iec';
}

function plan({ plug, motor, gauge, flexible = false, practice = 'nec' }: Circuit): string {
  const run = (cores: string) =>
    `{cable: {gauge: ${gauge}, cores: 3, insulation: 600 V, rated: 90 °C, flexible: ${flexible}}, length: 1 m, cores: {${cores}}}`;
  return shop({
    practice,
    plug,
    motor,
    runs: [run('1: [P1.L, K1.1], n: [P1.N, M.N], pe: [P1.PE, M.PE]'), run('1: [K1.2, M.L]')],
  });
}

/** What is told of one finding, and what the check tells of it once each remedy is typed in. */
function advice(circuit: Circuit, id: string) {
  const text = plan(circuit);
  const finding = checkedReportOf(text).findings.find((f) => f.id === id)!;
  const after = finding.remedies.map(({ changes }) =>
    checkedReportOf(withChanges(text, changes)).findings.some((f) => f.id === id),
  );
  return { words: finding.remedies.map((r) => r.words).join('; '), after };
}

const MOTOR = 'volts: 120 V AC, protector: manual, locked-rotor: 60 A';

describe('a load beyond its circuit gets breaker, plug and wire of the next size together', () => {
  it.each([
    ['NEMA 5-20', 20, 17, '12 AWG', /25 A.*NEMA L5-30.*10 AWG/],
    ['NEMA 5-15', 15, 12.5, '14 AWG', /20 A.*NEMA 5-20.*12 AWG/],
  ])('%s on %d A with %d A', (pattern, breaker, amps, gauge, words) => {
    const circuit = {
      plug: `pattern: ${pattern}, breaker: ${breaker} A, volts: 120 V AC`,
      motor: `${MOTOR}, amps: ${amps} A`,
      gauge,
    };
    const told = advice(circuit, 'circuit-overloaded');
    expect(told.words).toMatch(words);
    expect(told.after).toEqual([false]);
  });
});

it('the breaker that is advised for the wire is none that the socket forbids', () => {
  const plug = 'pattern: NEMA L5-30, breaker: 40 A, volts: 120 V AC';
  const { words } = advice(
    { plug, motor: `${MOTOR}, amps: 13 A, power: 1 hp`, gauge: '12 AWG' },
    'conductor-unprotected',
  );
  expect(words).toContain('breaker of 30 A');
  expect(words).not.toContain('35 A');
});

it.each(['CEE 7/4', 'IEC 60309 16 A blue 2P+E'])('%s on 32 A: a breaker of 16 A', (pattern) => {
  const plug = `pattern: ${pattern}, breaker: 32 A C, volts: 230 V AC`;
  const motor = 'volts: 230 V AC, protector: manual, amps: 6 A, locked-rotor: 40 A';
  const told = advice({ plug, motor, gauge: '6 mm2', flexible: true, practice: 'iec' }, 'plug-mismatch');
  expect(told.words).toContain('fit a breaker of 16 A C for P1');
});

it('a cord behind a plug of BS 1363 is for its fuse, and not for the breaker of the ring', () => {
  const plug = 'pattern: BS 1363, breaker: 32 A B, volts: 230 V AC';
  const motor = 'volts: 230 V AC, protector: none, amps: 2 A, locked-rotor: 8 A';
  const told = advice(
    { plug, motor, gauge: '0.75 mm2', flexible: true, practice: 'iec' },
    'conductor-unprotected',
  );
  expect(told.words).toMatch(/put a fuse of \d+ A into P1/);
  expect(told.words).not.toContain('breaker');
});

describe('240.4(G) excuses building wire behind a plug only where Table 430.248 allows it', () => {
  const behind = (gauge: string, power: string) =>
    checkedReportOf(
      plan({
        plug: 'pattern: NEMA L5-30, breaker: 30 A, volts: 120 V AC',
        motor: `${MOTOR}, amps: 11 A, power: ${power}`,
        gauge,
      }),
    ).findings.filter((f) => f.id === 'conductor-unprotected').length;
  it.each([
    // 1.25 times 20 A and 9.8 A; 14 AWG of 60 °C terminals carries 15 A, 12 AWG 20 A, 10 AWG 30 A
    ['14 AWG', '1.5 hp', 1],
    ['12 AWG', '1.5 hp', 1],
    ['10 AWG', '1.5 hp', 0],
    ['14 AWG', '0.5 hp', 0],
  ])('%s and %s', (gauge, power, expected) => {
    expect(behind(gauge, power)).toBe(expected);
  });
});
