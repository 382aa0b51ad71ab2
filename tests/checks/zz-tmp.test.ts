import { readFileSync, readdirSync } from 'node:fs';
import { it } from 'vitest';
import { check } from '../../src/checks/check.ts';
import { readPlan } from '../../src/plan/read.ts';
it('x', () => {
  for (const f of readdirSync('tests/checks/bases')) {
    const r = readPlan(readFileSync(`tests/checks/bases/${f}`, 'utf8'), f);
    if (!('plan' in r) || !r.plan) { console.log(f, JSON.stringify(r, (k,v)=>v instanceof Map? undefined:v).slice(0, 900)); continue; }
    const rep = check(r.plan);
    console.log(f, rep.verdict, rep.findings.map((x) => `${x.id} ${x.severity}: ${x.message}`));
  }
});
