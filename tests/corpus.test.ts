import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { reportOf } from './logic/product.ts';
import { sample, singles } from './oracles/corpus/corpus.ts';
import { Ground } from './oracles/corpus/judgement.ts';
import { type Case, tryOne } from './oracles/corpus/tally.ts';

/**
 * A fixed sample of the single mistakes in the right examples; `npm run corpus` takes them all. What the oracles call
 * harmful must fail the check, and no harmless mistake with a core may.
 */
const folder = new URL('../examples/', import.meta.url);
const plans = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
/** Fewer of a plan with very many gates, whose every state takes the oracle long. */
const eachOf = (text: string): number => ((text.match(/from: snap/g) ?? []).length > 10 ? 40 : 110);
const SEED = 20261125;
/** Share of caught mistakes whose first finding speaks of a part that was touched. */
const LEAST_TOLD = 0.95;

const count = { tried: 0, harmful: 0, caught: 0, told: 0, open: 0 };

const brief = (c: Case): unknown[] => [c.mutant.kind, c.mutant.name, c.judged.symptoms, c.verdict, c.found];

describe.each(plans)('%s', (file) => {
  const text = readFileSync(new URL(file, folder), 'utf8');

  it('has every harmful mistake found and no harmless one failed', { timeout: 120_000 }, () => {
    expect(reportOf(text).verdict).toBe('pass');
    const ground = new Ground(text);
    const cases = sample(singles(text), eachOf(text), SEED).map((m) => tryOne(file, m, ground));
    for (const c of cases) {
      count.tried++;
      if (c.judged.symptoms.length > 0) count.harmful++;
      if (c.outcome === 'caught') count.caught++;
      if (c.outcome === 'open') count.open++;
      if (c.told) count.told++;
    }
    expect(cases.filter((c) => c.outcome === 'missed').map(brief)).toEqual([]);
    const core = cases.filter((c) => c.mutant.family !== 'data');
    expect(core.filter((c) => c.outcome === 'false alarm').map(brief)).toEqual([]);
    expect(core.filter((c) => c.outcome === 'refused').map(brief)).toEqual([]);
  });
});

afterAll(() => {
  const share = count.told / Math.max(1, count.caught);
  console.log(
    `${count.tried} single mistakes in ${plans.length} plans: ${count.harmful} do harm, ${count.caught} caught, ` +
      `${count.open} not judged; the first finding speaks of a touched part in ${(100 * share).toFixed(1)} %`,
  );
  expect(count.tried).toBeGreaterThan(1900);
  expect(share).toBeGreaterThanOrEqual(LEAST_TOLD);
});
