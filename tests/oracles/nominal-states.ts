/**
 * Independent oracle for which relays are in at nominal volts: every combination of inputs of a small plan, relays
 * stepped together from all released, the whole low-voltage network solved as a full matrix at each step. Built on the
 * oracle for coil volts; shares no code with the product.
 *
 * Everything is as printed, at 20 °C. An AC coil takes its inrush until it is in and its holding current from then on. A
 * regulated supply asked for more than its limit sags until it gives just that.
 */
import { type Feed, type Loop, loopOf, type Relay } from './coil-volts-loop.ts';
import { type Across, type Emf, type Impedance, solveAc, solveDc } from './coil-volts-solve.ts';

export interface NominalState {
  /** names of the inputs in their working position */
  inputs: string[];
  /** names of the relays that are in; undefined where they never come to rest */
  in: string[] | undefined;
  /** V at each coil, magnitude */
  volts: Record<string, number>;
  /** whether a supply was held at its limit on the way */
  limited: boolean;
}

const LEAST_OHM = 1e-6;
/** ohm that tells the current of an ideal source: next to nothing beside any core. */
const SHUNT = 1e-5;
const ROUNDS = 30;

interface Solved {
  across: (r: Relay) => number;
  limited: boolean;
}

function networkOf(loop: Loop, working: ReadonlySet<string>): Impedance[] {
  const parts: Impedance[] = loop.resistors
    .filter(({ contact }) => !contact || working.has(contact.owner) === contact.make)
    .map(({ a, b, ohm }) => ({ a, b, re: Math.max(ohm.nominal, LEAST_OHM), im: 0 }));
  for (const { a1, a2, coil, name } of loop.relays) {
    const [re, im] = coil.ac && working.has(name) ? coil.z.high : coil.z.nominal;
    if (a1 !== a2) parts.push({ a: a1, b: a2, re, im });
  }
  return parts;
}

function solveWith(loop: Loop, parts: Impedance[], ac: boolean, ohm: (f: Feed) => number): Across {
  const emfs: Emf[] = loop.feeds.map((f) => ({
    p: f.p,
    n: f.n,
    emf: f.source.ac === ac ? f.source.emf.nominal : 0,
    ohm: ohm(f),
  }));
  return ac ? solveAc(loop.nodes, parts, emfs, loop.valves) : solveDc(loop.nodes, parts, emfs, loop.valves);
}

/** The network with every supply within its limit: in line with one that is not, the ohms that hold it there. */
function solve(loop: Loop, working: ReadonlySet<string>): Solved {
  const parts = networkOf(loop, working);
  const ac = loop.feeds.some((f) => f.source.ac);
  if (ac && loop.feeds.some((f) => !f.source.ac)) throw new Error('oracle: AC and DC in one plan');
  const extra = new Map<Feed, number>();
  const ohm = (f: Feed): number => Math.max(f.source.ohm, SHUNT) + (extra.get(f) ?? 0);
  const amps = (f: Feed): number => {
    const [v] = solveWith(loop, parts, ac, ohm)(f.p, f.n);
    return (f.source.emf.nominal - v) / ohm(f);
  };
  for (const f of loop.feeds) {
    const { most } = f.source;
    if (most === undefined || amps(f) <= most * 1.0001) continue;
    let [low, high] = [0, 1e5];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      extra.set(f, middle);
      if (amps(f) > most) low = middle;
      else high = middle;
    }
  }
  const across = solveWith(loop, parts, ac, ohm);
  return {
    limited: extra.size > 0,
    across: ({ a1, a2, coil }) => {
      const [re, im] = across(a1, a2);
      return !ac && coil.polarised ? re : Math.hypot(re, im);
    },
  };
}

function settle(loop: Loop, inputs: readonly string[], from: ReadonlySet<string>): NominalState {
  let relays = from;
  let limited = false;
  for (let round = 0; round < ROUNDS; round++) {
    const solved = solve(loop, new Set([...inputs, ...relays]));
    limited ||= solved.limited;
    const next = new Set(
      loop.relays
        .filter((r) => {
          const v = solved.across(r);
          return v >= r.coil.pullIn || (relays.has(r.name) && v > r.coil.dropOut);
        })
        .map((r) => r.name),
    );
    if (next.size === relays.size && [...next].every((x) => relays.has(x))) {
      const volts = Object.fromEntries(loop.relays.map((r) => [r.name, Math.abs(solved.across(r))]));
      return { inputs: [...inputs], in: [...relays], volts, limited };
    }
    relays = next;
  }
  return { inputs: [...inputs], in: undefined, volts: {}, limited };
}

/** Each combination of inputs, reached in one move from rest. Throws on what the oracle does not know. */
export function nominalStates(planText: string): NominalState[] {
  const loop = loopOf(planText);
  const rest = settle(loop, [], new Set());
  const inAtRest = new Set(rest.in ?? []);
  return Array.from({ length: 2 ** loop.inputs.length }, (_, bits) =>
    settle(
      loop,
      loop.inputs.filter((_name, i) => (bits >> i) & 1),
      inAtRest,
    ),
  );
}
