import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grow } from '../../src/edit/grow.ts';
import { addGate, type Growth, removeGate } from '../../src/edit/growth.ts';
import { Refusal } from '../../src/edit/text-changes.ts';
import { compare, isWorse } from '../../src/findings/compare.ts';
import { judge } from '../../src/findings/judge.ts';
import type { Plan, Run } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { beyondEnumeration, exampleNames, examplePath } from '../helpers/example-plans.ts';
import { sampled, WHOLE } from '../helpers/share.ts';
import { judge as oracle } from '../oracles/brute.ts';
import { good } from '../plan/helpers.ts';

const textOf = (name: string) => readFileSync(examplePath(name), 'utf8');
const gatesOf = (plan: Plan) => [...plan.parts.values()].flatMap((p) => (p.kind === 'gate' ? [p.name] : []));
const NEW = 'Neu-9';

/** Two lengths that add up to that of the run in its own words: `8 ft 6 in` of `8 ft` and `6 in`. */
function halves({ unit, length }: Run) {
  const text = (n: number, word: string, size: number) => ({
    text: `${Math.round(n * 1000) / 1000} ${word}`,
    metres: n * size,
  });
  if (unit !== 'ft') {
    const [word, size] = length! < 1 ? (['cm', 0.01] as const) : (['m', 1] as const);
    const all = length! / size;
    const first = all > 1 ? 0.5 : all / 2;
    return { length: text(first, word, size), onward: text(all - first, word, size) };
  }
  const inches = Math.round(length! / 0.0254);
  const odd = inches % 12;
  return odd === 0
    ? { length: text(inches / 48, 'ft', 0.3048), onward: text(inches / 16, 'ft', 0.3048) }
    : { length: text(odd, 'in', 0.0254), onward: text((inches - odd) / 12, 'ft', 0.3048) };
}

/** The growth behind a gate; a cable that goes on is cut so that the pieces are as long as it. */
function grownBehind(plan: Plan, after: string): Growth {
  const length = { text: '3 m', metres: 3 };
  try {
    return addGate(plan, { name: NEW, after, length, onward: undefined });
  } catch (error) {
    if (!(error instanceof Refusal) || !error.message.includes('--onward')) throw error;
    const cut = addGate(plan, { name: NEW, after, length, onward: length }).fresh!.like;
    return addGate(plan, { name: NEW, after, ...halves(plan.runs[cut]!) });
  }
}

function textAfter(text: string, plan: Plan, growth: Growth): string {
  const applied = grow(text, plan, growth);
  if ('refused' in applied) throw new Refusal(applied.refused);
  return applied.text;
}

/** Undefined where the wiring of a gate is of no kind that can be grown. */
function added(text: string, plan: Plan, gate: string): string | undefined {
  try {
    return textAfter(text, plan, grownBehind(plan, gate));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(error.message).toMatch(/several cables|on 3 of its terminals|bare link/);
    return undefined;
  }
}

const SHOPS = [...exampleNames(), 'large/brackwater-college', 'large/quarrel-sheds', 'large/tallow-reach'];

describe('every right example', () => {
  it.each(sampled(SHOPS, 60))(
    '%s reads byte by byte as before, once a gate was added and taken out',
    (name) => {
      const text = textOf(name);
      const plan = good(text);
      for (const gate of gatesOf(plan).filter(
        (_, i) => i % (name.startsWith('large') ? 6 : WHOLE ? 1 : 8) === 0,
      )) {
        const more = added(text, plan, gate);
        if (more === undefined) continue;
        expect(more.split('\n').length).toBeGreaterThanOrEqual(text.split('\n').length);
        expect(textAfter(more, good(more), removeGate(good(more), NEW))).toBe(text);
      }
    },
  );

  // Two contacts side by side conduct when either does (Shannon 1938): a gate added in parallel stands for its neighbour.
  const small = exampleNames().filter((name) => !beyondEnumeration(textOf(name)));
  it.each(sampled(small, 20))(
    '%s does for the new gate what it does for its neighbour, by an oracle of its own',
    (name) => {
      const text = textOf(name);
      const plan = good(text);
      const [gate] = gatesOf(plan);
      if (gatesOf(plan).length > 5) return;
      const more = added(text, plan, gate!);
      if (more === undefined) return;
      const { table } = oracle(text);
      const order = Object.keys(table[0]!.inputs);
      const before = new Map(table.map(({ inputs, on }) => [JSON.stringify(inputs), on]));
      const after = oracle(more);
      expect([...after.symptoms]).toEqual([]);
      for (const { inputs, on } of after.table) {
        const { [NEW]: fresh, ...others } = inputs;
        const as = { ...others, [gate!]: fresh === 'open' ? 'open' : others[gate!] };
        const key = JSON.stringify(Object.fromEntries(order.map((input) => [input, as[input]])));
        expect([inputs, on]).toEqual([inputs, before.get(key)]);
      }
    },
  );
});

it('random changes of a passing plan leave it passing, or are told to be worse with what came', () => {
  const names = exampleNames();
  const shops = new Map<string, { text: string; plan: Plan; before: ReturnType<typeof judge> }>();
  const shopOf = (name: string) => {
    const known = shops.get(name);
    if (known !== undefined) return known;
    const text = textOf(name);
    const plan = good(text);
    const shop = { text, plan, before: judge(Study.of(plan)) };
    shops.set(name, shop);
    return shop;
  };
  let made = 0;
  fc.assert(
    fc.property(
      fc.nat(names.length - 1),
      fc.nat(20),
      fc.boolean(),
      fc.constantFrom(0.1, 1, 7, 60, 800),
      fc.constantFrom(0.1, 2, 30),
      (shop, which, isAdding, metres, more) => {
        const { text, plan, before } = shopOf(names[shop]!);
        const gates = gatesOf(plan);
        const gate = gates[which % gates.length]!;
        const long = (n: number) => ({ text: `${n} m`, metres: n });
        let next: string;
        try {
          const adding = { name: NEW, after: gate, length: long(metres) };
          next = textAfter(
            text,
            plan,
            isAdding
              ? addGate(plan, { ...adding, onward: which % 2 ? long(more) : undefined })
              : removeGate(plan, gate),
          );
        } catch (error) {
          if (error instanceof Refusal) return;
          throw error;
        }
        made++;
        expect(before.verdict).toBe('pass');
        const after = judge(Study.of(good(next)));
        const compared = compare(before, after, isAdding ? NEW : gate);
        expect(isWorse(before, after, compared)).toBe(after.verdict !== 'pass');
        if (after.verdict !== 'pass') expect(compared.came.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: WHOLE ? 200 : 3 },
  );
  if (WHOLE) expect(made).toBeGreaterThan(100);
});
