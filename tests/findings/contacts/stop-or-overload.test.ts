/** A cut-out by COM and NC may be a stop that latches: it is not taken for an overload relay. */
import { describe, expect, it } from 'vitest';
import { motorPlan, reportOf } from '../contact-plans.ts';

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
