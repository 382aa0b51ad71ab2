/** What the circuit does over every state, and where it departs from the intent; knows no YAML, colours or standards. */
import type { Circuit } from '../circuit/circuit.ts';
import { timersOf } from '../circuit/positions.ts';
import type { Intent } from '../plan/plan.ts';
import { Bdd, FALSE, type Fn } from './bdd.ts';
import { inputVariable, relayVariable } from './conduction.ts';
import { blockedForGood, type Intents, readIntents } from './intent.ts';
import { Latches } from './latches.ts';
import { findMemory, type Mode, Settler } from './memory.ts';
import { buildModel, type LogicModel } from './model.ts';
import { rectifiedParts } from './rectified.ts';
import { Undecided } from './undecided.ts';

/** Inputs away from rest; a selector counts as its position. */
export type Moved = readonly number[];

/** A settled position of the circuit together with what the intents remember (see `Latch`). */
interface Place {
  readonly mode: Mode;
  readonly latch: number;
  /** input states in which the circuit can stand here */
  readonly states: Fn;
  /** the move that first led here: from another place, with these inputs away from rest */
  readonly via?: { readonly from: number; readonly moved: Moved };
}

/** A load that does not do what is meant: the input states, and one smallest way to get there from rest. */
export interface Deviation {
  readonly target: string;
  readonly expected: boolean;
  readonly states: Fn;
  /** inputs away from rest, one entry for each move in turn */
  readonly steps: readonly Moved[];
  /** true when one move from rest shows it, so no memory is involved */
  readonly direct: boolean;
}

/** What the circuit does over every input state, and where that differs from the intent. */
export interface Verified {
  readonly circuit: Circuit;
  readonly model: LogicModel;
  readonly settler: Settler;
  readonly intents: Intents;
  readonly combinations: bigint;
  /** settled position when inputs are moved straight from rest */
  readonly fromRest: ReadonlyMap<Mode, Fn>;
  readonly chatter: Fn;
  readonly races: readonly { readonly states: Fn; readonly target: string }[];
  readonly deviations: readonly Deviation[];
  /** every position the circuit can stand in, with the input states */
  readonly places: readonly Place[];
  readonly restMode: Mode;
}

/** Decides every intent over all states. Throws Undecided where the exact method would not end. */
export function verify(circuit: Circuit): Verified {
  const [behindDiodes] = rectifiedParts(circuit);
  if (behindDiodes)
    throw new Undecided(
      `${behindDiodes.part} hangs on ${behindDiodes.source.part} behind diodes, and what rectified AC does is not worked out`,
    );
  const bdd = new Bdd(circuit.relays.length + circuit.inputs.length);
  const model = buildModel(circuit, bdd);
  refusePulsesOfTimers(model);
  const settler = new Settler(model, findMemory(model));
  const first = verifyAgainst(model, settler, readIntents(circuit, bdd));
  if (first.deviations.length === 0 || !(circuit.plan.intents ?? []).some(leavesButtonOpen)) return first;
  // The plan leaves open whether the start button starts the load or only arms it: either will do, none in between.
  const second = verifyAgainst(model, settler, readIntents(circuit, bdd, true));
  // One by which some load is never asked to run proves nothing of it.
  const asks = second.intents.wanted.every(
    (w) => w.entries.length === 0 || blockedForGood(w, bdd, model.valid).length < w.entries.length,
  );
  return second.deviations.length === 0 && asks ? second : first;
}

/**
 * Settled positions tell nothing of a pulse that a timer makes, and a relay that stays put hangs on it. Throws Undecided
 * where one can be fed through a timer.
 */
function refusePulsesOfTimers({ bdd, circuit, sensed }: LogicModel): void {
  const late = new Set(timersOf(circuit.relays).map((r) => r.index));
  if (late.size === 0) return;
  for (const { part, index, latch } of circuit.relays) {
    if (latch === undefined) continue;
    const seen = new Set<number>();
    const queue = [index, latch.relay];
    for (let k = queue.pop(); k !== undefined; k = queue.pop())
      for (const x of bdd.support(sensed[k]!.on))
        if (x < circuit.relays.length && !seen.has(x)) {
          seen.add(x);
          queue.push(x);
        }
    if ([...late].some((k) => seen.has(k)))
      throw new Undecided(`${part} stays put and is fed through a timer, whose pulses are not followed`);
  }
}

