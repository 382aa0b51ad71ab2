/** What stands ahead of a motor: the fuse of a wired-in feed, wire before a motor's own fuse, fuses before coils, sockets and cords. */
import { describe, expect, it } from 'vitest';
import { findings } from '../threshold-plans.ts';

const MOTOR =
  'volts: 120 V AC, power: 1 hp, amps: 13 A, locked-rotor: 80 A, type: capacitor-start, protector: manual';
const CABLE = (gauge: string, more = '') =>
  `{gauge: ${gauge}, cores: 3, insulation: 600 V, rated: 90 °C${more}}`;

interface Shop {
  readonly practice?: 'nec' | 'iec';
  readonly plug: string;
  readonly motor?: string;
  readonly parts?: readonly string[];
  readonly mains: readonly string[];
}
const shop = ({ practice = 'nec', plug, motor = MOTOR, parts = [], mains }: Shop): string =>
  [
    'format: 1',
    `practice: ${practice}`,
    'ambient: 30 °C',
    'parts:',
    '  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}',
    '  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}}',
    '  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {ratings: [90 A 600 V AC], motor: [5 hp 120 V AC], ac-3: 40 A}}',
    `  P1: {kind: plug, ${plug}}`,
    `  M: {kind: motor, ${motor}}`,
    ...parts.map((p) => `  ${p}`),
    'runs:',
    '  - {link: [PS1.+, g.COM]}',
    '  - {link: [g.NO, K1.A1]}',
    '  - {link: [K1.A2, PS1.-]}',
    ...mains.map((r) => `  - ${r}`),
    '',
  ].join('\n');
const told = (s: Shop, ...ids: readonly string[]) =>
  findings(shop(s)).flatMap((f) => (ids.includes(f.id) ? [`${f.severity} ${f.id}`] : []));

describe('the fuse of a wired-in feed, NEC 430.52: 175 % time-delay, 300 % fast, of the 16 A of Table 430.248', () => {
  const fed = (fuse: string): Shop => ({
    plug: `pattern: fixed, volts: 120 V AC, fuse: ${fuse}`,
    mains: [
      `{cable: ${CABLE('12 AWG')}, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, M.N], green: [P1.PE, M.PE]}}`,
      `{cable: ${CABLE('12 AWG')}, length: 1 m, cores: {black: [K1.NO, M.L]}}`,
    ],
  });
  it.each([
    ['30 A time-delay', []],
    ['35 A time-delay', ['warning breaker-too-large']],
    ['50 A fast', []],
    ['60 A fast', ['warning breaker-too-large']],
  ])('%s', (fuse, expected) => {
    expect(told(fed(fuse), 'breaker-too-large', 'circuit-overloaded')).toEqual(expected);
  });
});

describe('wire ahead of the fuse of a motor, NEC 240.4 and 430.28', () => {
  const tapped = (metres: number, breaker: number): Shop => ({
    plug: `pattern: fixed, volts: 120 V AC, breaker: ${breaker} A`,
    parts: ['F1: {kind: fuse, rating: 30 A, class: time-delay}'],
    mains: [
      `{cable: ${CABLE('12 AWG')}, length: ${metres} m, cores: {black: [P1.L, F1.1], white: [P1.N, M.N], green: [P1.PE, M.PE]}}`,
      `{cable: ${CABLE('12 AWG')}, length: 1 m, cores: {black: [F1.2, K1.COM]}}`,
      `{cable: ${CABLE('12 AWG')}, length: 1 m, cores: {black: [K1.NO, M.L]}}`,
    ],
  });
  it.each([
    // Table 310.16 with 240.4(D): 20 A; a tenth of 100 A up to 10 ft, a third of 60 A up to 25 ft.
    [20, 100, ['warning']],
    [3.04, 100, ['caution']],
    [3.1, 100, ['warning']],
    [7.6, 60, ['caution']],
    [7.7, 60, ['warning']],
    [3.04, 400, ['warning']],
  ])('12 AWG, %d m behind %d A', (metres, breaker, expected) => {
    const all = findings(shop(tapped(metres, breaker))).filter((f) => f.id === 'conductor-unprotected');
    expect(all.map((f) => f.severity)).toEqual(expected);
  });
});

