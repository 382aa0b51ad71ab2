/** What a meter between two terminals reads in one position of gates and switches. */
import { highestVolts } from '../checks/figures.ts';
import { positionWord } from '../checks/study.ts';
import { terminalKey } from '../circuit/circuit.ts';
import { assemble, type Figures, islandOf } from '../electric/island.ts';
import { solveNetwork } from '../electric/solve.ts';
import type { Plan } from '../plan/plan.ts';
import { type BenchState, settleBench } from './bench-state.ts';
import { type Held, solveLimited } from './limited.ts';
import { clean, limitNotes } from './notes.ts';
import type { Reading, ReadState } from './reading.ts';
import { tabulate } from './tabulate.ts';

/** A terminal by the canonical name of its part's terminal; a joint's is empty. */
export interface Probe {
  readonly part: string;
  readonly terminal: string;
}

export interface ReadOptions {
  /** inputs by number in the order of the plan: what is away from rest */
  readonly moved: readonly number[];
  /** true: the supplies are taken off and the meter is on ohms */
  readonly dead: boolean;
  readonly between?: readonly [Probe, Probe];
}

/** ohm of a multimeter on volts; common practice. */
const METER_OHMS = 1e7;
/** ohm below which a continuity tester sounds, as makers of multimeters commonly state. */
const BEEP_OHMS = 50;
/** Share by which an unknown winding may change a reading before the reading is not told. */
const TELLS = 1e-6;

/** Never throws for a plan that was read; a position in which relays find no rest is told in the notes. */
export function readMeter(plan: Plan, options: ReadOptions): Reading {
  const state = settleBench(plan, options.moved, options.dead);
  const notes: string[] = [];
  if (!state.settled)
    notes.push('Relays find no rest in this position: one of them breaks its own coil and chatters.');
  const base = { format: 1 as const, state: stateWords(plan, state, !options.dead), nets: [], cores: [] };
  if (!options.between) {
    const table = tabulate(plan, state);
    return {
      ...base,
      between: null,
      volts: null,
      kind: null,
      through: null,
      ohms: null,
      beeps: null,
      nets: table.nets,
      cores: table.cores,
      notes: [...notes, ...table.notes],
    };
  }
  const between = options.between.map((p) => terminalKey(p.part, p.terminal)) as [string, string];
  // A terminal that nothing is wired to has no net; it is still one piece of metal with itself.
  const [a, b] = between[0] === between[1] ? [0, 0] : between.map((key) => state.circuit.netOf.get(key));
  if (options.dead) {
    const read = a === undefined || b === undefined ? NO_WAY : ohms(state, a, b);
    return { ...base, between, volts: null, kind: null, ...read.value, notes: [...notes, ...read.notes] };
  }
  const read = a === undefined || b === undefined ? NOTHING : volts(plan, state, a, b);
  return {
    ...base,
    between,
    ...read.value,
    through: null,
    ohms: null,
    beeps: null,
    notes: [...notes, ...read.notes],
  };
}

const LOOSE =
  'Nothing joins the two, so the meter reads nothing that lasts; a sensitive one may show stray volts.';
const NOTHING = { value: { volts: 0, kind: null }, notes: [LOOSE] };
const NO_WAY = {
  value: { through: false, ohms: null, beeps: false },
  notes: ['An ohmmeter shows over range.'],
};

function volts(
  plan: Plan,
  state: BenchState,
  a: number,
  b: number,
): { value: Pick<Reading, 'volts' | 'kind'>; notes: string[] } {
  if (a === b) return { value: { volts: 0, kind: null }, notes: ['Both terminals are one piece of metal.'] };
  if (!tied(state, a, b)) return NOTHING;
  const held = withMeter(plan, state, a, b);
  const notes = limitNotes(plan, held);
  if (held.untold !== undefined)
    return { value: { volts: null, kind: null }, notes: [...notes, held.untold] };
  const v = held.flows.volts(a, b)!;
  const live = held.flows.island.sources.some((s) => state.situation.alive(s) && !held.tripped.includes(s));
  const kind = live ? (held.ac ? 'ac' : 'dc') : null;
  const value = kind === 'ac' ? Math.hypot(v.re, v.im) : v.re;
  return { value: { volts: clean(value, highestVolts(plan)), kind }, notes };
}

/** Whether wires, closed contacts and elements tie two nets together, diodes whichever way. */
function tied(state: BenchState, a: number, b: number): boolean {
  const { circuit, situation } = state;
  const open = {
    ...circuit,
    contacts: circuit.contacts.filter((c) => situation.closed(c) || state.figures.leak(c)),
  };
  return islandOf(open, [a]).local[b]! >= 0;
}

/** The island of both nets with a meter between them. */
function withMeter(plan: Plan, state: BenchState, a: number, b: number): Held {
  const meter = { a, b, part: '', what: 'resistor' } as const;
  const parts = { ...state.circuit, passives: [...state.circuit.passives, meter] };
  const figures: Figures = {
    ...state.figures,
    passive: (p, on) => (p === meter ? { re: METER_OHMS, im: 0 } : state.figures.passive(p, on)),
  };
  return solveLimited(plan, islandOf(parts, [a, b]), figures, state.situation);
}

/** Resistance between two nets: one volt is put across them and the current is what tells. */
function ohms(
  state: BenchState,
  a: number,
  b: number,
): { value: Pick<Reading, 'through' | 'ohms' | 'beeps'>; notes: string[] } {
  if (a === b)
    return {
      value: { through: true, ohms: 0, beeps: true },
      notes: ['Both terminals are one piece of metal.'],
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
      `The reading goes through ${parts}, whose winding the plan does not state; a coil's copper is coil: {resistance: ...}.`,
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
      const z = state.figures.passive(p, on);
      if (z) return z;
      const ohm = unknown(p.part);
      return ohm === undefined ? undefined : { re: ohm, im: 0 };
    },
    // An ohmmeter drives too few volts to open a diode or an indicator.
    diode: () => ({ drop: 1e6, ohms: 1 }),
  };
  const made = assemble(island, figures, state.situation);
  const [x, y] = [island.local[a]!, island.local[b]!];
  const probe = { a: x, b: y, re: 1, im: 0, ohms: 0 };
  const solved = solveNetwork({ ...made.network, valves: [], emfs: [probe] });
  if (solved.conflict !== undefined) return 0;
  const amps = solved.emfAmps[0]!.re;
  return amps > 1e-12 ? 1 / amps : undefined;
}

function stateWords(plan: Plan, state: BenchState, power: boolean): ReadState {
  const { circuit } = state;
  const moved = circuit.inputs
    .filter((i) => state.moved.has(i.index))
    .map((i) => [i.part, i.position ?? positionWord(i.kind)] as const);
  const supplies = circuit.sources
    .filter((s) => plan.parts.get(s.part)?.kind !== 'plug')
    .map((s) => [s.part, state.alive[s.index] ? 'on' : 'off'] as const);
  return {
    power,
    moved: Object.fromEntries(moved),
    relays: Object.fromEntries(
      circuit.relays.map((r) => [r.part, state.relays[r.index] ? 'in' : 'out'] as const),
    ),
    supplies: Object.fromEntries(supplies),
  };
}
