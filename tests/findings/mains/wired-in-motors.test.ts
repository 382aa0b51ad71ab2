/** Conductors to motors that are wired in: 125 % of the largest motor and all of the rest have to fit the conductor. */
import { describe, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { begins } from '../threshold-plans.ts';

/** A motor marked in amperes alone goes by those; its 60 A supply is not what is looked at. */
const wired = (gauge: string, amps: number, heater?: number) =>
  shop({
    plug: 'pattern: fixed, breaker: 60 A, volts: 120 V AC',
    motor: `volts: 120 V AC, amps: ${amps} A, locked-rotor: ${6 * amps} A, protector: manual`,
    cable: `gauge: ${gauge}, cores: 3, insulation: 600 V`,
    parts: heater === undefined ? [] : [`H: {kind: load, volts: 120 V AC, amps: ${heater} A}`],
    loop: [
      '{link: [PS1.+, g.COM]}',
      '{link: [g.NO, K1.A1]}',
      '{link: [K1.A2, PS1.-]}',
      ...(heater === undefined ? [] : ['{link: [M.L, H.L]}', '{link: [M.N, H.N]}', '{link: [M.PE, H.PE]}']),
    ],
  });

// NEC Table 310.16, 60 °C column: 14 AWG carries 15 A, 12 AWG 20 A.
describe('cord-too-thin by what a motor asks of its conductors', () => {
  it.each([
    ['14 AWG', 15 / 1.25],
    ['12 AWG', 20 / 1.25],
  ])('%s to one motor, NEC 430.22', (gauge, most) => {
    begins('cord-too-thin', 'above', most, (amps) => wired(gauge, amps));
  });

  it('12 AWG to a motor and 4 A besides, NEC 430.24', () => {
    begins('cord-too-thin', 'above', (20 - 4) / 1.25, (amps) => wired('12 AWG', amps, 4));
  });
});

// 250 % of 16 A is 40 A, a standard rating (NEC 240.6(A)); a group adds what else is on the breaker.
describe('breaker-too-large', () => {
  it.each([
    [undefined, 40],
    [4, 44],
  ])('16 A motor and %s A besides, NEC 430.52(C)(1) and 430.53(C)(4)', (heater, most) => {
    begins('breaker-too-large', 'above', most, (amps) =>
      wired('6 AWG', 16, heater).replace('breaker: 60 A', `breaker: ${amps} A`),
    );
  });
});
