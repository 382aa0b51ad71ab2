import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { allExamples, generatedPlans, type PlanText } from './plans.ts';

function planOf({ name, text }: PlanText): Plan {
  const read = readPlan(text, name);
  if (!read.ok) throw new Error(`${name}\n${read.errors.map((e) => e.message).join('\n')}`);
  return read.plan;
}

const generated = generatedPlans(240, 1);
const plans = generated.map(planOf);
const gates = (plan: Plan): number => [...plan.parts.values()].filter((p) => p.kind === 'gate').length;
const having = (is: (plan: Plan) => boolean): number => plans.filter(is).length;

describe('generated plans', () => {
  it('are read without an error, each by a name of its own', () => {
    expect(plans.length).toBe(240);
    expect(new Set(generated.map((p) => p.name)).size).toBe(240);
  });

  it('are the same for a seed, and others for another', () => {
    expect(generatedPlans(30, 7)).toEqual(generatedPlans(30, 7));
    expect(generatedPlans(30, 7)).not.toEqual(generatedPlans(30, 8));
  });

  it('are mostly small, some of thirty gates and more', () => {
    const sizes = plans.map(gates);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(2);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(62);
    expect(sizes.filter((n) => n < 15).length).toBeGreaterThan(sizes.length / 2);
    expect(sizes.filter((n) => n >= 30).length).toBeGreaterThan(10);
  });

  it('hold every kind of part and every feed', () => {
    const kinds = new Set(plans.flatMap((p) => [...p.parts.values()].map((x) => x.kind)));
    expect(kinds.size).toBe(21);
    for (const feed of ['single', 'two-leg', 'three-phase'])
      expect(
        having((p) => [...p.parts.values()].some((x) => x.kind === 'plug' && x.feed === feed)),
      ).toBeGreaterThan(5);
  });

  it('hold long names, wide colours, links, parallel cores and cores within one part', () => {
    const cores = (p: Plan) => p.runs.flatMap((r) => r.cores);
    expect(having((p) => [...p.parts.keys()].some((n) => n.length === 40))).toBeGreaterThan(5);
    expect(having((p) => cores(p).some((c) => /\p{Script=Han}/u.test(c.colour)))).toBeGreaterThan(5);
    expect(having((p) => p.runs.some((r) => r.link))).toBeGreaterThan(20);
    expect(having((p) => cores(p).some((c) => c.a.part === c.b.part))).toBeGreaterThan(5);
    const pairs = (p: Plan) =>
      cores(p).map((c) =>
        [c.a, c.b]
          .map((e) => `${e.part}.${e.terminal}`)
          .sort()
          .join(),
      );
    expect(having((p) => new Set(pairs(p)).size < pairs(p).length)).toBeGreaterThan(5);
  });
});

describe('examples', () => {
  it('are right and wrong ones, all readable', () => {
    const all = allExamples();
    all.forEach(planOf);
    expect(all.filter((p) => p.name.startsWith('wrong/')).length).toBeGreaterThanOrEqual(20);
    expect(all.filter((p) => !p.name.includes('/')).length).toBeGreaterThanOrEqual(19);
    expect(all.some((p) => p.name.startsWith('bad/'))).toBe(false);
  });
});
