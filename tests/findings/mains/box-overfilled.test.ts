/**
 * Where a box begins to be too small. Every volume is worked out here from the counts of NEC 314.16(B); the plans on
 * either side of it differ by less than a per cent.
 */

import { describe, expect, it } from 'vitest';
import { checkedReportOf } from '../contact-plans.ts';
import { of, shop } from '../mains-plans.ts';
import { findings } from '../threshold-plans.ts';

describe('box-overfilled, NEC 314.16(B)', () => {
  // Two 14-2 cables with earth, a switch, clamps: (4 + 1 + 2 + 1) allowances of 2.00 in³ = 16.00 in³.
  const switched = (volume: string, gauge = '14 AWG', practice = 'nec', out = gauge) =>
    shop({
      practice,
      box: `holds: [S, n]${volume}`,
      parts: [
        'S: {kind: switch, contact: {ratings: [20 A 120 V AC]}}',
        'n: {kind: joint}',
        'X: {kind: load, type: heater, volts: 120 V AC, amps: 5 A}',
      ],
      runs: [
        `{cable: {gauge: ${gauge}, cores: 3, insulation: 600 V}, length: 2 m, cores: {a: [P1.L, S.COM], b: [P1.N, n], c: [P1.PE, B.PE]}}`,
        `{cable: {gauge: ${out}, cores: 3, insulation: 600 V}, length: 2 m, cores: {a: [S.NO, X.L], b: [n, X.N], c: [B.PE, X.PE]}}`,
      ],
    });

  it.each([
    ['8 of 14 AWG, 2.00 in³ each', '14 AWG', '15.9 in3', '16 in3'],
    ['8 of 12 AWG, 2.25 in³ each', '12 AWG', '17.9 in3', '18 in3'],
    ['2.5 mm² counts as 12 AWG', '2.5 mm2', '17.9 in3', '18 in3'],
    ['in cm³: 16 in³ are 262.2 cm³', '14 AWG', '262 cm3', '262.2 cm3'],
  ])('%s', (_, gauge, less, enough) => {
    expect(of(switched(`, volume: ${less}`, gauge), 'box-overfilled')).toEqual(['warning']);
    expect(of(switched(`, volume: ${enough}`, gauge), 'box-overfilled')).toEqual([]);
  });

  // 314.16(B)(2) to (5): earths, clamps and a device go by the largest they have. Two of 12 AWG, two of 14 AWG, an earth, clamps, a
  // device: 2·2.25 + 2·2.00 + 2.25 + 2.25 + 2·2.25 = 17.50 in³.
  it.each([
    ['12 AWG', '14 AWG'],
    ['14 AWG', '12 AWG'],
  ])('%s in and %s out', (into, out) => {
    expect(of(switched(', volume: 17.4 in3', into, 'nec', out), 'box-overfilled')).toEqual(['warning']);
    expect(of(switched(', volume: 17.5 in3', into, 'nec', out), 'box-overfilled')).toEqual([]);
  });

  it('names the count and the smallest standard box', () => {
    const found = findings(switched(', volume: 14 in3')).find((f) => f.id === 'box-overfilled')!;
    expect(found.why).toContain('4 conductors of 14 AWG 8 in3, cable clamps 2 in3, 1 device of 14 AWG 4 in3');
    expect(found.why).toContain('2 earths of 14 AWG 2 in3');
    expect(found.fix).toBe('B is 2 in3 (33 cm3) short.');
    const told = checkedReportOf(switched(', volume: 14 in3')).findings.find(
      (f) => f.id === 'box-overfilled',
    )!;
    expect(told.fix).toContain('4 x 1-1/4 square box (18 in3)');
    expect(found.question).toBe(7);
  });

  it('a volume that is not stated is a doubt that names the field and the volume needed', () => {
    expect(of(switched(''), 'box-overfilled')).toEqual(['doubt']);
    const found = findings(switched('')).find((f) => f.id === 'box-overfilled')!;
    expect(found.message).toMatch(/volume.*16 in3/);
    expect(found.fix).toContain('volume:');
  });

  it('a conductor above 6 AWG is a doubt (314.28)', () => {
    expect(of(switched(', volume: 500 in3', '4 AWG'), 'box-overfilled')).toEqual(['doubt']);
  });

  it('iec has no such count', () => {
    expect(of(switched('', '14 AWG', 'iec'), 'box-overfilled')).toEqual([]);
    expect(of(switched(', volume: 1 in3', '14 AWG', 'iec'), 'box-overfilled')).toEqual([]);
  });

  // K1 in the box: 2 of 14 AWG and clamps 6.00 in³; the relay is on no yoke. Two bell wires count as 18 AWG, 1.50 each.
  const bell = 'cable: {gauge: 22 AWG, cores: 2, insulation: 300 V}, length: 5 m';
  const relay = (volume: string, loop: readonly string[]) =>
    shop({ loop, box: `holds: [K1], volume: ${volume}, divider: true` });
  it('low-voltage wires count, links and a core with both ends inside do not', () => {
    const long = [`{${bell}, cores: {r: [K1.A1, g.NO], w: [K1.A2, PS1.-]}}`, '{link: [PS1.+, g.COM]}'];
    expect(of(relay('8.95 in3', long), 'box-overfilled')).toEqual(['warning']);
    expect(of(relay('9 in3', long), 'box-overfilled')).toEqual([]);
    expect(of(relay('5.95 in3', ['{link: [g.NO, K1.A1]}']), 'box-overfilled')).toEqual(['warning']);
    expect(of(relay('6 in3', ['{link: [g.NO, K1.A1]}']), 'box-overfilled')).toEqual([]);
    const jumper = [`{${bell}, cores: {r: [K1.A1, K1.A2]}}`];
    expect(of(relay('6 in3', jumper), 'box-overfilled')).toEqual([]);
  });

  it('a box without mains is not counted', () => {
    const hub = shop({ box: 'holds: [j]', parts: ['j: {kind: joint}'] });
    expect(of(hub, 'box-overfilled')).toEqual([]);
  });
});
