/** What a changed network reads, from the one before, against the changed one worked out anew by a dense solve. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { expect, it } from 'vitest';
import { Resistances, type Resistor } from '../../src/electric/resistances.ts';

const NODES = 7;
const node = fc.nat(NODES - 1);
const resistor = fc
  .record({ a: node, b: node, ohms: fc.double({ min: 0.01, max: 2000, noNaN: true }) })
  .filter((r) => r.a !== r.b);

/** ohm by Kirchhoff's laws with a general matrix package; undefined where nothing joins the two. */
function dense(resistors: readonly Resistor[], x: number, y: number): number | undefined {
  const seen = new Set([x]);
  for (const n of seen)
    for (const { a, b } of resistors) {
      if (a === n) seen.add(b);
      if (b === n) seen.add(a);
    }
  if (!seen.has(y)) return undefined;
  const nodes = [...seen].filter((n) => n !== y);
  const at = new Map(nodes.map((n, i) => [n, i]));
  const g = Matrix.zeros(nodes.length, nodes.length);
  for (const { a, b, ohms } of resistors)
    for (const [p, q] of [
      [at.get(a), at.get(b)],
      [at.get(b), at.get(a)],
    ] as const)
      if (p !== undefined) {
        g.set(p, p, g.get(p, p) + 1 / ohms);
        if (q !== undefined) g.set(p, q, g.get(p, q) - 1 / ohms);
      }
  const amps = Matrix.zeros(nodes.length, 1);
  amps.set(at.get(x)!, 0, 1);
  return solve(g, amps).get(at.get(x)!, 0);
}

it('a network with resistors taken out and put in reads as one built so, or says that it cannot tell', () => {
  let told = 0;
  fc.assert(
    fc.property(
      fc.array(resistor, { minLength: 6, maxLength: 14 }),
      fc.array(resistor, { maxLength: 2 }),
      fc.nat(2),
      node,
      node,
      (all, into, count, x, y) => {
        fc.pre(x !== y);
        const out = all.slice(0, count);
        const read = new Resistances(NODES, all).changed(x, y, out, into);
        if (read === undefined) return;
        told++;
        const want = dense([...all.slice(count), ...into], x, y);
        expect(want).toBeDefined();
        expect(Math.abs(read - want!)).toBeLessThan(1e-5 * (want! + 1));
      },
    ),
  );
  expect(told).toBeGreaterThan(20);
});

it('cannot tell where what is taken out parts what is read, or what is put in ties nothing to it', () => {
  const line = [
    { a: 0, b: 1, ohms: 1 },
    { a: 1, b: 2, ohms: 2 },
    { a: 3, b: 4, ohms: 5 },
  ];
  const network = new Resistances(5, line);
  expect(network.changed(0, 2, [line[1]!], [])).toBeUndefined();
  expect(network.changed(0, 2, [], [{ a: 2, b: 3, ohms: 1 }])).toBeUndefined();
  expect(network.changed(0, 2, [], [{ a: 0, b: 2, ohms: 3 }])).toBeCloseTo(1.5, 12);
  expect(network.changed(0, 2, [line[1]!], [{ a: 1, b: 2, ohms: 7 }])).toBeCloseTo(8, 12);
});
