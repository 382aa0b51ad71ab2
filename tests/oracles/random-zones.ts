/** Random shops of zones on common rails, as text: trees and rings of trunk, thick and thin, lamps here and there. */
import fc from 'fast-check';

interface Zone {
  /** the place on the trunk that its piece comes from: -1 is the box */
  readonly from: number;
  readonly metres: number;
  readonly gauge: string;
  readonly gates: number;
  readonly lamp: 'none' | 'call' | 'shut' | 'led';
  /** whether its contact calls the starter, or it only has a relay of its own */
  readonly calls: boolean;
  readonly ohms: number;
}

export interface Shop {
  readonly current: 'dc' | 'ac';
  readonly zones: readonly Zone[];
  readonly ring: boolean;
  readonly starterOhms: number;
}

const GAUGES = ['0.5 mm2', '0.75 mm2', '1.5 mm2', '4 mm2'];

const zone = fc.record({
  from: fc.nat({ max: 5 }),
  metres: fc.integer({ min: 1, max: 60 }),
  gauge: fc.constantFrom(...GAUGES),
  gates: fc.constantFrom(1, 1, 1, 2),
  lamp: fc.constantFrom('none' as const, 'none' as const, 'call' as const, 'shut' as const, 'led' as const),
  calls: fc.constantFrom(true, true, true, false),
  ohms: fc.integer({ min: 150, max: 2000 }),
});

export const randomShop = (): fc.Arbitrary<Shop> =>
  fc.record({
    current: fc.constantFrom('dc' as const, 'dc' as const, 'ac' as const),
    zones: fc.array(zone, { minLength: 2, maxLength: 6 }),
    ring: fc.boolean(),
    starterOhms: fc.integer({ min: 80, max: 1500 }),
  });

/** Loads, the starter's coil among them. */
export const loadsOf = ({ zones }: Shop): number =>
  1 + zones.reduce((sum, z) => sum + 1 + (z.lamp === 'none' ? 0 : z.gates), 0);

export function textOf({ current, zones, ring, starterOhms }: Shop): string {
  const dc = current === 'dc';
  const coil = (ohms: number) =>
    dc
      ? `{rated: 24 V DC, resistance: ${ohms} ohm, tolerance: 10 %, pull-in: 10 %, drop-out: 5 %}`
      : `{rated: 24 V AC, power: ${(400 / ohms).toFixed(2)} VA, inrush: ${(576 / ohms).toFixed(2)} VA, power-factor: 0.4, inrush-power-factor: 0.7, pull-in: 10 %, drop-out: 5 %}`;
  const place = (k: number) => (k < 0 ? '' : `${k}`);
  const piece = (from: number, to: number, gauge: string, metres: number) => {
    const [p, q] = [place(from), place(to)];
    return `  - {cable: {kind: cable, insulation: 300 V, gauge: ${gauge}, cores: 3}, length: ${metres} m, cores: {red: [plus${p}, plus${q}], black: [minus${p}, minus${q}], white: [call${p}, call${q}]}}`;
  };
  const parts = zones.flatMap((z, k) => [
    `  plus${k}: {kind: joint}`,
    `  minus${k}: {kind: joint}`,
    `  call${k}: {kind: joint}`,
    `  Z${k}: {kind: relay, coil: ${coil(z.ohms)}, contact: {ratings: [6 A 250 V AC], resistance: 50 mohm}}`,
    ...list(z.gates).flatMap((i) => [
      `  g${k}-${i}: {kind: gate, pressed-when: open, contact: {ratings: [6 A 250 V AC], resistance: 30 mohm}}`,
      ...lampOf(z, dc).map((text) => `  lamp${k}-${i}: ${text}`),
    ]),
  ]);
  const runs = zones.flatMap((z, k) => [
    piece(z.from >= k ? k - 1 : z.from, k, z.gauge, z.metres),
    `  - {link: [Z${k}.A2, minus${k}]}`,
    ...(z.calls ? [`  - {link: [plus${k}, Z${k}.COM]}`, `  - {link: [Z${k}.NO, call${k}]}`] : []),
    ...list(z.gates).flatMap((i) => [
      `  - {cable: {kind: cable, insulation: 300 V, gauge: 0.5 mm2, cores: 2}, length: ${4 + 3 * i} m, cores: {red: [plus${k}, g${k}-${i}.COM], white: [Z${k}.A1, g${k}-${i}.NO]}}`,
      ...lampRuns(z, k, i, dc),
    ]),
  ]);
  const gates = zones.flatMap((z, k) => list(z.gates).map((i) => `g${k}-${i}`));
  return `format: 1
practice: iec
parts:
  PS1: {kind: supply, output: 24 V ${dc ? 'DC' : 'AC'}, limit: ${dc ? '20 A, regulation: regulated' : '480 VA, regulation: transformer, no-load: 25 V'}, tolerance: 2 %}
  Q1: {kind: relay, coil: ${coil(starterOhms)}, contact: {ratings: [6 A 250 V AC]}}
  plus: {kind: joint}
  minus: {kind: joint}
  call: {kind: joint}
${parts.join('\n')}
runs:
  - {link: [PS1.${dc ? '+' : '~1'}, plus]}
  - {link: [PS1.${dc ? '-' : '~2'}, minus]}
  - {link: [call, Q1.A1]}
  - {link: [Q1.A2, minus]}
${runs.join('\n')}
${ring && zones.length > 2 ? piece(zones.length - 1, -1, '1.5 mm2', 20) : ''}
intent:
  Q1: {runs-on: [${gates.join(', ')}]}
`;
}

const list = (count: number) => Array.from({ length: count }, (_, i) => i);

function lampOf({ lamp }: Zone, dc: boolean): string[] {
  if (lamp === 'none') return [];
  return [
    lamp === 'led' && dc ? '{kind: led, forward: 2 V, current: 20 mA}' : '{kind: lamp, resistance: 700 ohm}',
  ];
}

/** Beside the coil, or lit while the gate is shut. */
function lampRuns({ lamp }: Zone, k: number, i: number, dc: boolean): string[] {
  if (lamp === 'none') return [];
  const [in_, out] = lamp === 'led' && dc ? ['A', 'K'] : ['1', '2'];
  return [
    `  - {link: [g${k}-${i}.${lamp === 'shut' ? 'NC' : 'NO'}, lamp${k}-${i}.${in_}]}`,
    `  - {cable: {kind: cable, insulation: 300 V, gauge: 0.5 mm2, cores: 1}, length: 5 m, cores: {black: [lamp${k}-${i}.${out}, minus${k}]}}`,
  ];
}
