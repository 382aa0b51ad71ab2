import { readFileSync } from 'node:fs';
import { it } from 'vitest';
import { planOf } from './helpers/plan-of.ts';
import { Study } from '../src/study/study.ts';
import { NumberedCircuit } from '../src/repair/numbered-circuit.ts';
import { QuickLook } from '../src/repair/quick-look.ts';
import { readingsOf } from '../src/repair/required-states.ts';
import { countWrong } from '../src/repair/quick-faults.ts';
it('x', () => {
  const [w, r] = process.env.F!.split(',');
  const wrong = Study.of(planOf(readFileSync(w!, 'utf8')));
  const right = Study.of(planOf(readFileSync(r!, 'utf8')));
  const c = new NumberedCircuit(right);
  const q = new QuickLook(c);
  const wi = q.wiring(c.cores);
  const name = (s: any) => [...s].map((i: number) => right.circuit.inputs[i]!.part).join('+');
  for (const states of readingsOf(wrong.verified!)) for (const s of states) {
    const o = q.outcome(wi, s.steps);
    for (const [t, run] of s.want) if (o.running.has(t) !== run || o.chatters || o.shorted) console.log('BAD', s.steps.map(name).join(' > '), t, run, o.running.has(t), o.chatters, o.shorted);
  }
  console.log('total', countWrong(q, wi, readingsOf(wrong.verified!), 1000));
}, 100000);
