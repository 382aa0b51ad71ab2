/**
 * Complete right plans of large shops: zones of gates on a trunk of three cores, each zone with its relay, whose contact
 * calls the starter in parallel with the others. `node tests/bench/zones.mjs 20 15 ring ac lamp` prints one.
 */
import { pathToFileURL } from 'node:url';

/** A relay that draws little, so that sixty of them hang on one trunk; the starter's coil is of the same kind. */
const COILS = {
  dc: `rated: 24 V DC
      resistance: 1440 ohm
      tolerance: 10 %
      pull-in: 70 %
      drop-out: 10 %
      most: 130 %
      hot-rise: 25 K
      suppressor: `,
  ac: `rated: 24 V AC
      power: 0.5 VA
      power-factor: 0.4
      inrush: 0.8 VA
      inrush-power-factor: 0.7
      pull-in: 17 V
      drop-out: 6 V
      most: 30 V
      hot-rise: 25 K
      suppressor: none`,
};

const SUPPLIES = {
  dc: '{kind: supply, output: 24 V DC, limit: 4 A, regulation: regulated, tolerance: 2 %, class-2: true}',
  ac: '{kind: supply, output: 24 V AC, limit: 96 VA, regulation: transformer, tolerance: 2 %, no-load: 25 V, class-2: true}',
};

const LAMPS = {
  lamp: '{kind: lamp, resistance: 18 kohm}',
  led: '{kind: led, forward: 2 V, current: 1 mA}',
};

const head = ({ current, suppressor }) => `format: 1
practice: nec
ambient: 35 °C
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 1 mA 5 V DC}}
  bell: {kind: cable, gauge: 16 AWG, cores: 3, insulation: 300 V, strands: solid}
  trunk: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 300 V, strands: solid}
  cord: {kind: cable, gauge: 8 AWG, cores: 3, insulation: 600 V, flexible: true, strands: fine}
  zone-relay:
    kind: relay
    coil:
      ${COILS[current]}${current === 'dc' ? suppressor : ''}
    contact: {ratings: [6 A 250 V AC, 6 A 30 V DC], least: 1 mA 5 V DC}
parts:
  PS1: ${SUPPLIES[current]}
  Q1:
    kind: relay
    coil:
      ${COILS[current]}${current === 'dc' ? suppressor : ''}
    contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}
  plus: {kind: joint}
  minus: {kind: joint}
  call: {kind: joint}
  neutral: {kind: joint}
  P1: {kind: plug, pattern: NEMA L5-30, breaker: 30 A, volts: 120 V AC, frequency: 60 Hz}
  X1: {kind: outlet, pattern: NEMA L5-30}
  collector:
    kind: motor
    type: capacitor-start
    power: 1.5 hp
    volts: 120 V AC
    amps: 15 A
    code: K
    protector: manual
    starts-per-hour: 6
    plugged-into: X1
  B1: {kind: box, holds: [Q1, neutral, plus, minus, call], volume: 200 in3, metal: true, divider: true}
`;

const fixedRuns = ([out, back]) => `runs:
  - {cable: trunk, length: 1 m, cores: {red: [PS1.${out}, plus], black: [PS1.${back}, minus]}}
  - {cable: bell, length: 30 cm, cores: {white: [call, Q1.A1], black: [minus, Q1.A2]}}
  - {cable: cord, length: 1.8 m, cores: {black: [P1.L, Q1.COM], white: [P1.N, neutral], green: [P1.PE, B1.PE]}}
  - {cable: cord, length: 60 cm, cores: {black: [Q1.NO, X1.L], white: [neutral, X1.N], green: [B1.PE, X1.PE]}}
`;

const cores = (from, to) =>
  `{red: [plus${from}, plus${to}], black: [minus${from}, minus${to}], white: [call${from}, call${to}]}`;

/** One piece of trunk a line; the box is where the joints without a number are. */
function trunkOf(zones, trunk) {
  const piece = (from, to, metres) => `  - {cable: trunk, length: ${metres}, cores: ${cores(from, to)}}\n`;
  const pieces = Array.from({ length: zones }, (_, k) =>
    trunk === 'star' ? piece('', k + 1, '12 m') : piece(k === 0 ? '' : k, k + 1, '1.5 m'),
  );
  return [...pieces, ...(trunk === 'ring' && zones > 1 ? [piece(zones, '', '3 m')] : [])].join('');
}

function zoneOf(k, gates, lamps) {
  const name = (i) => `z${k}g${i}`;
  const list = Array.from({ length: gates }, (_, i) => i + 1);
  const parts = [
    `  Z${k}: {from: zone-relay}\n`,
    ...['plus', 'minus', 'call'].map((rail) => `  ${rail}${k}: {kind: joint}\n`),
    ...list.map((i) => `  ${name(i)}: {from: snap}\n`),
    ...(lamps ? list.map((i) => `  ${name(i)}-lit: ${LAMPS[lamps]}\n`) : []),
  ];
  const [x, y] = lamps === 'led' ? ['A', 'K'] : ['1', '2'];
  const runs = [
    `  - {cable: bell, length: 30 cm, cores: {red: [plus${k}, Z${k}.COM], white: [Z${k}.NO, call${k}], black: [Z${k}.A2, minus${k}]}}\n`,
    ...list.map((i) => {
      const [plus, call] = i === 1 ? [`plus${k}`, `Z${k}.A1`] : [`${name(i - 1)}.COM`, `${name(i - 1)}.NO`];
      const minus = i === 1 ? `minus${k}` : `${name(i - 1)}-lit.${y}`;
      const third = lamps ? `, black: [${minus}, ${name(i)}-lit.${y}]` : '';
      return `  - {cable: bell, length: 2 m, cores: {red: [${plus}, ${name(i)}.COM], white: [${call}, ${name(i)}.NO]${third}}}\n`;
    }),
    ...(lamps ? list.map((i) => `  - {link: [${name(i)}.NO, ${name(i)}-lit.${x}]}\n`) : []),
  ];
  return { parts: parts.join(''), runs: runs.join(''), gates: list.map(name) };
}

/**
 * The text of a plan of `zones` zones with `gates` gates each. `trunk`: `chain`, `star` or `ring`; `current`: `dc` or `ac`;
 * `lamps`: `lamp` or `led` at every gate, lit with its zone, or none; `suppressor` of DC coils: `none` or `diode`.
 */
export function zonesOf(zones, gates, { trunk = 'chain', current = 'dc', lamps, suppressor = 'diode' } = {}) {
  const made = Array.from({ length: zones }, (_, k) => zoneOf(k + 1, gates, lamps));
  const all = made.flatMap((z) => z.gates);
  return [
    head({ current, suppressor }),
    ...made.map((z) => z.parts),
    fixedRuns(current === 'dc' ? ['+', '-'] : ['~1', '~2']),
    trunkOf(zones, trunk),
    ...made.map((z) => z.runs),
    `intent:\n  collector: {runs-on: [${all.join(', ')}]}\n`,
  ].join('');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [zones, gates, trunk, current, lamps] = process.argv.slice(2);
  process.stdout.write(zonesOf(Number(zones), Number(gates), { trunk, current, lamps }));
}