/** The same intents, read the same way, decided for other positions that relays take. Throws Undecided as `verify` does. */
export function verifyWith({ intents }: Verified, model: LogicModel): Verified {
  return verifyAgainst(model, new Settler(model, findMemory(model)), intents);
}

function leavesButtonOpen(intent: Intent): boolean {
  return intent.staysOnAfter.some(
    (ref) => !intent.runsOn.some((refs) => refs.some((r) => r.part === ref.part)),
  );
}

function verifyAgainst(model: LogicModel, settler: Settler, intents: Intents): Verified {
  const { bdd, circuit } = model;
  const rest = bdd.every(circuit.inputs.map((i) => bdd.not(bdd.variable(inputVariable(circuit, i.index)))));
  const restMode = modeAt(bdd, settler.settle(0).to, rest) ?? 0;
  const latches = new Latches(bdd, intents.wanted);
  const places = explore(model, settler, latches, restMode, rest);
  let chatter: Fn = FALSE;
  const races: { states: Fn; target: string }[] = [];
  for (const mode of new Set(places.map((p) => p.mode))) {
    const s = settler.settle(mode);
    chatter = bdd.or(chatter, s.chatter);
    for (const race of s.race)
      for (const w of intents.wanted) {
        const [a, b] = race.modes.map((m) => settler.at(running(model, w.target), m));
        const states = bdd.and(race.states, bdd.xor(a!, b!));
        if (states !== FALSE) races.push({ states, target: w.target });
      }
  }
  return {
    circuit,
    model,
    settler,
    intents,
    combinations: combinationsOf(circuit),
    fromRest: settler.settle(restMode).to,
    chatter,
    races,
    deviations: findDeviations(model, settler, intents, latches, places),
    places,
    restMode,
  };
}

/** Function, over inputs and relays, that says a load is fed or a relay is in. */
export function running(model: LogicModel, target: string): Fn {
  const relay = model.circuit.relays.find((r) => r.part === target);
  if (relay) return model.bdd.variable(relayVariable(relay.index));
  return model.fed.get(target) ?? FALSE;
}

function modeAt(bdd: Bdd, to: ReadonlyMap<Mode, Fn>, states: Fn): Mode | undefined {
  for (const [mode, set] of to) if (bdd.and(set, states) !== FALSE) return mode;
  return undefined;
}

/** Positions of all inputs together: two each, and as many as a selector has. */
export function combinationsOf(circuit: Circuit): bigint {
  const positions = new Map<string, number>();
  for (const i of circuit.inputs) positions.set(i.part, (positions.get(i.part) ?? 1) + 1);
  return [...positions.values()].reduce((all, n) => all * BigInt(n), 1n);
}

/** The inputs of a state that are away from rest, fewest first choice of `Bdd.nearest`. */
export function movedIn(circuit: Circuit, bdd: Bdd, states: Fn): Moved | undefined {
  const found = bdd.nearest(states, () => false);
  if (!found) return undefined;
  return circuit.inputs.filter((i) => found.get(inputVariable(circuit, i.index))).map((i) => i.index);
}

/** The single input state with just these inputs away from rest. */
export function stateOf(circuit: Circuit, bdd: Bdd, moved: Moved): Fn {
  const set = new Set(moved);
  return bdd.every(
    circuit.inputs.map((i) => {
      const v = bdd.variable(inputVariable(circuit, i.index));
      return set.has(i.index) ? v : bdd.not(v);
    }),
  );
}

