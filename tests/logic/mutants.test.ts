import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { cases } from '../helpers/cases.ts';
import { beyondEnumeration } from '../helpers/example-plans.ts';
import { sampled, WHOLE } from '../helpers/share.ts';
import { judge, mutants, type Oracle } from '../oracles/brute.ts';
import { hardFindings, reportOf } from './product.ts';

/**
 * Every single wiring mistake that the enumerating oracle can make in the right examples. A mistake that does harm
 * must give a danger, warning or fault under questions 1 to 5; one that does none must give none of them.
 */
const folder = new URL('../../examples/', import.meta.url);
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
const examples = readdirSync(folder).filter(
  (file) => file.endsWith('.yaml') && !beyondEnumeration(textOf(file)),
);

/**
 * `wrong` counts states reached from all relays released, so a wanted seal-in that does not hold, or an unwanted one
 * that does, leaves it at 0; those show as one of these symptoms of a sequence of moves.
 */
const OF_SEQUENCES = ['stays-on', 'stops-without-cause', 'depends-on-order', 'chatters'];
const refuted = (o: Oracle): boolean =>
  o.targets.some((t) => t.wrong > 0) || OF_SEQUENCES.some((s) => o.symptoms.has(s));

const count = { mutants: 0, harmful: 0, missed: 0, invented: 0, proof: 0 };

describe.each(sampled(examples, 12))('%s', (file) => {
  const text = textOf(file);

  it('is right by both', () => {
    expect([...judge(text).symptoms]).toEqual([]);
    const report = reportOf(text);
    expect(hardFindings(report)).toEqual([]);
    expect(report.logic.holds).toBe(true);
  });

  it('has every harmful mistake found and no harmless one blamed', { timeout: 120_000 }, () => {
    const differ: unknown[] = [];
    for (const mutant of mutants(text).filter((_, i) => i % (WHOLE ? 9 : 40) === 0)) {
      const oracle = judge(mutant.text);
      const report = reportOf(mutant.text);
      const found = hardFindings(report);
      count.mutants++;
      cases(1);
      if (oracle.harmful) count.harmful++;
      if (oracle.harmful && found.length === 0) count.missed++;
      if (!oracle.harmful && found.length > 0) count.invented++;
      const proof = (report.logic.holds === false) === refuted(oracle);
      if (!proof) count.proof++;
      if (oracle.harmful === found.length > 0 && proof) continue;
      differ.push([mutant.name, [...oracle.symptoms], found.map((f) => f.id), report.logic.holds]);
    }
    expect(differ).toEqual([]);
  });
});

afterAll(() => {
  console.log(
    `${count.mutants} wiring mistakes in ${sampled(examples, 12).length} plans: ${count.harmful} do harm, ${count.missed} missed, ` +
      `${count.invented} invented, ${count.proof} proofs that differ`,
  );
  expect(count.mutants).toBeGreaterThan(WHOLE ? 70 : 2);
});
