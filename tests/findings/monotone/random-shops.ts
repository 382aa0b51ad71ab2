/** Shops of one gate, one relay and one motor or load whose figures are drawn at random, right or wrong. */
import fc from 'fast-check';

const maybe = (of: fc.Arbitrary<string>) => fc.oneof(fc.constant(''), of);
const one = (...of: readonly string[]) => fc.constantFrom(...of);

const drawn = fc.record({
  practice: fc.constantFrom('nec' as const, 'iec' as const),
  air: maybe(one('ambient: 20 °C', 'ambient: 30 °C', 'ambient: 40 °C', 'ambient: 50 °C')),
  supply: one(
    'output: 12 V DC, limit: 0.2 A, regulation: unregulated',
    'output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true',
    'output: 12 V DC, limit: 8 A, regulation: regulated',
  ),
  gate: one(
    'ratings: [0.05 A 30 V DC]',
    'ratings: [5 A 250 V AC, 3 A 30 V DC], least: 100 mA 5 V DC',
    'ratings: [5 A 250 V AC]',
    'dc-13: 0.2 A',
  ),
  coil: one(
    'rated: 12 V DC, resistance: 120 ohm',
    'rated: 12 V DC, resistance: 40 ohm',
    'rated: 12 V DC, power: 2 W, most: 110 %',
  ),
  loopWire: fc.nat({ max: 3 }),
  loopLength: one('2 m', '15 m', '60 m'),
  loopFuse: maybe(one('0.1 A', '1 A', '5 A')),
  contact: one(
    'ratings: [30 A 250 V AC]',
    'ratings: [10 A 250 V AC], ac-3: 6 A',
    'ratings: [30 A 250 V AC], motor: [1 hp 120 V AC, 2 hp 240 V AC]',
    'ratings: [16 A 250 V AC], make: 80 A',
    'motor: [0.5 hp 120 V AC]',
    'ac-3: 12 A',
  ),
  feed: one('pattern: fixed, ', ''),
  breaker: one('10 A', '16 A C', '20 A', '20 A B', '32 A', '40 A D', '63 A'),
  terminals: maybe(one(', terminal-rating: 60 °C', ', terminal-rating: 75 °C')),
  plugFuse: maybe(one(', fuse: 10 A gG', ', fuse: 13 A')),
  mainsWire: fc.nat({ max: 5 }),
  mainsLength: one('1 m', '10 m', '40 m'),
  cable: one(
    'insulation: 600 V',
    'insulation: 600 V, flexible: true',
    'insulation: 600 V, rated: 90 °C',
    'insulation: 600 V, flexible: true, rated: 60 °C',
  ),
  mainsFuse: maybe(
    one('6 A, class: gG', '16 A, class: aM', '10 A, class: time-delay', '20 A, class: fast', '13 A'),
  ),
  load: one(
    'kind: load, type: heater, amps: 9 A',
    'kind: load, type: lamp, power: 500 W',
    'kind: motor, power: 0.5 hp, amps: 5 A, protector: manual',
    'kind: motor, amps: 12 A, locked-rotor: 70 A, protector: manual',
    'kind: motor, amps: 16 A, protector: manual',
    'kind: motor, power: 1.5 kW, code: K, protector: none',
    'kind: motor, power: 2 hp',
    'kind: motor, type: universal, amps: 8 A',
  ),
  box: maybe(
    one('holds: [K1], volume: 12 in3, divider: true', 'holds: [K1, F2], volume: 30 in3, divider: true'),
  ),
});
export type RandomShop = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const GAUGES = {
  nec: ['24 AWG', '20 AWG', '18 AWG', '16 AWG', '14 AWG', '12 AWG', '10 AWG', '8 AWG'],
  iec: ['0.25 mm2', '0.5 mm2', '0.75 mm2', '1 mm2', '1.5 mm2', '2.5 mm2', '4 mm2', '6 mm2'],
} as const;

function textOf(s: RandomShop): string {
  const volts = s.practice === 'nec' ? 120 : 230;
  const [loopGauge, mainsGauge] = [GAUGES[s.practice][s.loopWire]!, GAUGES[s.practice][s.mainsWire + 2]!];
  const fuse = s.loopFuse !== '';
  const main = s.mainsFuse !== '';
  const box = main ? s.box : s.box.replace(', F2', '');
  return [
    'format: 1',
    `practice: ${s.practice}`,
    ...(s.air === '' ? [] : [s.air]),
    'parts:',
    `  PS1: {kind: supply, ${s.supply}}`,
    `  g: {kind: gate, contact: {${s.gate}}}`,
    `  K1: {kind: relay, coil: {${s.coil}, suppressor: diode}, contact: {${s.contact}}}`,
    `  P1: {kind: plug, ${s.feed}volts: ${volts} V AC, breaker: ${s.breaker}${s.terminals}${s.plugFuse}}`,
    `  M: {volts: ${volts} V AC, ${s.load}}`,
    ...(fuse ? [`  F1: {kind: fuse, rating: ${s.loopFuse}}`] : []),
    ...(main ? [`  F2: {kind: fuse, rating: ${s.mainsFuse}}`] : []),
    ...(box === '' ? [] : [`  B: {kind: box, ${box}}`]),
    'runs:',
    ...(fuse ? ['  - {link: [PS1.+, F1.1]}'] : []),
    `  - {cable: {gauge: ${loopGauge}, cores: 2, insulation: 300 V}, length: ${s.loopLength}, cores: {red: [${fuse ? 'F1.2' : 'PS1.+'}, g.COM], black: [K1.A1, g.NO]}}`,
    '  - {link: [K1.A2, PS1.-]}',
    ...(main ? ['  - {link: [P1.L, F2.1]}'] : []),
    `  - {cable: {gauge: ${mainsGauge}, cores: 3, ${s.cable}}, length: ${s.mainsLength}, cores: {1: [${main ? 'F2.2' : 'P1.L'}, K1.COM], 2: [P1.N, M.N], 3: [P1.PE, M.PE]}}`,
    `  - {cable: {gauge: ${mainsGauge}, cores: 2, ${s.cable}}, length: 2 m, cores: {1: [K1.NO, M.L]}}`,
    '',
  ].join('\n');
}

/** Texts of such plans. */
export const randomShops: fc.Arbitrary<string> = drawn.map(textOf);
