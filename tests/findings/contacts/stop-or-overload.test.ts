/** A cut-out by COM and NC may be a stop that latches: it is not taken for an overload relay. */
import { describe, expect, it } from 'vitest';
import { motorPlan, reportOf } from '../contact-plans.ts';
import { wired } from '../wired-plans.ts';

const plan = (from: string, to: string) =>
  motorPlan({
    volts: 120,
    motor: 'amps: 8 A, power: 0.5 hp, locked-rotor: 40 A',
    contact: 'ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]',
  })
    .replace('  P1:', '  halt: {kind: cutout, contact: {ratings: [5 A 250 V AC, 5 A 30 V DC]}}\n  P1:')
    .replace('{link: [PS1.+, g.COM]}', `{link: [PS1.+, halt.${from}]}\n  - {link: [halt.${to}, g.COM]}`)
    .concat('intent:\n  M: {runs-on: [g], blocked-by: [halt]}\n');
const of = (text: string) => reportOf(text).findings.filter((f) => f.id === 'motor-unprotected');

describe('a cut-out in the loop', () => {
  it('by COM and NC leaves the motor unprotected', () => {
    const [found, ...more] = of(plan('COM', 'NC'));
    expect(more).toEqual([]);
    expect([found!.severity, found!.message]).toEqual([
      'caution',
      'M starts by itself and no overload protector is stated',
    ]);
    expect(found!.why).toContain('a stop or a bin switch does not see a stall');
  });
  it('by 95 and 96 is an overload relay, of which nothing says that it stays tripped', () =>
    expect(of(plan('95', '96')).map((f) => [f.severity, f.message])).toEqual([
      ['caution', 'nothing says that halt stays tripped until it is reset by hand'],
    ]));
  it.each([
    ['reset: manual', []],
    ['setting: 8 A, reset: manual', []],
    ['reset: automatic', ['warning']],
  ])('by COM and NC with %s is one as well', (said, severities) =>
    expect(
      of(plan('COM', 'NC').replace('{kind: cutout,', `{kind: cutout, ${said},`)).map((f) => f.severity),
    ).toEqual(severities),
  );
});

describe('a motor that a gate starts by itself', () => {
  // NEC 430.32(B): one that starts by itself has to have overload protection; where nothing is stated it may have it.
  it.each([
    ['protector: none', 'warning', 'it has no overload protector'],
    ['', 'caution', 'no overload protector is stated'],
  ])('with %s', (protector, severity, words) => {
    const text = wired({
      parts: 'PS1 g K1',
      more: [
        'P1: {kind: plug, volts: 120 V AC, pattern: fixed, breaker: 15 A}',
        `M: {kind: motor, volts: 120 V AC, amps: 5 A, power: 0.25 hp${protector === '' ? '' : `, ${protector}`}}`,
      ],
      wires: 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-, P1.L K1.COM, K1.NO M.L, P1.N M.N, P1.PE M.PE',
      intent: ['M: {runs-on: [g]}'],
    });
    expect(of(text).map((f) => f.severity)).toEqual([severity]);
    expect(of(text)[0]!.message).toContain(words);
    expect(/NEC 430\.32/.test(of(text)[0]!.why)).toBe(severity === 'warning');
  });
});
