import { readFileSync } from 'node:fs';
import { it } from 'vitest';
import { planOf } from './helpers/plan-of.ts';
import { Study } from '../src/study/study.ts';
import { Bench } from '../src/repair/remedies/bench.ts';
import { wireForVolts } from '../src/repair/remedies/loop-wire.ts';
import { judge } from '../src/findings/judge.ts';
it('x', () => {
  const study = Study.of(planOf(readFileSync(process.env.F!, 'utf8')));
  const f = judge(study).findings.find((x) => x.id === 'coil-too-low')!;
  const b = new Bench(study, { whole: 100, single: 300, until: Infinity });
  for (const o of wireForVolts(b, f)) for (const s of o.sizes) { const r = b.outcome(f, s); console.log('O', s.map((c) => c.words).join(), r?.passes, r?.clean, r?.fresh.map((x: any) => x.id + ' ' + x.severity)); }
}, 100000);
