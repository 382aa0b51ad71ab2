import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { it } from 'vitest';
import { compare } from '/work/main/tests/logic/compare.ts';
import { randomPlan } from '/work/main/tests/logic/random-plan.ts';

it('x', () => {
  const n = Number(process.env.N ?? 300);
  const tapes = fc.sample(fc.array(fc.nat(119), { minLength: 20, maxLength: 90, size: 'max' }), {
    numRuns: n,
    seed: Number(process.env.SEED ?? 1),
  });
  let harm = 0,
    und = 0,
    err = 0,
    states = 0;
  const cls = new Map<string, string[]>();
  const errs = new Map<string, string>();
  const sy = new Map<string, number>();
  for (const t of tapes) {
    const text = randomPlan(t);
    try {
      const c = compare(text);
      states += c.states;
      if (c.harmful) harm++;
      if (c.undecided) und++;
      for (const s of c.symptoms) sy.set(s, (sy.get(s) ?? 0) + 1);
      if (c.differ.length) {
        const k =
          c.differ
            .map((d) => d.replace(/:.*"i.*/, ''))
            .filter((x, i, a) => a.indexOf(x) === i)
            .join(' ; ') +
          ' | ' +
          c.symptoms.join() +
          ' | ' +
          c.found.join();
        cls.set(k, [...(cls.get(k) ?? []), text]);
      }
    } catch (e) {
      err++;
      errs.set((e as Error).message.split('\n').slice(0, 2).join(' '), text + '\n' + (e as Error).stack);
    }
  }
  console.log({ n, harm, und, err, states }, [...sy]);
  console.log([...errs.keys()].slice(0, 10));
  let i = 0;
  for (const [k, v] of [...cls].sort((a, b) => b[1].length - a[1].length)) {
    console.log(v.length, k);
    writeFileSync(`/tmp/dis/${i++}.yaml`, `# ${k}\n` + v.sort((a, b) => a.length - b.length)[0]);
  }
  i = 0;
  for (const [k, v] of errs) writeFileSync(`/tmp/dis/err${i++}.yaml`, `# ${k}\n` + v);
}, 600000);
