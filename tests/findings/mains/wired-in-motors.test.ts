/** Conductors to motors that are wired in: 125 % of the largest motor and all of the rest have to fit the conductor. */
import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { begins, has } from '../threshold-plans.ts';

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

describe('by which amperes a motor is judged, NEC 430.6(A)(1)', () => {
  // Conductors of 12 AWG behind 30 A serve a motor alone where 250 % of its amperes, rounded up to a standard size, come to 30 A:
  // NEC 240.4(G) and 430.52. By Table 430.248, 1 hp at 115 V takes 16 A, which come to 40 A.
  const motor = (plug: string, amps: number) =>
    shop({
      plug: `${plug}, breaker: 30 A, volts: 120 V AC`,
      motor: `power: 1 hp, volts: 120 V AC, amps: ${amps} A, locked-rotor: 60 A, protector: manual`,
      cable: 'gauge: 12 AWG, cores: 3, insulation: 600 V, rated: 90 °C',
    });
  it('a machine on a plug by those on its plate', () => {
    begins('conductor-unprotected', 'below', 10, (amps) => motor('pattern: NEMA L5-30', amps));
  });
  it('one that is wired in by the table of its horsepower', () => {
    expect(has(motor('pattern: fixed', 9), 'conductor-unprotected')).toBe(false);
    expect(has(motor('pattern: fixed', 11), 'conductor-unprotected')).toBe(false);
  });
});
