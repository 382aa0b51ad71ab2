/** Plans of one gate and one coil in line, for tests of the coil-voltage oracle. */
import { coilVolts, type Row } from './coil-volts.ts';

export const ADAPTER = '{kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}';
export const COIL_144 = '{rated: 12 V DC, resistance: 144 ohm}';
const PERFECT = '{resistance: 0 ohm}';

export interface Simple {
  source: string;
  coil: string;
  /** rest of the relay */
  relay?: string;
  cable?: string;
  /** of the pair from source to gate and coil, one way; a jumper without */
  length?: string;
  contact?: string;
  top?: string;
  parts?: string[];
  runs?: string[];
}

/** Source, one gate and one coil in line, the wire on both sides; more parts and runs as given. */
/** The plan text of such a loop. */
export function simple(s: Simple): string {
  const ac = s.source.includes('AC');
  const [p, n] = ac ? ['~1', '~2'] : ['+', '-'];
  const far = s.length
    ? `{cable: w, length: ${s.length}, cores: {red: [S1.${p}, g.COM], white: [S1.${n}, K1.A2]}}`
    : `{link: [S1.${p}, g.COM]}\n  - {link: [S1.${n}, K1.A2]}`;
  return [
    'format: 1',
    s.top ?? 'ambient: 40 °C',
    `stock: {w: {kind: cable, cores: 2, ${s.cable ?? 'gauge: 22 AWG, strands: solid'}}}`,
    'parts:',
    `  S1: ${s.source}`,
    `  g: {kind: gate, contact: ${s.contact ?? PERFECT}}`,
    `  K1: {kind: relay, coil: ${s.coil}, contact: {ratings: [10 A 250 V AC]}${s.relay ?? ''}}`,
    ...(s.parts ?? []).map((x) => `  ${x}`),
    `runs:\n  - ${far}\n  - {link: [g.NO, K1.A1]}`,
    ...(s.runs ?? []).map((x) => `  - ${x}`),
  ].join('\n');
}

/** The one row of a plan with one gate that counts. */
export function only(plan: string): Row {
  const [row, ...others] = coilVolts(plan);
  if (!row || others.length > 0) throw new Error('not one row');
  return row;
}
