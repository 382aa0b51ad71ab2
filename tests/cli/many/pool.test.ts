/** Workers that die take nothing with them but the answer they owed. */
import { afterEach, describe, expect, it } from 'vitest';
import { Died, Pool } from '../../../src/cli/many/pool.ts';

/** Answers with its own number; a job may end it, throw, or be one that it never answers. */
const SCRIPT = `
  import { parentPort, threadId, workerData } from 'node:worker_threads';
  parentPort.on('message', (job) => {
    if (job === 'end') process.exit(7);
    if (job === 'throw') throw new Error('no net 7');
    if (job !== 'never') parentPort.postMessage({ job, threadId, workerData });
  });
`;
const script = (text: string) => new URL(`data:text/javascript,${encodeURIComponent(text)}`);

type Answer = { readonly job: string; readonly threadId: number; readonly workerData: string };
const pools: Pool<string, Answer>[] = [];
const poolOf = (text: string) => {
  const pool = new Pool<string, Answer>(script(text), 'told at the start');
  pools.push(pool);
  return pool;
};
afterEach(async () => {
  for (const pool of pools.splice(0)) await pool.close();
});

describe('a pool', () => {
  it('keeps its workers for what comes next', async () => {
    const pool = poolOf(SCRIPT);
    const one = (await pool.run('a')) as Answer;
    const two = (await pool.run('b')) as Answer;
    expect([one.job, one.workerData, two.job]).toEqual(['a', 'told at the start', 'b']);
    expect(two.threadId).toBe(one.threadId);
  });

  it('tells of a worker that died, and goes on with another', async () => {
    const pool = poolOf(SCRIPT);
    const [ended, thrown, other] = await Promise.all(['end', 'throw', 'c'].map((job) => pool.run(job)));
    expect(ended).toBeInstanceOf(Died);
    expect((ended as Died).message).toBe('a worker ended with status 7');
    expect((thrown as Died).message).toBe('no net 7');
    expect([(ended as Died).started, (thrown as Died).started]).toEqual([true, true]);
    expect((other as Answer).job).toBe('c');
    expect(((await pool.run('d')) as Answer).job).toBe('d');
  });

  it('tells apart a worker that could not even be started', async () => {
    const died = await new Pool<string, Answer>(new URL('https://example.org/x.js'), 0).run('a');
    expect(died).toBeInstanceOf(Died);
    expect((died as Died).started).toBe(false);
  });

  it('is closed at once, whatever its workers are at', async () => {
    const pool = poolOf(SCRIPT);
    let answered = false;
    void pool.run('never').then(() => (answered = true));
    await pool.run('a');
    await pool.close();
    expect(answered).toBe(false);
  });
});
