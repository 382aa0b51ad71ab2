/** Work done several pieces at a time is used in order, and what has to wait is bounded. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder } from '../../../src/cli/many/in-order.ts';

const never = new Promise<never>(() => undefined);
const turn = () => new Promise((done) => setImmediate(done));

describe('pieces of work', () => {
  it('are used once each, in order, whatever order they are done in', async () => {
    const plans = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(plans, fc.integer({ min: 1, max: 6 }), async (turns, atOnce) => {
        const used: number[] = [];
        let [busy, most] = [0, 0];
        const count = await inOrder<number>({
          count: turns.length,
          atOnce,
          work: async (index) => {
            most = Math.max(most, ++busy);
            for (let k = 0; k < turns[index]!; k++) await turn();
            busy--;
            return index;
          },
          size: () => 1,
          use: async (value, index) => {
            await turn();
            expect(value).toBe(index);
            used.push(index);
          },
          stop: never,
        });
        expect(used).toEqual(turns.map((_, index) => index));
        expect(count).toBe(turns.length);
        expect(most).toBeLessThanOrEqual(atOnce);
      }),
      { numRuns: 30 },
    );
  });

  it('wait for a slow first one only up to what may be held', async () => {
    let open: () => void = () => undefined;
    const first = new Promise<void>((done) => (open = done));
    let begun = 0;
    const used: number[] = [];
    const waits: number[] = [];
    const all = inOrder<number>({
      count: 100,
      atOnce: 2,
      work: async (index) => {
        begun++;
        if (index === 0) await first;
        return index;
      },
      size: () => 1_000_000,
      use: async (_, index) => {
        used.push(index);
      },
      waits: (done) => waits.push(done),
      stop: never,
    });
    for (let k = 0; k < 50; k++) await turn();
    // Eight million characters may wait; then nothing new is begun until the first is done.
    expect([begun, used]).toEqual([10, []]);
    expect(waits).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    open();
    expect(await all).toBe(100);
    expect(used).toHaveLength(100);
  });

  it('are left when there is a stop, and what was used is a beginning of all', async () => {
    let stop: () => void = () => undefined;
    const used: number[] = [];
    const count = await inOrder<number>({
      count: 50,
      atOnce: 3,
      work: async (index) => {
        await turn();
        return index;
      },
      size: () => 1,
      use: async (_, index) => {
        used.push(index);
        if (index === 6) stop();
      },
      stop: new Promise<void>((done) => (stop = done)),
    });
    expect(count).toBe(used.length);
    expect(count).toBeLessThan(12);
    expect(used).toEqual(used.map((_, index) => index));
  });
});
