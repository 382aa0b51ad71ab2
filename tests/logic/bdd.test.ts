import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Bdd, FALSE, type Fn, TRUE } from '../../src/logic/bdd.ts';
import { Undecided } from '../../src/logic/undecided.ts';

/** An expression, and beside it its truth by plain evaluation. */
type Expr =
  | { readonly op: 'var'; readonly index: number }
  | { readonly op: 'constant'; readonly value: boolean }
  | { readonly op: 'not'; readonly a: Expr }
  | { readonly op: 'and' | 'or' | 'xor' | 'diff'; readonly a: Expr; readonly b: Expr }
  | { readonly op: 'ite'; readonly a: Expr; readonly b: Expr; readonly c: Expr };

const MOST = 8;
const SIZE = 1 << MOST;

const { expr } = fc.letrec<{ expr: Expr }>((tie) => ({
  expr: fc.oneof(
    { maxDepth: 6, withCrossShrink: true },
    { weight: 4, arbitrary: fc.record({ op: fc.constant('var' as const), index: fc.nat(MOST - 1) }) },
    { weight: 1, arbitrary: fc.record({ op: fc.constant('constant' as const), value: fc.boolean() }) },
    { weight: 2, arbitrary: fc.record({ op: fc.constant('not' as const), a: tie('expr') }) },
    {
      weight: 8,
      arbitrary: fc.record({
        op: fc.constantFrom('and' as const, 'or' as const, 'xor' as const, 'diff' as const),
        a: tie('expr'),
        b: tie('expr'),
      }),
    },
    {
      weight: 3,
      arbitrary: fc.record({
        op: fc.constant('ite' as const),
        a: tie('expr'),
        b: tie('expr'),
        c: tie('expr'),
      }),
    },
  ),
}));

function truth(e: Expr, at: number): boolean {
  switch (e.op) {
    case 'var':
      return ((at >> e.index) & 1) === 1;
    case 'constant':
      return e.value;
    case 'not':
      return !truth(e.a, at);
    case 'and':
      return truth(e.a, at) && truth(e.b, at);
    case 'or':
      return truth(e.a, at) || truth(e.b, at);
    case 'xor':
      return truth(e.a, at) !== truth(e.b, at);
    case 'diff':
      return truth(e.a, at) && !truth(e.b, at);
    default:
      return truth(e.a, at) ? truth(e.b, at) : truth(e.c, at);
  }
}

function made(bdd: Bdd, e: Expr): Fn {
  switch (e.op) {
    case 'var':
      return bdd.variable(e.index);
    case 'constant':
      return e.value ? TRUE : FALSE;
    case 'not':
      return bdd.not(made(bdd, e.a));
    case 'ite':
      return bdd.ite(made(bdd, e.a), made(bdd, e.b), made(bdd, e.c));
    default:
      return bdd[e.op](made(bdd, e.a), made(bdd, e.b));
  }
}

const table = (e: Expr): boolean[] => Array.from({ length: SIZE }, (_, at) => truth(e, at));
const read = (bdd: Bdd, f: Fn): boolean[] =>
  Array.from({ length: SIZE }, (_, at) => bdd.evaluate(f, (v) => ((at >> v) & 1) === 1));
const bits = (x: number): number => (x === 0 ? 0 : (x & 1) + bits(x >> 1));

const property = (name: string, arbitraries: fc.Arbitrary<Expr>[], run: (...es: Expr[]) => void) =>
  it(name, () => {
    fc.assert(
      fc.property(fc.tuple(...arbitraries), (es) => run(...es)),
      { numRuns: 300, seed: 20 },
    );
  });

describe('decision diagrams against truth tables of 8 variables', () => {
  property('every operation', [expr], (e) => {
    const bdd = new Bdd(MOST);
    expect(read(bdd, made(bdd, e))).toEqual(table(e));
  });

  property('equal functions are the same node, different ones are not', [expr, expr], (a, b) => {
    const bdd = new Bdd(MOST);
    const same = table(a).every((x, at) => x === table(b)[at]);
    expect(made(bdd, a) === made(bdd, b)).toBe(same);
    expect(made(bdd, { op: 'not', a: { op: 'not', a } })).toBe(made(bdd, a));
  });

  property('any and every', [expr, expr, expr], (...es) => {
    const bdd = new Bdd(MOST);
    const fs = es.map((e) => made(bdd, e));
    const tables = es.map(table);
    const at = [...Array(SIZE).keys()];
    expect(read(bdd, bdd.any(fs))).toEqual(at.map((k) => tables.some((t) => t[k])));
    expect(read(bdd, bdd.every(fs))).toEqual(at.map((k) => tables.every((t) => t[k])));
    expect([bdd.any([]), bdd.every([])]).toEqual([FALSE, TRUE]);
  });

  property('composition puts all functions in at once', [expr, expr, expr], (e, forFirst, forLast) => {
    const bdd = new Bdd(MOST);
    const map = new Map([
      [0, made(bdd, forFirst)],
      [5, made(bdd, forLast)],
    ]);
    const wanted = Array.from({ length: SIZE }, (_, at) => {
      const put = (v: number, on: boolean, x: number) => (on ? x | (1 << v) : x & ~(1 << v));
      return truth(e, put(5, truth(forLast, at), put(0, truth(forFirst, at), at)));
    });
    expect(read(bdd, bdd.compose(made(bdd, e), map))).toEqual(wanted);
  });

  property('support is what the function really depends on', [expr], (e) => {
    const bdd = new Bdd(MOST);
    const t = table(e);
    const wanted = [...Array(MOST).keys()].filter((v) => t.some((x, at) => x !== t[at ^ (1 << v)]));
    expect([...bdd.support(made(bdd, e))].sort()).toEqual(wanted);
  });

  it('nearest satisfies, and nothing satisfies with fewer variables moved', () => {
    fc.assert(
      fc.property(expr, fc.nat(SIZE - 1), (e, rest) => {
        const bdd = new Bdd(MOST);
        const found = bdd.nearest(made(bdd, e), (v) => ((rest >> v) & 1) === 1);
        const distances = table(e).flatMap((x, at) => (x ? [bits(at ^ rest)] : []));
        expect(found === undefined).toBe(distances.length === 0);
        if (!found) return;
        let at = rest;
        for (const [v, on] of found) at = on ? at | (1 << v) : at & ~(1 << v);
        expect(truth(e, at)).toBe(true);
        expect(bits(at ^ rest)).toBe(Math.min(...distances));
      }),
      { numRuns: 500, seed: 21 },
    );
  });

  it('gives up where the diagram passes its budget, and never returns a wrong one', () => {
    // The middle bits of a product have no small diagram in any order; here: pairs far apart in the order.
    const pairs = 12;
    const bdd = new Bdd(2 * pairs, 1000);
    const grow = () => {
      let f: Fn = FALSE;
      for (let i = 0; i < pairs; i++) f = bdd.or(f, bdd.and(bdd.variable(i), bdd.variable(pairs + i)));
      return f;
    };
    expect(grow).toThrow(Undecided);
    expect(bdd.size).toBeLessThanOrEqual(1000);
    expect(bdd.evaluate(bdd.variable(3), (v) => v === 3)).toBe(true);
  });
});
