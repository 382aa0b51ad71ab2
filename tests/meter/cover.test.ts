import fc from 'fast-check';
import { expect, it } from 'vitest';
import { chooseFew, dropNeedless, exchange } from '../../src/meter/cover.ts';

const option = fc.record({
  cost: fc.integer({ min: 1, max: 4 }),
  shows: fc.uniqueArray(fc.nat(9), { maxLength: 6 }),
});

it('a choice shows all that there is to show, and no option in it is needless', () => {
  fc.assert(
    fc.property(fc.array(option, { maxLength: 12 }), (options) => {
      const chosen = exchange(options, chooseFew(options));
      const stays = dropNeedless(chosen.map((i) => options[i]!));
      const left = chosen.filter((_, k) => stays[k]);
      const shown = (list: readonly number[]) => new Set(list.flatMap((i) => options[i]!.shows));
      const all = shown(options.map((_, i) => i));
      expect(shown(left)).toEqual(all);
      for (const i of left) expect(shown(left.filter((k) => k !== i)).size).toBeLessThan(all.size);
    }),
  );
});