/** Every position that moving inputs can lead to, starting from rest. */
function explore(model: LogicModel, settler: Settler, latches: Latches, restMode: Mode, rest: Fn): Place[] {
  const { bdd, circuit } = model;
  const places: { mode: Mode; latch: number; states: Fn; via?: { from: number; moved: Moved } }[] = [
    { mode: restMode, latch: 0, states: rest },
  ];
  const index = new Map([[`${restMode}/0`, 0]]);
  for (let at = 0; at < places.length; at++) {
    const from = places[at]!;
    for (const [mode, set] of settler.settle(from.mode).to) {
      for (const [latch, states] of latches.after(from.latch, set)) {
        const key = `${mode}/${latch}`;
        const known = index.get(key);
        if (known !== undefined) {
          places[known]!.states = bdd.or(places[known]!.states, states);
          continue;
        }
        index.set(key, places.length);
        places.push({ mode, latch, states, via: { from: at, moved: movedIn(circuit, bdd, states) ?? [] } });
      }
    }
  }
  return places;
}

function findDeviations(
  model: LogicModel,
  settler: Settler,
  intents: Intents,
  latches: Latches,
  places: readonly Place[],
): Deviation[] {
  const { bdd, circuit } = model;
  const found: Deviation[] = [];
  const first = places[0]!;
  const direct = new Map<string, Fn>();
  for (const [mode, set] of settler.settle(first.mode).to)
    for (const [latch, states] of latches.after(0, set)) {
      const key = `${mode}/${latch}`;
      direct.set(key, bdd.or(direct.get(key) ?? FALSE, states));
    }
  for (const wanted of intents.wanted) {
    const run = running(model, wanted.target);
    for (const place of places) {
      const here = settler.at(run, place.mode);
      const { must, may } = latches.bounds(wanted, place.latch);
      const reach = direct.get(`${place.mode}/${place.latch}`) ?? FALSE;
      const runs = bdd.diff(here, may);
      // What runs although blocked is another matter than what runs without cause; each gets its own way there.
      const kinds = [
        { expected: true, wrong: bdd.diff(must, here) },
        { expected: false, wrong: bdd.and(runs, wanted.blocked) },
        { expected: false, wrong: bdd.diff(runs, wanted.blocked) },
      ];
      for (const { expected, wrong } of kinds) {
        for (const isDirect of [true, false]) {
          const within = isDirect ? bdd.and(place.states, reach) : bdd.diff(place.states, reach);
          const states = bdd.and(wrong, within);
          if (states === FALSE) continue;
          const steps = isDirect
            ? [movedIn(circuit, bdd, states)!]
            : stepsTo(model, settler, latches, places, place, states);
          found.push({ target: wanted.target, expected, states, steps, direct: isDirect });
        }
      }
    }
  }
  return found.sort(
    (a, b) => a.steps.length - b.steps.length || a.steps.at(-1)!.length - b.steps.at(-1)!.length,
  );
}

/** The shortest chain of moves from rest whose last one shows the deviation. */
function stepsTo(
  model: LogicModel,
  settler: Settler,
  latches: Latches,
  places: readonly Place[],
  target: Place,
  states: Fn,
): Moved[] {
  const { bdd, circuit } = model;
  let best: Moved[] | undefined;
  for (const from of places) {
    const set = settler.settle(from.mode).to.get(target.mode);
    if (set === undefined) continue;
    const arriving = bdd.and(latches.after(from.latch, set).get(target.latch) ?? FALSE, states);
    const last = movedIn(circuit, bdd, arriving);
    if (!last) continue;
    const steps = [last];
    for (let p: Place | undefined = from; p?.via; p = places[p.via.from]) steps.unshift(p.via.moved);
    if (!best || steps.length < best.length) best = steps;
  }
  return best ?? [movedIn(circuit, bdd, states)!];
}

/** Load or relay at one input state reached straight from rest; undefined where relays chatter. */
export function runsAt(v: Verified, target: string, moved: Moved): boolean | undefined {
  const { bdd } = v.model;
  const set = new Set(moved.map((i) => inputVariable(v.circuit, i)));
  for (const [mode, states] of v.fromRest) {
    if (!bdd.evaluate(states, (x) => set.has(x))) continue;
    return bdd.evaluate(v.settler.at(running(v.model, target), mode), (x) => set.has(x));
  }
  return undefined;
}

/** Settled position of every relay at one input state reached straight from rest. */
export function relaysAt(v: Verified, moved: Moved): boolean[] {
  return v.circuit.relays.map((r) => runsAt(v, r.part, moved) ?? false);
}
