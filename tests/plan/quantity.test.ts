import { expect, test } from 'vitest';
import { categoryAmps } from '../../src/plan/category-quantity.ts';
import * as mains from '../../src/plan/mains-quantity.ts';
import * as single from '../../src/plan/quantity.ts';
import type { Quantity } from '../../src/plan/quantity-reader.ts';
import * as ratings from '../../src/plan/rated-quantity.ts';

const q = {
  ...{ ...single, ...ratings, ...mains },
  ...{ ac3: categoryAmps('AC-3', 'ac'), dc13: categoryAmps('DC-13', 'dc') },
};

function value<T>(quantity: Quantity<T>, text: string): T {
  const parsed = quantity.parse(text);
  if ('problem' in parsed) throw new Error(parsed.problem);
  return parsed.value;
}

const numbers: [Quantity<number>, string, number][] = [
  [q.amps, '15 A', 15],
  [q.amps, '80 mA', 0.08],
  [q.amps, '80mA', 0.08],
  [q.amps, '.5 A', 0.5],
  [q.amps, '250 µA', 250e-6],
  [q.volts, '600 V', 600],
  [q.volts, '0.6 kV', 600],
  [q.volts, '17 V DC', 17],
  [q.insulationVolts, '300/500 V', 300],
  [q.insulationVolts, '150 V', 150],
  [q.ohms, '155 ohm', 155],
  [q.ohms, '155 Ω', 155],
  [q.ohms, '2.2 kΩ', 2200],
  [q.ohms, '2.2 kohm', 2200],
  [q.resistance0, '50 mohm', 0.05],
  [q.metres, '2 m', 2],
  [q.metres, '5 cm', 0.05],
  [q.metres, '12 mm', 0.012],
  [q.metres, '6 ft', 1.8288],
  [q.metres, "6'", 1.8288],
  [q.metres, '10"', 0.254],
  [q.metres, '6\' 2"', 1.8796],
  [q.metres, '10 in', 0.254],
  [q.celsius, '35 °C', 35],
  [q.celsius, '35 C', 35],
  [q.celsius, '95 °F', 35],
  [q.celsius, '95 F', 35],
  [q.celsius, '-5 °C', -5],
  [q.kelvins, '30 K', 30],
  [q.share, '75 %', 0.75],
  [q.share, '±10%', 0.1],
  [q.seconds, '5 s', 5],
  [q.seconds, '500 ms', 0.5],
  [q.ampHours, '550 mAh', 0.55],
  [q.ampHours, '7 Ah', 7],
  [q.hertz, '60 Hz', 60],
  [q.voltAmps, '40 VA', 40],
  [q.cubicMetres, '30.3 in3', 30.3 * 0.0254 ** 3],
  [q.cubicMetres, '500 cm3', 500e-6],
  [q.ratio, '0.8', 0.8],
  [q.ratio, '80 %', 0.8],
  [q.price, '$4.50', 4.5],
];
test.each(numbers.map(([quantity, text, si]) => ({ quantity, text, si })))(
  '$text',
  ({ quantity, text, si }) => {
    expect(value(quantity, text)).toBeCloseTo(si, 9);
  },
);

