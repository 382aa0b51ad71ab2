/** Starts an hour against what a motor of its size stands. */
import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings } from '../threshold-plans.ts';

const of = (text: string, id: string) => findings(text).filter((f) => f.id === id);

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
  // The table is for three phases; what start capacitors stand caps it on one, whether or not a plan says that it is one.
  it('of one phase says that start capacitors count, of three not', () => {
    const basis = (more: string, plug: string) =>
      of(
        shop({
          plug: `pattern: fixed, breaker: 20 A, ${plug}`,
          motor: `power: 1 hp, amps: 4 A, protector: manual, starts-per-hour: 100, ${more}`,
          cable: 'gauge: 14 AWG, cores: 4, insulation: 600 V',
        }),
        'starts-per-hour',
      ).map((f) => f.basis.includes('capacitor'));
    expect(basis('volts: 120 V AC', 'volts: 120 V AC')).toEqual([true]);
    expect(basis('volts: 240 V AC, legs: 2', 'volts: 240 V AC, legs: 2')).toEqual([true]);
    expect(basis('volts: 208 V AC, phases: 3', 'volts: 208 V AC, phases: 3')).toEqual([false]);
  });
  it('a motor without power is a doubt', () => {
    expect(motor('', '10').map((f) => f.severity)).toEqual(['doubt']);
  });
});
