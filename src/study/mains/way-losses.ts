/** What each run of cable takes of the volts on the way to a coil. */
import type { CoilState } from '../coil-states.ts';
import { figuresFor } from '../corner-figures.ts';
import type { Electrics } from '../electrics.ts';
import type { Standing } from '../situations.ts';

/** V below which nothing is lost: what is left then is the rounding of the solver. */
const NO_VOLTS = 1e-9;

/**
 * V in the cores of each run, there and back together, by index of the run, in one state and at the worst corner. Ways side
 * by side count each for itself, so that the sum may be more than the coil lacks.
 */
export function lossesOnWay(own: Electrics, { fed }: CoilState, at: Standing): ReadonlyMap<number, number> {
  const source = own.circuit.sources[fed.source.index]!;
  const flows = own.solveSource(source, at, 'low');
  const { wire } = figuresFor(own.study.plan, 'low');
  const lost = new Map<number, number>();
  for (const w of flows.island.wires) {
    const i = flows.amps(w);
    const volts = i === undefined ? 0 : Math.hypot(i.re, i.im) * wire(w);
    if (volts > NO_VOLTS) lost.set(w.run, (lost.get(w.run) ?? 0) + volts);
  }
  return lost;
}
