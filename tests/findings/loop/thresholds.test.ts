/**
 * Where each finding of question 5 begins. Every threshold is worked out here from the rule it rests on; a plan half a
 * per cent on the bad side has the finding, one half a per cent on the good side has not.
 */
import { describe, expect, it } from 'vitest';
import {
  awg,
  begins,
  COIL,
  CONTACT,
  EXACT,
  findings,
  HALF,
  HIGH,
  has,
  k,
  type Loop,
  loop,
  REGULATED,
  WARM,
} from '../threshold-plans.ts';

describe('supply-overloaded', () => {
  // 12 V over 120 ohm is 100 mA.
  const limited = (milliamps: number) => loop({ supply: REGULATED.replace('2 A', `${milliamps} mA`) });
  const severity = (ma: number) => findings(limited(ma)).find((f) => f.id === 'supply-overloaded')?.severity;

  it('caution above 80 % of the limit, fault above the limit', () => {
    begins('supply-overloaded', 'below', 100 / 0.8, limited);
    expect(severity((100 / 0.8) * (1 - HALF))).toBe('caution');
    expect(severity(100 * (1 + HALF))).toBe('caution');
    expect(severity(100 * (1 - HALF))).toBe('fault');
  });

  it('AC: 30 VA at pull-in against 80 % of what the transformer gives', () => {
    begins('supply-overloaded', 'below', 30 / 0.8, (va) =>
      loop({
        supply: `kind: supply, output: 24 V AC, limit: ${va} VA, regulation: transformer, no-load: 25 V, class-2: true`,
        coil: 'rated: 24 V AC, power: 6 VA, inrush: 30 VA, most: 150 %',
      }),
    );
  });
});

describe('the gate switch', () => {
  it('switch-overloaded: carries 100 mA', () => {
    begins('switch-overloaded', 'below', 100, (ma) =>
      loop({ contact: `ratings: [${ma} mA 30 V DC], least: 1 mA 5 V DC` }),
    );
  });

  it('switch-overloaded: makes 30 VA at 24 V on 1.5 times its rating (IEC 60947-4-1 Table 7, AC-1)', () => {
    begins('switch-overloaded', 'below', 30 / 24 / 1.5, (amps) =>
      loop({
        supply:
          'kind: supply, output: 24 V AC, limit: 60 VA, regulation: transformer, no-load: 25 V, class-2: true',
        contact: `ratings: [${amps} A 125 V AC]`,
        coil: 'rated: 24 V AC, power: 6 VA, inrush: 30 VA, most: 150 %',
      }),
    );
  });

  it('switch-kind-unrated: a DC rating below the volts of the loop does not serve', () => {
    begins('switch-kind-unrated', 'below', 12, (volts) =>
      loop({ contact: `ratings: [5 A 250 V AC, 5 A ${volts} V DC], least: 1 mA 5 V DC` }),
    );
  });

  it('switch-underloaded: stated least current', () => {
    begins('switch-underloaded', 'above', 100, (ma) =>
      loop({ contact: `ratings: [5 A 30 V DC], least: ${ma} mA 5 V DC` }),
    );
  });

  it('switch-underloaded: 10 mA where nothing is stated, common practice', () => {
    begins('switch-underloaded', 'above', 12 / 0.01, (ohms) =>
      loop({ contact: 'ratings: [5 A 30 V DC]', coil: `${COIL.replace('120 ohm', `${ohms} ohm`)}, ${WARM}` }),
    );
  });
});

