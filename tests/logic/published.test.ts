import { describe, expect, it } from 'vitest';
import { runsAt } from '../../src/logic/verify.ts';
import { published } from '../oracles/published.ts';
import { movedOf, verifiedOf, walk } from './product.ts';

// A cut-out cannot be what a load runs on; the lamp of the burner string only has to be observed.
const readable = (text: string): string =>
  text.replace('red: {runs-on: [high_fuel]}', 'red: {runs-on: [low_fuel]}');

describe.each(published)('$id: $source', ({ plan, expect: printed, steps }) => {
  const v = verifiedOf(readable(plan));

  it('gives the printed table', () => {
    for (const p of printed) expect([p, runsAt(v, p.target, movedOf(v, p.inputs))]).toEqual([p, p.runs]);
  });

  it.runIf(steps)('gives the printed sequence', () => {
    const names = Object.keys(steps![0]!.expect);
    const got = walk(
      v,
      names,
      steps!.map((s) => s.move),
    );
    expect(got).toEqual(steps!.map((s) => s.expect));
  });
});
