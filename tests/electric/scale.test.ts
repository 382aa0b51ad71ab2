/** Loops of many gates: how much work they take is counted, not timed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assemble, type Island } from '../../src/electric/island.ts';
import { Frame } from '../../src/electric/solve.ts';
import {
  afresh,
  atRest,
  CoilVolts,
  coilIsland,
  FIRST,
  figures,
  gate,
  gatesIn,
  LAYOUTS,
  type Layout,
  loopOf,
  OUT,
  PLUS,
  SUPPLY_VOLTS,
  sweep,
  wire,
} from './loops.ts';

const GATES = 300;
/** V by which two ways to the same volts may differ */
const NEAR = 1e-9;
/** ohm across an open contact, as high as the solver of small changes puts it */
const OPEN_OHMS = 1e15;
const SIZES = [250, 500, 1000, 2000, 4000];
const MOST_GROWTH = 2.3;

const swept = new Map(LAYOUTS.map((layout) => [layout, sweep(gatesIn(layout, GATES), GATES)]));
/** V at the coil by gate, each alone open. */
const singles = (layout: Layout): number[] => swept.get(layout)!.volts.slice(1);

/** Entries that the elimination keeps, the contacts open. */
function entries(island: Island): number {
  const { network } = assemble(island, figures, atRest, OPEN_OHMS);
  return new Frame(network).eliminate([]).columns.length;
}

describe.each(LAYOUTS)('%s', (layout) => {
  it('no single gate is solved afresh', () => {
    expect(swept.get(layout)!.coil.solver.solved).toBe(0);
    expect(swept.get(layout)!.volts).toHaveLength(GATES + 1);
  });

  it('is as when solved afresh', () => {
    const island = coilIsland(gatesIn(layout, GATES));
    expect(Math.abs(swept.get(layout)!.volts[0]! - afresh(island, []))).toBeLessThan(NEAR);
    for (const i of [0, 1, 2, 17, 149, 150, 151, 240, GATES - 2, GATES - 1])
      expect(Math.abs(singles(layout)[i]! - afresh(island, [i])), `gate ${i}`).toBeLessThan(NEAR);
  });

  it('twice the gates keep at most 2.3 times the entries', () => {
    const kept = SIZES.map((n) => entries(coilIsland(gatesIn(layout, n))));
    for (let k = 1; k < kept.length; k++)
      expect(kept[k]! / kept[k - 1]!, `${SIZES[k]} gates`).toBeLessThanOrEqual(MOST_GROWTH);
    // Two nets a gate: fewer entries than that would mean gates had been lost.
    expect(kept[0]).toBeGreaterThanOrEqual(2 * SIZES[0]!);
  });
});

it('beside a contact that is closed at rest and has opened, gates are not solved afresh one by one', () => {
  const parts = gatesIn('chain', GATES);
  const [first, ...others] = parts.contacts;
  const turned = { ...first!, when: { by: 'input', input: 0, value: false } as const };
  const island = coilIsland({ ...parts, contacts: [turned, ...others] });
  const coil = new CoilVolts(island);
  for (let i = 1; i < GATES; i++)
    expect(Math.abs(coil.with([0, i]) - afresh(island, [0, i])), `gate ${i}`).toBeLessThan(NEAR);
  expect(coil.solver.solved).toBeLessThan(5);
});

it('along a chain each gate gives less than the one before', () => {
  const volts = singles('chain');
  for (let i = 1; i < GATES; i++) expect(volts[i], `gate ${i}`).toBeLessThan(volts[i - 1]!);
});

it('in a ring gates as far from the ends give the same', () => {
  const volts = singles('ring');
  for (let i = 0; i < GATES; i++)
    expect(Math.abs(volts[i]! - volts[GATES - 1 - i]!), `gate ${i}`).toBeLessThan(NEAR);
  expect(volts[0]).toBeGreaterThan(volts[GATES / 2]!);
});

it('in a star all gates give the same', () => {
  const volts = singles('star');
  for (let i = 1; i < GATES; i++) expect(Math.abs(volts[i]! - volts[0]!)).toBeLessThan(NEAR);
});

/** Any wires and contacts between the supply's plus and the coil, whatever they come to; nothing beside the coil. */
interface Loop {
  readonly netCount: number;
  /** nets and m */
  readonly wires: readonly (readonly [number, number, number])[];
  readonly gates: readonly (readonly [number, number])[];
  /** gates opened, one after the other */
  readonly order: readonly number[];
}

const loop: fc.Arbitrary<Loop> = fc.integer({ min: 2, max: 14 }).chain((nodes) => {
  // Node 0 is the plus, node 1 the coil's near end.
  const net = fc.nat(nodes - 1).map((k) => (k === 0 ? PLUS : k === 1 ? OUT : FIRST + k - 2));
  const gates = fc.array(fc.tuple(net, net), { minLength: 1, maxLength: 16 });
  return fc.record({
    netCount: fc.constant(FIRST + nodes),
    wires: fc.array(fc.tuple(net, net, fc.double({ min: 0.01, max: 300, noNaN: true })), {
      maxLength: 2 * nodes,
    }),
    gates,
    order: fc.array(fc.nat(15), { maxLength: 8 }),
  });
});

/** V at the coil as the gates are opened one after the other, the first time with none open. */
function opening({ netCount, wires, gates, order }: Loop, each: (volts: number, open: number[]) => void) {
  const coil = new CoilVolts(islandOfLoop({ netCount, wires, gates, order }));
  const open: number[] = [];
  each(coil.with(open), open);
  for (const i of new Set(order.map((k) => k % gates.length))) {
    open.push(i);
    each(coil.with(open), open);
  }
}

const islandOfLoop = ({ netCount, wires, gates }: Loop): Island =>
  coilIsland(
    loopOf(
      netCount,
      wires.map(([a, b, metres]) => wire(a, b, metres)),
      gates.map(([a, b], i) => gate(i, a, b)),
    ),
  );

it('opening one more gate never lowers the volts at the coil (Rayleigh)', () => {
  let fed = 0;
  fc.assert(
    fc.property(loop, (of) => {
      let before = 0;
      opening(of, (volts) => {
        expect(volts).toBeGreaterThanOrEqual(before - NEAR);
        before = volts;
      });
      expect(before).toBeLessThanOrEqual(SUPPLY_VOLTS + NEAR);
      if (before > 1) fed++;
    }),
    { numRuns: 500 },
  );
  // Loops that never feed the coil would prove nothing.
  expect(fed).toBeGreaterThan(100);
});

it('any loop, one gate and more open: as when solved afresh', () => {
  fc.assert(
    fc.property(loop, (of) => {
      const island = islandOfLoop(of);
      opening(of, (volts, open) => {
        expect(Math.abs(volts - afresh(island, open))).toBeLessThan(NEAR);
      });
    }),
    { numRuns: 500 },
  );
});

it('a wire between two closed gates, cut off from all else, leaves the other gates their digits', () => {
  const pairs = Array.from({ length: 20 }, (_, k) => FIRST + 2 * k);
  const island = coilIsland(
    loopOf(
      FIRST + 40,
      pairs.map((net) => wire(net, net + 1, 2)),
      [
        gate(0, PLUS, OUT),
        ...pairs.flatMap((net, k) => [gate(2 * k + 1, PLUS, net), gate(2 * k + 2, net + 1, OUT)]),
      ],
    ),
  );
  const coil = new CoilVolts(island);
  for (const i of [0, 1, 2, 39, 40])
    expect(Math.abs(coil.with([i]) - afresh(island, [i])), `gate ${i}`).toBeLessThan(NEAR);
  expect(coil.solver.solved).toBe(0);
});