describe('a fuse ahead of a mains coil', () => {
  // 30 VA at 120 V hold with 0.25 A.
  const coil = (rating: string): Shop => ({
    plug: 'pattern: fixed, volts: 120 V AC, breaker: 20 A',
    parts: [
      `FC: {kind: fuse, rating: ${rating}, class: time-delay}`,
      'C: {kind: relay, coil: {rated: 120 V AC, power: 30 VA, inrush: 180 VA}, poles: [{form: make, marks: [1, 2], contact: {motor: [2 hp 120 V AC]}}]}',
    ],
    mains: [
      '{link: [P1.L, C.1]}',
      '{link: [C.2, M.L]}',
      '{link: [P1.N, M.N]}',
      '{link: [P1.PE, M.PE]}',
      '{link: [P1.L, FC.1]}',
      '{link: [FC.2, K1.COM]}',
      '{link: [K1.NO, C.A1]}',
      '{link: [C.A2, P1.N]}',
    ],
  });
  it.each([
    ['0.2 A', ['fault fuse-too-small']],
    ['0.25 A', []],
  ])('of %s', (rating, expected) => {
    expect(told(coil(rating), 'fuse-too-small')).toEqual(expected);
  });

  // 8 VA held at 24 V are 67 mA at 120 V, by what goes in and comes out of a transformer; its losses are not counted.
  it.each([
    ['50 mA', ['fault fuse-too-small']],
    ['63 mA', ['fault fuse-too-small']],
    ['0.1 A', []],
  ])('ahead of a transformer, of %s', (rating, expected) => {
    const plain = coil('1 A');
    const fed: Shop = {
      ...plain,
      parts: [
        `FP: {kind: fuse, rating: ${rating}, class: time-delay}`,
        'T: {kind: supply, output: 24 V AC, input: 120 V AC, limit: 50 VA, regulation: transformer, class-2: true}',
        'C: {kind: relay, coil: {rated: 24 V AC, power: 8 VA, inrush: 30 VA}, poles: [{form: make, marks: [1, 2], contact: {motor: [2 hp 120 V AC]}}]}',
      ],
      mains: [
        ...plain.mains.slice(0, 4),
        '{link: [P1.L, FP.1]}',
        '{link: [FP.2, T.L]}',
        '{link: [P1.N, T.N]}',
        '{link: [T.~1, K1.COM]}',
        '{link: [K1.NO, C.A1]}',
        '{link: [C.A2, T.~2]}',
      ],
    };
    expect(told(fed, 'fuse-too-small')).toEqual(expected);
  });

  it('a contact between the coil and the neutral is told, NEC 430.74, and that of an overload relay is not', () => {
    const mains = coil('1 A').mains.slice(0, 5);
    const inNeutral = (part: string, a: string, b: string): Shop => ({
      ...coil('1 A'),
      parts: [...coil('1 A').parts!, ...(part === '' ? [] : [part])],
      mains: [
        ...mains,
        ...(part === '' ? ['{link: [FC.2, C.A1]}'] : ['{link: [FC.2, K1.COM]}', '{link: [K1.NO, C.A1]}']),
        `{link: [C.A2, ${a}]}`,
        `{link: [${b}, P1.N]}`,
      ],
    });
    expect(told(inNeutral('', 'K1.COM', 'K1.NO'), 'fuse-in-neutral')).toEqual(['warning fuse-in-neutral']);
    expect(
      told(
        inNeutral('OL: {kind: cutout, setting: 13 A, reset: manual}', 'OL.95', 'OL.96'),
        'fuse-in-neutral',
      ),
    ).toEqual([]);
  });
});

describe('sockets and cords', () => {
  it.each([
    // NEC Table 210.21(B)(2): 12 A on a socket of 15 A, 16 A on one of 20 A.
    ['NEMA 5-15', 13, ['danger plug-mismatch']],
    ['NEMA 5-15', 12, []],
    ['NEMA 5-20', 13, []],
  ])('an outlet %s with %d A on a circuit of 20 A', (pattern, amps, expected) => {
    const s: Shop = {
      plug: 'pattern: NEMA 5-20, volts: 120 V AC, breaker: 20 A',
      motor: `volts: 120 V AC, amps: ${amps} A, plugged-into: X1, protector: manual`,
      parts: [`X1: {kind: outlet, pattern: ${pattern}}`],
      mains: [
        '{link: [P1.L, K1.COM]}',
        '{link: [K1.NO, X1.L]}',
        '{link: [P1.N, X1.N]}',
        '{link: [P1.PE, X1.PE]}',
      ],
    };
    expect(told(s, 'plug-mismatch')).toEqual(expected);
  });

  it.each([
    // BS 7671 Table 4F3A, two loaded: 0.75 mm2 6 A, 1.5 mm2 16 A.
    ['0.75 mm2', 11.5, ['warning cord-too-thin']],
    ['0.75 mm2', 6, []],
    ['1.5 mm2', 11.5, []],
  ])('a cord of %s from a plug with %d A', (gauge, amps, expected) => {
    const cord = `{gauge: ${gauge}, cores: 3, insulation: 500 V, flexible: true, rated: 70 °C}`;
    const s: Shop = {
      ...{ practice: 'iec', plug: 'pattern: CEE 7/4, volts: 230 V AC, breaker: 16 A B' },
      motor: `volts: 230 V AC, amps: ${amps} A, protector: manual`,
      mains: [
        `{cable: ${cord}, length: 2 m, cores: {brown: [P1.L, K1.COM], blue: [P1.N, M.N], green-yellow: [P1.PE, M.PE]}}`,
        `{cable: ${cord}, length: 1 m, cores: {brown: [K1.NO, M.L]}}`,
      ],
    };
    expect(told(s, 'cord-too-thin')).toEqual(expected);
  });
});
