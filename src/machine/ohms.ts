/** A meter on ohms: what lies between two nets with every supply taken off. */
import type { Passive } from '../circuit/circuit.ts';
import { UnionFind } from '../circuit/union-find.ts';
import { assemble, type Figures, islandOf } from '../electric/island.ts';
import type { Network } from '../electric/network.ts';
import { solveNetwork } from '../electric/solve.ts';
import type { Plan } from '../plan/plan.ts';
import { windingMost } from '../ratings/winding.ts';
import { rounded } from '../text/numbers.ts';
import type { BenchState } from './machine.ts';
import type { Reading } from './reading.ts';
import { primariesOf } from './supply-primaries.ts';

/** Share by which an unknown winding may change a reading before the reading is not told. */
const TELLS = 1e-6;
/** ohm below which a continuity tester sounds, as makers of multimeters commonly state. */
const BEEP_OHMS = 50;
export const NO_WAY = {
  value: { through: false, ohms: null, beeps: false },
  notes: ['An ohmmeter shows over range.'],
};
export const ONE_METAL = 'Both terminals are one piece of metal.';

/** ohm of a clip lead; common practice, no source. */
export const LEAD_OHMS = 0.1;

/** Resistance between two nets, while a lead joins others: one volt is put across them and the current is what tells. */
export function ohms(
  standing: BenchState,
  a: number,
  b: number,
  clipped: readonly number[] = [],
): { value: Pick<Reading, 'through' | 'ohms' | 'beeps'>; notes: string[] } {
  if (a === b)
    return {
      value: { through: true, ohms: 0, beeps: true },
      notes: [ONE_METAL],
    };
  const state = withLead(withoutSolidState(withPrimaries(standing)), clipped);
  const { plan } = state.circuit;
  const blind = new Set<string>();
  const most = measured(state, a, b, (p) => {
    blind.add(p.part);
    return mostOf(plan, p);
  });
  const least = measured(state, a, b, () => 1e-6);
  const parts = [...blind].join(', ');
  const beeps = (x: number) => x < BEEP_OHMS;
  if (most === undefined && least === undefined) return NO_WAY;
  const sure = most !== undefined && least !== undefined && most - least <= TELLS * most;
  if (sure) return { value: { through: true, ohms: most, beeps: beeps(most) }, notes: [] };
  const sounds =
    most !== undefined && beeps(most) ? true : least !== undefined && !beeps(least) ? false : null;
  const under = most === undefined ? '' : ` It is less than ${rounded(most)} ohm.`;
  return {
    value: { through: most !== undefined ? true : null, ohms: null, beeps: sounds },
    notes: [
      `The reading goes through ${parts}, and the plan does not state what an ohmmeter finds there: a winding's copper (of a coil, coil: {resistance: ...}), a cold filament, electronics.${under}`,
    ],
  };
}

/** ohm of a winding that the plan does not tell, at most; undefined where it may be anything. */
export function mostOf(plan: Plan, { part: name, what }: Pick<Passive, 'part' | 'what'>): number | undefined {
  const part = plan.parts.get(name);
  return part?.kind === 'motor' && what === 'load' ? windingMost(part) : undefined;
}

function withPrimaries(state: BenchState): BenchState {
  const { circuit } = state;
  return { ...state, circuit: { ...circuit, passives: [...circuit.passives, ...primariesOf(circuit)] } };
}

/** An ohmmeter drives too few volts for a solid-state output that is on to tell. */
function withoutSolidState(state: BenchState): BenchState {
  const { circuit, situation } = state;
  const untold = circuit.contacts.filter((c) => {
    const part = circuit.plan.parts.get(c.part);
    const solid = part?.kind === 'relay' && part.technology === 'solid-state';
    return solid && c.when.by === 'relay' && situation.closed(c);
  });
  if (untold.length === 0) return state;
  const blind = untold.map((c): Passive => ({ a: c.a, b: c.b, part: c.part, what: 'load' }));
  const contacts = circuit.contacts.filter((c) => !untold.includes(c));
  return { ...state, circuit: { ...circuit, contacts, passives: [...circuit.passives, ...blind] } };
}

function withLead(state: BenchState, clipped: readonly number[]): BenchState {
  const ends = clipped
    .slice(1)
    .map((net): Passive => ({ a: clipped[0]!, b: net, part: '', what: 'resistor' }));
  if (ends.length === 0) return state;
  const { circuit, figures } = state;
  return {
    ...state,
    circuit: { ...circuit, passives: [...circuit.passives, ...ends] },
    figures: {
      ...figures,
      passive: (p, on) => (ends.includes(p) ? { re: LEAD_OHMS, im: 0 } : figures.passive(p, on)),
    },
  };
}

function measured(
  state: BenchState,
  a: number,
  b: number,
  unknown: (p: Passive) => number | undefined,
): number | undefined {
  const island = islandOf(state.circuit, [a, b]);
  const figures: Figures = {
    ...state.figures,
    passive: (p, on) => {
      const z = hidden(state.circuit.plan, p) ? undefined : state.figures.passive(p, on);
      if (z) return z;
      const ohm = unknown(p);
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