describe('wire-overloaded and fuse-too-small', () => {
  const unmarked = (amps: number) => REGULATED.replace('2 A', `${amps} A`).replace(', class-2: true', '');
  const fused = (gauge: string, rating: string, coil?: string) =>
    loop({
      supply: unmarked(20),
      ...(coil !== undefined && { coil }),
      parts: [`F1: {kind: fuse, rating: ${rating}}`],
      runs: [
        '{link: [PS1.+, F1.1]}',
        `{cable: {gauge: ${gauge}, cores: 2, insulation: 300 V}, length: 1 m, cores: {red: [F1.2, g.COM], black: [K1.A1, g.NO]}}`,
        '{link: [K1.A2, PS1.-]}',
      ],
    });

  it.each([
    ['18 AWG', 6, 'NEC 402.5, from memory'],
    ['16 AWG', 8, 'NEC 402.5, from memory'],
    ['20 AWG', 3, 'common practice'],
    ['0.75 mm2', 6, 'BS 7671 Table 4F3A'],
  ])('a fuse in front of %s wire: at most %d A (%s)', (gauge, amps) => {
    begins('wire-overloaded', 'above', amps, (rating) => fused(gauge, `${rating} A`));
  });

  it('a supply without mark or fuse on 18 AWG: at most 6 A', () => {
    begins('wire-overloaded', 'above', 6, (amps) =>
      loop({ supply: unmarked(amps), gauge: '18 AWG', metres: 1 }),
    );
  });

  it('the current itself on 24 AWG: 1 A, supply high, coil warm', () => {
    // (12.24 V/1 A - 2 m of wire - contact)/copper
    const ohms = (HIGH - 2 * awg(24) - CONTACT.least) / k(65);
    begins('wire-overloaded', 'below', ohms, (r) =>
      loop({ gauge: '24 AWG', metres: 1, coil: `${COIL.replace('120 ohm', `${r} ohm`)}, ${EXACT}` }),
    );
  });

  it('a fuse below what flows through it, supply high, coil warm', () => {
    const flows = HIGH / (120 * k(65) + 2 * awg(20) + CONTACT.least);
    begins('fuse-too-small', 'below', flows * 1000, (ma) => fused('20 AWG', `${ma} mA`, `${COIL}, ${EXACT}`));
  });

  // The coil is taken 10 % high, so 85 mA pass for 79 mA; it may be 10 % low and take 96 mA for hours.
  it('a fuse below what flows through it with the coil 10 % low', () => {
    const flows = HIGH / (120 * 0.9 * k(65) + 2 * awg(20) + CONTACT.least);
    begins('fuse-too-small', 'below', flows * 1000, (ma) => fused('20 AWG', `${ma} mA`, `${COIL}, ${WARM}`));
  });
});

describe('drop-large', () => {
  it('a tenth of 12 V in wire and contact: one ninth of the 120 ohm of the coil, at 20 °C', () => {
    const metres = (120 / 9 - CONTACT.printed) / (2 * awg(20));
    begins('drop-large', 'above', metres, (m) =>
      loop({ gauge: '20 AWG', metres: m, coil: `${COIL.replace('75 %', '50 %')}, ${WARM}` }),
    );
  });
});

describe('battery-short-lived', () => {
  // 60 % of the capacity for 40 h with a gate open and 128 h shut, common practice.
  const running = 12 / (120 + CONTACT.printed);
  const battery = (capacity: number, more: Partial<Loop> = {}) =>
    loop({ supply: `kind: battery, output: 12 V DC, capacity: ${capacity} Ah`, ...more });

  it('the coil alone', () => {
    begins('battery-short-lived', 'below', (40 * running) / 0.6, (ah) => battery(ah));
  });

  it('with 10 mA drawn day and night before the gates', () => {
    begins('battery-short-lived', 'below', (40 * (running + 0.01) + 128 * 0.01) / 0.6, (ah) =>
      battery(ah, {
        parts: ['R1: {kind: resistor, resistance: 1200 ohm}'],
        more: ['{link: [R1.1, PS1.+]}', '{link: [R1.2, PS1.-]}'],
      }),
    );
  });
});

describe('supply-not-limited', () => {
  const claimed = (volts: number, limit: string) =>
    loop({
      supply: `kind: supply, output: ${volts} V DC, limit: ${limit}, regulation: regulated, tolerance: 2 %, class-2: true`,
    });

  it('no mark and no fuse', () => {
    expect(has(loop({}), 'supply-not-limited')).toBe(false);
    expect(has(loop({}).replace(', class-2: true', ''), 'supply-not-limited')).toBe(true);
  });

  it.each([
    [12, 'A', 5],
    [12, 'W', 60],
    [24, 'W', 100],
    [24, 'A', 100 / 24],
    [48, 'W', 100],
  ])(
    'a Class 2 claim at %d V DC in %s ends at %d (NEC Chapter 9 Table 11(B), from memory)',
    (volts, unit, limit) => {
      begins('supply-not-limited', 'above', limit, (x) => claimed(volts, `${x} ${unit}`));
    },
  );
});
