/**
 * Where each finding of question 4 begins. Every threshold is worked out here from the rule it rests on; a plan half a
 * per cent on the bad side has the finding, one half a per cent on the good side has not.
 */
import { describe, expect, it } from 'vitest';
import {
  awg,
  begins,
  COIL,
  CONTACT,
  findings,
  HALF,
  HIGH,
  has,
  k,
  LOW,
  loop,
  WARM,
} from '../threshold-plans.ts';

describe('coil-kind', () => {
  it('a DC coil belongs on DC', () => {
    const dc = loop({});
    expect(has(dc, 'coil-kind')).toBe(false);
    expect(
      has(dc.replace('rated: 12 V DC', 'rated: 12 V AC').replace(', suppressor: diode', ''), 'coil-kind'),
    ).toBe(true);
  });
});

describe('coil-too-low and coil-thin-margin', () => {
  // Warm coil in air of 35 °C, 30 K above it and 10 % low: it needs 9 V times copper, parts data.
  const coil = 120 * 0.9 * k(65);
  const need = 9 * k(65);
  /** m of 20 AWG, one way, at which the coil is left with so many volts: wire at 35 °C, there and back. */
  const reach = (volts: number) => (coil * (LOW / volts - 1) - CONTACT.worst) / (2 * awg(20) * k(35));
  const long = (metres: number) => loop({ gauge: '20 AWG', metres });

  it('DC, by length of wire: volts divide between wire, contact and warm coil (Ohm)', () => {
    begins('coil-too-low', 'above', reach(need), long);
  });

  it('thin margin: 5 % of rated above what it needs', () => {
    begins('coil-thin-margin', 'above', reach(need + 0.05 * 12), long);
    const far = long(reach(need) * (1 + HALF));
    expect(findings(far).some((f) => f.id === 'coil-thin-margin')).toBe(false);
  });

  it('DC, by the air round it', () => {
    // 11.76·R/(R + 0.1) = 9.6·k with R = 108·k, so k = (11.76·108/9.6 - 0.1)/108 and T = 254.5·k - 234.5 - 30
    const factor = ((LOW * 108) / 9.6 - CONTACT.worst) / 108;
    begins('coil-too-low', 'above', 254.5 * factor - 234.5 - 30, (ambient) =>
      loop({ ambient, coil: `${COIL.replace('75 %', '80 %')}, ${WARM}` }),
    );
  });

  it('AC, by the VA of the transformer: source and coil with its armature open in line', () => {
    // Coil of 40 VA at 24 V, cosine 0.7. Mains 5 % low (ANSI C84.1 range A, from memory): 27 V come down to 25.65 V.
    const size = 24 ** 2 / 40;
    const re = size * 0.7;
    const im = size * Math.sqrt(1 - 0.7 ** 2);
    // Pull-in at 19.2 V: |Z + R| = |Z|·25.65/19.2
    const most = Math.sqrt(((size * 27 * 0.95) / 19.2) ** 2 - im ** 2) - re - CONTACT.worst;
    // The transformer falls from 27 V to 24 V at rated current: R = 3 V/(VA/24 V)
    begins('coil-too-low', 'below', (3 * 24) / most, (va) =>
      loop({
        supply: `kind: supply, output: 24 V AC, limit: ${va} VA, regulation: transformer, no-load: 27 V, class-2: true`,
        coil: 'rated: 24 V AC, power: 8 VA, power-factor: 0.3, inrush: 40 VA, inrush-power-factor: 0.7, pull-in: 80 %, most: 150 %',
      }),
    );
  });
});

describe('coil-too-high', () => {
  // Warm coil 10 % high behind R = (N - 12 V)/1 A of an unregulated adapter of 1 A: V = u·N·Rc/(Rc + N - 12 + 0.015).
  const coil = 120 * 1.1 * k(65);
  const adapter = (noLoad: number, most: string) =>
    loop({
      supply: `kind: supply, output: 12 V DC, limit: 1 A, regulation: unregulated, no-load: ${noLoad} V, class-2: true`,
      coil: `${COIL.replace('most: 200 %, ', most)}, ${WARM}`,
    });
  const noLoad = (volts: number, mains: number) =>
    (volts * (coil - 12 + CONTACT.least)) / (mains * coil - volts);

  it('stated 15 V against the greatest volts, mains 5 % high', () => {
    const at = noLoad(15, 1.05);
    begins('coil-too-high', 'above', at, (n) => adapter(n, 'most: 15 V, '));
    expect(
      findings(adapter(at * (1 + HALF), 'most: 15 V, ')).find((f) => f.id === 'coil-too-high')?.severity,
    ).toBe('warning');
  });

  it('unstated: caution above 110 % of rated with the mains at nominal, warning above 130 %', () => {
    const severity = (n: number) => findings(adapter(n, '')).find((f) => f.id === 'coil-too-high')?.severity;
    begins('coil-too-high', 'above', noLoad(13.2, 1), (n) => adapter(n, ''));
    expect(severity(noLoad(13.2, 1) * (1 + HALF))).toBe('caution');
    expect(severity(noLoad(15.6, 1) * (1 - HALF))).toBe('caution');
    expect(severity(noLoad(15.6, 1) * (1 + HALF))).toBe('warning');
  });
});

