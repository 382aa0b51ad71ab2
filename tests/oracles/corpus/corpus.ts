/** The corpus: every single mistake of a right plan, fixed samples of it, and double mistakes. */
import { dataMutants } from './data.ts';
import { type Change, distinct, type Mutant, render, shapeAfter } from './mutant.ts';
import { type Sheet, sheetOf } from './sheet.ts';
import { coreChanges } from './wiring.ts';

/** Every single mistake of a plan, each circuit once. */
export function singles(text: string): Mutant[] {
  const s = sheetOf(text);
  return [...distinct(s, coreChanges(s)), ...dataMutants(text)];
}

/** Numbers in 0 .. 1 that are the same every time (xorshift, 32 bit). */
export function dice(seed: number): () => number {
  let x = seed | 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

/** `n` of a list in a random order that is the same every time. */
export function sample<T>(list: readonly T[], n: number, seed: number): T[] {
  const roll = dice(seed);
  const out = [...list];
  for (let i = 0; i < Math.min(n, out.length); i++) {
    const j = i + Math.floor(roll() * (out.length - i));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out.slice(0, n);
}

function both(s: Sheet, a: Change, b: Change): Change | undefined {
  const ends = [...a.moves, ...b.moves].map((m) => m.end);
  const gone = [...(a.leftOut ?? []), ...(b.leftOut ?? [])];
  const clash =
    new Set(ends).size < ends.length ||
    new Set(gone.map((c) => c.run)).size < gone.length ||
    gone.some((c) => ends.some((e) => s.cores[e.core] === c)) ||
    (a.fresh && b.fresh);
  if (clash) return undefined;
  const fresh = a.fresh ?? b.fresh;
  const family = a.family === 'mains' || b.family === 'mains' ? 'mains' : 'wiring';
  return {
    name: `${a.name}; ${b.name}`,
    kind: 'double',
    family,
    moves: [...a.moves, ...b.moves],
    ...(gone.length > 0 ? { leftOut: gone } : {}),
    ...(fresh ? { fresh } : {}),
  };
}

/** `n` pairs of mistakes with cores, drawn from a fixed seed. */
export function doubles(text: string, n: number, seed: number): Mutant[] {
  const s = sheetOf(text);
  const changes = coreChanges(s);
  const roll = dice(seed);
  const pick = (): Change => changes[Math.floor(roll() * changes.length)]!;
  const out: Mutant[] = [];
  for (let tries = 0; out.length < n && tries < 20 * n; tries++) {
    const change = both(s, pick(), pick());
    if (change && shapeAfter(s, change) !== undefined) out.push(render(s, change));
  }
  return out;
}
