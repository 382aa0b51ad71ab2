/** In which positions a repair is tried at a quick look. */
import { describe, expect, it } from 'vitest';
import { readingsOf } from '../../src/repair/required-states.ts';
import { Study } from '../../src/study/study.ts';
import { wired } from '../findings/wired-plans.ts';
import { inputs, planOf } from '../helpers/plan-of.ts';

describe('the positions in which a repair is tried', () => {
  it('have every block at work while all gates call: a bypassed cut-out is no repair', () => {
    const plan = planOf(
      wired({
        parts: 'PS1 K1 g h c1 c2',
        wires: 'PS1.+ c1.COM, c1.NC c2.COM, c2.NC g.COM, g.COM h.COM, g.NO K1.A1, h.NO K1.A1, K1.A2 PS1.-',
        intent: ['K1: {runs-on: [g, h], blocked-by: [c1, c2]}'],
      }),
    );
    const wanted = readingsOf(Study.of(plan).verified!).flat();
    for (const block of ['c1', 'c2']) {
      const moved = new Set(inputs(plan, ['g', 'h', block]));
      const state = wanted.find(
        ({ steps: [first, ...more] }) =>
          more.length === 0 && first!.size === moved.size && [...moved].every((i) => first!.has(i)),
      );
      expect(state?.want.get('K1'), block).toBe(false);
    }
  });
});
