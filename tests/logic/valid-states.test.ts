/** At most one position of each selector, by counting: a selector of n positions stands in one of n. */
import { expect, it } from 'vitest';
import { effort } from '../../src/circuit/effort.ts';
import { Bdd, FALSE, TRUE } from '../../src/logic/bdd.ts';
import { inputVariable } from '../../src/logic/conduction.ts';
import { validStates } from '../../src/logic/valid-states.ts';
import { Study } from '../../src/study/study.ts';
import { planOf } from '../helpers/plan-of.ts';

/** The circuit of a plan with selectors of so many positions each. */
function withSelectors(...positions: readonly number[]) {
  const parts = positions.map(
    (n, i) =>
      `  S${i}: {kind: selector, positions: [${Array.from({ length: n }, (_, k) => `p${k}`).join(', ')}]}`,
  );
  return Study.of(planOf(`format: 1\nparts:\n${parts.join('\n')}\nruns: []\n`)).wired;
}

it.each([[2], [3], [6], [2, 3], [4, 2, 3]])(
  'holds for every choice of positions of selectors: %j %j',
  (...positions) => {
    const circuit = withSelectors(...positions);
    const bdd = new Bdd(circuit.inputs.length + circuit.relays.length);
    const valid = validStates(circuit, bdd);
    const { inputs } = circuit;
    let count = 0;
    for (let state = 0; state < 2 ** inputs.length; state++) {
      const on = inputs.filter((_, i) => state & (2 ** i));
      const single = new Set(on.map((i) => i.part)).size === on.length;
      const at = inputs.reduce((f, i) => {
        const v = bdd.variable(inputVariable(circuit, i.index));
        return bdd.and(f, on.includes(i) ? v : bdd.not(v));
      }, TRUE);
      expect(bdd.and(valid, at) !== FALSE).toBe(single);
      if (single) count++;
    }
    expect(count).toBe(positions.reduce((product, n) => product * n, 1));
  },
);

it('takes steps in proportion to the positions', () => {
  const steps = [100, 400].map((n) => {
    const circuit = withSelectors(n);
    const before = effort();
    validStates(circuit, new Bdd(circuit.inputs.length));
    return effort() - before;
  });
  expect(steps[1]! / steps[0]!).toBeLessThan(4.5);
});
