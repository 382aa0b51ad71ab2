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
  it('a motor without power is a doubt', () => {
    expect(motor('', '10').map((f) => f.severity)).toEqual(['doubt']);
  });
});
