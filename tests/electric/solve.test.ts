import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Network, Phasor, Solution } from '../../src/electric/network.ts';
import { solveNetwork } from '../../src/electric/solve.ts';
import { allFinite, ampsOff, emfOff, judged, leak, sameParts, voltsOff } from './compare.ts';
import { type Kind, networks, ohms, WIDE } from './random-networks.ts';

const CLOSE = 1e-9;

/**
 * `same` is how far two solves of one network may differ that only add up in another order. A node tied by little and
 * led away by much magnifies rounding by that ratio and by the length of the chain, in any double-precision solve; so
 * only short networks and those of few decades are held to twelve digits or nearly.
 */
const kinds: Record<string, Kind & { same: number }> = {
  'direct current, short': { nodes: 8, decades: [0, 3], same: 1e-12 },
  'direct current, 1 ohm to 10 kilohm': { nodes: 40, decades: [0, 4], same: 1e-11 },
  'direct current, 1 milliohm to 1 megohm': { nodes: 40, decades: WIDE, same: CLOSE },
  'direct current, joints and parts apart': {
    ...{ nodes: 12, decades: [-1, 3], joints: true, parts: 4, same: 1e-12 },
  },
  'alternating current, short': { nodes: 8, decades: [0, 3], alternating: true, same: 1e-12 },
  'alternating current, 1 ohm to 10 kilohm': { nodes: 24, decades: [0, 4], alternating: true, same: 1e-11 },
  'alternating current, 1 milliohm to 1 megohm': { nodes: 14, decades: WIDE, alternating: true, same: CLOSE },
  'alternating current, joints and parts apart': {
    ...{ nodes: 8, decades: [-1, 3], alternating: true, joints: true, parts: 4, same: 1e-12 },
  },
};

const solved = (network: Network): Solution => {
  const s = solveNetwork(network);
  expect([s.conflict, s.settled, allFinite(s)]).toEqual([undefined, true, true]);
  expect([s.re.length, s.im.length, s.component.length]).toEqual(Array(3).fill(network.nodes));
  return s;
};

const scaled = (s: Solution, k: number): Solution => ({
  ...s,
  re: s.re.map((v) => v * k),
  im: s.im.map((v) => v * k),
  emfAmps: s.emfAmps.map((i) => ({ re: i.re * k, im: i.im * k })),
});

const withEmfs = (n: Network, f: (emf: Phasor, i: number) => Phasor): Network => ({
  ...n,
  emfs: n.emfs.map((e, i) => ({ ...e, ...f({ re: e.re, im: e.im }, i) })),
});

const shuffled = <T>(all: readonly T[], keys: readonly number[]): T[] =>
  all
    .map((x, i) => ({ x, key: keys[i % keys.length]! + i * 1e-6 }))
    .sort((p, q) => p.key - q.key)
    .map(({ x }) => x);

/** The same network with its nodes renumbered, branches in reverse and some of them turned end for end. */
function relabelled(n: Network, keys: readonly number[]): { network: Network; place: number[] } {
  const order = shuffled(
    Array.from({ length: n.nodes }, (_, i) => i),
    keys,
  );
  const place = order.map((_, i) => order.indexOf(i));
  const branches = [...n.branches].reverse().map((b, i) => {
    const [a, z] = [place[b.a]!, place[b.b]!];
    return i % 2 === 0 ? { ...b, a, b: z } : { ...b, a: z, b: a };
  });
  const emfs = n.emfs.map((e) => ({ ...e, a: place[e.a]!, b: place[e.b]! }));
  return { network: { ...n, branches, emfs }, place };
}

const backAgain = (s: Solution, place: readonly number[]): Solution => ({
  ...s,
  re: Float64Array.from(place, (p) => s.re[p]!),
  im: Float64Array.from(place, (p) => s.im[p]!),
  component: Int32Array.from(place, (p) => s.component[p]!),
});

/** A milliohm beside a megohm costs nine of the sixteen digits there are. */
const LEAK = 1e-7;

