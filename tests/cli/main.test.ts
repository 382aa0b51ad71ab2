import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MOST_BYTES } from '../../src/cli/input.ts';
import { main } from '../../src/cli/main.ts';
import { worse } from '../../src/cli/status.ts';
import { reportSchema, unreadableSchema } from '../../src/findings/report-schema.ts';
import { pullin, stages } from './fake-io.ts';

let cwd = '';
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'pullin-'));
  for (const word of ['pass', 'fail', 'doubt', 'crash', 'junk'])
    writeFileSync(join(cwd, `${word}.yaml`), word);
  mkdirSync(join(cwd, 'folder'));
});
afterAll(() => rmSync(cwd, { recursive: true }));

describe('check', () => {
  it.each([
    [['pass'], 0],
    [['fail'], 1],
    [['doubt'], 3],
    [['junk'], 2],
    [['pass', 'doubt'], 3],
    [['doubt', 'fail', 'pass'], 1],
    [['fail', 'junk', 'doubt'], 2],
    [['crash', 'junk'], 70],
  ])('%j ends with %d', async (words, status) => {
    const args = words.map((w) => `${w}.yaml`);
    expect((await pullin(['check', ...args], { cwd })).status).toBe(status);
  });

  it('goes on with the other plans when one cannot be read', async () => {
    const { out, err } = await pullin(['check', 'junk.yaml', 'absent.yaml', 'pass.yaml'], { cwd });
    expect(err).toBe('junk.yaml:1:1: not a plan\npullin: absent.yaml: there is no such file\n');
    expect(out).toMatch(/^Nothing in this check failed\.\n/);
  });

  it('prints one report as an object and several as an array', async () => {
    const one = await pullin(['check', '--json', 'fail.yaml'], { cwd });
    expect(reportSchema.parse(JSON.parse(one.out)).plan.file).toBe('fail.yaml');
    const two = await pullin(['check', '--json', 'pass.yaml', 'fail.yaml'], { cwd });
    expect((JSON.parse(two.out) as unknown[]).map((r) => reportSchema.parse(r).verdict)).toEqual([
      'pass',
      'fail',
    ]);
    const half = await pullin(['check', '--json', 'junk.yaml', 'fail.yaml'], { cwd });
    const [first, second] = JSON.parse(half.out) as unknown[];
    expect(unreadableSchema.parse(first)).toEqual({
      format: 1,
      file: 'junk.yaml',
      errors: [{ line: 1, column: 1, message: 'not a plan' }],
    });
    expect(reportSchema.parse(second).verdict).toBe('fail');
    const none = await pullin(['check', '--json', 'absent.yaml'], { cwd });
    expect(unreadableSchema.parse(JSON.parse(none.out)).errors[0]?.line).toBeNull();
  });

  it('prints one line a finding with --quiet', async () => {
    const { out } = await pullin(['check', '--quiet', 'fail.yaml', 'pass.yaml'], { cwd });
    expect(out.trimEnd().split('\n')).toHaveLength(4);
    expect(out).toContain('fail.yaml:34:5: fault: ');
  });

  it('reads standard input, once', async () => {
    const { status, out } = await pullin(['check', '-'], { stdin: ['fa', Buffer.from('il')] });
    expect(status).toBe(1);
    expect(out).toContain('from standard input');
    const twice = await pullin(['check', '-', '-'], { stdin: ['pass'] });
    expect(twice.status).toBe(2);
    expect(twice.err).toContain('only once');
  });

  it('says what is wrong with a name that is no plan file', async () => {
    const { status, err } = await pullin(['check', 'folder', 'a\u0000b', 'pass.yaml/x', '\u001b[2J'], {
      cwd,
    });
    expect(status).toBe(2);
    expect(err).toContain('folder: is a directory');
    expect(err).toContain('a\\u0000b: is no file name');
    expect(err).toContain('pass.yaml/x: there is no such file');
    expect(err).toContain('\\u001b[2J: there is no such file');
    expect(err).not.toContain('\u001b');
  });

  it.skipIf(process.getuid?.() === 0)('says when it may not read', async () => {
    const file = join(cwd, 'locked.yaml');
    writeFileSync(file, 'pass');
    chmodSync(file, 0);
    expect((await pullin(['check', 'locked.yaml'], { cwd })).err).toContain('permission denied');
  });

  it('takes files up to the cap and no larger', async () => {
    const fill = (size: number) => 'pass'.padEnd(size);
    writeFileSync(join(cwd, 'large.yaml'), fill(MOST_BYTES));
    expect((await pullin(['check', '--quiet', 'large.yaml'], { cwd })).status).toBe(0);
    writeFileSync(join(cwd, 'large.yaml'), fill(MOST_BYTES + 1));
    const { status, err } = await pullin(['check', 'large.yaml'], { cwd });
    expect(status).toBe(2);
    expect(err).toBe('pullin: large.yaml: is larger than 5 MB, the most a plan may have\n');
    rmSync(join(cwd, 'large.yaml'));
  });

  it.skipIf(process.platform === 'win32')('leaves a file without end after the cap', async () => {
    expect((await pullin(['check', '/dev/zero'])).err).toContain('larger than 5 MB');
    let served = 0;
    async function* endless() {
      for (;;) {
        served += 1;
        yield 'x'.repeat(1_000_000);
      }
    }
    expect((await pullin(['check', '-'], { stdin: endless() })).err).toContain('standard input: is larger');
    expect(served).toBeLessThan(30);
  });
});

