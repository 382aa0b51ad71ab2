import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Network, Solution, Valve } from '../../src/electric/network.ts';
import { solveNetwork } from '../../src/electric/solve.ts';
import { type DenseSolution, denseSolve } from '../oracles/dense-network.ts';
import { allFinite, ampsOff, emfOff, leak, voltsOff } from './compare.ts';
import { networks } from './random-networks.ts';

const CLOSE = 1e-9;

const resistor = (a: number, b: number, re: number) => ({ a, b, re, im: 0 });
const supply = (a: number, b: number, re: number, ohms = 0) => ({ a, b, re, im: 0, ohms });
const diode = (anode: number, cathode: number): Valve => ({ anode, cathode, drop: 0.7, ohms: 0.05 });

const solved = (network: Network): Solution => {
  const s = solveNetwork(network);
  expect([s.conflict, s.settled, allFinite(s)]).toEqual([undefined, true, true]);
  return s;
};

/** Diodes whose state nobody can doubt: a microampere of current, or a microvolt short of the drop. */
function plainStates(network: Network, s: Solution | DenseSolution): (boolean | undefined)[] {
  return network.valves.map((v, i) => {
    if (s.component[v.anode] !== s.component[v.cathode]) return undefined;
    const over = s.re[v.anode]! - s.re[v.cathode]! - v.drop;
    if (s.conducting[i]) return over / v.ohms > 1e-6 ? true : undefined;
    return over < -1e-6 ? false : undefined;
  });
}

function agrees(network: Network): Solution {
  const got = solved(network);
  const want = denseSolve(network);
  if (!want) throw new Error('the oracle found nothing');
  expect(voltsOff(network, got, want)).toBeLessThanOrEqual(CLOSE);
  expect(ampsOff(network, got, want)).toBeLessThanOrEqual(CLOSE);
  expect(leak(network, got)).toBeLessThanOrEqual(CLOSE);
  expect(emfOff(network, got)).toBeLessThanOrEqual(CLOSE);
  const [g, w] = [plainStates(network, got), plainStates(network, want)];
  const both = g.map((state, i) => state !== undefined && w[i] !== undefined);
  expect(g.filter((_, i) => both[i])).toEqual(w.filter((_, i) => both[i]));
  return got;
}

/** Every diode must keep its word: no current backwards, no more than its drop across it when it blocks. */
function keepsItsWord(network: Network, s: Solution): boolean {
  return network.valves.every((v, i) => {
    if (s.component[v.anode] !== s.component[v.cathode]) return !s.conducting[i];
    const over = s.re[v.anode]! - s.re[v.cathode]! - v.drop;
    return s.conducting[i] ? over / v.ohms >= -CLOSE : over <= CLOSE;
  });
}

describe('random networks with diodes', () => {
  it.each([1, 2, 3, 4])('agree with every combination tried, up to %i of them', (valves) => {
    fc.assert(
      fc.property(networks({ nodes: 12, decades: [-1, 4], valves }), (n) => {
        expect(keepsItsWord(n, agrees(n))).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
  it('agree when parts hang together by diodes alone', () => {
    const kind = { nodes: 4, decades: [0, 3], parts: 3 } as const;
    const ways = fc.array(fc.tuple(fc.nat(11), fc.nat(11)), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(networks(kind), ways, (n, pairs) => {
        const valves = pairs
          .map(([a, b]) => diode(a % n.nodes, b % n.nodes))
          .filter((v) => v.anode !== v.cathode);
        agrees({ ...n, valves });
      }),
      { numRuns: 200 },
    );
  });
  it('do not depend on the order of the diodes', () => {
    fc.assert(
      fc.property(networks({ nodes: 10, decades: [0, 3], valves: 4 }), (n) => {
        const turned = solved({ ...n, valves: [...n.valves].reverse() });
        expect(voltsOff(n, turned, solved(n))).toBeLessThanOrEqual(CLOSE);
      }),
    );
  });
});

describe('diodes in known places', () => {
  /** nodes: 0 minus and 1 plus of the load, 2 and 3 the feed */
  const rectifier = (volts: number): Network => ({
    nodes: 4,
    branches: [resistor(1, 0, 100)],
    emfs: [supply(2, 3, volts, 0.5)],
    valves: [diode(2, 1), diode(3, 1), diode(0, 2), diode(0, 3)],
  });
  it.each([24, -24])('rectify %i V by a bridge', (volts) => {
    const s = agrees(rectifier(volts));
    // two drops, two diode resistances and the source in series with the load
    expect(s.re[1]! - s.re[0]!).toBeCloseTo(((24 - 1.4) * 100) / 100.6, 9);
    expect(s.conducting).toEqual(volts > 0 ? [true, false, false, true] : [false, true, true, false]);
  });
  it.each([0, 1, 1.39])('leave a bridge dead at %f V', (volts) => {
    const s = agrees(rectifier(volts));
    expect(s.emfAmps[0]!.re).toBeCloseTo(0, 10);
  });
  it('find the bridge whatever the feed', () => {
    fc.assert(
      fc.property(fc.integer({ min: -60_000, max: 60_000 }), (mv) => {
        agrees(rectifier(mv / 1000));
      }),
    );
  });
  it('let either of two inputs feed one coil and keep them apart', () => {
    for (const [left, right] of [
      [24, 0],
      [0, 24],
      [24, 24],
      [0, 0],
    ] as const) {
      const s = agrees({
        nodes: 4,
        branches: [resistor(3, 0, 200), resistor(1, 0, 1e3), resistor(2, 0, 1e3)],
        emfs: [...(left ? [supply(1, 0, left)] : []), ...(right ? [supply(2, 0, right)] : [])],
        valves: [diode(1, 3), diode(2, 3)],
      });
      expect(s.conducting).toEqual([left > 0, right > 0]);
      const way = left && right ? 0.025 : 0.05;
      expect(s.re[3]! - s.re[0]!).toBeCloseTo(left || right ? (23.3 * 200) / (200 + way) : 0, 9);
      if (!left) expect(s.re[1]! - s.re[0]!).toBeCloseTo(0, 6);
      if (!right) expect(s.re[2]! - s.re[0]!).toBeCloseTo(0, 6);
    }
  });
  it('take no current in a suppressor across a coil, and short the supply when it is reversed', () => {
    const coil = (valve: Valve): Network => ({
      nodes: 2,
      branches: [resistor(1, 0, 150)],
      emfs: [supply(1, 0, 12, 0.3)],
      valves: [valve],
    });
    const right = agrees(coil(diode(0, 1)));
    expect(right.conducting).toEqual([false]);
    expect(right.emfAmps[0]!.re).toBeCloseTo(12 / 150.3, 10);
    const wrong = agrees(coil(diode(1, 0)));
    expect(wrong.conducting).toEqual([true]);
    const volts = (12 / 0.3 + 0.7 / 0.05) / (1 / 0.3 + 1 / 0.05 + 1 / 150);
    expect(wrong.re[1]! - wrong.re[0]!).toBeCloseTo(volts, 9);
  });
  it('pass along a string of diodes', () => {
    const s = agrees({
      nodes: 6,
      branches: [resistor(5, 0, 10)],
      emfs: [supply(1, 0, 12)],
      valves: [1, 2, 3, 4].map((n) => diode(n, n + 1)),
    });
    expect(s.emfAmps[0]!.re).toBeCloseTo((12 - 2.8) / 10.2, 9);
  });
});
