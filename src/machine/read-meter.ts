/** What a meter between two terminals reads in one position of gates and switches. */

import { positionWord } from '../circuit/input-words.ts';
import { isOwn } from '../circuit/positions.ts';
import { record } from '../plan/map-entries.ts';
import type { Plan } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type { Basis } from '../study/basis.ts';
import { highestVolts } from '../study/indicators.ts';
import { limitNotes } from '../study/supply-limits.ts';
import { roundedUp } from '../text/numbers.ts';
import { TiedNets } from './joined-nets.ts';
import type { MachineState } from './machine.ts';
import { BEEP_OHMS, isSure, Ohmmeter } from './ohmmeter.ts';
import { settledState } from './power.ts';
import type { Reading, ReadState } from './reading.ts';
import { tabulate } from './tabulate.ts';
import { ONE_METAL, Voltmeter, withoutRounding } from './voltmeter.ts';

/** A terminal by the canonical name of its part's terminal; a joint's is empty. */
export interface Probe {
  /** name of the part */
  readonly part: string;
  /** canonical name of its terminal; empty for a joint */
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

/** What two probes find: a part of the reading, and what its numbers do not say. */
type Found = Pick<Reading, 'volts' | 'kind' | 'through' | 'ohms' | 'beeps' | 'notes'>;

const NO_VOLTS = { volts: null, kind: null } as const;
const NO_OHMS = { through: null, ohms: null, beeps: null } as const;

const RESTLESS =
  'Relays find no rest in this position: one breaks its own coil and chatters, or the one that moves first decides; what is shown is one moment of it.';
const NO_WAY: Found = {
  ...NO_VOLTS,
  through: false,
  ohms: null,
  beeps: false,
  notes: ['An ohmmeter shows over range.'],
};
const UNDER_POWER: Found = {
  ...NO_VOLTS,
  ...NO_OHMS,
  notes: ['A supply that is on reaches a probe: a meter on ohms tells nothing here and may be damaged.'],
};

/** Never throws for a plan that was read; a position in which relays find no rest is told in the notes. */
export function readMeter(study: Basis, options: ReadOptions): Reading {
  const { plan } = study;
  const power = options.dead ? (options.loop ? 'loop' : 'off') : 'on';
  const state = settledState(study, options.moved, power);
  const notes = state.settled ? [] : [RESTLESS];
  const base = { format: 1 as const, state: stateWords(plan, state, power !== 'off'), nets: [], cores: [] };
  if (!options.between) {
    const { nets, cores, notes: more } = tabulate(plan, state);
    return { ...base, between: null, ...NO_VOLTS, ...NO_OHMS, nets, cores, notes: [...notes, ...more] };
  }
  const between = options.between.map(keyOf) as [string, string];
  const found = options.dead
    ? ohmsBetween(state, between, options.clipped ?? [])
    : voltsBetween(plan, state, between);
  return { ...base, between, ...found, notes: [...notes, ...found.notes] };
}

const keyOf = ({ part, terminal }: Probe) => terminalKey(part, terminal);

function voltsBetween(plan: Plan, state: MachineState, [red, black]: readonly [string, string]): Found {
  const { netOf } = state.circuit;
  const meter = new Voltmeter(state);
  // A terminal that nothing is wired to has no net; it is still one piece of metal with itself.
  const read = red === black ? meter.read(0, 0) : meter.read(netOf.get(red), netOf.get(black));
  const { volts, kind, remark, island } = read;
  return {
    volts: volts === null ? null : withoutRounding(volts, highestVolts(plan)),
    kind,
    ...NO_OHMS,
    notes: [...(island ? limitNotes(plan, island) : []), ...(remark === undefined ? [] : [remark])],
  };
}

function ohmsBetween(
  state: MachineState,
  [red, black]: readonly [string, string],
  clipped: readonly Probe[],
): Found {
  const nets = [red, black].flatMap((key) => state.circuit.netOf.get(key) ?? []);
  const tied = new TiedNets(state);
  if (nets.length === 2 && nets.some((net) => tied.reachedByPower(net))) return UNDER_POWER;
  const meter = new Ohmmeter(state.circuit, state.figures);
  const where = { moved: [...state.moved], relays: state.relays, clipped: clipped.map(keyOf) };
  const read = meter.read(where, red, black);
  const { least, most } = read;
  if (least === Number.POSITIVE_INFINITY) return NO_WAY;
  if (isSure(read)) {
    const notes = red === black || nets[0] === nets[1] ? [ONE_METAL] : [];
    return { ...NO_VOLTS, through: true, ohms: most, beeps: most < BEEP_OHMS, notes };
  }
  const limited = most < Number.POSITIVE_INFINITY;
  const under = limited ? ` It is less than ${roundedUp(most)} ohm.` : '';
  return {
    ...NO_VOLTS,
    through: limited ? true : null,
    ohms: null,
    beeps: most < BEEP_OHMS ? true : least >= BEEP_OHMS ? false : null,
    notes: [
      `The reading goes through ${meter.unknownBeside(where, red).join(', ')}, and the plan does not state what an ohmmeter finds there: a winding's copper (of a coil, coil: {resistance: ...}), a cold filament, electronics.${under}`,
    ],
  };
}

function stateWords(plan: Plan, state: MachineState, power: boolean): ReadState {
  const { circuit } = state;
  const moved = circuit.inputs
    .filter((i) => state.moved.has(i.index))
    .map((i) => [i.part, i.position ?? positionWord(i.kind)] as const);
  const supplies = circuit.sources
    .filter((s) => plan.parts.get(s.part)?.kind !== 'plug')
    .map((s) => [s.part, state.situation.alive(s) ? 'on' : 'off'] as const);
  return {
    power,
    moved: record(moved),
    relays: record(
      circuit.relays.filter(isOwn).map((r) => [r.part, state.relays[r.index] ? 'in' : 'out'] as const),
    ),
    supplies: record(supplies),
  };
}
