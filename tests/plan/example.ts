/** The example of the format's description, as it is typed there. */
export const example = `# yaml-language-server: $schema=../schemas/plan.schema.json
format: 1
title: Saltmarsh Lane boat shop, collector loop
practice: nec            # nec: North American tables | iec: most other places
ambient: 35 °C           # warmest air round the parts

stock:                   # what is printed on the things you buy; parts and runs refer to it
  snap:  {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}}
  bell:  {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}
  cord:  {kind: cable, gauge: 14 AWG, cores: 3, insulation: 600 V, flexible: true}

parts:
  PS1:
    kind: supply
    output: 12 V DC
    limit: 1 A
    regulation: regulated
    class-2: true
  K1:
    kind: relay
    coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %, drop-out: 10 %, most: 130 %, suppressor: none}
    contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}
  D1:     {kind: diode, current: 1 A, reverse: 1000 V}
  bandsaw: {from: snap}
  planer:  {from: snap}
  router:  {from: snap}
  P1: {kind: plug, pattern: NEMA 5-20, breaker: 20 A, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-20}
  collector:
    kind: motor
    power: 1.5 hp
    volts: 120 V AC
    amps: 15 A
    code: K
    plugged-into: X1
  B1: {kind: box, holds: [K1, D1], volume: 30.3 in3, divider: true}

runs:
  - {cable: bell, length: 2 m,  cores: {red: [PS1.+, bandsaw.COM], white: [PS1.-, K1.A2]}}
  - {cable: bell, length: 4 m,  cores: {red: [bandsaw.COM, planer.COM], white: [bandsaw.NO, planer.NO]}}
  - {cable: bell, length: 3 m,  cores: {red: [planer.COM, router.COM], white: [planer.NO, router.NO]}}
  - {cable: bell, length: 5 m,  cores: {white: [router.NO, K1.A1]}}
  - {cable: bell, length: 5 cm, cores: {stripe: [D1.K, K1.A1], plain: [D1.A, K1.A2]}}
  - {cable: cord, length: 1.8 m, cores: {black: [P1.L, K1.COM], white: [P1.N, X1.N], green: [P1.PE, X1.PE]}}
  - {cable: cord, length: 10 cm, cores: {black: [K1.NO, X1.L]}}

intent:
  collector: {runs-on: [bandsaw, planer, router]}
`;
