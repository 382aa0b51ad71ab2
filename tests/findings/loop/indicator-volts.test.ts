/** Lamps on other volts than their own, and bare indicators without a resistor. */
import { describe, expect, it } from 'vitest';
import { told, type Wired, wired } from '../wired-plans.ts';

const LOOP = 'PS1.+ g.COM, g.NO K1.A1, K1.A2 PS1.-';
const beside = (part: string, wires: string, more: Partial<Wired> = {}): string[] =>
  told(
    wired({ parts: 'PS1 g K1', more: [`X: {${part}}`], wires: `${LOOP}, ${wires}`, ...more }),
    /^indicator/,
  );

describe('a lamp', () => {
  const lamp = (volts: number, end = 'g.NO') =>
    beside(`kind: lamp, rated: ${volts} V DC 1 W`, `${end} X.1, X.2 PS1.-`);
  it('of 6 V on 12 V burns out', () => {
    expect(lamp(6)).toEqual(['caution 5 indicator-volts: X | gets 12 V, made for 6 V']);
    expect(lamp(6, 'PS1.+')).toHaveLength(1);
  });
  it('of 24 V on 12 V stays dim', () =>
    expect(lamp(24)).toEqual(['caution 5 indicator-volts: X | gets 12 V, made for 24 V']));
  // common practice, no source: from 70 % to 115 % of its volts a lamp serves
  it.each([10.5, 12, 14, 17])('of %d V on 12 V serves', (volts) => expect(lamp(volts)).toEqual([]));
  it.each([10.4, 17.2])('of %d V on 12 V does not', (volts) => expect(lamp(volts)).toHaveLength(1));
  it('that is never fed is told by nobody here', () =>
    expect(beside('kind: lamp, rated: 6 V DC 1 W', 'g.NC X.1, X.2 g.NC')).toEqual([]));
  it('that does not state its volts is not judged', () =>
    expect(beside('kind: lamp, resistance: 36 ohm', 'g.NO X.1, X.2 PS1.-')).toEqual([]));
});

describe('an indicator', () => {
  it('that states its forward volts wants a resistor', () =>
    expect(beside('kind: led, forward: 2 V', 'g.NO X.A, X.K PS1.-')).toEqual([
      'caution 5 indicator-volts: X | gets 12 V, made for 2 V',
    ]));
  // common practice, no source: one and a half times its forward volts at once are more than its own few ohm take
  it.each([
    ['7.9', 1],
    ['8.1', 0],
  ])('of %s V forward, bare on 12 V', (forward, found) =>
    expect(beside(`kind: led, forward: ${forward} V`, 'g.NO X.A, X.K PS1.-')).toHaveLength(found),
  );
  it('with one serves', () =>
    expect(
      beside('kind: led, forward: 2 V', 'g.NO R.1, R.2 X.A, X.K PS1.-', {
        more: ['X: {kind: led, forward: 2 V}', 'R: {kind: resistor, resistance: 470 ohm}'],
      }),
    ).toEqual([]));
  // 12 V less 2 V over 480 (20.8 mA), 420 and 110 ohm, 10 of them the indicator's own; common practice, no source: 115 % of its current serves
  it.each([
    [470, []],
    [410, ['caution 5 indicator-volts: X | gets 0.0238 A, made for 0.02 A']],
    [100, ['caution 5 indicator-volts: X | gets 0.0908 A, made for 0.02 A']],
  ])('of 20 mA behind %d ohm', (ohms, expected) =>
    expect(
      beside('kind: led', 'g.NO R.1, R.2 X.A, X.K PS1.-', {
        more: [
          'X: {kind: led, forward: 2 V, current: 20 mA}',
          `R: {kind: resistor, resistance: ${ohms} ohm}`,
        ],
      }),
    ).toEqual(expected),
  );
  it('for panels, with no forward volts stated, has its own', () =>
    expect(beside('kind: led', 'g.NO X.A, X.K PS1.-')).toEqual([]));
});
