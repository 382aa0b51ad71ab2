/** A taste of the laws of `monotone.long.test.ts`, in one plan of each practice. */
import { expect, it } from 'vitest';
import { example } from '../../helpers/example-plans.ts';
import { outcomeOf } from './law.ts';
import { WAYS } from './one-change.ts';

it.each(['plover-loft', 'wrong/mains-fuse-below-the-motor'])(
  'one change for the worse ends no finding of %s',
  (name) => {
    const first = new Set<string>();
    const { tried, broken } = outcomeOf(example(name), ({ way }) => !first.has(way) && !!first.add(way));
    expect(broken).toEqual([]);
    expect(tried).toBeGreaterThan(4);
    expect(tried).toBeLessThanOrEqual(WAYS.length);
  },
);
