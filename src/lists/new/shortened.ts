/** The shop with one gate: the one that is worst off for volts. Every other gate beside it can only help (Rayleigh's law). */
import type { Answers, Distance } from './answers.ts';

const distance = (metres: number): Distance => ({ text: `${Number(metres.toFixed(3))} m`, metres });

export function shortened(answers: Answers): Answers {
  const { gates, layout } = answers;
  if (layout === 'star') {
    const far = gates.reduce((a, b) => (b.length.metres > a.length.metres ? b : a));
    return { ...answers, gates: [{ ...far, length: distance(far.length.metres) }] };
  }
  const total = gates.reduce((sum, g) => sum + g.length.metres, 0);
  const only = (at: number, metres: number) => [{ name: gates[at]!.name, length: distance(metres) }];
  if (layout === 'chain') return { ...answers, gates: only(gates.length - 1, total) };
  // Both ways round are side by side, so the gate nearest the middle of the ring sees most ohms.
  const ring = total + (answers.return?.metres ?? 0);
  let [at, reach, run] = [0, 0, 0];
  for (const [i, gate] of gates.entries()) {
    run += gate.length.metres;
    if (i === 0 || Math.abs(run - ring / 2) < Math.abs(reach - ring / 2)) [at, reach] = [i, run];
  }
  return { ...answers, gates: only(at, reach), return: distance(ring - reach) };
}
