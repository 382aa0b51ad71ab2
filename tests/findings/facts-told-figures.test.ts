/** Hours of a battery, starts of a motor: figures told, and nothing told where they do not apply. */
import { describe, expect, it } from 'vitest';
import { shop } from './mains-plans.ts';
import { findings, type Loop, loop } from './threshold-plans.ts';

const of = (text: string, id: string) => findings(text).filter((f) => f.id === id);

describe('battery-short-lived', () => {
  // The coil takes 12 V over 120 ohm and a contact of 50 mohm; 60 % of the capacity counts, common practice.
  const battery = (fields: string, more: Partial<Loop> = {}) =>
    of(loop({ supply: `kind: battery, output: 12 V DC${fields}`, ...more }), 'battery-short-lived');
  const bridge = (ohms: number): Partial<Loop> => ({
    parts: [`R1: {kind: resistor, resistance: ${ohms} ohm}`],
    more: ['{link: [R1.1, PS1.+]}', '{link: [R1.2, PS1.-]}'],
  });

  it('nothing is said without a capacity, or where it is enough', () => {
    expect(battery('')).toEqual([]);
    expect(battery(', capacity: 50 Ah')).toEqual([]);
  });
  it('hours with a gate open where nothing is drawn at rest', () => {
    const [found] = battery(', capacity: 1 Ah');
    expect(found?.message).toBe('PS1 lasts about 6 h with a gate open');
    expect(found?.figures.map((f) => f.value)).toEqual([6, null]);
    expect(found?.why).toContain('An open gate takes 100 mA;');
    expect(found?.fix).toContain('bigger battery');
  });
  it('days at rest where that empties it', () => {
    const [found] = battery(', capacity: 1 Ah', bridge(1200));
    expect(found?.message).toBe('PS1 is flat in 2.5 days with all gates shut');
    expect(found?.figures.map((f) => f.value)).toEqual([5.46, 60]);
    expect(found?.why).toContain('rest takes 10 mA');
    expect(found?.fix).toContain('behind the gates');
  });
  it('a week and a half at rest is not called flat', () => {
    // 0.6 Ah over 252 h are 2.38 mA, which 5040 ohm take.
    expect(battery(', capacity: 1 Ah', bridge(5000))[0]?.message).toContain('flat');
    expect(battery(', capacity: 1 Ah', bridge(5080))[0]?.message).toContain('lasts about');
  });
});

describe('starts-per-hour', () => {
  const motor = (fields: string, starts: string) =>
    of(
      shop({ motor: `volts: 120 V AC, amps: 8 A, protector: manual, ${fields}starts-per-hour: ${starts}` }),
      'starts-per-hour',
    );
  // NEMA MG 10 Table 2-3 allows a two-pole motor of 1 hp 15 starts; smaller ones take that row.
  it('just as many starts as allowed pass', () => {
    const [found] = motor('power: 0.5 hp, ', '100');
    expect(found).toMatchObject({ severity: 'caution', parts: ['M'] });
    expect(found?.figures[1]?.value).toBe(15);
    expect(motor('power: 0.5 hp, ', '15')).toEqual([]);
    expect(motor('power: 0.5 hp, ', '16')).toHaveLength(1);
  });
  it('nothing is published for brush motors, and none asked where no starts are stated', () => {
    expect(motor('power: 0.5 hp, type: universal, ', '100')).toEqual([]);
    expect(of(shop({}), 'starts-per-hour')).toEqual([]);
  });
  it('a motor without power is a doubt', () => {
    expect(motor('', '10').map((f) => f.severity)).toEqual(['doubt']);
  });
});