describe.each(Object.entries(kinds))('random networks of %s', (_, kind) => {
  it('agree with a full-matrix solve', () => {
    fc.assert(
      fc.property(networks(kind), (n) => {
        const off = judged(n, solved(n), CLOSE);
        expect(off.volts).toBeLessThanOrEqual(CLOSE);
        expect(off.amps).toBeLessThanOrEqual(CLOSE);
      }),
    );
  });
  it('obey both laws of Kirchhoff', () => {
    fc.assert(
      fc.property(networks(kind), (n) => {
        const s = solved(n);
        expect(leak(n, s)).toBeLessThanOrEqual(LEAK);
        expect(emfOff(n, s)).toBeLessThanOrEqual(CLOSE);
      }),
    );
  });
  it('answer in proportion to the sources', () => {
    fc.assert(
      fc.property(networks(kind), ohms([-3, 3]), (n, k) => {
        const bigger = withEmfs(n, (e) => ({ re: e.re * k, im: e.im * k }));
        const [got, want] = [solved(bigger), scaled(solved(n), k)];
        expect(voltsOff(bigger, got, want)).toBeLessThanOrEqual(kind.same);
        expect(ampsOff(bigger, got, want)).toBeLessThanOrEqual(kind.same);
      }),
    );
  });
  it('do not depend on order or numbering', () => {
    const keys = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(networks(kind), keys, (n, k) => {
        const { network, place } = relabelled(n, k);
        const [got, want] = [backAgain(solved(network), place), solved(n)];
        expect(sameParts(got, want)).toBe(true);
        expect(voltsOff(n, got, want)).toBeLessThanOrEqual(kind.same);
        expect(ampsOff(n, got, want)).toBeLessThanOrEqual(kind.same);
      }),
    );
  });
  it('add up over their sources taken one at a time', () => {
    fc.assert(
      fc.property(networks(kind), (n) => {
        const all = solved(n);
        const alone = n.emfs.map((_, i) => solved(withEmfs(n, (e, k) => (k === i ? e : { re: 0, im: 0 }))));
        const sum = (of: (s: Solution) => ArrayLike<number>): Float64Array =>
          all.re.map((_, node) => alone.reduce((v, s) => v + of(s)[node]!, 0));
        const emfAmps = n.emfs.map((_, i) => ({
          re: alone.reduce((a, s) => a + s.emfAmps[i]!.re, 0),
          im: alone.reduce((a, s) => a + s.emfAmps[i]!.im, 0),
        }));
        const added = { ...all, re: sum((s) => s.re), im: sum((s) => s.im), emfAmps };
        expect(voltsOff(n, added, all)).toBeLessThanOrEqual(CLOSE);
        expect(ampsOff(n, added, all)).toBeLessThanOrEqual(CLOSE);
      }),
    );
  });
});

const chain = (values: readonly number[], volts: number): Network => ({
  nodes: values.length + 1,
  branches: values.map((re, a) => ({ a, b: a + 1, re, im: 0 })),
  emfs: [{ a: 0, b: values.length, re: volts, im: 0, ohms: 0 }],
  valves: [],
});

describe('resistances of 1 milliohm to 1 megohm against formulas', () => {
  const values = fc.array(ohms(WIDE), { minLength: 1, maxLength: 30 });
  it('divide a voltage in proportion when in series', () => {
    fc.assert(
      fc.property(values, (r) => {
        const s = solved(chain(r, 12));
        const total = r.reduce((x, y) => x + y);
        r.forEach((ohm, i) => {
          expect(Math.abs(s.re[i]! - s.re[i + 1]! - (12 * ohm) / total)).toBeLessThan(12 * CLOSE);
        });
        // the current is read off a share of 12 V across the resistances at the ends
        const end = Math.min(r[0]!, r.at(-1)!);
        expect(Math.abs(s.emfAmps[0]!.re - 12 / total)).toBeLessThan(1e-12 * (12 / total) + 1e-14 / end);
      }),
    );
  });
  it('add their conductances when in parallel', () => {
    fc.assert(
      fc.property(values, (r) => {
        const branches = r.map((re) => ({ a: 0, b: 1, re, im: 0 }));
        const emfs = [{ a: 0, b: 1, re: 12, im: 0, ohms: 0 }];
        const amps = solved({ nodes: 2, branches, emfs, valves: [] }).emfAmps[0]!.re;
        expect(amps / (12 * r.reduce((x, y) => x + 1 / y, 0))).toBeCloseTo(1, 12);
      }),
    );
  });
  it('leave a milliohm cluster on two megohm leads in the middle', () => {
    const branches = [
      ...[1, 2, 3].map((a) => ({ a, b: a + 1, re: 1e-3, im: 0 })),
      ...[
        { a: 1, b: 3, re: 1e-3, im: 0 },
        { a: 2, b: 4, re: 1e-3, im: 0 },
      ],
      ...[
        { a: 0, b: 1, re: 1e6, im: 0 },
        { a: 4, b: 5, re: 1e6, im: 0 },
      ],
    ];
    const emfs = [{ a: 0, b: 5, re: 24, im: 0, ohms: 0 }];
    const n = { nodes: 6, branches, emfs, valves: [] };
    const s = solved(n);
    for (const node of [1, 2, 3, 4]) expect(Math.abs(s.re[0]! - s.re[node]! - 12)).toBeLessThan(1e-7);
    expect(judged(n, s, CLOSE).volts).toBeLessThanOrEqual(CLOSE);
  });
  it.each([1, 1e3, 1e6])('keep their digits beside a source of 1 milliohm, with leads of %d ohm', (lead) => {
    const branches = [1, lead, 1, 1.3 * lead].map((re, a) => ({ a, b: (a + 1) % 4, re, im: 0 }));
    const n = { nodes: 4, branches, emfs: [{ a: 0, b: 1, re: 1, im: 0, ohms: 1e-3 }], valves: [] };
    expect(judged(n, solved(n), CLOSE).volts).toBeLessThanOrEqual(CLOSE);
  });
});
