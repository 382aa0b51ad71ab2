/** Complete right plans of any number of gates, in the layout of examples/saltmarsh-lane.yaml. */

const HEAD = `format: 1
practice: nec
ambient: 35 °C
stock:
  snap: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}}
  bell: {kind: cable, gauge: 16 AWG, cores: 2, insulation: 150 V, strands: solid}
  cord: {kind: cable, gauge: 8 AWG, cores: 3, insulation: 600 V, flexible: true, strands: fine}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, tolerance: 2 %, class-2: true}
  K1:
    kind: relay
    coil:
      rated: 12 V DC
      resistance: 155 ohm
      tolerance: 10 %
      pull-in: 75 %
      drop-out: 10 %
      most: 130 %
      hot-rise: 30 K
      suppressor: none
    contact: {ratings: [30 A 240 V AC], motor: [1.5 hp 120 V AC]}
  D1: {kind: diode, current: 1 A, reverse: 1000 V}
  feed: {kind: joint}
  back: {kind: joint}
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
  B1: {kind: box, holds: [K1, D1, neutral], volume: 120 in3, metal: true, divider: true}
`;

const RUNS = `runs:
  - {cable: bell, length: 2 m, cores: {red: [PS1.+, feed], white: [PS1.-, K1.A2]}}
  - {cable: bell, length: 1 m, cores: {white: [K1.A1, back]}}
  - {link: [D1.K, K1.A1]}
  - {link: [D1.A, K1.A2]}
  - {cable: cord, length: 1.8 m, cores: {black: [P1.L, K1.COM], white: [P1.N, neutral], green: [P1.PE, B1.PE]}}
  - {cable: cord, length: 60 cm, cores: {black: [K1.NO, X1.L], white: [neutral, X1.N], green: [B1.PE, X1.PE]}}
`;

/**
 * The text of a plan of `count` gates in parallel: `chain`, one cable that goes from gate to gate, 10 cm each so that
 * the last of a thousand still gets enough volts; `star`, a cable of 5 m to each gate.
 */
export function planOf(count, layout) {
  const gates = Array.from({ length: count }, (_, i) => `gate${i + 1}`);
  const parts = gates.map((gate) => `  ${gate}: {from: snap}\n`);
  const runs = gates.map((gate, i) => {
    const chained = layout === 'chain' && i > 0;
    const [red, white] = chained ? [`${gates[i - 1]}.COM`, `${gates[i - 1]}.NO`] : ['feed', 'back'];
    const length = layout === 'chain' ? '10 cm' : '5 m';
    return `  - {cable: bell, length: ${length}, cores: {red: [${red}, ${gate}.COM], white: [${white}, ${gate}.NO]}}\n`;
  });
  const intent = `intent:\n  collector: {runs-on: [${gates.join(', ')}]}\n`;
  return `${HEAD}${parts.join('')}${RUNS}${runs.join('')}${intent}`;
}
