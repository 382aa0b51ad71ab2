import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/read.ts';
import { check } from '../../src/repair/check.ts';
import { Study } from '../../src/study/study.ts';
import { cases as counted } from '../helpers/cases.ts';
import { beyondEnumeration } from '../helpers/example-plans.ts';
import { sampled, share, WHOLE } from '../helpers/share.ts';
import { reportOf } from '../logic/product.ts';
import { sample, singles } from '../oracles/corpus/corpus.ts';
import { Ground } from '../oracles/corpus/judgement.ts';
import { type Case, tryOne } from '../oracles/corpus/tally.ts';

/**
 * A fixed sample of the single mistakes in the right examples; `npm run corpus` takes them all. What the oracles call
 * harmful must fail the check, and no harmless mistake with a core may.
 */
const folder = new URL('../../examples/', import.meta.url);
const plans = readdirSync(folder).filter(
  (file) => file.endsWith('.yaml') && !beyondEnumeration(readFileSync(new URL(file, folder), 'utf8')),
);
/** Fewer of a plan with very many gates, whose every state takes the oracle long. */
const eachOf = (text: string): number =>
  (WHOLE ? 1 : 2) * ((text.match(/from: snap/g) ?? []).length > 10 ? 6 : 15);
const SEED = 20261125;
/** Share of caught mistakes whose first finding speaks of a part that was touched. */
const LEAST_TOLD = 0.95;

/** Every so many caught mistakes with a core, the report with its repair is asked for as well: that is what people see. */
const EVERY = 12;

const count = { tried: 0, harmful: 0, caught: 0, open: 0, asked: 0, told: 0 };

/** Whether the first grave finding, as the command prints it, speaks of a part that was touched. */
function speaks(c: Case): boolean {
  const read = readPlan(c.mutant.text, 'mutant.yaml');
  if (!read.ok) return false;
  const first = check(Study.of(read.plan)).findings.find((f) =>
    ['danger', 'warning', 'fault'].includes(f.severity),
  );
  if (!first) return false;
  const words = [
    ...first.parts,
    ...first.terminals,
    first.message,
    first.why,
    first.fix,
    ...(first.repair?.words ?? []),
  ].join(' ');
  return c.mutant.touched.parts.some((t) => words.includes(t));
}

const brief = (c: Case): unknown[] => [c.mutant.kind, c.mutant.name, c.judged.symptoms, c.verdict, c.found];

describe.each(sampled(plans, 12))('%s', (file) => {
  const text = readFileSync(new URL(file, folder), 'utf8');

  it.runIf(WHOLE)('has every harmful mistake found and no harmless one failed', { timeout: 120_000 }, () => {
    expect(reportOf(text).verdict).toBe('pass');
    const ground = new Ground(text);
    const cases = sample(singles(text), share(eachOf(text)), SEED).map((m) => tryOne(file, m, ground));
    counted(cases.length);
    for (const c of cases) {
      count.tried++;
      if (c.judged.symptoms.length > 0) count.harmful++;
      if (c.outcome === 'caught') count.caught++;
      if (c.outcome === 'open') count.open++;
      if (c.outcome !== 'caught' || c.mutant.family === 'data' || count.caught % EVERY !== 0) continue;
      count.asked++;
      if (speaks(c)) count.told++;
    }
    expect(cases.filter((c) => c.outcome === 'missed').map(brief)).toEqual([]);
    const core = cases.filter((c) => c.mutant.family !== 'data');
    expect(core.filter((c) => c.outcome === 'false alarm').map(brief)).toEqual([]);
    expect(core.filter((c) => c.outcome === 'refused').map(brief)).toEqual([]);
  });
});

afterAll(() => {
  const told = count.told / Math.max(1, count.asked);
  console.log(
    `${count.tried} single mistakes in ${sampled(plans, 12).length} plans: ${count.harmful} do harm, ${count.caught} caught, ` +
      `${count.open} not judged; the first finding speaks of a touched part in ${(100 * told).toFixed(1)} % of ${count.asked}`,
  );
  expect(count.tried).toBeGreaterThan(WHOLE ? 200 : 3);
  // Of a few, one is too large a share.
  if (WHOLE) expect(told).toBeGreaterThanOrEqual(LEAST_TOLD);
});
