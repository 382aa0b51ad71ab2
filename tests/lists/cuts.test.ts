import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutReel, cableGroups, cutFromReels, pieceCm } from '../../src/lists/cuts.ts';
import { planOf } from '../helpers/plan-of.ts';

const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0);

function reelsOf(pieces: readonly number[], sizes: readonly number[]): readonly CutReel[] {
  const cut = cutFromReels(pieces, sizes);
  if ('tooLong' in cut) throw new Error(`piece ${cut.tooLong} is too long`);
  return cut.reels;
}

/** Fewest reels of one size, by trying every way to share the pieces out. */
function fewest(pieces: readonly number[], size: number): number {
  let best = pieces.length;
  const used: number[] = [];
  const place = (i: number): void => {
    if (used.length >= best && i < pieces.length) return;
    if (i === pieces.length) {
      best = Math.min(best, used.length);
      return;
    }
    for (let r = 0; r < used.length; r++) {
      if (used[r]! + pieces[i]! > size) continue;
      used[r]! += pieces[i]!;
      place(i + 1);
      used[r]! -= pieces[i]!;
    }
    used.push(pieces[i]!);
    place(i + 1);
    used.pop();
  };
  place(0);
  return best;
}

describe('cutFromReels', () => {
  const size = fc.integer({ min: 1, max: 5000 });
  const stock = fc
    .array(size, { minLength: 1, maxLength: 4 })
    .chain((sizes) =>
      fc.tuple(
        fc.constant(sizes),
        fc.array(fc.integer({ min: 1, max: Math.max(...sizes) }), { maxLength: 40 }),
      ),
    );

  it('cuts every piece once and never more than a reel holds', () => {
    fc.assert(
      fc.property(stock, ([sizes, pieces]) => {
        const reels = reelsOf(pieces, sizes);
        expect(reels.flatMap((r) => r.pieces).sort((a, b) => a - b)).toEqual([...pieces.keys()]);
        for (const r of reels) {
          expect(sizes).toContain(r.cm);
          expect(r.wasteCm).toBeGreaterThanOrEqual(0);
          expect(sum(r.pieces.map((i) => pieces[i]!)) + r.wasteCm).toBe(r.cm);
          // no smaller reel would have done
          expect(sizes.some((s) => s < r.cm && s >= r.cm - r.wasteCm)).toBe(false);
        }
        expect(reels.length).toBeLessThanOrEqual(pieces.length);
      }),
    );
  });

  it('takes at most 11/9 of the fewest reels and 6/9 of one more (Dósa 2007; Johnson 1973 with 4)', () => {
    const small = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(small, (pieces) => {
        const used = reelsOf(pieces, [60]).length;
        const least = fewest(pieces, 60);
        expect(used).toBeGreaterThanOrEqual(least);
        expect(used).toBeLessThanOrEqual((11 / 9) * least + 6 / 9 + 1e-9);
      }),
    );
  });

  it('tells the piece that is longer than any reel', () => {
    expect(cutFromReels([10, 31, 12], [20, 30])).toEqual({ tooLong: 1 });
    expect(cutFromReels([30], [20, 30])).toEqual({ reels: [{ cm: 30, pieces: [0], wasteCm: 0 }] });
    expect(cutFromReels([], [20])).toEqual({ reels: [] });
  });
});

describe('pieceCm', () => {
  it('adds what a run states, else 10 % and at least 10 cm at each end', () => {
    expect(pieceCm({ length: 2, slack: 0 })).toBe(200);
    expect(pieceCm({ length: 2, slack: 0.25 })).toBe(250);
    expect(pieceCm({ length: 2 })).toBe(220);
    expect(pieceCm({ length: 5 })).toBe(550);
    expect(pieceCm({ length: 0.6 })).toBe(80);
    expect(pieceCm({ length: 0.601 })).toBe(81);
    expect(pieceCm({})).toBeUndefined();
  });

  it('is never short, and never more than a centimetre long', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300_000 }),
        fc.option(fc.integer({ min: 0, max: 1000 }), { nil: undefined }),
        (mm, share) => {
          const length = mm / 1000;
          const more = share === undefined ? Math.max(length * 0.1, 0.2) : length * (share / 100);
          const cm = pieceCm(share === undefined ? { length } : { length, slack: share / 100 })!;
          expect(cm / 100).toBeGreaterThanOrEqual(length + more - 1e-7);
          expect(cm / 100).toBeLessThan(length + more + 0.01);
        },
      ),
    );
  });
});

describe('cableGroups', () => {
  it('cuts one piece a run, all its cores together, and knows a cable by all its data', () => {
    const plan = planOf(`stock:
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}
parts: {a: {kind: joint}, b: {kind: joint}}
runs:
  - {cable: bell, length: 1 m, cores: {red: [a, b], white: [a, b]}}
  - {cable: {gauge: 18 AWG, cores: 2}, length: 1 m, cores: {red: [a, b]}}
  - {cable: bell, length: 2 m, cores: {red: [a, b]}}
  - {cable: {gauge: 18 AWG, cores: 2, insulation: 300 V}, length: 1 m, cores: {red: [a, b]}}
  - {link: [a, b]}
`);
    const groups = cableGroups(plan);
    expect(groups.map((g) => [g.name, g.pieces.map((p) => p.run)])).toEqual([
      ['bell', [1, 3]],
      ['18 AWG 2-core', [2]],
      ['18 AWG 2-core (2)', [4]],
    ]);
    expect(groups[0]!.pieces.map((p) => p.spare)).toEqual([0, 1]);
  });
});
