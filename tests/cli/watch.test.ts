import { EventEmitter } from 'node:events';
import { mkdirSync, mkdtempSync, renameSync, rmSync, symlinkSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { pullin, stages } from './fake-io.ts';

let cwd = '';
// Loaded beforehand, so that no wait is for that.
beforeAll(() => import('../../src/cli/late/all.ts'), 60_000);
beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-watch-'));
});
afterEach(() => rmSync(cwd, { recursive: true }));
const save = (file: string, text: string) => writeFileSync(join(cwd, file), text);

/** ms to wait for what a save brings about. */
const BOUND = 5_000;

/** The command running in this process, with what it has written so far. */
function watching(...args: string[]) {
  const all = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({
    write: (text: string) => {
      all[to] += text;
    },
  });
  const signals = new EventEmitter();
  const io = Object.assign(signals, {
    stdin: Readable.from([]),
    stdout: stream('out'),
    stderr: stream('err'),
    env: { NO_COLOR: '1' },
    cwd,
  });
  const status = main(['check', '--watch', ...args], io, stages);
  let seen = { out: 0, err: 0 };
  return {
    all,
    signals,
    /** What has come to the stream since the last call, once it matches. */
    async next(to: 'out' | 'err', words: RegExp): Promise<string> {
      const end = Date.now() + BOUND;
      for (;;) {
        const fresh = all[to].slice(seen[to]);
        if (words.test(fresh)) {
          seen = { out: all.out.length, err: all.err.length };
          return fresh;
        }
        if (Date.now() > end) throw new Error(`waited for ${words} and had ${JSON.stringify(fresh)}`);
        await new Promise((done) => setTimeout(done, 10));
      }
    },
    end(signal: 'SIGINT' | 'SIGTERM' = 'SIGINT'): Promise<number> {
      signals.emit(signal);
      return status;
    },
  };
}

const HEAD = /^\n\d\d:\d\d:\d\d\n/;

describe('check --watch', () => {
  it('reports once in full, then what each save changes, and ends with the status of the last check', async () => {
    save('shop.yaml', 'pass');
    const run = watching('shop.yaml');
    await run.next('err', /Watching shop\.yaml\. Ctrl-C ends\.\n$/);
    expect(run.all.out).toBe((await pullin(['check', 'shop.yaml'], { cwd })).out);
    save('shop.yaml', 'fail');
    const failed = await run.next('out', /Came:\n- [\s\S]*\n$/);
    expect(failed).toMatch(HEAD);
    expect(failed).toMatch(/\nCheck before: pass\. After: fail\.\n/);
    expect(failed).not.toContain('\u001b');
    // The same again is no news.
    save('shop.yaml', 'fail');
    save('shop.yaml', 'doubt');
    expect(await run.next('out', /Went:/)).toMatch(/^\n\S+\nCheck before: fail\. After: cannot tell\.\n/);
    expect(await run.end()).toBe(3);
    expect(run.signals.listenerCount('SIGINT')).toBe(0);
  });

  it('tells of a file that cannot be read once, and compares with the last plan that could be', async () => {
    save('shop.yaml', 'pass');
    const run = watching('shop.yaml');
    await run.next('err', /Ctrl-C ends/);
    save('shop.yaml', 'half a pl');
    expect(await run.next('err', /not a plan\n$/)).toMatch(
      /^\n\d\d:\d\d:\d\d\nshop\.yaml:1:1: not a plan\n$/,
    );
    save('shop.yaml', 'half a plan');
    save('shop.yaml', 'fail');
    expect(await run.next('out', /After/)).toContain('Check before: pass. After: fail.');
    expect(run.all.err.match(/not a plan/g)).toHaveLength(1);
    unlinkSync(join(cwd, 'shop.yaml'));
    await run.next('err', /no such file/);
    expect(await run.end('SIGTERM')).toBe(1);
  });

  it('is not fooled by a file that is half saved for a moment, nor by one that another takes the place of', async () => {
    save('shop.yaml', 'pass');
    const run = watching('shop.yaml');
    await run.next('err', /Ctrl-C ends/);
    save('shop.yaml', '');
    setTimeout(() => save('shop.yaml', 'fail'), 120);
    await run.next('out', /After: fail/);
    for (const word of ['pass', 'doubt']) {
      save('.shop.yaml.new', word);
      renameSync(join(cwd, '.shop.yaml.new'), join(cwd, 'shop.yaml'));
      await run.next('out', word === 'pass' ? /After: pass/ : /After: cannot tell/);
    }
    expect(run.all.err).not.toContain('not a plan');
    expect(await run.end()).toBe(3);
  });

  it('takes several files, one of them through a link, and names the one that was saved', async () => {
    mkdirSync(join(cwd, 'there'));
    save('there/two.yaml', 'pass');
    save('one.yaml', 'fail');
    symlinkSync(join(cwd, 'there/two.yaml'), join(cwd, 'two.yaml'));
    const run = watching('--quiet', 'one.yaml', 'two.yaml');
    await run.next('err', /Watching 2 plans/);
    expect(run.all.out).toBe((await pullin(['check', '--quiet', 'one.yaml', 'two.yaml'], { cwd })).out);
    save('there/two.yaml', 'doubt');
    expect(await run.next('out', /After/)).toMatch(/^\n\d\d:\d\d:\d\d two\.yaml\nCheck before: pass\./);
    save('one.yaml', 'pass');
    expect(await run.next('out', /After/)).toMatch(/^\n\d\d:\d\d:\d\d one\.yaml\nCheck before: fail\./);
    expect(await run.end()).toBe(3);
  });

  it('waits for a plan that cannot be read yet, and ends with 2 where it never could', async () => {
    save('shop.yaml', 'junk');
    const never = watching('shop.yaml');
    await never.next('err', /not a plan[\s\S]*Ctrl-C ends/);
    expect(await never.end()).toBe(2);
    const later = watching('none.yaml');
    await later.next('err', /no such file[\s\S]*Ctrl-C ends/);
    save('none.yaml', 'pass');
    expect(await later.next('out', /Nothing in this check failed/)).toMatch(HEAD);
    expect(await later.end()).toBe(0);
  });

  it('refuses standard input, JSON, and a folder that is not there', async () => {
    for (const [args, words] of [
      [['-'], /--watch needs files/],
      [['--json', 'shop.yaml'], /cannot be used/],
      [['no/shop.yaml'], /no such folder/],
    ] as const)
      expect(await pullin(['check', '--watch', ...args], { cwd })).toMatchObject({
        status: 2,
        out: '',
        err: expect.stringMatching(words),
      });
  });

  it('ends with a mistake of its own like any command', async () => {
    save('shop.yaml', 'crash');
    expect(await watching('shop.yaml').end()).toBe(70);
  });
});
