/**
 * Earth cores against NEC Table 250.122 (two published copies: 14 AWG to 15 A, 12 to 20, 10 to 60, 8 to 100; (A): no more than
 * the conductors of the circuit) and IEC 60364-5-54 Table 54.2 (one summary: the line itself up to 16 mm², 16 up to 35).
 */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';

const cable = (gauge: string, cores = 3) => `{gauge: ${gauge}, cores: ${cores}, insulation: 600 V}`;

interface Earthed {
  readonly practice?: 'nec' | 'iec';
  readonly breaker?: string;
  readonly lines: string;
  readonly earth: string;
  readonly motor?: string;
  readonly more?: readonly string[];
  readonly box?: boolean;
}

function shop({
  practice = 'nec',
  breaker,
  lines,
  earth,
  motor = lines,
  more = [],
  box = false,
}: Earthed): string {
  const volts = practice === 'nec' ? '120 V AC' : '230 V AC';
  const pe = box ? 'B1.PE' : 'fan.PE';
  return [
    'format: 1',
    `practice: ${practice}`,
    'parts:',
    `  P1: {kind: plug, pattern: fixed, volts: ${volts}${breaker === undefined ? '' : `, breaker: ${breaker}`}}`,
    '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm}, contact: {ratings: [30 A 250 V AC]}}',
    `  fan: {kind: motor, volts: ${volts}, amps: 8 A, protector: manual}`,
    ...(box ? ['  B1: {kind: box, holds: [K1], metal: true}'] : []),
    'runs:',
    `  - {cable: ${cable(lines)}, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, fan.N]}}`,
    `  - {cable: ${cable(motor)}, length: 1 m, cores: {black: [K1.NO, fan.L]${box ? ', green: [B1.PE, fan.PE]' : ''}}}`,
    `  - {cable: ${cable(earth, 1)}, length: 3 m, cores: {green: [P1.PE, ${pe}]}}`,
    ...more,
    '',
  ].join('\n');
}

const told = (e: Earthed) =>
  findings(shop(e)).flatMap((f) =>
    f.id === 'earth-too-thin' ? [f.message.match(/(?<=: )\S+ \S+(?= at least)/)?.[0]] : [],
  );

describe('NEC Table 250.122', () => {
  it.each([
    ['15 A', '12 AWG', '14 AWG', []],
    ['15 A', '12 AWG', '16 AWG', ['14 AWG']],
    ['20 A', '12 AWG', '14 AWG', ['12 AWG']],
    ['20 A', '10 AWG', '12 AWG', []],
    ['30 A', '10 AWG', '12 AWG', ['10 AWG']],
    ['60 A', '6 AWG', '10 AWG', []],
    ['70 A', '4 AWG', '10 AWG', ['8 AWG']],
    // (A): no more than the conductors of the circuit.
    ['45 A', '14 AWG', '14 AWG', []],
    ['45 A', '14 AWG', '16 AWG', ['14 AWG']],
    // By the table at least what the smallest device asks for, whatever stands ahead.
    [undefined, '12 AWG', '14 AWG', []],
    [undefined, '12 AWG', '16 AWG', ['14 AWG']],
  ])('breaker of %s, lines of %s, earth of %s', (breaker, lines, earth, expected) => {
    expect(told({ ...(breaker && { breaker }), lines, earth })).toEqual(expected);
  });

  it('a fuse on the way counts for what hangs behind it', () => {
    const fused = shop({ breaker: '30 A', lines: '10 AWG', earth: '12 AWG' })
      .replace('runs:', '  F1: {kind: fuse, rating: 20 A}\nruns:')
      .replace('[K1.NO, fan.L]', '[F1.2, fan.L]')
      .concat('  - {link: [K1.NO, F1.1]}\n');
    expect(findings(fused).filter((f) => f.id === 'earth-too-thin')).toEqual([]);
  });
});

describe('IEC 60364-5-54 Table 54.2', () => {
  it.each([
    ['2.5 mm2', '2.5 mm2', []],
    ['2.5 mm2', '1.5 mm2', ['2.5 mm2']],
    ['16 mm2', '10 mm2', ['16 mm2']],
    ['25 mm2', '16 mm2', []],
    ['25 mm2', '10 mm2', ['16 mm2']],
  ])('lines of %s, earth of %s', (lines, earth, expected) => {
    expect(told({ practice: 'iec', breaker: '16 A C', lines, earth })).toEqual(expected);
  });
});

it('a box asks for the thickest line in it, a machine for its thinnest', () => {
  const thin = { breaker: '20 A', lines: '12 AWG', motor: '14 AWG', earth: '14 AWG' };
  expect(told(thin)).toEqual([]);
  expect(told({ ...thin, box: true })).toEqual(['12 AWG']);
});

it('two earth cores side by side count together', () => {
  const one = { breaker: '20 A', lines: '12 AWG', earth: '14 AWG' };
  const second = `  - {cable: ${cable('14 AWG', 1)}, length: 3 m, cores: {green: [P1.PE, fan.PE]}}`;
  expect(told(one)).toEqual(['12 AWG']);
  expect(told({ ...one, more: [second] })).toEqual([]);
});

it('the lead of a pole of the loop to earth is no protective conductor', () => {
  const second = `  - {cable: ${cable('20 AWG', 1)}, length: 1 m, cores: {black: [K1.A2, P1.PE]}}`;
  expect(told({ breaker: '20 A', lines: '12 AWG', earth: '12 AWG', more: [second] })).toEqual([]);
});

it('a double-insulated machine asks for none', () => {
  const text = shop({ breaker: '20 A', lines: '12 AWG', earth: '18 AWG' });
  const double = text.replace('protector: manual', 'protector: manual, class: II');
  expect(findings(double).filter((f) => f.id === 'earth-too-thin')).toEqual([]);
});
