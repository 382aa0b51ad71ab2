/** Volts by a small change to what is solved, on alternating current, against Kirchhoff's laws written out for the one loop. */
import { expect, it } from 'vitest';
import type { Phasor } from '../../src/electric/network.ts';
import { close, PortMatrix } from '../../src/electric/port-matrix.ts';
import { PortSolver } from '../../src/electric/ports.ts';
import {
  atRest,
  BACK,
  coilIsland,
  FIRST,
  figures,
  gate,
  loopOf,
  MINUS,
  OUT,
  opened,
  PLUS,
  wire,
} from './loops.ts';

const plus = (x: Phasor, y: Phasor): Phasor => ({ re: x.re + y.re, im: x.im + y.im });
const times = (x: Phasor, y: Phasor): Phasor => ({
  re: x.re * y.re - x.im * y.im,
  im: x.re * y.im + x.im * y.re,
});
const over = (x: Phasor, y: Phasor): Phasor => {
  const size = y.re ** 2 + y.im ** 2;
  return times(x, { re: y.re / size, im: -y.im / size });
};
const real = (re: number): Phasor => ({ re, im: 0 });

it('a coil behind one of four gates with a resistor across them, beside another that is always fed through the same long wire', () => {
  const [own, other] = [
    { re: 30, im: 60 },
    { re: 20, im: 50 },
  ];
  const parts = loopOf(
    FIRST + 1,
    [wire(PLUS, FIRST, 100)],
    [0, 1, 2, 3].map((i) => gate(i, FIRST, OUT)),
  );
  const island = coilIsland({
    ...parts,
    passives: [
      ...parts.passives,
      { a: FIRST, b: MINUS, part: 'K2', what: 'coil' },
      { a: FIRST, b: OUT, part: 'R1', what: 'resistor' },
    ],
    sources: parts.sources.map((s) => ({ ...s, kind: 'ac' as const })),
  });
  const ohms = new Map([
    ['K1', own],
    ['K2', other],
    ['R1', real(200)],
  ]);
  const coils = { ...figures, passive: (p: { readonly part: string }) => ohms.get(p.part)! };
  const solver = new PortSolver(island, coils, atRest, [[OUT, BACK]]);
  // 12 V behind 5.3 ohm of wire; across that the second coil, beside it the contact of 0.05 ohm in parallel with 200, the coil and 0.106 ohm of wire.
  const branch = plus(own, real(1 / (1 / 0.05 + 1 / 200) + 0.106));
  const both = over(times(other, branch), plus(other, branch));
  const across = over(times(real(12), both), plus(both, real(5.3)));
  const want = over(times(across, own), branch);
  for (let i = 0; i < 4; i++) {
    const [got] = solver.volts(opened([i]), [`input ${i}`], true);
    expect(got!.re).toBeCloseTo(want.re, 9);
    expect(got!.im).toBeCloseTo(want.im, 9);
  }
  expect(solver.solved).toBe(0);
});

it('a wire that only two contacts join to anything takes nothing by itself', () => {
  // 12 V, two contacts of 0.05 ohm in series with the wire between them, and a coil of 10 ohm: Ohm's law.
  const { z, v } = new PortMatrix({
    nodes: 4,
    branches: [{ a: 2, b: 1, re: 10, im: 0 }],
    source: { a: 0, b: 1, re: 12, im: 0, ohms: 0 },
    ports: [
      [2, 1],
      [0, 3],
      [3, 2],
    ],
  });
  close(z, v, 1, 20);
  close(z, v, 2, 20);
  expect(v[0]).toBeCloseTo((12 * 10) / 10.1, 6);
});
