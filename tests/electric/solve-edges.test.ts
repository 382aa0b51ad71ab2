import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Branch, Emf, Network, Solution } from '../../src/electric/network.ts';
import { solveNetwork } from '../../src/electric/solve.ts';
import { allFinite, voltsOff } from './compare.ts';
import { beside, networks } from './random-networks.ts';

const branch = (a: number, b: number, re: number, im = 0): Branch => ({ a, b, re, im });
const emf = (a: number, b: number, re: number, ohms = 0, im = 0): Emf => ({ a, b, re, im, ohms });
const net = (nodes: number, branches: Branch[], emfs: Emf[]): Network => ({
  nodes,
  branches,
  emfs,
  valves: [],
});

const noNaN = (s: Solution): boolean => {
  const amps = s.emfAmps.flatMap((p) => [p?.re, p?.im]);
  return [...s.re, ...s.im, ...amps].every((x) => !Number.isNaN(x));
};

const impossible: Record<string, Network> = {
  'two supplies of unlike voltage side by side': net(2, [branch(0, 1, 10)], [emf(1, 0, 12), emf(1, 0, 5)]),
  'two equal supplies head to tail': net(2, [branch(0, 1, 10)], [emf(1, 0, 12), emf(0, 1, 12)]),
  'a supply shorted by a joint': net(2, [branch(0, 1, 0), branch(0, 1, 10)], [emf(1, 0, 12)]),
  'a supply shorted by a string of joints': net(
    4,
    [branch(1, 2, 0), branch(2, 3, 0), branch(3, 0, 0)],
    [emf(1, 0, 24)],
  ),
  'a supply from a node to itself': net(2, [branch(0, 1, 10)], [emf(1, 1, 12)]),
  'three supplies in a ring that does not close': net(
    3,
    [branch(0, 1, 10)],
    [emf(1, 0, 12), emf(2, 1, 12), emf(2, 0, 20)],
  ),
  'alternating supplies out of phase side by side': net(
    2,
    [branch(0, 1, 10, 5)],
    [emf(1, 0, 120), emf(1, 0, 0, 0, 120)],
  ),
};

describe('what cannot be', () => {
  it.each(Object.entries(impossible))('%s is a conflict', (_, n) => {
    const s = solveNetwork(n);
    expect(s.conflict).toBeGreaterThanOrEqual(0);
    expect(s.conflict).toBeLessThan(n.emfs.length);
    expect(noNaN(s)).toBe(true);
  });
  it('is found beside a network in order, whichever comes first', () => {
    const good = net(3, [branch(0, 1, 10), branch(1, 2, 10)], [emf(2, 0, 24)]);
    const bad = impossible['a supply shorted by a joint']!;
    expect(solveNetwork(beside([good, bad])).conflict).toBe(1);
    expect(solveNetwork(beside([bad, good])).conflict).toBe(0);
  });
  it('is found wherever a second, unlike supply is put across the first', () => {
    fc.assert(
      fc.property(networks({ nodes: 8, decades: [0, 3], parts: 2 }), fc.nat(50), (n, extra) => {
        const first = n.emfs.find((e) => e.ohms === 0);
        fc.pre(first !== undefined);
        const s = solveNetwork({ ...n, emfs: [...n.emfs, { ...first!, re: first!.re + 1 + extra }] });
        expect(s.conflict).toBeDefined();
        expect(noNaN(s)).toBe(true);
      }),
    );
  });
  it('does not take two supplies that agree for more than they are', () => {
    const s = solveNetwork(net(2, [branch(0, 1, 10)], [emf(1, 0, 12), emf(1, 0, 12)]));
    expect(noNaN(s)).toBe(true);
    expect(s.re[1]! - s.re[0]!).toBeCloseTo(12, 12);
  });
});

describe('next to nothing', () => {
  it('solves a network without nodes', () => {
    const s = solveNetwork(net(0, [], []));
    expect([s.re.length, s.emfAmps.length, s.conducting.length, s.settled, s.conflict]).toEqual([
      ...[0, 0, 0, true, undefined],
    ]);
  });
  it('leaves nodes that nothing joins each on its own, at nought', () => {
    const s = solveNetwork(net(3, [], []));
    expect(new Set(s.component).size).toBe(3);
    expect([...s.re, ...s.im]).toEqual([0, 0, 0, 0, 0, 0]);
  });
  it('finds no voltage where there is no source', () => {
    const s = solveNetwork(net(4, [branch(0, 1, 1e-3), branch(1, 2, 1e6), branch(2, 0, 0)], []));
    expect([s.re[1]! - s.re[0]!, s.re[2]! - s.re[0]!].map(Math.abs)).toEqual([0, 0]);
    expect(s.component[3]).not.toBe(s.component[0]);
    expect([s.component[1], s.component[2]]).toEqual([s.component[0], s.component[0]]);
  });
  it('drives no current from a source in an open circuit', () => {
    const s = solveNetwork(net(3, [branch(1, 2, 10)], [emf(1, 0, 12, 0.5)]));
    expect([s.re[1]! - s.re[0]!, s.re[2]! - s.re[0]!]).toEqual([12, 12]);
    expect(Math.abs(s.emfAmps[0]!.re)).toBe(0);
  });
  it('takes a branch from a node to itself for nothing', () => {
    const plain = net(2, [branch(0, 1, 10)], [emf(1, 0, 12, 1)]);
    const looped = { ...plain, branches: [...plain.branches, branch(1, 1, 5), branch(0, 0, 0)] };
    expect(voltsOff(plain, solveNetwork(looped), solveNetwork(plain))).toBe(0);
  });
});

describe('joints of zero ohm', () => {
  it('hold their ends at one potential, rings of them too', () => {
    const joints = [branch(1, 2, 0), branch(2, 3, 0), branch(3, 1, 0), branch(1, 2, 0)];
    const s = solveNetwork(net(4, [...joints, branch(3, 0, 8)], [emf(1, 0, 24, 4)]));
    expect([s.re[2], s.re[3]]).toEqual([s.re[1], s.re[1]]);
    expect(s.emfAmps[0]!.re).toBeCloseTo(2, 12);
    expect([s.conflict, allFinite(s)]).toEqual([undefined, true]);
  });
  it('short a source that has a resistance of its own', () => {
    const s = solveNetwork(net(2, [branch(0, 1, 0)], [emf(1, 0, 10, 0.2)]));
    expect(s.conflict).toBeUndefined();
    expect(s.emfAmps[0]!.re).toBeCloseTo(50, 12);
    expect(s.re[1]! - s.re[0]!).toBe(0);
  });
  it('change nothing when a node is split in two by one', () => {
    fc.assert(
      fc.property(networks({ nodes: 10, decades: [0, 3] }), fc.nat(9), (n, pick) => {
        const at = pick % n.nodes;
        const moved = n.branches.map((b, i) => (i % 2 === 0 && b.a === at ? { ...b, a: n.nodes } : b));
        const split = { ...n, nodes: n.nodes + 1, branches: [...moved, branch(at, n.nodes, 0)] };
        const [s, whole] = [solveNetwork(split), solveNetwork(n)];
        expect(s.re[at]! - s.re[n.nodes]!).toBeCloseTo(0, 15);
        expect(voltsOff(n, s, whole)).toBeLessThanOrEqual(1e-12);
      }),
    );
  });
});
