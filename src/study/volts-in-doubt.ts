/** Relays of which what is joined does not settle whether they are in: nominal volts have to be asked. */
import type { Relay, Source } from '../circuit/circuit.ts';
import { widestVolts } from '../circuit/rail-volts.ts';
import { type Figures, type Island, islandOf } from '../electric/island.ts';
import { FALSE } from '../logic/bdd.ts';
import type { Verified } from '../logic/verify.ts';
import type { CoilState } from './coil-states.ts';
import type { Electrics } from './electrics.ts';
import { limitOf } from './supply-limits.ts';

/** V of rounding that must not put a coil in doubt. */
const EPSILON = 1e-9;

/** What is already known of the coils of a plan. */
export interface CoilKnowledge {
  readonly verified: Verified;
  readonly electrics: Electrics;
  readonly coilStates: readonly CoilState[];
  /** nominal figures */
  readonly figures: Figures;
}

/**
 * None where the rows worked out for every coil clear its pull-in as printed, nothing leaks, no supply can be asked for
 * more than it gives, and no coil shares its volts in line: there ideal wires and nominal volts agree in every state.
 */
export function relaysInDoubt(known: CoilKnowledge): Relay[] {
  const { circuit } = known.verified;
  const wide = new Map<Source, boolean>();
  const shares = new Set(known.verified.model.shared.map((s) => s.relay));
  const islands = circuit.relays.map((relay) => senseIsland(known, relay));
  const first = circuit.relays.filter((relay) => {
    const island = islands[relay.index];
    if (!island) return false;
    return (
      shares.has(relay.index) ||
      relay.senses.some((s) => s.by === 'volts' && s.what === 'input') ||
      island.contacts.some((c) => known.figures.leak(c) !== undefined) ||
      island.sources.some((s) => mayGiveWay(known, s, wide)) ||
      rowsInDoubt(known, relay)
    );
  });
  return withDependants(circuit.relays, islands, first);
}

/** A relay that is out against what is joined may feed another in a way that no row of that one has. */
function withDependants(
  relays: readonly Relay[],
  islands: readonly (Island | undefined)[],
  first: readonly Relay[],
): Relay[] {
  const found = new Set(first.map((r) => r.index));
  const hangsOn = (island: Island) =>
    island.contacts.some(({ when }) => when.by === 'relay' && found.has(when.relay));
  for (let before = -1; before !== found.size; ) {
    before = found.size;
    islands.forEach((island, k) => {
      if (island && hangsOn(island)) found.add(k);
    });
  }
  return relays.filter((r) => found.has(r.index));
}

/** What hangs together with everything the relay senses; undefined where it senses no volts. */
function senseIsland({ electrics }: CoilKnowledge, relay: Relay): Island | undefined {
  const wired = electrics.circuit.relays[relay.index]!;
  const nets = wired.senses.flatMap((s) => (s.by === 'volts' ? [s.a, s.b] : []));
  return nets.length === 0
    ? undefined
    : (electrics.islandOf(relay) ?? islandOf(electrics.circuit, nets, true));
}

/** Whether nominal volts say of some way of feeding a coil what joins do not. */
function rowsInDoubt({ verified, electrics, coilStates }: CoilKnowledge, relay: Relay): boolean {
  const joined = verified.model.pull[relay.index] !== FALSE;
  const sense = relay.senses[0];
  const state = coilStates.find((s) => s.relay === relay);
  if (state === undefined || sense?.by !== 'volts') return joined;
  const needed = sense.pullIn - EPSILON;
  if (joined && (state.floor('nominal') ?? 0) >= needed) return false;
  const { rows } = state;
  if (!joined) return rows.some((row) => row.most >= needed);
  return rows.some((row) => {
    if (row.nominal < needed) return true;
    if (row.nominalInLeast !== undefined) return row.nominalInLeast < needed;
    if (row.leastIn.moved.join() === row.moved.join()) return false;
    const v = electrics.coilVolts(relay, row.leastIn, 'nominal');
    return Math.hypot(v.re, v.im) < needed;
  });
}

/** Whether some position of the contacts shorts a source, or everything on it at once would take more than its limit. */
function mayGiveWay(known: CoilKnowledge, s: Source, seen: Map<Source, boolean>): boolean {
  let found = seen.get(s);
  if (found === undefined) {
    found = canBeShorted(known, s) || canBeOverdrawn(known, s);
    seen.set(s, found);
  }
  return found;
}

export function canBeShorted({ verified: { model } }: CoilKnowledge, s: Source): boolean {
  return model.bdd.and(model.valid, model.shorted[s.index]!) !== FALSE;
}

/**
 * By a bound: each element can have no more than the volts of all sources round it. A source with resistance of its own
 * sags by itself and has no limit besides.
 */
export function canBeOverdrawn({ electrics, figures }: CoilKnowledge, s: Source): boolean {
  const limit = limitOf(electrics.study.plan, s);
  const isPlug = electrics.study.plan.parts.get(s.part)?.kind === 'plug';
  if (limit === undefined || (!isPlug && figures.source(s).ohms > 0)) return false;
  const { circuit } = electrics;
  const island = islandOf(
    circuit,
    s.rails.map((r) => r.net),
    true,
  );
  const volts = island.sources.reduce((sum, x) => sum + figures.source(x).scale * widestVolts(x), 0);
  const amps = [
    ...island.passives.map((p) => volts / leastOhms(figures, p)),
    ...island.diodes.filter((d) => d.load).map((d) => volts / figures.diode(d).ohms),
  ];
  return amps.reduce((sum, x) => sum + x, 0) > limit;
}

function leastOhms(figures: Figures, p: Island['passives'][number]): number {
  const both = [true, false].map((pulledIn) => {
    const z = figures.passive(p, pulledIn);
    return z === undefined ? Number.POSITIVE_INFINITY : Math.hypot(z.re, z.im);
  });
  return Math.min(...both);
}
