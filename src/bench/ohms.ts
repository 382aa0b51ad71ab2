/** A meter on ohms: what lies between two nets with every supply taken off. */
import type { Passive } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { assemble, type Figures, islandOf } from '../electric/island.ts';
import type { Network } from '../electric/network.ts';
import { solveNetwork } from '../electric/solve.ts';
import type { Plan } from '../plan/plan.ts';
import type { BenchState } from './bench-state.ts';
import type { Reading } from './reading.ts';

/** Share by which an unknown winding may change a reading before the reading is not told. */
const TELLS = 1e-6;
/** ohm below which a continuity tester sounds, as makers of multimeters commonly state. */
const BEEP_OHMS = 50;
export const NO_WAY = {
  value: { through: false, ohms: null, beeps: false },
  notes: ['An ohmmeter shows over range.'],
};
export const ONE_METAL = 'Both terminals are one piece of metal.';

/** Resistance between two nets: one volt is put across them and the current is what tells. */
export function ohms(
  state: BenchState,
  a: number,
  b: number,
): { value: Pick<Reading, 'through' | 'ohms' | 'beeps'>; notes: string[] } {
  if (a === b)
    return {
      value: { through: true, ohms: 0, beeps: true },
      notes: [ONE_METAL],
    };
  const blind = new Set<string>();
  const most = measured(state, a, b, (part) => {
    blind.add(part);
    return undefined;
  });
  const least = measured(state, a, b, () => 1e-6);
  const parts = [...blind].join(', ');
  const beeps = (x: number) => x < BEEP_OHMS;
  if (most === undefined && least === undefined) return NO_WAY;
  const sure = most !== undefined && least !== undefined && most - least <= TELLS * most;
  if (sure) return { value: { through: true, ohms: most, beeps: beeps(most) }, notes: [] };
  const sounds =
    most !== undefined && beeps(most) ? true : least !== undefined && !beeps(least) ? false : null;
  return {
    value: { through: most !== undefined ? true : null, ohms: null, beeps: sounds },
    notes: [
      `The reading goes through ${parts}, and the plan does not state what an ohmmeter finds there: a winding's copper (of a coil, coil: {resistance: ...}), a cold filament, electronics.`,
    ],
  };
}

function measured(
  state: BenchState,
  a: number,
  b: number,
  unknown: (part: string) => number | undefined,
): number | undefined {
  const island = islandOf(state.circuit, [a, b]);
  const figures: Figures = {
    ...state.figures,
    passive: (p, on) => {
      const z = hidden(state.circuit.plan, p) ? undefined : state.figures.passive(p, on);
      if (z) return z;
      const ohm = unknown(p.part);
      return ohm === undefined ? undefined : { re: ohm, im: 0 };
    },
    // An ohmmeter drives too few volts to open a diode, an indicator or an idle solid-state output.
    leak: () => undefined,
    diode: () => ({ drop: 1e6, ohms: 1 }),
  };
  const made = assemble(island, figures, state.situation);
  const [x, y] = [island.local[a]!, island.local[b]!];
  const probe = { a: x, b: y, re: 1, im: 0, ohms: 0 };
  if (!wayThrough(made.network, x, y)) return undefined;
  const solved = solveNetwork({ ...made.network, valves: [], emfs: [probe] });
  return solved.conflict === undefined ? 1 / solved.emfAmps[0]!.re : 0;
}

/** Told by what is joined: beside a winding of next to nothing, rounding alone looks like a current. */
function wayThrough(network: Network, x: number, y: number): boolean {
  const sets = new UnionFind(network.nodes);
  for (const b of network.branches) sets.union(b.a, b.b);
  return sets.joined(x, y);
}

/** Electronics, and filaments: a cold one has a small part of the resistance that its rating tells. */
function hidden(plan: Plan, p: Passive): boolean {
  const part = plan.parts.get(p.part);
  if (part?.kind === 'lamp') return part.resistance === undefined;
  if (part?.kind === 'relay') return part.technology === 'solid-state' && p.what === 'coil';
  return part?.kind === 'board';
}