describe('colour and width', () => {
  it.each([
    [{}, {}, false],
    [{ isTTY: true }, {}, true],
    [{ isTTY: true }, { TERM: 'dumb' }, false],
    [{ isTTY: true }, { NO_COLOR: '1' }, false],
    [{ isTTY: true }, { NO_COLOR: '' }, true],
    [{}, { FORCE_COLOR: '1' }, true],
    [{ isTTY: true }, { FORCE_COLOR: '0' }, false],
    [{}, { FORCE_COLOR: '1', NO_COLOR: '1' }, true],
  ])('on %j with %j: %s', async (stream, env, coloured) => {
    const { out } = await pullin(['check', 'fail.yaml'], { cwd, env, ...stream });
    expect(out.includes('\u001b[')).toBe(coloured);
  });

  it('the option has the last word', async () => {
    const always = await pullin(['check', '--color', 'always', 'fail.yaml'], { cwd, env: { NO_COLOR: '1' } });
    expect(always.out).toContain('\u001b[');
    const never = await pullin(['check', '--color=never', 'fail.yaml'], {
      cwd,
      env: { FORCE_COLOR: '1' },
      isTTY: true,
    });
    expect(never.out).not.toContain('\u001b[');
    expect((await pullin(['check', '--color', 'pink', 'fail.yaml'], { cwd })).status).toBe(2);
  });

  it('fills the terminal, or what --width says', async () => {
    const longest = async (args: string[], columns?: number) => {
      const { out } = await pullin(
        ['check', ...args, 'pass.yaml'],
        columns === undefined ? { cwd } : { cwd, columns },
      );
      return Math.max(...out.split('\n').map((l) => l.length));
    };
    expect(await longest([])).toBeLessThanOrEqual(80);
    expect(await longest([], 120)).toBeGreaterThan(80);
    expect(await longest(['--width', '50'], 120)).toBeLessThanOrEqual(50);
    for (const width of ['0', '-5', '1e2', 'wide', '5000']) {
      const { status, err } = await pullin(['check', `--width=${width}`, 'pass.yaml'], { cwd });
      expect(status).toBe(2);
      expect(err).toContain('20 to 1000');
    }
  });
});

