/** Cords of the motor's circuit: current and volts lost at the start, by printed tables. */
import { type Fields, figures, isMap, text } from '../brute-read.ts';
import { metres } from '../coil-volts-wire.ts';
import { graphOf, reach } from './graph.ts';
import type { Ruling } from './ruling.ts';
import type { Sheet } from './sheet.ts';

/** A of a flexible cord: NEC Table 400.5(A)(1), columns A and B; below 18 AWG nothing is listed. */
const NEC: Record<string, [number, number]> = {
  18: [7, 10],
  16: [10, 13],
  14: [15, 18],
  12: [20, 25],
  10: [25, 30],
  8: [35, 40],
};
/** A of a flexible cord: BS 7671 Table 4F3A, one and three phases. */
const IEC: Record<string, [number, number]> = {
  0.5: [3, 3],
  0.75: [6, 6],
  1: [10, 10],
  1.5: [16, 16],
  2.5: [25, 20],
  4: [32, 25],
  6: [40, 32],
};
/** ohm m of copper at 20 °C, IEC 60028 */
const RHO = 1.7241e-8;

/** m² of a gauge (AWG by ASTM B258). */
function area(gauge: string): number {
  const n = Number.parseFloat(gauge);
  return /AWG/.test(gauge) ? (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - n) / 39)) ** 2 : n * 1e-6;
}

interface Motor {
  amps: number;
  start: number;
  volts: number;
  three: boolean;
}

/** kVA/hp, upper end: NEC Table 430.7(B). */
const KVA: Record<string, number> = { F: 5.59, G: 6.29, H: 7.09, J: 7.99, K: 8.99, L: 9.99, M: 11.19 };

/** The largest motor of the plan; A running and starting. */
function largest(s: Sheet): Motor | undefined {
  const motors = [...s.wiring.parts.values()].filter((p) => p.kind === 'motor');
  const all = motors.map(({ fields: f }): Motor => {
    const volts = figures(f.volts).V ?? 120;
    const three = Number(f.phases) === 3;
    const kva = (KVA[text(f.code)] ?? 0) * (Number.parseFloat(text(f.power)) || 0);
    const start = figures(f['locked-rotor']).A ?? (kva * 1000) / volts / (three ? Math.sqrt(3) : 1);
    return { amps: figures(f.amps).A ?? 0, start, volts, three };
  });
  return all.sort((a, b) => b.amps - a.amps)[0];
}

/** Judges every core that a motor's current can pass by the size of its cable; and all of them by the start. */
export function mainsCords(s: Sheet, doc: Fields, out: Ruling): void {
  const motor = largest(s);
  if (!motor) return;
  const g = graphOf(s.wiring);
  const nets = new Set(g.pins.flatMap((p) => [...reach(g, p.key, false, () => false)]));
  const stock = isMap(doc.stock) ? doc.stock : {};
  const runs = Array.isArray(doc.runs) ? doc.runs : [];
  const table = doc.practice === 'iec' ? IEC : NEC;
  let ohms = 0;
  for (const run of runs) {
    if (!isMap(run) || !isMap(run.cores)) continue;
    const ends = Object.values(run.cores).flat().map(text);
    if (!ends.some((e) => nets.has(e)) || ends.every((e) => /A1|A2|PE|~|\+/.test(e))) continue;
    const spec = isMap(run.cable) ? run.cable : stock[text(run.cable)];
    if (!isMap(spec)) continue;
    const gauge = text(spec.gauge);
    const most =
      table[String(Number.parseFloat(gauge))]?.[
        motor.three ? (doc.practice === 'iec' ? 1 : 0) : doc.practice === 'iec' ? 0 : 1
      ];
    const motorCord = Object.keys(run.cores).length >= 3;
    if (motorCord && (most === undefined || motor.amps > most)) out.symptoms.push('cord-too-thin');
    else if (most === undefined || motor.amps * 1.4 > most) out.open.push('cord');
    if (motorCord) ohms += (RHO * metres(run.length)) / area(gauge);
  }
  const lost = (motor.three ? Math.sqrt(3) : 2) * ohms * motor.start;
  if (lost > 0.2 * motor.volts) out.symptoms.push('cord-drop');
  else if (lost > 0.1 * motor.volts) out.open.push('volts at the start');
}
