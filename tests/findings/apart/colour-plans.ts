/** A shop with the colours of its mains and its loop to choose. */
export interface Shop {
  readonly practice: 'nec' | 'iec';
  readonly cable?: string;
  /** colours of the cord of the plug: line, neutral, earth */
  readonly feed?: readonly [string, string, string];
  readonly marks?: string;
  /** colour of the switched line, in a cable of its own */
  readonly switched?: string;
  readonly loop?: readonly [string, string];
  readonly loopMarks?: string;
  readonly pattern?: string;
}

const RIGHT = {
  nec: ['black', 'white', 'green'],
  iec: ['brown', 'blue', 'green-yellow'],
} as const;

const VOLTS = { nec: 120, iec: 230 } as const;

const marked = (m: string | undefined) => (m === undefined ? '' : `, marked-as: {${m}}`);

export function shop(s: Shop): string {
  const [line, neutral, earth] = s.feed ?? RIGHT[s.practice];
  const cable = s.cable ?? 'gauge: 4 mm2, cores: 4, insulation: 600 V';
  const [go, back] = s.loop ?? ['red', 'yellow'];
  return `format: 1
practice: ${s.practice}
parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A, regulation: regulated, class-2: true}
  g: {kind: gate, pressed-when: open, contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}}
  K1: {kind: relay, coil: {rated: 24 V DC, resistance: 300 ohm, suppressor: diode}, contact: {ratings: [30 A 250 V AC], motor: [2 hp 240 V AC, 1 hp 120 V AC]}}
  P1: {kind: plug, pattern: ${s.pattern ?? 'fixed'}, breaker: 16 A, volts: ${VOLTS[s.practice]} V AC}
  lamps: {kind: load, type: heater, power: 0.3 kW, volts: ${VOLTS[s.practice]} V AC}
  B1: {kind: box, holds: [K1], metal: true, divider: true, volume: 400 in3}
runs:
  - {cable: {gauge: 0.75 mm2, cores: 2, insulation: 300 V}, length: 3 m, cores: {${go}: [PS1.+, g.COM], ${back}: [K1.A1, g.NO]}${marked(s.loopMarks)}}
  - {cable: {gauge: 0.75 mm2, cores: 2, insulation: 300 V}, length: 1 m, cores: {grey: [PS1.-, K1.A2]}}
  - {cable: {${cable}}, length: 2 m, cores: {${line}: [P1.L, K1.COM], ${neutral}: [P1.N, lamps.N], ${earth}: [P1.PE, B1.PE]}${marked(s.marks)}}
  - {cable: {${cable}}, length: 2 m, cores: {${s.switched ?? RIGHT[s.practice][0]}: [K1.NO, lamps.L], ${RIGHT[s.practice][2]}: [B1.PE, lamps.PE]}}
intent:
  lamps: {runs-on: [g]}
`;
}