describe('coil-holds-in', () => {
  // Supply high, coil warm and 10 % high, drop-out 10 % of 12 V: whatever lies across the switch may have Rc·(12.24/1.2 - 1).
  const across = 120 * 1.1 * k(65) * (HIGH / 1.2 - 1);

  it('a resistor across the switch', () => {
    begins('coil-holds-in', 'below', across, (ohms) =>
      loop({
        parts: [`R1: {kind: resistor, resistance: ${ohms} ohm}`],
        more: ['{link: [R1.1, PS1.+]}', '{link: [R1.2, K1.A1]}'],
      }),
    );
  });

  it('a solid-state output that is off: its leak taken as 12 V over the stated current', () => {
    begins('coil-holds-in', 'above', (12 / across) * 1000, (milliamps) =>
      loop({
        parts: [
          `K2: {kind: relay, contact: {ratings: [2 A 30 V DC]}, technology: solid-state, off-leakage: ${milliamps} mA, coil: {rated: 12 V DC, resistance: 1000 ohm, suppressor: diode}}`,
        ],
        runs: [
          '{link: [PS1.+, g.COM]}',
          '{link: [g.NO, K2.A1]}',
          '{link: [K2.A2, PS1.-]}',
          '{link: [PS1.+, K2.COM]}',
          '{link: [K2.NO, K1.A1]}',
          '{link: [K1.A2, PS1.-]}',
        ],
      }),
    );
  });

  it('90 m of cable on a mains coil, common practice', () => {
    begins('coil-holds-in', 'above', 90, (metres) =>
      loop({
        practice: 'iec',
        coil: 'rated: 230 V AC, power: 6 VA, inrush: 30 VA',
        parts: [
          'P1: {kind: plug, pattern: IEC 60309 16 A blue 2P+E, breaker: 16 A C, volts: 230 V AC}',
          'W1: {kind: switch, contact: {ratings: [5 A 250 V AC]}}',
        ],
        runs: [
          `{cable: {gauge: 1.5 mm2, cores: 2, insulation: 750 V}, length: ${metres} m, cores: {brown: [P1.L, W1.COM], blue: [W1.NO, K1.A1]}}`,
          '{link: [K1.A2, P1.N]}',
        ],
        runsOn: 'W1',
      }),
    );
  });
});

describe('coil-in-series', () => {
  it('a resistor in line that leaves the coil just less than 9 of 12 V: 120 ohm times 12/9 - 1', () => {
    begins('coil-in-series', 'above', 120 * (12 / 9 - 1), (ohms) =>
      loop({
        parts: [`R1: {kind: resistor, resistance: ${ohms} ohm}`],
        runs: [
          '{link: [PS1.+, g.COM]}',
          '{link: [g.NO, R1.1]}',
          '{link: [R1.2, K1.A1]}',
          '{link: [K1.A2, PS1.-]}',
        ],
      }),
    );
  });
});

describe('coil-unsuppressed', () => {
  it('a DC coil with nothing across it', () => {
    expect(has(loop({}), 'coil-unsuppressed')).toBe(false);
    expect(has(loop({}).replace('suppressor: diode', 'suppressor: none'), 'coil-unsuppressed')).toBe(true);
  });
});

describe('coil-frequency', () => {
  it('a coil made for the frequency of its supply, or not', () => {
    const at = (hertz: number) =>
      loop({
        supply:
          'kind: supply, output: 24 V AC, frequency: 60 Hz, limit: 40 VA, regulation: transformer, class-2: true',
        coil: `rated: 24 V AC, frequency: ${hertz} Hz, power: 6 VA, inrush: 10 VA`,
      });
    expect(has(at(60), 'coil-frequency')).toBe(false);
    expect(has(at(50), 'coil-frequency')).toBe(true);
    // What stands on the supply counts, whatever is usual there.
    const other = (hertz: number) =>
      at(hertz).replace('AC, frequency: 60 Hz, limit', 'AC, frequency: 50 Hz, limit');
    expect(has(other(50), 'coil-frequency')).toBe(false);
    expect(has(other(60), 'coil-frequency')).toBe(true);
  });
});
