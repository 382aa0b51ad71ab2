/** What a meter between two terminals reads in one position of gates and switches. */

import { positionWord } from '../circuit/input-words.ts';
import { type Figures, islandOf } from '../electric/island.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { Basis } from '../study/basis.ts';
import { highestVolts } from '../study/indicators.ts';
import { type BenchState, settleBench } from './machine.ts';
import { NO_WAY, ONE_METAL, ohms } from './ohms.ts';
import type { Reading, ReadState } from './reading.ts';
import { clean, limitNotes } from './reading-notes.ts';
import { type Held, solveLimited } from './supply-limits.ts';
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
  /** with `dead`: the low-voltage supplies stay on, so that relays stand as the loop puts them; plugs are out */
  readonly loop?: boolean;
  /** with `dead`: terminals that a clip lead joins meanwhile */
  readonly clipped?: readonly Probe[];
  readonly between?: readonly [Probe, Probe];
}

/** ohm of a multimeter on volts; common practice. */
const METER_OHMS = 1e7;

/** Never throws for a plan that was read; a position in which relays find no rest is told in the notes. */
export function readMeter(study: Basis, options: ReadOptions): Reading {
  const { plan } = study;
  const power = options.dead ? (options.loop ? 'loop' : 'off') : 'on';
  const state = settleBench(study, options.moved, power);
  const notes: string[] = [];
  if (!state.settled) notes.push(RESTLESS);
  const base = { format: 1 as const, state: stateWords(plan, state, power !== 'off'), nets: [], cores: [] };
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
    const clipped = (options.clipped ?? []).flatMap(
      (p) => state.circuit.netOf.get(terminalKey(p.part, p.terminal)) ?? [],
    );
    const read =
      a === undefined || b === undefined ? NO_WAY : isLive(state, [a, b]) ? LIVE : ohms(state, a, b, clipped);
    return { ...base, between, volts: null, kind: null, ...read.value, notes: [...notes, ...read.notes] };
  }
  const read = a === undefined || b === undefined ? loose(state, [a, b]) : volts(plan, state, a, b);
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

const RESTLESS =
  'Relays find no rest in this position: one breaks its own coil and chatters, or the one that moves first decides; what is shown is one moment of it.';
const LOOSE =
  'Nothing joins the two, so the meter reads nothing that lasts; a sensitive one may show stray volts.';
const BEYOND =
  'Nothing in the plan joins the two, but one of them is on mains, and mains meets earth beyond its plug: the meter may show anything up to full mains.';
const LIVE = {
  value: { through: null, ohms: null, beeps: null },
  notes: ['A supply that is on reaches a probe: a meter on ohms tells nothing here and may be damaged.'],
};
const NOTHING = { value: { volts: 0, kind: null }, notes: [LOOSE] };

function volts(
  plan: Plan,
  state: BenchState,
  a: number,
  b: number,
): { value: Pick<Reading, 'volts' | 'kind'>; notes: string[] } {
  if (a === b) return { value: { volts: 0, kind: null }, notes: [ONE_METAL] };
  if (!tied(state, a, b)) return loose(state, [a, b]);
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

/** Two nets that nothing in the plan joins. Mains meets earth somewhere beyond its plug, and so may meet the other. */
function loose(state: BenchState, nets: readonly (number | undefined)[]) {
  const { circuit, situation } = state;
  const parts = standing(state);
  const mains = nets.some((n) => {
    if (n === undefined) return false;
    const { local } = islandOf(parts, [n]);
    const live = circuit.sources.filter((s) => s.mains && situation.alive(s));
    return live.some((s) => s.rails.some((r) => local[r.net]! >= 0));
  });
  return mains ? { value: { volts: null, kind: null }, notes: [BEYOND] } : NOTHING;
}

/** Whether a supply that is on reaches one of these nets, where a meter on ohms tells nothing. */
function isLive(state: BenchState, nets: readonly number[]): boolean {
  const on = state.circuit.sources.filter((s) => state.situation.alive(s));
  return on.length > 0 && nets.some((n) => on.some((s) => s.rails.some((r) => tied(state, r.net, n))));
}

/** Whether wires, closed contacts and elements tie two nets together, diodes whichever way. */
function tied(state: BenchState, a: number, b: number): boolean {
  return islandOf(standing(state), [a]).local[b]! >= 0;
}

/** The circuit without its open contacts. */
function standing({ circuit, situation, figures }: BenchState): BenchState['circuit'] {
  return { ...circuit, contacts: circuit.contacts.filter((c) => situation.closed(c) || figures.leak(c)) };
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
