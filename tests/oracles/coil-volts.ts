/**
 * Independent oracle for the volts at relay coils: tries every combination of inputs and solves the whole
 * low-voltage network at three corners. It shares no code with the product.
 */
import type { Coil } from './coil-volts-figures.ts';
import { type Feed, type Loop, loopOf, type Relay, type Resistor } from './coil-volts-loop.ts';
import { type Across, type Emf, type Impedance, solveAc, solveDc } from './coil-volts-solve.ts';
import type { Corner } from './coil-volts-wire.ts';

/** V at a relay's coil where one input alone pulls it in; `margin` is a share of the rated volts. */
export interface Row {
  relay: string;
  gate: string;
  volts: { min: number; nominal: number; max: number };
  pullIn: number;
  dropOut: number;
  margin: number;
}

/** Names of the parts in their working position: open gates, pressed buttons, pulled-in relays. */
type Working = ReadonlySet<string>;
type CoilVolts = (relay: Relay) => number;

/** Ohms in place of a stated zero: small beside any core, large enough for the arithmetic. */
const LEAST_OHM = 1e-6;
/** Ohms of everything between supply and coil when only what is joined counts. */
const IDEAL_OHM = 1e-3;
const ROUNDS = 20;

const closed = (r: Resistor, working: Working): boolean =>
  !r.contact || working.has(r.contact.owner) === r.contact.make;

const emfsOf = (feeds: readonly Feed[], ac: boolean, view: View): Emf[] =>
  feeds.map(({ p, n, source }) => ({
    p,
    n,
    emf: source.ac === ac ? source.emf[view === 'ideal' ? 'nominal' : view] : 0,
    ohm: view === 'ideal' ? Math.min(source.ohm, IDEAL_OHM) : source.ohm,
  }));

/** What a coil feels: the magnitude on AC; on DC signed where it is polarised. */
function felt(coil: Coil, [re, im]: readonly [number, number]): number {
  if (coil.ac) return Math.hypot(re, im);
  return coil.polarised ? re : Math.abs(re);
}

/** Cores, contacts and fuses; lamps and resistors have more ohms than any of these here. */
const isWay = (r: Resistor): boolean => r.contact !== undefined || r.ohm.nominal < 15;

/** `ideal`: nominal, with nothing lost in wires, contacts and supplies; what tells whether a state feeds a coil. */
type View = Corner | 'ideal';

function solveLoop(loop: Loop, view: View, working: Working): CoilVolts {
  const ideal = view === 'ideal';
  const corner: Corner = ideal ? 'nominal' : view;
  const parts: Impedance[] = loop.resistors
    .filter((r) => closed(r, working))
    .map((r) => ({
      a: r.a,
      b: r.b,
      re: ideal && isWay(r) ? IDEAL_OHM : Math.max(r.ohm[corner], LEAST_OHM),
      im: 0,
    }));
  for (const { a1, a2, coil } of loop.relays) {
    if (a1 !== a2) parts.push({ a: a1, b: a2, re: coil.z[corner][0], im: coil.z[corner][1] });
  }
  const none: Across = () => [0, 0];
  const has = (ac: boolean): boolean => loop.feeds.some((f) => f.source.ac === ac);
  // A coil feels only its own kind of current, so the two kinds are solved apart.
  const still = parts.map((p) => ({ ...p, re: Math.hypot(p.re, p.im), im: 0 }));
  const dc = has(false) ? solveDc(loop.nodes, still, emfsOf(loop.feeds, false, view), loop.valves) : none;
  const ac = has(true) ? solveAc(loop.nodes, parts, emfsOf(loop.feeds, true, view), loop.valves) : none;
  return ({ a1, a2, coil }) => felt(coil, (coil.ac ? ac : dc)(a1, a2));
}

/** Solves each corner and set of closed contacts once. */
function remembering(loop: Loop): (view: View, working: Working) => CoilVolts {
  const known = new Map<string, CoilVolts>();
  return (view, working) => {
    const key = view + loop.resistors.map((r) => (closed(r, working) ? '1' : '0')).join('');
    const found = known.get(key) ?? solveLoop(loop, view, working);
    known.set(key, found);
    return found;
  };
}

type Solver = ReturnType<typeof remembering>;

/** Relays together, step by step, from all released; between drop-out and pull-in each keeps its state. */
function settle(loop: Loop, solver: Solver, inputs: readonly string[]): Working {
  let now: Working = new Set(inputs);
  for (let round = 0; round < ROUNDS; round++) {
    const volts = solver('ideal', now);
    const held = loop.relays.filter((r) => {
      const v = volts(r);
      return now.has(r.name) ? v > r.coil.dropOut : v >= r.coil.pullIn;
    });
    const next = new Set([...inputs, ...held.map((r) => r.name)]);
    if (next.size === now.size && [...next].every((x) => now.has(x))) return now;
    now = next;
  }
  throw new Error('oracle: the relays do not settle');
}

interface Counted {
  inputs: readonly string[];
  volts: Record<Corner, number>;
}

/** Settled states in which the released relay would be pulled in, with its volts at each corner. */
function counting(solver: Solver, states: readonly [readonly string[], Working][], relay: Relay) {
  return states.flatMap(([inputs, settled]): Counted[] => {
    const working = new Set([...settled].filter((x) => x !== relay.name));
    const at = (corner: Corner): number => solver(corner, working)(relay);
    if (!(solver('ideal', working)(relay) >= relay.coil.pullIn)) return [];
    return [{ inputs, volts: { low: at('low'), nominal: at('nominal'), high: at('high') } }];
  });
}

function rowsOf(relay: Relay, counted: readonly Counted[], inputs: readonly string[]): Row[] {
  const { rated, hotPullIn, dropOut } = relay.coil;
  return inputs.flatMap((gate) => {
    const alone = counted.find((s) => s.inputs.length === 1 && s.inputs[0] === gate);
    if (!alone) return [];
    const within = counted.filter((s) => s.inputs.includes(gate));
    const min = Math.min(...within.map((s) => Math.abs(s.volts.low)));
    const max = Math.max(...within.map((s) => Math.abs(s.volts.high)));
    const volts = { min, nominal: Math.abs(alone.volts.nominal), max };
    return [
      { relay: relay.name, gate, volts, pullIn: hotPullIn, dropOut, margin: (min - hotPullIn) / rated },
    ];
  });
}

/** Every subset of the names, the empty one first. */
const subsets = (names: readonly string[]): string[][] =>
  Array.from({ length: 2 ** names.length }, (_, bits) => names.filter((_name, i) => (bits >> i) & 1));

/** One row for each relay on a low-voltage source and each input that pulls it in alone, in plan order. */
export function coilVolts(planText: string): Row[] {
  const loop = loopOf(planText);
  const solver = remembering(loop);
  const states = subsets(loop.inputs).map((s): [string[], Working] => [s, settle(loop, solver, s)]);
  return loop.relays.flatMap((relay) => rowsOf(relay, counting(solver, states, relay), loop.inputs));
}