const structures: [Quantity<unknown>, string, unknown][] = [
  [q.voltsKind, '12 V DC', { volts: 12, kind: 'dc' }],
  [q.voltsKind, '12VDC', { volts: 12, kind: 'dc' }],
  [q.voltsKind, '24 VAC', { volts: 24, kind: 'ac' }],
  [q.voltsKind, 'DC 12 V', { volts: 12, kind: 'dc' }],
  [q.mainsVolts, '120 V', { volts: 120, kind: 'ac' }],
  [q.voltsFrequency, '24 V AC 60 Hz', { volts: 24, kind: 'ac', frequency: 60 }],
  [q.rating, '5 A 250 V AC', { amps: 5, volts: 250, kind: 'ac' }],
  [q.rating, '5A 125/250VAC', { amps: 5, volts: 250, kind: 'ac' }],
  [q.rating, '10 mA 5 V DC', { amps: 0.01, volts: 5, kind: 'dc' }],
  [q.limit, '75 %', { fraction: 0.75 }],
  [q.limit, '9 V', { volts: 9 }],
  [q.coilPower, '6 VA', { watts: 6, unit: 'VA' }],
  [q.motorPower, '1 hp', { watts: 745.7, unit: 'hp', horsepower: 1 }],
  [q.motorPower, '1-1/2 hp', { watts: 1118.5500000000002, unit: 'hp', horsepower: 1.5 }],
  [q.motorPower, '1.1 kW', { watts: 1100, unit: 'W' }],
  [q.motorRating, '2 hp 240 V AC', { watts: 1491.4, horsepower: 2, volts: 240, kind: 'ac', phases: 1 }],
  [
    q.motorRating,
    '1 hp 240 V AC 3-phase',
    { watts: 745.7, horsepower: 1, volts: 240, kind: 'ac', phases: 3 },
  ],
  [q.supplyLimit, '20 VA', { value: 20, printed: 'VA' }],
  [q.supplyLimit, '500 mA', { value: 0.5, printed: 'A' }],
  [q.breaker, '20 A', { amps: 20 }],
  [q.breaker, '16 A C', { amps: 16, curve: 'C' }],
  [q.breaker, 'C16', { amps: 16, curve: 'C' }],
  [q.ac3, '12 A', { amps: 12 }],
  [q.ac3, '12 A 230 V AC', { amps: 12, volts: 230 }],
  [q.ac3, '12A 230VAC', { amps: 12, volts: 230 }],
  [q.ac3, '12 A @ 230 V', { amps: 12, volts: 230 }],
  [q.ac3, '400 V AC 9 A', { amps: 9, volts: 400 }],
  [q.ac3, '9 A, 220/240 V', { amps: 9, volts: 240 }],
  [q.dc13, '550 mA 125 V DC', { amps: 0.55, volts: 125 }],
  [q.lampRating, '12 V DC 2 W', { volts: 12, kind: 'dc', watts: 2 }],
  [q.gauge, '0.75 mm2', { gauge: '0.75 mm2', area: 0.75e-6 }],
  [q.gauge, '0.75 mm²', { gauge: '0.75 mm2', area: 0.75e-6 }],
];
test.each(structures.map(([quantity, text, si]) => ({ quantity, text, si })))(
  '$text',
  ({ quantity, text, si }) => {
    expect(value(quantity, text)).toEqual(si);
  },
);

test.each([
  [18, 0.823],
  [14, 2.081],
  [10, 5.261],
])('AWG %i has the area of ASTM B258', (awg, mm2) => {
  expect(value(q.gauge, `${awg} AWG`).area * 1e6).toBeCloseTo(mm2, 2);
  expect(value(q.gauge, `AWG ${awg}`).awg).toBe(awg);
});
test('large sizes count below nought', () => {
  expect(value(q.gauge, '2/0 AWG')).toMatchObject({ gauge: '2/0 AWG', awg: -1 });
});

test.each([
  [q.amps, '5', 'bare number', 'A or mA'],
  [q.amps, '1,5 A', 'decimal comma', '1.5 A'],
  [q.voltsKind, '12 V', 'kind of current', 'V DC or V AC'],
  [q.rating, '5 A', 'without its voltage', '5 A 250 V AC'],
  [q.amps, '5 V', 'expected a current', '5 V'],
  [q.amps, '-5 A', 'more than zero', '-5 A'],
  [q.amps, '', 'found nothing', '15 A'],
  [q.amps, '5 A extra', 'expected a current', 'extra'],
  [q.amps, '5 MA', 'expected a current', '5 MA'],
  [q.mainsVolts, '120 V DC', 'alternating', '120 V DC'],
  [q.ac3, '12 A 24 V DC', 'AC-3 is a category of AC', 'expected V AC'],
  [q.ac3, '230 V AC', 'expected a current', '12 A 230 V AC'],
  [q.ac3, '12', 'bare number', 'A or mA'],
  [q.ac3, '0 A 230 V AC', 'more than zero', '0 A'],
  [q.dc13, '1 A 24 V AC', 'DC-13 is a category of DC', 'expected V DC'],
  [q.celsius, '-300 °C', 'absolute zero', '-300'],
  [q.gauge, '18', 'bare number', 'AWG or mm2'],
] as [Quantity<unknown>, string, string, string][])('refuses %#: %s', (quantity, text, why, also) => {
  const parsed = quantity.parse(text);
  expect('problem' in parsed && parsed.problem).toContain(why);
  expect('problem' in parsed && parsed.problem).toContain(also);
});
