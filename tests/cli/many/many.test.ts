/** Several plans: order, streams, what an interruption and a mistake leave behind. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../../src/cli/main.ts';
import type { Stages } from '../../../src/cli/stages.ts';
import { reportSchema, unreadableSchema } from '../../../src/findings/report-schema.ts';
import { pullin, stages } from '../fake-io.ts';

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-many-'));
  for (const word of ['pass', 'fail', 'doubt', 'crash', 'junk'])
    writeFileSync(join(cwd, `${word}.yaml`), word);
});
afterAll(() => rmSync(cwd, { recursive: true }));
afterEach(() => {
  vi.useRealTimers();
});

const ALL = ['pass', 'junk', 'fail', 'crash', 'doubt'].map((word) => `${word}.yaml`);
const SUMMARY =
  '5 plans: in 1 nothing in this check failed, in 1 something failed, of 1 it cannot tell, 1 could not be read, at 1 pullin made a mistake of its own.';

describe('of several plans', () => {
  it('a mistake at one is told in its place, and the others are checked', async () => {
    const { status, out, err } = await pullin(['check', ...ALL], { cwd });
    expect(status).toBe(70);
    expect(err.split('\n')[0]).toBe('junk.yaml:1:1: not a plan');
    expect(err).toContain('crash.yaml: pullin stopped because of a mistake of its own');
    expect(err).not.toContain('\u001b');
    const parts = out.split(`\n${'='.repeat(20)}\n\n`);
    expect(parts).toHaveLength(4);
    expect(parts.map((part) => /from (\w+)\.yaml/.exec(part)?.[1])).toEqual([
      'pass',
      'fail',
      'doubt',
      undefined,
    ]);
    expect(parts[3]!.replace(/\s+/g, ' ').trim()).toBe(SUMMARY);
  });

  it('the summary is no line of --quiet, and none of JSON', async () => {
    const quiet = await pullin(['check', '--quiet', ...ALL], { cwd });
    for (const line of quiet.out.trimEnd().split('\n')) expect(line).toMatch(/^(pass|fail|doubt)\.yaml:/);
    expect(quiet.err.trimEnd().split('\n').at(-1)).toBe(`pullin: ${SUMMARY}`);
    const json = await pullin(['check', '--json', ...ALL], { cwd });
    expect(json.err).not.toContain('plans:');
    const one = await pullin(['check', 'pass.yaml'], { cwd });
    expect(one.out + one.err).not.toContain('plans');
  });

  it('JSON is one array, an entry a plan in the order named, and the bytes that one piece would be', async () => {
    const { out } = await pullin(['check', '--json', ...ALL], { cwd });
    const entries = JSON.parse(out) as unknown[];
    expect(out).toBe(`${JSON.stringify(entries, null, 2)}\n`);
    expect(entries.map((e) => reportSchema.safeParse(e).data?.verdict)).toEqual([
      'pass',
      undefined,
      'fail',
      undefined,
      'cannot-tell',
    ]);
    expect(unreadableSchema.parse(entries[1])).toMatchObject({ file: 'junk.yaml' });
    expect(unreadableSchema.parse(entries[1]).ownMistake).toBeUndefined();
    expect(unreadableSchema.parse(entries[3])).toMatchObject({ file: 'crash.yaml', ownMistake: true });
    expect((await pullin(['check', '--format', 'json', ...ALL], { cwd })).out).toBe(out);
  });

  it.each([
    [['--json', '--format', 'sarif']],
    [['--json', '--format', 'text']],
    [['--format', 'json', '--quiet']],
    [['--format', 'sarif', '--quiet']],
    [['--format', 'sarif', '--watch']],
    [['--format', 'json', '--watch']],
    [['--format', 'xml']],
    [['--at-once', '0']],
    [['--at-once', 'two']],
    [['--at-once', '65']],
  ])('%j is refused', async (options) => {
    const { status, out, err } = await pullin(['check', ...options, 'pass.yaml'], { cwd });
    expect([status, out]).toEqual([2, '']);
    expect(err).not.toBe('');
  });
});

/** Runs the command and sends it `signal` while the plan of that number is checked. */
async function cutShort(args: readonly string[], at: number, signal: 'SIGINT' | 'SIGTERM') {
  const listeners = new Map<string, () => void>();
  let count = 0;
  const interrupting: Stages = {
    ...stages,
    check: (study) => {
      if (++count === at) listeners.get(signal)?.();
      return stages.check(study);
    },
  };
  let [out, err] = ['', ''];
  const status = await main(
    args,
    {
      stdin: Readable.from([]),
      stdout: { write: (text) => (out += text) },
      stderr: { write: (text) => (err += text) },
      env: {},
      cwd,
      once: (event, listener) => listeners.set(event, listener),
      off: (event) => listeners.delete(event),
    },
    interrupting,
  );
  return { status, out, err, left: listeners.size };
}

