/** What is fed the wrong way round is told of the part that is, and of no neighbour. */
import { describe, expect, it } from 'vitest';
import { findings, type Loop, loop } from '../threshold-plans.ts';

const of = (plan: Loop | string, id: string) =>
  findings(typeof plan === 'string' ? plan : loop(plan)).filter((f) => f.id === id);
const parts = (plan: Loop | string, id: string) => of(plan, id).map((f) => f.parts);

const coil = (name: string, more = '', volts = '12 V DC') =>
  `${name}: {kind: relay, coil: {rated: ${volts}, resistance: 120 ohm${more}}, contact: {ratings: [5 A 30 V DC]}}`;
const H = 'h: {kind: gate, contact: {ratings: [5 A 30 V DC], least: 1 mA 5 V DC}}';
const BARE = 'rated: 12 V DC, resistance: 120 ohm, suppressor: none';

describe('polarity-reversed', () => {
  const reversed = ['{link: [PS1.+, g.COM]}', '{link: [K1.A2, g.NO]}', '{link: [K1.A1, PS1.-]}'];
  it('a coil with a diode in it, and none without', () => {
    const at = (more: string): Loop => ({
      coil: `rated: 12 V DC, resistance: 120 ohm${more}`,
      runs: reversed,
    });
    const [found] = of(at(', suppressor: diode'), 'polarity-reversed');
    expect(found?.parts).toEqual(['K1']);
    expect(found?.terminals).toEqual(['K1.A1', 'K1.A2']);
    expect(found?.message).toContain('built-in diode shorts the supply');
    expect(of(at(', suppressor: varistor'), 'polarity-reversed')).toEqual([]);
    expect(
      of({ coil: 'rated: 12 V DC, resistance: 120 ohm, suppressor: diode' }, 'polarity-reversed'),
    ).toEqual([]);
  });
  it('the diode in another coil is no reason to blame this one', () => {
    const [found] = of(
      {
        coil: BARE,
        parts: [coil('K2', ', suppressor: diode')],
        more: ['{link: [K1.A1, K2.A2]}', '{link: [K2.A1, PS1.-]}'],
      },
      'polarity-reversed',
    );
    expect(found?.parts).toEqual(['K2']);
  });
  it('a board is told once, by its supply pins', () => {
    const [found, second] = of(
      {
        parts: ['B1: {kind: board, supply: 12 V DC, input: high, contact: {ratings: [10 A 250 V AC]}}'],
        more: ['{link: [B1.VCC, PS1.-]}', '{link: [B1.GND, PS1.+]}', '{link: [g.NO, B1.IN]}'],
      },
      'polarity-reversed',
    );
    expect(found?.terminals).toEqual(['B1.VCC', 'B1.GND']);
    expect(found?.message).toContain('does not pull in');
    expect(second).toBeUndefined();
  });
  it('an indicator stays dark', () => {
    const led = (a: string, k: string) =>
      of(
        { parts: ['X: {kind: led}'], more: [`{link: [X.A, ${a}]}`, `{link: [X.K, ${k}]}`] },
        'polarity-reversed',
      );
    expect(led('PS1.-', 'K1.A1')[0]).toMatchObject({ parts: ['X'], terminals: ['X.A', 'X.K'] });
    expect(led('PS1.-', 'K1.A1')[0]?.message).toContain('it stays dark');
    expect(led('K1.A1', 'PS1.-')).toEqual([]);
  });
  it.each([
    ['before it', 'X.A', 'X.K'],
    ['after it', 'X.K', 'X.A'],
  ])('an indicator reversed with its resistor %s', (_, inner, outer) => {
    const plan = (near: string, far: string) => ({
      parts: ['X: {kind: led}', 'R: {kind: resistor, resistance: 470 ohm}'],
      more: [`{link: [R.1, ${near}]}`, `{link: [R.2, ${inner}]}`, `{link: [${outer}, ${far}]}`],
    });
    const [back, right] = inner === 'X.A' ? ['PS1.-', 'K1.A1'] : ['K1.A1', 'PS1.-'];
    expect(parts(plan(back, right), 'polarity-reversed')).toEqual([['X']]);
    expect(parts(plan(right, back), 'polarity-reversed')).toEqual([]);
  });
  it('a resistor across the supply beside an indicator that is right says nothing', () => {
    const plan = {
      parts: ['X: {kind: led}', 'R: {kind: resistor, resistance: 4700 ohm}'],
      more: ['{link: [X.A, PS1.+]}', '{link: [X.K, PS1.-]}', '{link: [R.1, PS1.+]}', '{link: [R.2, PS1.-]}'],
    };
    expect(parts(plan, 'polarity-reversed')).toEqual([]);
  });
  it('nothing is said of poles that a contact joins: that is a short', () => {
    const plan = {
      parts: ['X: {kind: led}', H],
      more: [
        '{link: [X.A, K1.A1]}',
        '{link: [X.K, PS1.-]}',
        '{link: [PS1.+, h.COM]}',
        '{link: [h.NO, PS1.-]}',
      ],
    };
    expect(parts(plan, 'polarity-reversed')).toEqual([]);
    expect(parts(plan, 'supply-shorted')).toEqual([['h', 'PS1']]);
  });
});
