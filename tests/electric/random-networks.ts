/** Networks for property tests. Every one has a solution: ideal sources never form a ring. */
import fc from 'fast-check';
import type { Branch, Emf, Network, Phasor, Valve } from '../../src/electric/network.ts';
import { parts } from '../oracles/dense-network.ts';

type Edge = readonly [number, number];

export interface Kind {
  /** most nodes in one part */
  readonly nodes: number;
  /** powers of ten between which the impedances lie, ohm */
  readonly decades: readonly [number, number];
  readonly alternating?: boolean;
  /** one branch in eight is a plain joint of zero ohm */
  readonly joints?: boolean;
  /** most parts that hang apart */
  readonly parts?: number;
  readonly valves?: number;
}

/** 1 milliohm to 1 megohm */
export const WIDE = [-3, 6] as const;

/** every node but the first hangs from an earlier one; then a few branches anywhere */
const tree = (n: number, picks: readonly number[]): Edge[] => [
  ...Array.from({ length: n - 1 }, (_, i): Edge => [i + 1, picks[i % picks.length]! % (i + 1)]),
  ...picks.slice(0, n >> 1).map((x): Edge => [x % n, (x >> 8) % n]),
];

const ring = (n: number): Edge[] => Array.from({ length: n }, (_, i): Edge => [i, (i + 1) % n]);

/** two rails, a rung at every step */
const ladder = (n: number): Edge[] =>
  Array.from({ length: n - 1 }, (_, i): Edge[] => [...(i + 2 < n ? [[i, i + 2] as const] : []), [i, i + 1]])
    .flat()
    .filter(([a, b]) => b - a === 2 || a % 2 === 0 || b === n - 1);

/** bridges of four arms and a detector, each fed from the end of the one before */
const bridge = (n: number): Edge[] =>
  Array.from({ length: Math.max(0, Math.ceil((n - 1) / 3)) }, (_, k): Edge[] =>
    [[0, 1] as const, [0, 2] as const, [1, 2] as const, [1, 3] as const, [2, 3] as const].map(([a, b]) => [
      Math.min(n - 1, 3 * k + a),
      Math.min(n - 1, 3 * k + b),
    ]),
  ).flat();

const graph: fc.Arbitrary<(n: number) => Edge[]> = fc.oneof(
  fc.constant(ring),
  fc.constant(ladder),
  fc.constant(bridge),
  fc.array(fc.nat(65535), { minLength: 40, maxLength: 40 }).map((picks) => (n: number) => tree(n, picks)),
);

const real = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

export const ohms = ([low, high]: readonly [number, number]): fc.Arbitrary<number> =>
  real(low, high).map((x) => 10 ** x);

/** Up to 85 degrees either way: no resonance without loss. */
const impedance = (k: Kind): fc.Arbitrary<Phasor> => {
  const size = ohms(k.decades);
  const plain = k.alternating
    ? fc.tuple(size, real(-85, 85)).map(([z, degrees]) => {
        const angle = (degrees * Math.PI) / 180;
        return { re: z * Math.cos(angle), im: z * Math.sin(angle) };
      })
    : size.map((re) => ({ re, im: 0 }));
  const joint = fc.constant({ re: 0, im: 0 });
  return k.joints ? fc.oneof({ arbitrary: plain, weight: 7 }, { arbitrary: joint, weight: 1 }) : plain;
};

/** up to 240 V either way, in steps: what lies below a millivolt is not a source */
const millivolts = fc.integer({ min: -240e3, max: 240e3 }).map((mv) => mv / 1000);

const source = (k: Kind, n: number): fc.Arbitrary<Emf> =>
  fc
    .record({
      a: fc.nat(n - 1),
      step: fc.integer({ min: 1, max: n - 1 }),
      re: millivolts,
      im: k.alternating ? millivolts : fc.constant(0),
      ohms: fc.oneof(fc.constant(0), ohms(k.decades)),
    })
    .map(({ a, step, ...rest }) => ({ a, b: (a + step) % n, ...rest }));

const valve = (k: Kind, n: number): fc.Arbitrary<Valve> =>
  fc
    .record({
      anode: fc.nat(n - 1),
      step: fc.integer({ min: 1, max: n - 1 }),
      drop: fc.constantFrom(0.3, 0.7, 1.1),
      ohms: ohms([Math.max(-2, k.decades[0]), 1]),
    })
    .map(({ anode, step, ...rest }) => ({ anode, cathode: (anode + step) % n, ...rest }));

/** Gives every ideal source that would close a ring of ideal sources and joints 1 ohm of its own. */
function tame(network: Network): Network {
  const rigid: Edge[] = network.branches.filter((b) => b.re === 0 && b.im === 0).map((b) => [b.a, b.b]);
  const emfs = network.emfs.map((e) => {
    if (e.ohms > 0) return e;
    const part = parts(
      network.nodes,
      rigid.map(([a, b]) => ({ a, b })),
    );
    if (part[e.a] === part[e.b]) return { ...e, ohms: 1 };
    rigid.push([e.a, e.b]);
    return e;
  });
  return { ...network, emfs };
}

const onePart = (k: Kind): fc.Arbitrary<Network> =>
  fc.tuple(graph, fc.integer({ min: 2, max: k.nodes })).chain(([edgesOf, nodes]) => {
    const edges = edgesOf(nodes).filter(([a, b]) => a !== b);
    const many = { minLength: edges.length, maxLength: edges.length };
    return fc
      .record({
        impedances: fc.array(impedance(k), many),
        emfs: fc.array(source(k, nodes), { minLength: 1, maxLength: 4 }),
        valves: fc.array(valve(k, nodes), { minLength: k.valves ? 1 : 0, maxLength: k.valves ?? 0 }),
      })
      .map(({ impedances, emfs, valves }) => {
        const branches = edges.map(([a, b], i): Branch => ({ a, b, ...impedances[i]! }));
        return tame({ nodes, branches, emfs, valves });
      });
  });

/** Networks set side by side, none joined to another. */
export function beside(all: readonly Network[]): Network {
  return all.reduce((left, right) => {
    const up = (n: number): number => n + left.nodes;
    const ends = <T extends { a: number; b: number }>(x: T): T => ({ ...x, a: up(x.a), b: up(x.b) });
    const valves = right.valves.map((v) => ({ ...v, anode: up(v.anode), cathode: up(v.cathode) }));
    return {
      nodes: left.nodes + right.nodes,
      branches: [...left.branches, ...right.branches.map(ends)],
      emfs: [...left.emfs, ...right.emfs.map(ends)],
      valves: [...left.valves, ...valves],
    };
  });
}

/** Random networks of the kind; of several parts, some are nodes alone or carry no source. */
export function networks(k: Kind): fc.Arbitrary<Network> {
  const one = onePart(k);
  if (k.parts === undefined) return one;
  const alone = fc.constant<Network>({ nodes: 1, branches: [], emfs: [], valves: [] });
  const dead = one.map((n) => ({ ...n, emfs: [], valves: [] }));
  const some = fc.oneof({ arbitrary: one, weight: 3 }, dead, alone);
  return fc.array(some, { minLength: 1, maxLength: k.parts }).map(beside);
}
