/** Three-phase motors and loads as a balanced delta, so that every line carries the current printed on them. */
import type { WiredCircuit } from '../../circuit/build.ts';
import type { Passive } from '../../circuit/circuit.ts';
import type { Figures } from '../../electric/island.ts';
import type { Plan } from '../../plan/plan.ts';

/**
 * Adds the third side of each delta. A side of Z ohm takes V/Z, a line the root of three of that, and the three sides
 * 3 V²/Z watts (any textbook on three-phase circuits); the plan's figure is V/I or V²/P.
 */
export function withDeltas(
  plan: Plan,
  circuit: WiredCircuit,
  figures: Figures,
): { circuit: WiredCircuit; figures: Figures } {
  const factor = new Map<string, number>();
  const sides: Passive[] = [];
  for (const c of circuit.consumers) {
    const part = plan.parts.get(c.part);
    if (c.nets.size !== 3 || (part?.kind !== 'motor' && part?.kind !== 'load')) continue;
    const nets = [...c.nets.values()];
    factor.set(c.part, part.amps === undefined && part.power !== undefined ? 3 : Math.sqrt(3));
    sides.push({ a: nets[2]!, b: nets[0]!, part: c.part, what: 'load' });
  }
  if (sides.length === 0) return { circuit, figures };
  return {
    circuit: { ...circuit, passives: [...circuit.passives, ...sides] },
    figures: {
      ...figures,
      passive: (p, on) => {
        const z = figures.passive(p, on);
        const by = factor.get(p.part);
        return z && by !== undefined ? { re: z.re * by, im: z.im * by } : z;
      },
    },
  };
}
