import { readFileSync } from 'node:fs';
import { it } from 'vitest';
import { planOf } from './helpers/plan-of.ts';
import { Study } from '../src/study/study.ts';
import { Search } from '../src/repair/search.ts';
import { judgeAsTaken } from '../src/findings/judge.ts';
import { rewired } from '../src/repair/rewired.ts';
import { planAfter } from '../src/edit/expected-plan.ts';
import { readingsOf } from '../src/repair/required-states.ts';
import { failsByWiring, grave } from '../src/repair/grave.ts';
it('x', () => {
  const study = Study.of(planOf(readFileSync(process.env.F!, 'utf8')));
  const r = judgeAsTaken(study);
  const s: any = new (Search as any)(study, r, readingsOf(study.verified!), { thorough: true });
  const single = s.passing(s.circuit.cores, { edits: [], ends: 0, added: 0, oddness: 0 });
  const want = process.env.W;
  console.log('single', single.length);
  for (const t of single) if (JSON.stringify(t.edits).includes(want!)) console.log('S', JSON.stringify(t.edits));
  for (const t of single) if (JSON.stringify(t.edits).includes(want!)) {
    const h = s.ranking.harm; const cores = rewired(s.circuit, s.circuit.cores, t.edits);
    console.log('H', t.edits.map((e: any) => [h.touchesEarth(e), h.feedsFromLoop(e), h.outOfReach(e)]), [...h.bypassed(cores)], [...h.bypassedNow], h.leavesOut(cores), h.feedsTrigger(cores), h.strays(cores), s.ranking.strain(t.edits), planAfter(study.plan, t.edits) !== undefined);
  }
  console.log('kinds', JSON.stringify(single.map((t: any) => t.edits.map((e: any) => e.do + ' ' + (e.to ?? '')).join()).slice(0, 60)));
  console.log('ranked', s.ranking.ranked(single).length, JSON.stringify(s.ranking.ranked(single).slice(0, 12).map((r: any) => [r.t.edits, r.cost])));
  for (const t of s.ranking.ranked(single)) if (JSON.stringify(t.t.edits).includes(want!)) {
    const after = Study.of(t.after); const told = judgeAsTaken(after);
    console.log('R', JSON.stringify(t.t.edits), t.cost, 'idle', s.ranking.idlesAnInput(t.t), 'fails', failsByWiring(after), grave(told.findings, true).map((f: any) => f.message), grave(told.findings, false).map((f: any) => f.id), told.logic.holds);
  }
}, 100000);