describe('table and explain', () => {
  it('prints the table in every format', async () => {
    const text = await pullin(['table', 'pass.yaml'], { cwd });
    expect(text.status).toBe(0);
    expect(text.out).toContain('at rest');
    expect((await pullin(['table', '--all', 'fail.yaml'], { cwd })).out).toContain('every combination');
    expect((await pullin(['table', '--format', 'csv', 'pass.yaml'], { cwd })).out).toBe(
      'state,bandsaw,K1,collector,as intended\r\nat rest,shut,released,stopped,yes\r\n',
    );
    expect((await pullin(['table', '--format', 'markdown', 'pass.yaml'], { cwd })).out).toContain(
      '| at rest | shut |',
    );
    expect(JSON.parse((await pullin(['table', '--json', 'pass.yaml'], { cwd })).out)).toHaveProperty('rows');
    expect((await pullin(['table', 'junk.yaml'], { cwd })).status).toBe(2);
  });

  it('explains a finding, a caution, and lists both', async () => {
    const one = await pullin(['explain', 'GATE-dead']);
    expect(one.out).toContain('gate-dead: A gate starts nothing');
    expect(one.out).toContain('  - {cores: {}}');
    expect((await pullin(['explain', 'c-unplug'])).out).toContain('C-UNPLUG: a caution');
    const list = (await pullin(['explain'])).out;
    expect(list).toContain('gate-dead');
    expect(list).toContain('C-LOCKOUT');
    const all = JSON.parse((await pullin(['explain', '--json'])).out) as { id: string }[];
    expect(all.map(({ id }) => id)).toEqual(expect.arrayContaining(['gate-dead', 'C-LOCKOUT']));
    expect(JSON.parse((await pullin(['explain', '--json', 'gate-dead'])).out)).toHaveProperty('meaning');
  });

  it('offers the nearest name', async () => {
    const { status, err } = await pullin(['explain', 'gate-daed']);
    expect(status).toBe(2);
    expect(err).toContain('did you mean gate-dead?');
    expect((await pullin(['explain', '\u001b]0;x'])).err).not.toContain('\u001b');
  });
});

describe('the command line', () => {
  it.each([
    [[]],
    [['solder']],
    [['check']],
    [['check', '--jsn', 'a']],
    [['check', '--json', '--quiet', 'a']],
    [['table']],
    [['table', 'a', 'b']],
  ])('%j is refused with status 2', async (args) => {
    const { status, out, err } = await pullin(args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).not.toBe('');
  });

  it('prints help and version on standard output', async () => {
    for (const args of [['--help'], ['-h'], ['check', '--help'], ['--version']]) {
      const { status, out, err } = await pullin(args);
      expect([status, err]).toEqual([0, '']);
      expect(out).not.toBe('');
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    }
    expect((await pullin(['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it('makes what was typed printable in its messages', async () => {
    expect((await pullin(['check', '--\u001b[2J'])).err).not.toContain('\u001b');
  });

  it('asks for a report when it breaks, with the trace only on request', async () => {
    const { status, out, err } = await pullin(['check', 'crash.yaml'], { cwd });
    expect([status, out]).toEqual([70, '']);
    expect(err).toContain('no net \\u001b[31m7');
    expect(err).toContain('Please report it');
    expect(err.trimEnd()).not.toContain('\n');
    const traced = await pullin(['check', 'crash.yaml'], { cwd, env: { PULLIN_DEBUG: '1' } });
    expect(traced.err).toMatch(/\n {4}at /);
  });

  it('says nothing when the reader has gone, and says so when the disk is full', async () => {
    const run = async (code: string) => {
      const stdout = new PassThrough();
      stdout.write = () => {
        setImmediate(() => stdout.emit('error', Object.assign(new Error(code), { code })));
        return false;
      };
      let err = '';
      const stderr = { write: (text: string) => (err += text) };
      const status = await main(
        ['check', 'fail.yaml'],
        { stdin: Readable.from([]), stdout, stderr, env: {}, cwd },
        stages,
      );
      await new Promise((done) => setTimeout(done, 5));
      return { status, err };
    };
    expect(await run('EPIPE')).toEqual({ status: 1, err: '' });
    expect(await run('ENOSPC')).toEqual({
      status: 2,
      err: 'pullin: the output could not be written (ENOSPC)\n',
    });
  });

  it('orders exit statuses', () => {
    expect([0, 3, 1, 2, 70].reduce(worse)).toBe(70);
    expect(worse(1, 3)).toBe(1);
    expect(worse(2, 1)).toBe(2);
  });
});
