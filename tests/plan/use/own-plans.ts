/** Small plans with the kinds of part that the bases of findings do without. */

const SUPPLY =
  'PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %, class-2: true}';
const CONTACT = 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC]}';
const COIL = 'coil: {rated: 12 V DC, resistance: 155 ohm, pull-in: 75 %, drop-out: 10 %, suppressor: diode}';
const MAINS = [
  'P1: {kind: plug, pattern: BS 1363, breaker: 32 A B, volts: 230 V AC}',
  'M: {kind: motor, volts: 230 V AC, amps: 5 A, power: 0.75 kW, locked-rotor: 30 A, protector: manual}',
];
const LINE = ['[P1.L, K1.COM]', '[K1.NO, M.L]', '[P1.N, M.N]', '[P1.PE, M.PE]'];

function plan(parts: readonly string[], links: readonly string[], intent: readonly string[] = []): string {
  return [
    'format: 1',
    'practice: iec',
    'parts:',
    ...[SUPPLY, ...parts, ...MAINS].map((p) => `  ${p}`),
    'runs:',
    ...[...links, ...LINE].map((l) => `  - {link: ${l}}`),
    ...(intent.length === 0 ? [] : ['intent:', ...intent.map((i) => `  ${i}`)]),
    '',
  ].join('\n');
}

const RELAY = `K1: {kind: relay, ${COIL}, contact: {ratings: [16 A 250 V AC], ac-3: 9 A}}`;
const GATE = `g: {kind: gate, ${CONTACT}}`;
/** K2 is fed by the gate and feeds K1. */
const TWICE = [
  ...['[PS1.+, g.COM]', '[g.NO, K2.A1]', '[K2.A2, PS1.-]'],
  ...['[PS1.+, K2.COM]', '[K2.NO, K1.A1]', '[K1.A2, PS1.-]'],
];
const LOOP = ['[PS1.+, g.COM]', '[g.NO, K1.A1]', '[K1.A2, PS1.-]'];