describe('a signal', () => {
  const five = ['pass', 'fail', 'pass', 'doubt', 'pass'].map((word) => `${word}.yaml`);
  const SAID = 'Cut short after 2 of 5 plans: in 1 nothing in this check failed, in 1 something failed.';

  it('leaves a whole array behind, says how far it came, and ends with 130', async () => {
    const { status, out, err, left } = await cutShort(['check', '--json', ...five], 3, 'SIGINT');
    expect(status).toBe(130);
    expect((JSON.parse(out) as { verdict: string }[]).map((r) => r.verdict)).toEqual(['pass', 'fail']);
    expect(err).toBe(`pullin: ${SAID}\n`);
    expect(left).toBe(0);
    const none = await cutShort(['check', '--json', ...five], 1, 'SIGINT');
    expect(JSON.parse(none.out)).toEqual([]);
    expect(none.err).toBe('pullin: Cut short after 0 of 5 plans.\n');
  });

  it('is told in the report as well, and SIGTERM ends with 143', async () => {
    const { status, out, err } = await cutShort(['check', ...five], 3, 'SIGTERM');
    expect(status).toBe(143);
    expect(out.split('='.repeat(20)).at(-1)!.replace(/\s+/g, ' ').trim()).toBe(SAID);
    expect(err).toBe(`pullin: ${SAID}\n`);
  });

  it('is no whole run in SARIF', async () => {
    const { status, out } = await cutShort(['check', '--format', 'sarif', ...five], 3, 'SIGINT');
    expect(status).toBe(130);
    const [run] = JSON.parse(out).runs;
    expect(run.artifacts).toHaveLength(2);
    expect(run.invocations[0]).toMatchObject({
      executionSuccessful: false,
      exitCode: 130,
      exitSignalName: 'SIGINT',
      toolExecutionNotifications: [{ descriptor: { id: 'interrupted' }, level: 'error' }],
    });
    expect(run.invocations[0].toolExecutionNotifications[0].message.text).toContain('3 of 5 plans');
  });
});

describe('progress', () => {
  /** Each plan takes a second. */
  async function slow(stdout: boolean, stderr: boolean) {
    vi.useFakeTimers({ toFake: ['Date'] });
    let err = '';
    const status = await main(
      ['check', '--json', ...Array.from({ length: 8 }, () => 'pass.yaml')],
      {
        stdin: Readable.from([]),
        stdout: { write: () => true, isTTY: stdout },
        stderr: { write: (text) => (err += text), isTTY: stderr },
        env: {},
        cwd,
      },
      {
        ...stages,
        check: (study) => {
          vi.setSystemTime(Date.now() + 1000);
          return stages.check(study);
        },
      },
    );
    return { status, err };
  }

  it('goes forward on a terminal and leaves nothing there', async () => {
    const { status, err } = await slow(false, true);
    expect(status).toBe(0);
    const told = [...err.matchAll(/(\d+) %/g)].map(([, percent]) => Number(percent));
    expect(told.length).toBeGreaterThan(5);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(err).toMatch(/\r +\r$/);
  });

  it('is nothing in a pipe, nor where the reports show it on the same terminal', async () => {
    expect((await slow(false, false)).err).toBe('');
    expect((await slow(true, true)).err).toBe('');
  });
});

describe('a reader', () => {
  it('that is slow is waited for', async () => {
    const stdout = new PassThrough({ highWaterMark: 1 });
    let most = 0;
    let got = '';
    const reading = (async () => {
      for await (const chunk of stdout) {
        await new Promise((done) => setTimeout(done, 1));
        most = Math.max(most, stdout.writableLength);
        got += String(chunk);
      }
    })();
    let err = '';
    const plans = Array.from({ length: 12 }, () => 'fail.yaml');
    const io = {
      stdin: Readable.from([]),
      stdout,
      stderr: { write: (t: string) => (err += t) },
      env: {},
      cwd,
    };
    expect(await main(['check', '--json', ...plans], io, stages)).toBe(1);
    stdout.end();
    await reading;
    expect((JSON.parse(got) as unknown[]).length).toBe(12);
    // No more than one report and what closes the array stands between the two.
    expect(most).toBeLessThan(2 * (got.length / 12));
    expect(err).toBe('');
  });
});
