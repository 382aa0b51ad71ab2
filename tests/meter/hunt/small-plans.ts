/** Small plans of our own invention that hunts are tried on. */

/** Two gates, a 12 V adapter and a relay that feeds the socket of a fan. */
export const TWO_GATES = `format: 1
title: Two gates
practice: iec
ambient: 25 °C
stock:
  thin: {kind: cable, gauge: 0.5 mm2, cores: 2, insulation: 300 V}
  cord: {kind: cable, gauge: 2.5 mm2, cores: 3, insulation: 500 V, flexible: true, strands: fine}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %, class-2: true}
  F1: {kind: fuse, rating: 500 mA}
  K1:
    kind: relay
    coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %, drop-out: 10 %, suppressor: none}
    contact: {ratings: [30 A 250 V AC], motor: [1.1 kW 230 V AC]}
  saw: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC]}}
  lathe: {kind: gate, pressed-when: open, contact: {ratings: [3 A 30 V DC]}}
  P1: {kind: plug, pattern: CEE 7/4, breaker: 16 A, volts: 230 V AC}
  X1: {kind: outlet, pattern: CEE 7/4}
  fan: {kind: motor, type: capacitor-start, power: 1.1 kW, volts: 230 V AC, amps: 7 A, protector: manual, plugged-into: X1}
runs:
  - {link: [PS1.+, F1.1]}
  - {cable: thin, length: 2 m, cores: {red: [F1.2, saw.COM], blue: [PS1.-, K1.A2]}}
  - {cable: thin, length: 2 m, cores: {white: [saw.NO, K1.A1]}}
  - {cable: thin, length: 4 m, cores: {red: [saw.COM, lathe.COM], white: [saw.NO, lathe.NO]}}
  - {cable: cord, length: 1 m, cores: {brown: [P1.L, K1.COM], blue: [P1.N, X1.N], green-yellow: [P1.PE, X1.PE]}}
  - {cable: cord, length: 1 m, cores: {brown: [K1.NO, X1.L]}}
intent:
  fan: {runs-on: [saw, lathe]}
`;