export const OWN_PLANS: Readonly<Record<string, string>> = {
  timer: plan([GATE, RELAY.replace('kind: relay', 'kind: timer, function: off-delay, time: 5 s')], LOOP),
  switch: plan(
    [GATE, RELAY, `s: {kind: switch, ${CONTACT}}`],
    ['[PS1.+, s.COM]', '[s.NO, g.COM]', '[g.NO, K1.A1]', '[K1.A2, PS1.-]'],
    ['M: {runs-on: [[s, g]]}'],
  ),
  indicator: plan(
    [GATE, RELAY, 'R: {kind: resistor, resistance: 500 ohm}', 'H: {kind: led}'],
    [...LOOP, '[H.A, K1.A1]', '[H.K, R.1]', '[R.2, K1.A2]'],
  ),
  'chassis-fan': plan(
    [GATE, RELAY, 'chassis: {kind: joint}', 'V: {kind: load, volts: 12 V DC, amps: 0.5 A}'],
    [...LOOP, '[PS1.+, V.+]', '[PS1.-, chassis]'],
    ['M: {runs-on: [g]}'],
  ),
  panel: plan([GATE, RELAY, 'H: {kind: led}'], [...LOOP, '[H.A, K1.A1]', '[H.K, K1.A2]']),
  divider: plan(
    [GATE, RELAY, 'R: {kind: resistor, resistance: 20 ohm}'],
    ['[PS1.+, g.COM]', '[g.NO, R.1]', '[R.2, K1.A1]', '[K1.A2, PS1.-]'],
  ),
  'two-relays': plan(
    [GATE, RELAY, RELAY.replace('K1', 'K2').replace('[16 A 250 V AC], ac-3: 9 A', '[3 A 30 V DC]')],
    [
      '[PS1.+, g.COM]',
      '[g.NO, K2.A1]',
      '[K2.A2, PS1.-]',
      '[PS1.+, K2.COM]',
      '[K2.NO, K1.A1]',
      '[K1.A2, PS1.-]',
    ],
  ),
  load: plan(
    [GATE, RELAY, 'V: {kind: load, volts: 230 V AC, amps: 2 A}'],
    [...LOOP, '[K1.NO, V.L]', '[P1.N, V.N]', '[P1.PE, V.PE]'],
  ),
  'timer-reversed': plan(
    [
      GATE,
      RELAY.replace('kind: relay', 'kind: timer, function: off-delay, time: 5 s').replace(
        ', suppressor: diode',
        '',
      ),
    ],
    ['[PS1.+, g.COM]', '[g.NO, K1.A2]', '[K1.A1, PS1.-]'],
  ),
  'solid-state': plan(
    [GATE, RELAY, RELAY.replace('K1', 'K2').replace('kind: relay', 'kind: relay, technology: solid-state')],
    TWICE,
  ),
  'solid-state-timer': plan(
    [
      GATE,
      RELAY,
      RELAY.replace('K1', 'K2').replace(
        'kind: relay',
        'kind: timer, function: off-delay, time: 5 s, technology: solid-state',
      ),
    ],
    TWICE,
  ),
  overload: plan(
    [GATE, RELAY, 'OL: {kind: cutout, setting: 6 A, reset: manual, contact: {ratings: [3 A 30 V DC]}}'],
    ['[PS1.+, OL.95]', '[OL.96, g.COM]', '[g.NO, K1.A1]', '[K1.A2, PS1.-]'],
    ['M: {runs-on: [g], blocked-by: [OL]}'],
  ).replace('practice: iec', 'practice: nec'),
  'no-earth': plan([GATE, RELAY], LOOP).replace('  - {link: [P1.PE, M.PE]}\n', ''),
  'no-earth-load': plan(
    [GATE, RELAY, 'V: {kind: load, volts: 230 V AC, amps: 2 A}'],
    [...LOOP, '[K1.NO, V.L]', '[P1.N, V.N]'],
  ),
  'power-alone': plan([GATE, RELAY], LOOP).replace('amps: 5 A, ', ''),
  spare: plan([GATE, RELAY, 'X9: {kind: outlet}', 'P9: {kind: plug, volts: 230 V AC}'], LOOP),
  'behind-resistor': plan(
    [
      GATE,
      RELAY.replace(
        /kind: relay, coil: .*?}/,
        'kind: board, supply: 12 V DC, input: high, input-current: 5 mA',
      ),
      'R: {kind: resistor, resistance: 1000 ohm}',
    ],
    ['[PS1.+, K1.VCC]', '[PS1.-, K1.GND]', '[PS1.+, g.COM]', '[g.NO, R.1]', '[R.2, K1.IN]'],
  ),
  terminals: [
    'format: 1',
    'practice: nec',
    'parts:',
    ...[SUPPLY, GATE, RELAY.replace('ac-3: 9 A', 'motor: [10 hp 240 V AC]')].map((p) => `  ${p}`),
    '  P1: {kind: plug, pattern: fixed, breaker: 50 A, volts: 240 V AC, legs: 1}',
    '  X1: {kind: outlet, pattern: NEMA 6-50, legs: 1}',
    '  M: {kind: load, volts: 240 V AC, amps: 30 A, type: heater, plugged-into: X1}',
    'runs:',
    ...LOOP.map((l) => `  - {link: ${l}}`),
    ...['black: [P1.L, K1.COM], white: [P1.N, X1.N], green: [P1.PE, X1.PE]', 'black: [K1.NO, X1.L]'].map(
      (cores) =>
        `  - {cable: {gauge: 8 AWG, cores: 3, insulation: 600 V, rated: 90 °C}, length: 3 m, cores: {${cores}}}`,
    ),
    '',
  ].join('\n'),
  'ac-relay': onAc(RELAY),
  'ac-timer': onAc(RELAY.replace('kind: relay', 'kind: timer, function: off-delay, time: 5 s')),
};

/** The loop on 24 V AC. */
function onAc(relay: string): string {
  return plan([GATE, relay.replace(/coil: .*?}/, 'coil: {rated: 24 V AC, power: 6 VA}')], LOOP)
    .replace(
      SUPPLY,
      'PS1: {kind: supply, output: 24 V AC, limit: 40 VA, regulation: transformer, class-2: true}',
    )
    .replaceAll('PS1.+', 'PS1.~1')
    .replaceAll('PS1.-', 'PS1.~2');
}
